package knifepane

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/ui/act"
)

// move goes by rows, over headings, and stops at either end.
func (m *Model) move(by int) []act.Msg {
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
func (m *Model) hop(by int) []act.Msg {
	m.line, m.column = m.findNumber(m.line, m.column, by)
	m.clamp()
	return m.chosen()
}

// findNumber looks for a number from a cell on; where there is none further on it
// gives the cell itself.
func (m *Model) findNumber(line, column, by int) (int, int) {
	i, j := line, column+by
	if line < 0 {
		i, j = 0, 0
	}
	for i >= 0 && i < len(m.rows) {
		for ; j >= 0 && j < len(m.rows[i].cells); j += by {
			if numeric(m.rows[i].cells[j]) && m.rows[i].cells[j].Counts(m.snap.Project) {
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

// chosen says which mark is in hand now, if that is another one.
func (m *Model) chosen() []act.Msg {
	r := m.row()
	if r.list != "mark" || r.index == m.snap.Mark {
		return nil
	}
	m.snap.Mark = r.index
	return []act.Msg{act.Choose{Mark: r.index}}
}

// sideways goes by columns in a table and through the choices of a field.
func (m *Model) sideways(by int) []act.Msg {
	if r := m.row(); len(r.cells) > 1 {
		m.column = max(0, min(m.column+by, len(r.cells)-1))
		return nil
	}
	return m.turnChoice(by)
}

// cycle commits the next choice.
func (m *Model) cycle(f project.Field, by int) []act.Msg {
	if !cycles(f) {
		return nil
	}
	v := next(f, m.snap.Project, by)
	away := f.Key == sourceKey && v == project.FromOutline.String() && m.snap.Project.MarksDiffer()
	if away && !m.meant {
		m.warned = true
		return []act.Msg{act.Say{Text: marksAtRisk, Warn: true}}
	}
	out := []act.Msg{act.Commit{Label: f.NameIn(m.snap.Project) + " " + f.Text(v, m.snap.Project), Do: func(p *project.Project) error {
		if !inReach(f, *p) {
			return errGone
		}
		return f.Set(p, v)
	}}}
	if away {
		out = append(out, act.Say{Text: "your measured marks are put away: u brings them back"})
	}
	return out
}

const marksAtRisk = "the outline's marks would take the place of those you measured: the same key again does it, any other leaves them"

// mouse takes a press: the wheel goes by rows, a click goes to a cell.
func (m *Model) mouse(e tea.MouseMsg) []act.Msg {
	defer m.scroll()
	switch {
	case e.Action != tea.MouseActionPress:
	case e.Button == tea.MouseButtonLeft:
		return m.click(e.X, e.Y)
	case m.edit != nil:
	case e.Button == tea.MouseButtonWheelUp:
		return m.move(-1)
	case e.Button == tea.MouseButtonWheelDown:
		return m.move(1)
	}
	return nil
}

// click takes a click on a cell of the pane, counted from its upper left.
func (m *Model) click(x, y int) []act.Msg {
	m.warned = false
	i, ok := m.rowAt(y)
	if !ok || m.rows[i].isHeading() {
		return nil
	}
	there := func() []act.Msg {
		m.line = i
		m.column = m.columnAt(x)
		m.clamp()
		return m.chosen()
	}
	if m.edit != nil {
		return m.leave(there)
	}
	return there()
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
