package project

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"chape/calc/length"
	"chape/project/clock"
	"chape/project/plain"
)

// filler puts decoded TOML into a project by the tables of fields.
type filler struct {
	index    index
	project  Project
	given    map[string]bool
	problems Problems
}

// fill makes the project of the tables in root. Where the file's marks are not
// those its outline gives, the outline's stand and refilled is true.
func fill(root map[string]any, x index) (p Project, refilled bool, ps Problems) {
	f := &filler{index: x, project: blank(), given: map[string]bool{}}
	f.table("", root)
	for _, c := range scalars {
		if c.Needed && !f.given[c.Key] {
			f.missing(c.Spec, -1, parent(c.Key))
		}
	}
	if len(f.problems) > 0 {
		return Project{}, false, f.problems
	}
	p = f.project
	if p.Source == FromOutline {
		marks, err := p.Outline.Stations()
		if err != nil {
			return Project{}, false, f.placed(Problems{misfit(err, p.Units)})
		}
		refilled = len(p.Knife.Stations) > 0 && !slices.Equal(marks, p.Knife.Stations)
		p.Knife.Stations = marks
	}
	if err := p.Validate(); err != nil {
		return Project{}, false, f.placed(err.(Problems))
	}
	return p, refilled, nil
}

// placed adds to problems the lines they stand on.
func (f *filler) placed(ps Problems) Problems {
	for i := range ps {
		ps[i].Line = f.index.line(path(ps[i].Key, ps[i].Index))
	}
	return ps
}

// path is where in the index a key, or a key of one row, is found.
func path(key string, i int) string {
	if i < 0 {
		return key
	}
	row := "[" + strconv.Itoa(i) + "]"
	if _, list := rowNames[key]; list {
		return key + row
	}
	return parent(key) + row + "." + last(key)
}

func parent(key string) string { return key[:max(0, strings.LastIndexByte(key, '.'))] }

func last(key string) string { return key[strings.LastIndexByte(key, '.')+1:] }

func (f *filler) bad(key string, i int, found, remedy string) {
	f.problems = append(f.problems, Problem{Key: key, Index: i, Line: f.index.line(path(key, i)), Found: found, Remedy: remedy})
}

func (f *filler) unknown(key string, i int, remedy string) {
	line := f.index.line(path(key, i))
	f.problems = append(f.problems, Problem{Key: plain.Printable(key), Index: i, Line: line, Found: "a key this program does not know", Remedy: remedy})
}

func (f *filler) missing(s Spec, i int, table string) {
	f.problems = append(f.problems, Problem{Key: s.Key, Index: i, Line: f.index.line(path(table, i)), Found: "nothing", Remedy: "give it: " + s.Hint})
}

// table fills the keys of one table that stands once.
func (f *filler) table(name string, m map[string]any) {
	for _, k := range slices.Sorted(maps.Keys(m)) {
		key := k
		if name != "" {
			key = name + "." + k
		}
		if c, ok := lookup(scalars, key); ok {
			f.given[key] = true
			if v, ok := f.value(c.Spec, -1, m[k]); ok {
				c.set(&f.project, v)
			}
			continue
		}
		switch key {
		case "customer", "knife", "knife.outline", "sheath", "belt", "stitch", "room":
			if sub, ok := m[k].(map[string]any); ok {
				f.table(key, sub)
			} else {
				f.bad(key, -1, foundRaw(m[k]), "write a table: ["+key+"]")
			}
		case "knife.station":
			f.project.Knife.Stations = rows(f, key, marks, mostMarks, m[k])
		case "fit":
			f.project.Fits = rows(f, key, fits, mostFits, m[k])
		case "step":
			f.project.Steps = rows(f, key, stepColumns, mostSteps, m[k])
		case "weigh":
			f.project.Weigh = rows(f, key, weighings, mostWeighings, m[k])
		default:
			f.unknown(key, -1, suggest(k, scalarKeys(name), true))
		}
	}
}

// rows fills a list of tables, each key by its column.
func rows[T any](f *filler, list string, cs []column[T], most int, raw any) []T {
	tables, ok := tablesOf(raw)
	if !ok {
		f.bad(list, -1, foundRaw(raw), "write a table for each: [["+list+"]]")
		return nil
	}
	if len(tables) > most {
		f.bad(list, -1, fmt.Sprintf("%d of them", len(tables)), fmt.Sprintf("give at most %d", most))
		return nil
	}
	var out []T
	for i, m := range tables {
		var t T
		for _, c := range cs {
			v := c.def
			raw, given := m[last(c.Key)]
			if given {
				if v, ok = f.value(c.Spec, i, raw); !ok {
					continue
				}
			} else if c.Needed {
				f.missing(c.Spec, i, list)
				continue
			}
			c.set(&t, v)
		}
		for _, k := range slices.Sorted(maps.Keys(m)) {
			if _, ok := lookup(cs, list+"."+k); !ok {
				f.unknown(list+"."+k, i, suggest(k, keysOf(cs), false))
			}
		}
		out = append(out, t)
	}
	return out
}

