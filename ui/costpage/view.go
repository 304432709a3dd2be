package costpage

import (
	"strings"

	"chape/project/plain"
	"chape/ui/layout"
)

// wide is from where price and minutes stand side by side, with a gap between them.
const wide, gap = 120, 3

// View draws exactly the size that was set.
func (m *Model) View() string {
	if m.w == 0 || m.h == 0 {
		return ""
	}
	head, foot := m.head(), m.foot()
	room := max(0, m.h-len(head)-len(foot))
	var blocks [][]string
	for _, c := range m.columns() {
		blocks = append(blocks, layout.Fit(m.from(c, room), c.w, room))
	}
	if len(blocks) == 2 {
		between := layout.Fit(nil, gap, room)
		blocks = [][]string{blocks[0], between, blocks[1]}
	}
	lines := append(append(head, layout.Beside(blocks...)...), foot...)
	return strings.Join(layout.Fit(lines, m.w, m.h), "\n")
}

// column is a text and the cells it may fill.
type column struct {
	lines []string
	w     int
}

// columns are those that have room: the price with the quotes, and the minutes.
func (m *Model) columns() []column {
	if m.w >= wide {
		w := (m.w - gap) * 11 / 20
		return []column{{m.money(w), w}, {m.minutes(m.w - gap - w), m.w - gap - w}}
	}
	if m.hours {
		return []column{{m.minutes(m.w), m.w}}
	}
	return []column{{m.money(m.w), m.w}}
}

// from is what of a column is in sight; the last line says where more follows.
func (m *Model) from(c column, room int) []string {
	top := max(0, min(m.top, len(c.lines)-room))
	out := c.lines[top:]
	if len(out) > room && room > 0 {
		more := plain.Many(len(out)-room+1, "more line") + ": PgDn"
		out = append(append([]string(nil), out[:room-1]...), m.o.Styles.Quiet.Render(layout.Ends("", more, c.w)))
	}
	return out
}

// roll moves the text by so many lines, as far as there are any.
func (m *Model) roll(by int) {
	room := m.h - len(m.head()) - len(m.foot())
	most := 0
	for _, c := range m.columns() {
		most = max(most, len(c.lines)-room)
	}
	m.top = max(0, min(m.top+by, most))
}

// head is what the page is there for: the price, what was quoted, when it can be ready.
func (m *Model) head() []string {
	if m.snap.Shop.Broken != "" {
		return layout.Paragraph(m.verdict(), m.w, 4, m.o.Styles.Warn)
	}
	out := layout.Paragraph(m.verdict(), m.w, 2, m.o.Styles.Strong)
	style, text := m.o.Styles.Text, m.ready.Text
	if text != "" && !m.snap.Shop.Week.Any() && m.o.KeepWeek != nil {
		text = "when it can be ready: " + weekKey + " asks for your hours at the bench"
	}
	if m.ready.Short {
		style, text = m.o.Styles.Warn, "! "+text
	}
	out = append(out, layout.Paragraph(text, m.w, 2, style)...)
	if m.h < 12 {
		return out
	}
	return append(out, layout.Paragraph(m.ready.Lacks, m.w, 2, m.o.Styles.Quiet)...)
}

// foot is what is being typed.
func (m *Model) foot() []string {
	if m.entry == nil {
		return nil
	}
	return m.entry.Lines(m.w, m.o.Styles)
}
