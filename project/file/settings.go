package file

import (
	"slices"
	"strings"

	"chape/project"
)

// Setting is a value of a file that holds no project but says, by the same rules,
// what projects start with.
type Setting struct {
	project.Spec
	Get func() any
	Set func(any) // not called for a key the file does not have
}

// ofOneKnife are the keys of the tables sheath, belt and stitch that are of one
// knife alone.
var ofOneKnife = []string{"sheath.mouth", "stitch.measured"}

// parts are the values of a project that another file may hold.
var parts = slices.DeleteFunc(slices.Clone(project.Fields), func(f project.Field) bool {
	return !slices.Contains([]string{"sheath", "belt", "stitches"}, f.Group) || slices.Contains(ofOneKnife, f.Key)
})

// stepParts is the list of steps, none of them begun.
var stepParts = freshSteps()

func freshSteps() project.List {
	l := project.Lists[slices.IndexFunc(project.Lists, func(l project.List) bool { return l.Key == "step" })]
	l.Columns = slices.DeleteFunc(slices.Clone(l.Columns), func(c project.Field) bool {
		return c.Kind == project.Moment || c.Key == "step.skipped" || c.Key == "step.spent"
	})
	return l
}

// DecodeSettings reads a file that holds settings and, as a project file does,
// the tables sheath, belt, stitch and step: they are put into Defaults. check
// looks at everything together. The error is a *Refused.
func DecodeSettings(name string, data []byte, settings []Setting, check func(project.Project) project.Problems) (project.Project, error) {
	p, problems := readSettings(data, settings, check)
	if len(problems) > 0 {
		inOrder(problems)
		return project.Project{}, &Refused{Name: name, Problems: problems}
	}
	return p, nil
}

func readSettings(data []byte, settings []Setting, check func(project.Project) project.Problems) (project.Project, project.Problems) {
	root, x, bad := tables(data, ofSettings)
	if bad != nil {
		return project.Project{}, project.Problems{*bad}
	}
	f := &filler{index: x, project: project.Defaults(), lists: []project.List{stepParts}, given: map[string]bool{}, remedies: map[string]string{}}
	for _, key := range ofOneKnife {
		f.remedies[key] = "it is of one knife alone: take it out"
	}
	put := func(s project.Spec, set func(any)) {
		f.slots = append(f.slots, slot{s, func(v any) (project.Problem, bool) {
			bad, refused := s.Outside(v, f.project.Units)
			if !refused {
				set(v)
			}
			return bad, refused
		}})
	}
	for _, s := range settings {
		put(s.Spec, s.Set)
	}
	for _, c := range parts {
		put(c.Spec, func(v any) { c.Keep(&f.project, v) })
	}
	f.table("", root)
	if len(f.problems) > 0 {
		return project.Project{}, f.problems
	}
	var ps project.Problems
	if err := f.project.Validate(); err != nil {
		ps = err.(project.Problems)
	}
	return f.project, f.placed(append(ps, check(f.project)...))
}

// EncodeSettings writes a file that DecodeSettings reads back as the same. Every key has a
// comment before it that says what it is.
func EncodeSettings(heading string, p project.Project, settings []Setting) []byte {
	var b strings.Builder
	b.WriteString(heading)
	table := ""
	pair := func(s project.Spec, v any, given bool) {
		if t := parent(s.Key); t != table {
			table = t
			b.WriteString("\n[" + table + "]\n")
		}
		b.WriteString("# " + remark(s, given) + "\n")
		if given {
			writePair(&b, s, v)
		}
	}
	for _, s := range settings {
		pair(s.Spec, s.Get(), true)
	}
	for _, f := range parts {
		pair(f.Spec, f.Kept(&p), f.Written(&p))
	}
	writeRows(&b, &p, stepParts)
	return []byte(b.String())
}

// remark says what a key of a file is. The screens show the hollow, not the radius it
// comes from.
func remark(s project.Spec, given bool) string {
	text := s.Hint
	switch {
	case s.Key == "sheath.blend":
		text = "the radius that hollows are rounded by: half the smallest hollow's diameter, plus margin and sanding"
	case s.Name != "":
		text = s.Name + ": " + text
	}
	if s.Name != "" && s.Kind == project.Choice {
		text += "; " + strings.TrimPrefix(s.Offer(), "try ")
	}
	if !given {
		text = last(s.Key) + ", left out: " + s.Auto + ". " + text
	}
	return text
}
