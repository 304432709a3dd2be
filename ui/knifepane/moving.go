package knifepane

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/ui/act"
)

// move goes by rows, over headings, and stops at either end.
func (m *Model) move(by int) tea.Cmd {
	step := 1
	if by < 0 {
		step = -1
	}
	for i, left := m.line+step, by*step; i >= 0 && i < len(m.rows) && left > 0; i += step {
		left--
		if !m.rows[i].isHeading() {
			m.line = i
		} else if left > 0 || by*step == 1 {
			left++ // a heading is no row
		}
	}
	m.clamp()
	return m.chosen()
}

// hop goes to the next number, or the one before, along the rows and columns.
func (m *Model) hop(by int) tea.Cmd {
	m.line, m.column = m.findNumber(m.line, m.column, by)
	m.clamp()
	return m.chosen()
}

// findNumber looks for a number from a cell on; where there is none further on it
// gives the cell itself. In a table only as many columns count as the kind of
// the mark has use for.
func (m *Model) findNumber(line, column, by int) (int, int) {
	i, j := line, column+by
	if line < 0 {
		i, j = 0, 0
	}
	for i >= 0 && i < len(m.rows) {
		for ; j >= 0 && j < len(m.rows[i].cells); j += by {
			if numeric(m.rows[i].cells[j]) && m.counts(m.rows[i].cells[j]) {
				return i, j
			}
		}
		i += by
		j = 0
		if by < 0 && i >= 0 {
			j = len(m.rows[i].cells) - 1
		}
	}
	return line, column
}

// counts leaves out the figures that a mark of its kind has no use for.
func (m *Model) counts(f project.Field) bool {
	if f.Group != "marks" || f.Index >= len(m.snap.Project.Knife.Stations) {
		return true
	}
	kind := m.snap.Project.Knife.Stations[f.Index].Kind.String()
	switch f.Key {
	case "knife.station.bevel":
		return kind == "blade"
	case "knife.station.round":
		return kind == "slab"
	}
	return true
}

// chosen says which mark is in hand now, if that is another one.
func (m *Model) chosen() tea.Cmd {
	r := m.row()
	if r.list != "mark" || r.index == m.snap.Mark {
		return nil
	}
	m.snap.Mark = r.index
	return act.Send(act.Choose{Mark: r.index})
}

// sideways goes by columns in a table and through the choices of a field.
func (m *Model) sideways(f project.Field, by int) tea.Cmd {
	if r := m.row(); len(r.cells) > 1 {
		m.column = max(0, min(m.column+by, len(r.cells)-1))
		return nil
	}
	return m.cycle(f, by)
}

// cycle commits the next choice.
func (m *Model) cycle(f project.Field, by int) tea.Cmd {
	if !cycles(f) {
		return nil
	}
	v := next(f, m.snap.Project, by)
	label := f.Name
	if word, ok := v.(string); ok {
		label += " " + word
	}
	return act.Send(act.Commit{Label: label, Do: func(p *project.Project) error {
		if !inReach(f, *p) {
			return errGone
		}
		return f.Set(p, v)
	}})
}

// Click takes a click on a cell of the pane, counted from its upper left.
func (m *Model) Click(x, y int) tea.Cmd {
	i := m.top + y
	if y < 0 || y >= m.body() || i >= len(m.rows) || m.rows[i].isHeading() {
		return nil
	}
	go_ := func() tea.Cmd {
		m.line = i
		m.column = m.columnAt(x)
		m.clamp()
		return m.chosen()
	}
	if m.edit != nil {
		return m.leave(go_)
	}
	return go_()
}

// Wheel scrolls by rows.
func (m *Model) Wheel(by int) tea.Cmd {
	if m.edit != nil {
		return nil
	}
	return m.move(by)
}

// columnAt is the column of a table under a cell of the screen.
func (m *Model) columnAt(x int) int {
	r := m.rows[m.line]
	if len(r.cells) < 2 {
		return 0
	}
	shown, widths := m.columns(r.list)
	right := gutter
	for n, j := range shown {
		right += widths[n]
		if x < right+1 {
			return j
		}
		right++
	}
	return m.column
}
