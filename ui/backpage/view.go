package backpage

import (
	"fmt"
	"slices"
	"strings"

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
	lines := []string{st.Quiet.Render(layout.Line(m.head(), m.w))}
	if hidden := m.hidden(t, len(cols)); hidden != "" {
		lines = append(lines, st.Quiet.Render(layout.Line(hidden, m.w)))
	}
	lines = append(lines, st.Heading.Render(m.row(t.Head, cols)))
	from, to := m.list.Shown()
	for i := from; i < to; i++ {
		style := st.Text
		if i == m.list.At {
			style = st.Chosen
		}
		lines = append(lines, style.Render(m.row(t.Rows[i], cols)))
	}
	foot := m.foot(t)
	lines = layout.Fit(lines, m.w, max(0, m.h-len(foot)))
	return strings.Join(layout.Fit(append(lines, foot...), m.w, m.h), "\n")
}

// table is the one that is shown, without the columns that it is turned past.
func (m *Model) table() lookback.Table {
	t := lookback.Sheaths(m.all, m.shop, m.unit)
	if m.steps {
		t = lookback.StepRows(m.all)
	}
	for _, row := range m.cells(&t) {
		if len(*row) > m.past {
			*row = slices.Delete(*row, 1, 1+m.past)
		}
	}
	return t
}

// cells are all rows of a table, made safe to be shown.
func (m *Model) cells(t *lookback.Table) []*[]string {
	all := []*[]string{&t.Head, &t.Total}
	for i := range t.Rows {
		all = append(all, &t.Rows[i])
	}
	for _, row := range all {
		for i := range *row {
			(*row)[i] = term.Plain((*row)[i])
		}
	}
	return all
}

// turn shows the columns further on, as far as there are any.
func (m *Model) turn(by int) {
	if t := m.table(); by < 0 || len(m.widths(t)) < len(t.Head) {
		m.past = max(0, m.past+by)
	}
}

// hidden names the columns that have no room, and how they are seen; "": all have.
func (m *Model) hidden(t lookback.Table, shown int) string {
	var out []string
	left, right := "← ", "→ "
	if m.ascii {
		left, right = "Left: ", "Right: "
	}
	if m.past > 0 {
		out = append(out, left+"the columns before")
	}
	if shown < len(t.Head) {
		out = append(out, right+strings.Join(t.Head[shown:], ", "))
	}
	return strings.Join(out, "  ")
}

// scroll keeps the chosen row there and in sight.
func (m *Model) scroll() {
	t := m.table()
	above := 2
	if m.hidden(t, len(m.widths(t))) != "" {
		above++
	}
	m.list.Set(len(t.Rows), m.h-above-len(m.foot(t)))
}

func (m *Model) head() string {
	switch {
	case m.err != nil:
		return "! " + term.Plain(m.err.Error())
	case m.shop.Broken != "":
		return "! " + term.Plain(m.shop.Broken)
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
	out := []string{m.o.Styles.Strong.Render(m.row(t.Total, m.widths(t))), m.o.Styles.Quiet.Render(layout.Line("last line: minutes of all; from quoted on, of those finished", m.w))}
	if at := m.list.At; at < len(m.all) && m.all[at].Err != "" {
		out[1] = m.o.Styles.Warning(term.Plain(m.all[at].Err))
	}
	return out
}

// leastName is what the first column is never narrower than.
const leastName = 18

func (m *Model) widths(t lookback.Table) []int {
	return layout.Columns(append([][]string{t.Head, t.Total}, t.Rows...), m.w, leastName)
}

// row is a line of the table, as wide as the page.
func (m *Model) row(cells []string, widths []int) string {
	return layout.Line(layout.Row(cells, widths), m.w)
}
