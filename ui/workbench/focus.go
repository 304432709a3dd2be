package workbench

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/book"
	"chape/ui/layout"
)

// takeUp takes a page in hand; the one before may have to be answered first, and stays.
func (m *Model) takeUp(next *book.Leaf) tea.Cmd {
	old := m.book.InHand()
	if next == nil || next == old {
		return nil
	}
	if next.Room == act.Screen {
		if why := layout.Bench(m.width, m.height); why != "" {
			m.message = act.Say{Text: "the bench view " + why, Warn: true}
			return nil
		}
	}
	left, stays := m.tell(old, act.InHand{Is: false})
	if stays {
		return left
	}
	m.book.Take(next)
	m.relayout()
	next.Show(m.snapshot())
	taken, _ := m.tell(next, act.InHand{Is: true})
	m.book.Stale()
	m.changed = true
	m.said()
	m.settleMode()
	return tea.Batch(left, taken)
}

// said takes away a message that lasts: the work has gone on.
func (m *Model) said() {
	if m.message.Lasts {
		m.message = act.Say{}
	}
}

// leave goes back from the page in hand.
func (m *Model) leave() tea.Cmd {
	if m.bare {
		m.message = act.Say{Text: "Enter opens a project, n begins one, q quits"}
		return nil
	}
	return m.takeUp(m.book.Behind())
}

// tell hands a page a message and does what it answers. Stays: it has to be answered
// before another is taken in hand.
func (m *Model) tell(l *book.Leaf, msg tea.Msg) (cmd tea.Cmd, stays bool) {
	out, stays := l.Tell(msg)
	return m.do(out), stays
}

// tellAll hands every page what no one else knows: what a command of one has brought.
func (m *Model) tellAll(msg tea.Msg) tea.Cmd {
	var all []tea.Cmd
	for _, l := range m.book.Leaves {
		cmd, _ := m.tell(l, msg)
		all = append(all, cmd)
	}
	return tea.Batch(all...)
}
