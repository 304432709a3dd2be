package file

import (
	"slices"
	"strings"

	"chape/project"
	"chape/project/plain"
)

// isTable tells whether a key names a table that stands once.
func (f *filler) isTable(key string) bool {
	return slices.ContainsFunc(f.slots, func(s slot) bool { return strings.HasPrefix(s.Key, key+".") })
}

// keys are the last parts of the keys and tables that may stand in a table.
func (f *filler) keys(table string) []string {
	var out []string
	add := func(key string) {
		rest, inside := strings.CutPrefix(key, table+".")
		if table == "" {
			rest, inside = key, true
		}
		if k, _, _ := strings.Cut(rest, "."); inside && !slices.Contains(out, k) {
			out = append(out, k)
		}
	}
	if table == "" {
		out = append(out, f.known...)
	}
	for _, s := range f.slots {
		add(s.Key)
	}
	for _, l := range f.lists {
		add(l.Key)
	}
	return out
}

func columnKeys(l project.List) []string {
	var out []string
	for _, c := range l.Columns {
		out = append(out, last(c.Key))
	}
	return out
}

// suggest says what may have been meant by an unknown key of a table: one of those known
// there, or one that strayed from another table.
func (f *filler) suggest(key, table string) string {
	known := f.keys(table)
	if plain.Near(key, known) == "" {
		for _, s := range f.slots {
			if last(s.Key) == key && parent(s.Key) != "" {
				return key + " belongs in [" + parent(s.Key) + "]: move it or take it out"
			}
		}
	}
	return suggest(key, known)
}

// suggest says which of the known keys may have been meant.
func suggest(key string, known []string) string {
	if k := plain.Near(key, known); k != "" {
		return "did you mean " + k + "? Change it or take it out"
	}
	return "take it out; known here are " + strings.Join(known, ", ")
}
