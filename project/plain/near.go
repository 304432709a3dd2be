package plain

import (
	"strings"
)

// Near finds the one of some names that a mistyped word comes closest to: a letter
// in four may be wrong, and one at least. "" where none is near.
func Near(word string, names []string) string {
	const longest = 60 // letters; nobody mistypes more, and the search is square
	best, least := "", len(word)+1
	for _, name := range names {
		if len(word) > longest || len(name) > longest {
			continue
		}
		d := distance(strings.ToLower(word), strings.ToLower(name))
		if d < least && d < len(name) && d <= max(1, len(name)/4) {
			best, least = name, d
		}
	}
	return best
}

// distance counts the single letters to add, drop, change or swap with their
// neighbour that turn a into b (optimal string alignment).
func distance(a, b string) int {
	s, t := []rune(a), []rune(b)
	d := make([][]int, len(s)+1)
	for i := range d {
		d[i] = make([]int, len(t)+1)
		d[i][0] = i
	}
	for j := range d[0] {
		d[0][j] = j
	}
	for i := 1; i <= len(s); i++ {
		for j := 1; j <= len(t); j++ {
			change := 1
			if s[i-1] == t[j-1] {
				change = 0
			}
			d[i][j] = min(d[i-1][j]+1, d[i][j-1]+1, d[i-1][j-1]+change)
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				d[i][j] = min(d[i][j], d[i-2][j-2]+1)
			}
		}
	}
	return d[len(s)][len(t)]
}
