package workbench

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/book"
)

// mouse hands a click or the wheel to the page under it and takes that in hand.
func (m *Model) mouse(e tea.MouseMsg) tea.Cmd {
	pressed := e.Action == tea.MouseActionPress
	if pressed && m.alarm.Ringing() && !tea.MouseEvent(e).IsWheel() {
		m.alarm.Silence()
		cmd, _ := m.tell(m.book.InHand(), act.Silenced{})
		return cmd
	}
	switch {
	case m.unseen() || m.panel != nil || !pressed && m.mode != bench:
		return nil
	case m.book.Cover != nil:
		return m.pageMouse(m.book.Cover, e)
	}
	for i, r := range m.lay.Panes {
		if r.Contains(e.X, e.Y) {
			return m.paneMouse(m.book.Standing[i], e)
		}
	}
	return nil
}

func (m *Model) paneMouse(l *book.Leaf, e tea.MouseMsg) tea.Cmd {
	wheel := tea.MouseEvent(e).IsWheel()
	if !wheel && e.Button != tea.MouseButtonLeft {
		return nil
	}
	var cmd tea.Cmd
	if !wheel && l != m.book.InHand() {
		if cmd = m.takeUp(l); l != m.book.InHand() {
			return cmd // a question has to be answered first
		}
	}
	return tea.Batch(cmd, m.pageMouse(l, e))
}

// pageMouse hands a page an event in cells of its inside.
func (m *Model) pageMouse(l *book.Leaf, e tea.MouseMsg) tea.Cmd {
	if l.Room != act.Screen {
		in := m.rect(l).Inner()
		e.X, e.Y = e.X-in.X, e.Y-in.Y
	}
	cmd, _ := m.tell(l, e)
	return cmd
}
