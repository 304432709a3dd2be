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
	filled := p
	if err := filled.FillMarks(); err != nil {
		filled.Knife.Stations = nil
	}
	for i := range rows {
		for j, f := range rows[i].Cells {
			rows[i].Texts = append(rows[i].Texts, cellText(f, p, followed(f, j, p, filled)))
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
	star(rows, p)
}

// star has a * behind each thickness that was not measured.
func star(rows []Row, p project.Project) {
	for j, f := range rows[0].Cells {
		if f.Key != thickKey || len(p.Unmeasured()) == 0 {
			continue
		}
		for i := range rows {
			sign := " "
			if rows[i].Cells[j].IsUntouched(p) {
				sign = "*"
			}
			rows[i].Texts[j] += sign
		}
	}
}

const thickKey = "knife.station.thick"

// decimals is what stands behind the whole number, the point included.
func decimals(text string) int {
	if i := strings.IndexByte(text, '.'); i >= 0 {
		return len(text) - i
	}
	return 0
}

// followed tells whether a mark's figure, in a column, still is the one that the outline made:
// nobody has typed it.
func followed(f project.Field, column int, p, filled project.Project) bool {
	if f.Group != "marks" {
		return false
	}
	at := p.Knife.Stations[f.Index].At
	for i, s := range filled.Knife.Stations {
		if s.At == at && project.MarkFields(i)[column].Get(filled) == f.Get(p) {
			return true
		}
	}
	return false
}

// cellText is one figure of a table, as the tool shows it that it is read off; one that was
// typed more finely, as it was typed.
func cellText(f project.Field, p project.Project, computed bool) string {
	l, is := f.Get(p).(length.Length)
	switch {
	case is && computed:
		return l.Figure(p.Units, f.Fine)
	case is:
		return l.Typed(p.Units, f.Fine)
	case !f.Counts(p):
		return ""
	}
	return term.Plain(f.Show(p))
}
