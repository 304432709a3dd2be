package backpage

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"chape/project/lookback"
	"chape/ui/layout"
	"chape/ui/term"
)

// View draws exactly the size that was set.
func (m *Model) View() string {
	if m.w == 0 || m.h == 0 {
		return ""
	}
	t, st := m.table(), m.o.Styles
	cols := m.widths(t)
	lines := []string{st.Quiet.Render(layout.Line(m.head(), m.w)), st.Heading.Render(row(t.Head, cols, m.w))}
	from, to := m.list.Shown()
	for i := from; i < to; i++ {
		style := st.Text
		if i == m.list.At {
			style = st.Chosen
		}
		lines = append(lines, style.Render(row(t.Rows[i], cols, m.w)))
	}
	lines = layout.Fit(lines, m.w, max(0, m.h-len(m.foot(t))))
	return strings.Join(layout.Fit(append(lines, m.foot(t)...), m.w, m.h), "\n")
}

func (m *Model) table() lookback.Table {
	if m.steps {
		return lookback.StepRows(m.all)
	}
	return lookback.Sheaths(m.all, m.shop, m.unit)
}

// scroll keeps the chosen row there and in sight.
func (m *Model) scroll() {
	t := m.table()
	m.list.Set(len(t.Rows), m.h-2-len(m.foot(t)))
}

func (m *Model) head() string {
	switch {
	case m.err != nil:
		return "! " + term.Plain(m.err.Error())
	case m.left > 0:
		return fmt.Sprintf("%d to read", m.left)
	case len(m.all) == 0:
		return "no projects on the shelf yet"
	case m.steps:
		return "minutes counted at the bench, all sheaths together"
	}
	return "x is finished; cost so far is by the minutes spent, at today's prices"
}

// foot is the sum, and what is wrong with the chosen sheath.
func (m *Model) foot(t lookback.Table) []string {
	if m.steps || len(t.Total) == 0 || m.h < 6 {
		return nil
	}
	out := []string{m.o.Styles.Strong.Render(row(t.Total, m.widths(t), m.w)), m.o.Styles.Quiet.Render(layout.Line("last line: minutes of all; from quoted on, of those finished", m.w))}
	if at := m.list.At; at < len(m.all) && m.all[at].Err != "" {
		out[1] = m.o.Styles.Warning(term.Plain(m.all[at].Err))
	}
	return out
}

// leastName is what the first column is never narrower than.
const leastName = 18

// widths are those of the columns that have room, the first one taking what is left; the
// last columns go first.
func (m *Model) widths(t lookback.Table) []int {
	w := make([]int, len(t.Head))
	for _, r := range append([][]string{t.Head, t.Total}, t.Rows...) {
		for i, cell := range r {
			w[i] = max(w[i], ansi.StringWidth(cell))
		}
	}
	room := m.w - leastName
	n := 1
	for n < len(w) && room >= w[n]+2 {
		room -= w[n] + 2
		n++
	}
	w = w[:n]
	w[0] = min(m.w, leastName+room)
	return w
}

// row is a line of the table: the name to the left, figures to the right.
func row(cells []string, widths []int, w int) string {
	var b strings.Builder
	for i, width := range widths {
		if i >= len(cells) {
			break
		}
		text := term.Plain(cells[i])
		if i == 0 {
			b.WriteString(layout.Line(text, width))
			continue
		}
		b.WriteString(strings.Repeat(" ", max(0, width-ansi.StringWidth(text))+2) + text)
	}
	return layout.Line(b.String(), w)
}