func tablesOf(raw any) ([]map[string]any, bool) {
	switch v := raw.(type) {
	case []map[string]any:
		return v, true
	case []any:
		var out []map[string]any
		for _, e := range v {
			m, ok := e.(map[string]any)
			if !ok {
				return nil, false
			}
			out = append(out, m)
		}
		return out, true
	}
	return nil, false
}

// value turns what TOML holds into the field's value.
func (f *filler) value(s Spec, i int, raw any) (any, bool) {
	v, remedy := s.fromTOML(raw)
	if remedy != "" {
		f.bad(s.Key, i, foundRaw(raw), remedy)
		return nil, false
	}
	return v, true
}

// fromTOML gives the value, or what would do instead.
func (s Spec) fromTOML(raw any) (v any, remedy string) {
	switch s.Kind {
	case Length, Leather:
		return s.lengthFrom(raw)
	case Share, Number:
		if n, ok := figure(raw); ok {
			return n, ""
		}
		return nil, "write a number, such as 0.5"
	case Count:
		if n, ok := raw.(int64); ok && math.Abs(float64(n)) < 1e9 {
			return int(n), ""
		}
		return nil, fmt.Sprintf("write a whole number, such as %d", int(s.Min)+1)
	case Choice:
		if t, ok := raw.(string); ok && slices.Contains(s.Options, t) {
			return t, ""
		}
		return nil, s.offer()
	case Text, Lines:
		if t, ok := raw.(string); ok {
			return t, ""
		}
		return nil, "write a text in quotes"
	case Flag:
		if b, ok := raw.(bool); ok {
			return b, ""
		}
		return nil, "write true or false"
	case Span:
		return spanFrom(raw)
	case Words:
		return wordsFrom(raw)
	}
	return s.timeFrom(raw)
}

// figure is a number that is one.
func figure(raw any) (float64, bool) {
	switch n := raw.(type) {
	case int64:
		return float64(n), true
	case float64:
		return n, !math.IsNaN(n) && !math.IsInf(n, 0)
	}
	return 0, false
}

func (s Spec) lengthFrom(raw any) (any, string) {
	if n, ok := figure(raw); ok {
		return length.Length(n), ""
	}
	remedy := `write millimetres, such as 3.2, or a text with its unit, such as "1/8 in"`
	parse := length.Parse
	if s.Kind == Leather {
		parse = length.ParseLeather
		remedy = `write millimetres, such as 3.2, or a text with its unit, such as "1/8 in" or "8 oz"`
	}
	t, ok := raw.(string)
	if !ok {
		return nil, remedy
	}
	mm, err := parse(t, length.Millimetres)
	if err != nil {
		if _, why, ok := strings.Cut(err.Error(), ": "); ok && strings.Contains(err.Error(), "leather weight") {
			remedy = "ounces are for leather alone: " + why
		}
		return nil, remedy
	}
	// Without a unit the same text is another length in inches.
	if in, err := parse(t, length.Inches); err != nil || in != mm {
		return nil, remedy
	}
	return mm, ""
}

func wordsFrom(raw any) (any, string) {
	const remedy = `write a list of texts, such as ["command", "word"], or [] for none`
	list, ok := raw.([]any)
	if !ok {
		return nil, remedy
	}
	var words []string
	for _, w := range list {
		t, ok := w.(string)
		if !ok || strings.ContainsRune(t, 0) {
			return nil, remedy
		}
		words = append(words, t)
	}
	return words, ""
}

func spanFrom(raw any) (any, string) {
	const remedy = `write a duration in quotes, such as "24h" or "15m"`
	t, ok := raw.(string)
	if !ok || t == "" {
		return nil, remedy
	}
	d, err := parseSpan(t)
	if err != nil {
		return nil, remedy
	}
	return d, ""
}

// timeFrom reads a date or a time. The decoder marks local dates and times by
// the names of their zones.
func (s Spec) timeFrom(raw any) (any, string) {
	t, ok := raw.(time.Time)
	kind := ""
	if ok {
		kind = t.Location().String()
	}
	if s.Kind == Date {
		if kind != "date-local" {
			return nil, "write a date without quotes, such as 2026-12-18"
		}
		return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC), ""
	}
	if !ok || strings.HasSuffix(kind, "-local") {
		return nil, "write a time with its offset, without quotes, such as 2026-11-25T09:30:00+01:00"
	}
	return clock.Whole(t), ""
}

// foundRaw says what TOML holds, for an error.
func foundRaw(raw any) string {
	switch v := raw.(type) {
	case string:
		return plain.Quote(v)
	case int64, bool:
		return fmt.Sprint(v)
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	case time.Time:
		return foundTime(v)
	case map[string]any:
		return "a table"
	}
	return "a list"
}

func foundTime(t time.Time) string {
	switch t.Location().String() {
	case "date-local":
		return "the date " + t.Format(time.DateOnly)
	case "time-local":
		return "the time " + t.Format(time.TimeOnly)
	case "datetime-local":
		return t.Format("2006-01-02T15:04:05") + " without an offset"
	}
	return t.Format(time.RFC3339)
}
