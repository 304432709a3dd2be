package drypane

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"chape/ui/layout"
)

// leastRows is how many lines of the table are kept, its head among them.
const leastRows = 3

// View draws exactly the size that was set.
func (m *Model) View() string {
	if m.w == 0 || m.h == 0 {
		return ""
	}
	p := m.arrange()
	lines := append([]string(nil), p.head...)
	switch {
	case p.chart.Empty():
		lines = append(lines, layout.Fit(m.table(p.table.W), p.table.W, p.table.H)...)
	case p.table.Empty():
		lines = append(lines, m.drawing(p.chart.W, p.chart.H)...)
	case p.chart.X > 0:
		left := layout.Fit(m.table(p.table.W), p.chart.X, p.table.H)
		lines = append(lines, layout.Beside(left, m.drawing(p.chart.W, p.chart.H))...)
	default:
		lines = append(lines, layout.Fit(m.table(p.table.W), p.table.W, p.table.H)...)
		lines = append(lines, m.drawing(p.chart.W, p.chart.H)...)
	}
	return strings.Join(layout.Fit(append(lines, p.foot...), m.w, m.h), "\n")
}

// places is the page divided up.
type places struct {
	head, foot   []string
	table, chart layout.Rect
}

// arrange gives the words their lines and the rest to table and curve. Where
// room is short how the verdict was found goes first, then the room; the verdict, the
// caution and what is being typed stay.
func (m *Model) arrange() places {
	var p places
	for _, least := range []int{2, 1, 0} {
		p.head, p.foot = m.head(least), m.foot(least)
		if m.h-len(p.head)-len(p.foot) >= leastRows {
			break
		}
	}
	room := layout.Rect{Y: len(p.head), W: m.w, H: max(0, m.h-len(p.head)-len(p.foot))}
	p.table = room
	wide := m.tableWidth()
	switch {
	case m.w-wide-2 >= leastChartW && room.H >= leastChartH:
		p.table.W = wide
		p.chart = layout.Rect{X: wide + 2, Y: room.Y, W: m.w - wide - 2, H: room.H}
	case m.w >= leastChartW && room.H >= leastRows+2*leastChartH:
		p.table.H = min(len(m.rows)+1, room.H-leastChartH)
		p.table.H = max(leastRows, min(p.table.H, room.H/2))
		p.chart = layout.Rect{Y: room.Y + p.table.H, W: m.w, H: room.H - p.table.H}
	case m.curve && m.w >= leastChartW && room.H >= leastChartH:
		p.table, p.chart = layout.Rect{}, room
	}
	return p
}

// head is what the page is there for: when it will be dry. With 0 the verdict
// is cut to two lines.
func (m *Model) head(much int) []string {
	most := 4
	if much == 0 {
		most = 2
	}
	var out []string
	text, bad := m.verdict()
	if bad {
		out = layout.Paragraph("! "+text, m.w, most, m.Styles.Warn)
	} else {
		out = layout.Paragraph(text, m.w, most, m.Styles.Strong)
	}
	if text, bad := m.guess(); bad {
		out = append(out, layout.Paragraph("! "+text, m.w, 2, m.Styles.Warn)...)
	} else if much > 0 {
		out = append(out, layout.Paragraph(text, m.w, 2, m.Styles.Text)...)
	}
	if much > 0 {
		out = append(out, layout.Paragraph(m.next(), m.w, 2, m.Styles.Text)...)
	}
	if much > 1 {
		out = append(out, layout.Paragraph(m.how(), m.w, 3, m.Styles.Quiet)...)
	}
	return out
}

// foot is the room and the caution, or what is being typed.
func (m *Model) foot(much int) []string {
	var out []string
	if much > 0 && m.entry == nil {
		out = layout.Paragraph(m.roomText(), m.w, much, m.Styles.Quiet)
	}
	most := 3
	if much == 0 {
		most = 1
	}
	out = append(out, layout.Paragraph("! "+caution, m.w, most, m.Styles.Warn)...)
	if m.entry == nil {
		return out
	}
	return append(out, m.entry.Lines(m.w, m.Styles)...)
}

// columns are the widths of the table: number, when, grams before and behind the point.
func (m *Model) columns() (number, when, whole, part int) {
	number, when, whole = 1, len("when"), len("grams")-2
	for _, i := range m.rows {
		w := m.snap.Project.Weigh[i]
		a, b, _ := strings.Cut(figure(w.Grams), ".")
		when, whole, part = max(when, len(m.clock(w.When))), max(whole, len(a)), max(part, min(len(b), 3))
	}
	return len(figure(float64(len(m.rows)))), when, whole, part
}

// tableWidth is what the table takes where it has the room.
func (m *Model) tableWidth() int {
	number, when, whole, part := m.columns()
	return max(2+number+2+when+2+whole+1+part+2+len("earlier"), 30)
}

// table is the weighings, one line each, their figures aligned on the point.
func (m *Model) table(w int) []string {
	if len(m.rows) == 0 {
		return layout.Paragraph("Type the weight in grams, or let a scale type it, and press Enter. "+beforeKey+": the weight just before wetting, which makes the estimate better.", w, 8, m.Styles.Text)
	}
	number, when, whole, part := m.columns()
	lines := []string{m.Styles.Quiet.Render(fmt.Sprintf("  %*s  %-*s  %*s", number, "", when, "when", whole+2, "grams"))}
	rows := max(m.arrange().table.H-1, 1)
	for k := m.list.Top; k < len(m.rows) && k < m.list.Top+rows; k++ {
		g := m.snap.Project.Weigh[m.rows[k]]
		a, b, _ := strings.Cut(figure(g.Grams), ".")
		if b != "" {
			b = "." + b
		}
		lead, n := "  ", ""
		if k == m.list.At {
			lead = "> "
		}
		if first := len(m.rows) - len(m.dry.Rows); k >= first {
			n = figure(float64(k - first + 1))
		}
		line := fmt.Sprintf("%s%*s  %-*s  %*s%-*s  %s", lead, number, n, when, m.clock(g.When), whole, a, part+1, b, m.note(k))
		lines = append(lines, m.rowStyle(k).Render(layout.Line(line, w)))
	}
	return lines
}

func (m *Model) rowStyle(k int) lipgloss.Style {
	switch {
	case k == m.list.At:
		return m.Styles.Chosen
	case k < len(m.dry.Earlier):
		return m.Styles.Quiet
	}
	return m.Styles.Text
}
