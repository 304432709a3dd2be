package form

import (
	"strings"

	"chape/calc/length"
	"chape/project"
	"chape/ui/term"
)

// fill gives the cells of a table their texts, in millimetres the decimal points of a column
// below each other.
func fill(rows []Row, p project.Project) {
	for i := range rows {
		for _, f := range rows[i].Cells {
			rows[i].Texts = append(rows[i].Texts, cellText(f, p))
		}
	}
	for j, f := range rows[0].Cells {
		if !Numeric(f) || p.Units == length.Inches { // fractions are set flush right
			continue
		}
		most := 0
		for _, r := range rows {
			most = max(most, decimals(r.Texts[j]))
		}
		for _, r := range rows {
			if r.Texts[j] != "" && r.Texts[j] != f.Auto {
				r.Texts[j] += strings.Repeat(" ", most-decimals(r.Texts[j]))
			}
		}
	}
}

// decimals is what stands behind the whole number, the point included.
func decimals(text string) int {
	if i := strings.IndexByte(text, '.'); i >= 0 {
		return len(text) - i
	}
	return 0
}

// cellText is one figure of a table, as the tool shows it that it is read off; one that was
// typed more finely, as it was typed.
func cellText(f project.Field, p project.Project) string {
	l, is := f.Get(p).(length.Length)
	switch {
	case is:
		return l.Typed(p.Units, f.Fine)
	case !f.Counts(p):
		return ""
	}
	return term.Plain(f.Show(p))
}
