package knifepane

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/ui/form"
	"chape/ui/layout"
)

// tableWidth is what a table takes with all its columns, its words shortened.
func (m *Model) tableWidth(list string) int { return gutter + form.ColumnsOf(m.rows, list).Least() }

// columns says which columns of a table are shown and how wide.
func (m *Model) columns(list string) (shown, widths []int) {
	inHand := 0
	if m.row().List == list && !m.row().IsHeading() {
		inHand = m.column
	}
	return form.ColumnsOf(m.rows, list).In(m.wide()-gutter, inHand)
}

// tableLine is one row of a table.
func (m *Model) tableLine(i int) string {
	r := m.rows[i]
	shown, widths := m.columns(r.List)
	var b strings.Builder
	b.WriteString(m.tableMark(r))
	for n, j := range shown {
		if n > 0 {
			b.WriteByte(' ')
		}
		inHand := i == m.line && j == m.column
		if inHand && m.edit != nil {
			b.WriteString(layout.Line(m.typed(widths[n]), widths[n]))
			continue
		}
		text := rightAligned(r.Texts[j], widths[n])
		if e := m.doubted(r.Cells[j]); e != nil {
			text = m.Styles.Warn.Render(rightAligned(e.Text()+"?", widths[n]))
		}
		switch {
		case inHand:
			text = m.Styles.Chosen.Render(text)
		case i == m.line:
			text = m.Styles.Strong.Render(text)
		}
		b.WriteString(text)
	}
	return b.String()
}

// tableMark points at the mark whose section is shown.
func (m *Model) tableMark(r form.Row) string {
	if r.List == "mark" && r.Index == m.snap.Mark {
		return m.Styles.Mark.Render(m.mark("›", ">"))
	}
	return strings.Repeat(" ", gutter)
}

func rightAligned(s string, w int) string {
	s = ansi.Truncate(s, w, "…")
	return strings.Repeat(" ", w-ansi.StringWidth(s)) + s
}

// headsLine is the row of names over a table.
func (m *Model) headsLine(list string, cells []project.Field) string {
	shown, widths := m.columns(list)
	var b strings.Builder
	b.WriteString(strings.Repeat(" ", gutter))
	for n, j := range shown {
		if n > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(rightAligned(form.ColumnName(cells[j]), widths[n]))
	}
	return m.Styles.Quiet.Render(b.String())
}
