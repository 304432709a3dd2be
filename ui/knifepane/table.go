package knifepane

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/ui/form"
	"chape/ui/layout"
)

// The names of the columns where the full names have no room.
var shortNames = map[string]string{
	"thickness": "thick", "grind height": "grind",
}

func columnName(f project.Field) string {
	if s, ok := shortNames[f.Name]; ok {
		return s
	}
	return f.Name
}

// wordsWidth is how much of a column of words is shown where others need the
// room too.
const wordsWidth = 10

// columnWidths are what the columns of a table take at least, and with their words whole.
func (m *Model) columnWidths(list string) (all, full []int) {
	for _, r := range m.rows {
		if r.List != list || r.IsHeading() {
			continue
		}
		if all == nil {
			all, full = make([]int, len(r.Cells)), make([]int, len(r.Cells))
		}
		for j, text := range r.Texts {
			full[j] = max(full[j], ansi.StringWidth(text))
			all[j] = max(ansi.StringWidth(columnName(r.Cells[j])), min(wordsWidth, full[j]))
		}
	}
	return all, full
}

// tableWidth is what a table takes with all its columns, its words shortened.
func (m *Model) tableWidth(list string) int {
	all, _ := m.columnWidths(list)
	w := gutter
	for _, c := range all {
		w += c + 1
	}
	return w
}

// columns says which columns of a table are shown and how wide: the first one
// always, and as many others as there is room for round the one in hand. What
// room is left goes to the columns whose words are cut.
func (m *Model) columns(list string) (shown, widths []int) {
	all, full := m.columnWidths(list)
	if len(all) == 0 {
		return nil, nil
	}
	first := 1
	inHand := 0
	if m.row().List == list && !m.row().IsHeading() {
		inHand = m.column
	}
	for ; first < inHand && !fits(all, first, inHand, m.wide()); first++ {
	}
	room := m.wide() - gutter - all[0]
	shown, widths = []int{0}, []int{all[0]}
	for j := first; j < len(all) && room >= all[j]+1; j++ {
		room -= all[j] + 1
		shown, widths = append(shown, j), append(widths, all[j])
	}
	for n, j := range shown {
		more := max(0, min(full[j]-widths[n], room))
		widths[n] += more
		room -= more
	}
	return shown, widths
}

// fits tells whether columns from to last fit beside the first one.
func fits(all []int, from, last, width int) bool {
	sum := gutter + all[0]
	for j := from; j <= last; j++ {
		sum += 1 + all[j]
	}
	return sum <= width
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
		b.WriteString(rightAligned(columnName(cells[j]), widths[n]))
	}
	return m.Styles.Quiet.Render(b.String())
}
