package project

import (
	"strings"
)

// scalarKeys are the last parts of the keys and tables that stand in a table.
func scalarKeys(table string) []string {
	var out []string
	add := func(key string) {
		if parent(key) == table {
			out = append(out, last(key))
		}
	}
	if table == "" {
		out = append(out, "format", "fit", "step", "weigh", "customer", "knife", "sheath", "belt", "stitch", "room")
	}
	for _, c := range scalars {
		add(c.Key)
	}
	if table == "knife" {
		out = append(out, "outline", "station")
	}
	return out
}

func keysOf[T any](cs []column[T]) []string {
	var out []string
	for _, c := range cs {
		out = append(out, last(c.Key))
	}
	return out
}

// suggest says what may have been meant by an unknown key: one of those known
// where it stands or, if it may have strayed there, one of another table.
func suggest(key string, known []string, strayed bool) string {
	best, least := "", 3
	for _, k := range known {
		if d := edits(strings.ToLower(key), k); d < least && d < len(k) {
			best, least = k, d
		}
	}
	if best != "" {
		return "did you mean " + best + "? Mend it or take it out"
	}
	for _, c := range scalars {
		if strayed && last(c.Key) == key {
			return key + " belongs in [" + parent(c.Key) + "]: move it or take it out"
		}
	}
	return "take it out; known here are " + strings.Join(known, ", ")
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
