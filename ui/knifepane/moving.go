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
	away := f.Key == sourceKey && v == project.FromOutline.String() && m.snap.Project.MarksDiffer()
	if away && !m.again {
		m.warned = true
		return act.Send(act.Say{Text: marksAtRisk, Warn: true})
	}
	commit := act.Send(act.Commit{Label: f.NameIn(m.snap.Project) + " " + f.Text(v, m.snap.Project), Do: func(p *project.Project) error {
		if !inReach(f, *p) {
			return errGone
		}
		return f.Set(p, v)
	}})
	if away {
		return tea.Batch(commit, act.Send(act.Say{Text: "your measured marks are put away: u brings them back"}))
	}
	return commit
}

const marksAtRisk = "the outline's marks would take the place of those you measured: the same key again does it, any other leaves them"

// Click takes a click on a cell of the pane, counted from its upper left.
func (m *Model) Click(x, y int) tea.Cmd {
	m.warned = false
	i, ok := m.rowAt(y)
	if !ok || m.rows[i].isHeading() {
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
