package planpane

import (
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"chape/calc/length"
	"chape/project/report"
	"chape/ui/layout"
)

// halfWidths is the table of offsets from the fold, and below it that of the mouth's
// curve; its first two lines are the columns' names.
func (m *Model) halfWidths(w int) []string {
	t := report.HalfWidths(m.snap.Plan, m.snap.Unit)
	rows := m.tableLines(t, w, 1, nil)
	rows = append(rows, "")
	rows = append(rows, m.wrapped(inUnit(m.snap.Unit)+t.Note, w, m.pens[quietPen])...)
	t = report.MouthCurve(m.snap.Plan, m.snap.Unit)
	if len(t.Rows) == 0 {
		return rows
	}
	rows = append(rows, "", m.Styles.Heading.Render("mouth"))
	rows = append(rows, m.tableLines(t, w, 1, nil)...)
	return append(append(rows, ""), m.wrapped(t.Note, w, m.pens[quietPen])...)
}

// holes is every hole, with the loop's figures and how to step off below.
func (m *Model) holes(w int) []string {
	p, u := m.snap.Plan, m.snap.Unit
	t := report.Holes(p, u)
	tenths := report.Tenths(len(t.Rows))
	out := m.tableLines(t, w, max(1, min(3, (w+stripGap)/(holesWidth+stripGap))), func(i int) bool {
		_, found := slices.BinarySearch(tenths, i)
		return found
	})
	out = append(out, "")
	add := func(words string) { out = append(out, m.wrapped(words, w, m.pens[quietPen])...) }
	add(inUnit(u) + t.Note)
	for _, words := range report.Dividers() {
		add(words)
	}
	if loop := report.LoopFigures(p, u); len(loop) > 0 {
		out = append(out, "", m.Styles.Heading.Render("belt loop"))
		out = append(out, m.figureLines(loop, w, func(report.Row) bool { return true })...)
	}
	if extra := report.Extras(m.snap.Project, p, u); len(extra) > 0 {
		out = append(out, "", m.Styles.Heading.Render("fold, drain, strap, corrections"))
		out = append(out, m.figureLines(extra, w, func(report.Row) bool { return true })...)
	}
	return out
}

// inUnit begins the words below a table.
func inUnit(u length.Unit) string {
	if u == length.Inches {
		return "in inches, "
	}
	return "in millimetres, "
}

// What one strip of the holes takes, and what is left between strips.
const (
	holesWidth = 39
	stripGap   = 4
)

// column is one column of a table: its name on two lines, and how wide the
// figures are before and after the decimal point.
type column struct {
	first, second string
	whole, part   int
	width         int
}

func columnsOf(t report.Table) []column {
	cols := make([]column, len(t.Columns))
	for i, name := range t.Columns {
		c := &cols[i]
		c.first, c.second, _ = strings.Cut(name, " ")
		for _, row := range t.Rows {
			a, b := report.SplitFigure(row[i])
			c.whole, c.part = max(c.whole, ansi.StringWidth(a)), max(c.part, ansi.StringWidth(b))
		}
		c.width = max(len(c.first), len(c.second), c.whole+c.part)
	}
	return cols
}

// tableLines sets a table on the decimal point, in so many strips side by
// side; rows that stand out are marked and bold. The first two lines are the
// columns' names.
func (m *Model) tableLines(t report.Table, w, strips int, stands func(i int) bool) []string {
	cols := columnsOf(t)
	var first, second strings.Builder
	wide := 2
	for _, c := range cols {
		first.WriteString("  " + strings.Repeat(" ", c.width-len(c.first)) + c.first)
		second.WriteString("  " + strings.Repeat(" ", c.width-len(c.second)) + c.second)
		wide += c.width + 2
	}
	per := (len(t.Rows) + strips - 1) / strips
	var blocks [][]string
	quiet, strong := m.pens[quietPen], m.pens[figurePen]
	for s := range strips {
		block := []string{quiet.Open + first.String() + quiet.Close, quiet.Open + second.String() + quiet.Close}
		for i := s * per; i < min((s+1)*per, len(t.Rows)); i++ {
			line := tableRow(t.Rows[i], cols)
			if stands != nil && stands(i) {
				line = strong.Open + ">" + line[1:] + strong.Close
			}
			block = append(block, line)
		}
		room := wide + stripGap - 2
		if s == strips-1 {
			room = max(0, min(w-room*s, wide))
		}
		blocks = append(blocks, layout.Fit(block, room, per+2))
	}
	return layout.Beside(blocks...)
}

func tableRow(cells []string, cols []column) string {
	var b strings.Builder
	for i, c := range cols {
		a, part := report.SplitFigure(cells[i])
		if strings.Trim(cells[i], "0123456789./-– ") != "" { // a word
			b.WriteString("  " + cells[i] + strings.Repeat(" ", max(0, c.width-ansi.StringWidth(cells[i]))))
			continue
		}
		b.WriteString("  " + strings.Repeat(" ", c.width-c.whole-c.part))
		b.WriteString(strings.Repeat(" ", c.whole-ansi.StringWidth(a)) + a)
		b.WriteString(part + strings.Repeat(" ", c.part-ansi.StringWidth(part)))
	}
	return b.String()
}
