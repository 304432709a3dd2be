package project

import (
	"bytes"
	"maps"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"chape/project/steps"
)

// Own is a value of a file that is no project but says, by the same rules,
// what projects start with.
type Own struct {
	Spec
	Get func() any
	Set func(any) // not called for a key the file does not have
}

// onlyOne are the keys of the tables sheath, belt and stitch that are of one
// knife alone.
var onlyOne = []string{"sheath.mouth", "stitch.measured"}

// parts are the values of a project that another file may hold.
var parts = slices.DeleteFunc(slices.Concat(sheath, belt, stitches), func(c column[Project]) bool {
	return slices.Contains(onlyOne, c.Key)
})

// stepParts are the columns of a step that is not begun.
var stepParts = slices.DeleteFunc(slices.Clone(stepColumns), func(c column[steps.Step]) bool {
	return c.Kind == Moment || c.Kind == Flag || c.Key == "step.spent"
})

// DecodeParts reads a file that holds own values and, as a project file does,
// the tables sheath, belt, stitch and step: they are put into Defaults. check
// looks at everything together. The error is a *Refused.
func DecodeParts(name string, data []byte, own []Own, check func(Project) Problems) (Project, error) {
	p, problems := readParts(data, own, check)
	if len(problems) > 0 {
		inOrder(problems)
		return Project{}, &Refused{Name: name, Problems: problems}
	}
	return p, nil
}

func readParts(data []byte, own []Own, check func(Project) Problems) (Project, Problems) {
	if bad := guard(data); bad != nil {
		return Project{}, Problems{*bad}
	}
	data = bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n"))
	x, bad := scan(data)
	if bad != nil {
		return Project{}, Problems{*bad}
	}
	root := map[string]any{}
	if _, err := toml.Decode(string(data), &root); err != nil {
		return Project{}, Problems{notTOML(err)}
	}
	f := partFiller{filler{index: x, project: Defaults()}, map[string]part{}}
	for _, o := range own {
		f.by[o.Key] = part{o.Spec, o.Set}
	}
	for _, c := range parts {
		f.by[c.Key] = part{c.Spec, func(v any) { c.set(&f.project, v) }}
	}
	f.table("", root)
	if len(f.problems) > 0 {
		return Project{}, f.problems
	}
	var ps Problems
	if err := f.project.Validate(); err != nil {
		ps = err.(Problems)
	}
	return f.project, f.placed(append(ps, check(f.project)...))
}

// part is one key and where its value goes.
type part struct {
	Spec
	set func(any)
}

type partFiller struct {
	filler
	by map[string]part
}

// table fills the keys of one table.
func (f *partFiller) table(name string, m map[string]any) {
	for _, k := range slices.Sorted(maps.Keys(m)) {
		key := k
		if name != "" {
			key = name + "." + k
		}
		if p, ok := f.by[key]; ok {
			f.one(p, m[k])
			continue
		}
		sub, isTable := m[k].(map[string]any)
		switch {
		case key == "step":
			f.project.Steps = rows(&f.filler, key, stepParts, mostSteps, m[k])
		case slices.Contains(onlyOne, key):
			f.unknown(key, -1, "it is of one knife alone: take it out")
		case !slices.Contains(f.keys(""), key) || name != "":
			f.unknown(key, -1, f.suggest(k, name))
		case !isTable:
			f.bad(key, -1, foundRaw(m[k]), "write a table: ["+key+"]")
		default:
			f.table(key, sub)
		}
	}
}

func (f *partFiller) one(p part, raw any) {
	v, ok := f.value(p.Spec, -1, raw)
	if !ok {
		return
	}
	if bad, ok := p.outside(v, f.project.Units); ok {
		f.bad(p.Key, -1, bad.Found, bad.Remedy)
		return
	}
	p.set(v)
}

// keys are those known in a table, those of tables among them.
func (f *partFiller) keys(table string) []string {
	seen := map[string]bool{}
	for key := range f.by {
		switch {
		case parent(key) == table:
			seen[last(key)] = true
		case table == "":
			seen[parent(key)] = true
		}
	}
	if table == "" {
		seen["step"] = true
	}
	return slices.Sorted(maps.Keys(seen))
}

// suggest says what may have been meant by an unknown key.
func (f *partFiller) suggest(key, table string) string {
	remedy := suggest(key, f.keys(table), false)
	if strings.HasPrefix(remedy, "did") {
		return remedy
	}
	for _, k := range slices.Sorted(maps.Keys(f.by)) {
		if last(k) == key && parent(k) != "" {
			return key + " belongs in [" + parent(k) + "]: move it or take it out"
		}
	}
	return remedy
}

// EncodeParts writes a file that DecodeParts reads back as the same. Every key has a
// comment before it that says what it is.
func EncodeParts(heading string, p Project, own []Own) []byte {
	var b strings.Builder
	b.WriteString(heading)
	table := ""
	pair := func(s Spec, v any, given bool) {
		if t := parent(s.Key); t != table {
			table = t
			b.WriteString("\n[" + table + "]\n")
		}
		b.WriteString("# " + s.remark(given) + "\n")
		if given {
			writePair(&b, s, v)
		}
	}
	for _, o := range own {
		pair(o.Spec, o.Get(), true)
	}
	for _, c := range parts {
		pair(c.Spec, c.get(p), c.skip == nil || !c.skip(p))
	}
	writeRows(&b, "step", stepParts, p.Steps)
	return []byte(b.String())
}

// remark says what a key of a file is. The screens show the hollow, not the radius it
// comes from.
func (s Spec) remark(given bool) string {
	text := s.Hint
	switch {
	case s.Key == "sheath.blend":
		text = "the radius that hollows are rounded by: half the smallest hollow's diameter, plus margin and sanding"
	case s.Name != "":
		text = s.Name + ": " + text
	}
	if s.Name != "" && s.Kind == Choice {
		text += "; " + strings.TrimPrefix(s.offer(), "try ")
	}
	if !given {
		text = last(s.Key) + ", left out: " + s.Auto + ". " + text
	}
	return text
}
