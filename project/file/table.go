package file

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"chape/project"
	"chape/project/plain"
)

// slot is one key of a file and where its value goes.
type slot struct {
	project.Spec
	put func(any) (project.Problem, bool) // true: the value will not do
}

// filler puts the tables of a file where they belong: every key by its slot, every row of
// a list by its columns.
type filler struct {
	index    index
	project  project.Project
	slots    []slot            // in the order in which an error names them
	lists    []project.List    // the tables that are repeated
	known    []string          // further keys and tables that stand at the top
	remedies map[string]string // keys that are not for this file, and what would do
	given    map[string]bool
	problems project.Problems
}

// fill makes the project of the tables in root. Where the file's marks are not
// those its outline gives, the outline's stand and refilled is true.
func fill(root map[string]any, x index) (p project.Project, refilled bool, ps project.Problems) {
	f := &filler{index: x, project: project.Blank(), lists: project.Lists, given: map[string]bool{}, known: []string{"format"}}
	for _, c := range project.Fields {
		f.slots = append(f.slots, f.slot(c))
	}
	f.table("", root)
	for _, c := range f.slots {
		if c.Needed && !f.given[c.Key] {
			f.missing(c.Spec, -1, parent(c.Key))
		}
	}
	if len(f.problems) > 0 {
		return project.Project{}, false, f.problems
	}
	p = f.project
	if p.Source == project.FromOutline {
		written := p.Knife.Stations
		if err := p.FillMarks(); err != nil {
			return project.Project{}, false, f.placed(project.Problems{err.(project.Problem)})
		}
		refilled = len(written) > 0 && !slices.Equal(written, p.Knife.Stations)
	}
	if err := p.Validate(); err != nil {
		return project.Project{}, false, f.placed(err.(project.Problems))
	}
	return p, refilled, nil
}

// slot is where a field of the project goes. Validate looks at it when all are filled.
func (f *filler) slot(c project.Field) slot {
	return slot{c.Spec, func(v any) (bad project.Problem, refused bool) {
		c.Keep(&f.project, v)
		return
	}}
}

// placed adds to problems the lines they stand on.
func (f *filler) placed(ps project.Problems) project.Problems {
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
	if slices.ContainsFunc(project.Lists, func(l project.List) bool { return l.Key == key }) {
		return key + row
	}
	return parent(key) + row + "." + last(key)
}

func parent(key string) string { return key[:max(0, strings.LastIndexByte(key, '.'))] }

func last(key string) string { return key[strings.LastIndexByte(key, '.')+1:] }

func (f *filler) bad(key string, i int, found, remedy string) {
	f.problems = append(f.problems, project.Problem{Key: key, Index: i, Line: f.index.line(path(key, i)), Found: found, Remedy: remedy})
}

func (f *filler) unknown(key string, i int, remedy string) {
	line := f.index.line(path(key, i))
	f.problems = append(f.problems, project.Problem{Key: plain.Printable(key), Index: i, Line: line, Found: "a key this program does not know", Remedy: remedy})
}

func (f *filler) missing(s project.Spec, i int, table string) {
	f.problems = append(f.problems, project.Problem{Key: s.Key, Index: i, Line: f.index.line(path(table, i)), Found: "nothing", Remedy: "give it: " + s.Hint})
}

// table fills the keys of one table that stands once.
func (f *filler) table(name string, m map[string]any) {
	for _, k := range slices.Sorted(maps.Keys(m)) {
		key := k
		if name != "" {
			key = name + "." + k
		}
		if i := slices.IndexFunc(f.slots, func(s slot) bool { return s.Key == key }); i >= 0 {
			f.given[key] = true
			f.one(f.slots[i], m[k])
			continue
		}
		if i := slices.IndexFunc(f.lists, func(l project.List) bool { return l.Key == key }); i >= 0 {
			f.rows(f.lists[i], m[k])
			continue
		}
		sub, isTable := m[k].(map[string]any)
		switch {
		case f.remedies[key] != "":
			f.unknown(key, -1, f.remedies[key])
		case !f.isTable(key):
			f.unknown(key, -1, f.suggest(k, name))
		case !isTable:
			f.bad(key, -1, foundRaw(m[k]), "write a table: ["+key+"]")
		default:
			f.table(key, sub)
		}
	}
}

func (f *filler) one(s slot, raw any) {
	v, ok := f.value(s.Spec, -1, raw)
	if !ok {
		return
	}
	if bad, refused := s.put(v); refused {
		f.bad(s.Key, -1, bad.Found, bad.Remedy)
	}
}

// rows fills a list of tables, each key by its column.
func (f *filler) rows(l project.List, raw any) {
	tables, ok := tablesOf(raw)
	if !ok {
		f.bad(l.Key, -1, foundRaw(raw), "write a table for each: [["+l.Key+"]]")
		return
	}
	if len(tables) > l.Most {
		f.bad(l.Key, -1, fmt.Sprintf("%d of them", len(tables)), fmt.Sprintf("give at most %d", l.Most))
		return
	}
	l.Resize(&f.project, len(tables))
	for i, m := range tables {
		for _, c := range l.Columns {
			v := c.Default
			raw, given := m[last(c.Key)]
			if given {
				if v, ok = f.value(c.Spec, i, raw); !ok {
					continue
				}
			} else if c.Needed {
				f.missing(c.Spec, i, l.Key)
				continue
			}
			c.At(i).Keep(&f.project, v)
		}
		for _, k := range slices.Sorted(maps.Keys(m)) {
			if !slices.ContainsFunc(l.Columns, func(c project.Field) bool { return c.Key == l.Key+"."+k }) {
				f.unknown(l.Key+"."+k, i, suggest(k, columnKeys(l)))
			}
		}
	}
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
func (f *filler) value(s project.Spec, i int, raw any) (any, bool) {
	v, remedy := fromTOML(s, raw)
	if remedy != "" {
		f.bad(s.Key, i, foundRaw(raw), remedy)
		return nil, false
	}
	return v, true
}
