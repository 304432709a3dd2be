package file

import (
	"slices"
	"strings"

	"chape/project"
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
	if near(key, known) == "" {
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
	if k := near(key, known); k != "" {
		return "did you mean " + k + "? Change it or take it out"
	}
	return "take it out; known here are " + strings.Join(known, ", ")
}

// near is the known key that is at most two letters off; "" for none.
func near(key string, known []string) string {
	best, least := "", 3
	for _, k := range known {
		if d := edits(strings.ToLower(key), k); d < least && d < len(k) {
			best, least = k, d
		}
	}
	return best
}

// edits counts the letters to add, drop or change to make a into b.
func edits(a, b string) int {
	if len(a) > maxKey || len(b) > maxKey {
		return maxKey
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diagonal
			if a[i] != b[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
