package workbench

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/layout"
)

// takeUp takes a page in hand; the one before may have to be answered first, and stays.
func (m *Model) takeUp(next *leaf) tea.Cmd {
	old := m.inHand()
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
	if next.Room < act.Whole {
		m.cover, m.focus, m.standing[next.Room] = nil, layout.Pane(next.Room), next
	} else {
		m.cover = next
	}
	m.relayout()
	next.show(m.snapshot())
	taken, _ := m.tell(next, act.InHand{Is: true})
	m.stale()
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
	l := m.inHand()
	switch {
	case m.bare:
		m.message = act.Say{Text: "Enter opens a project, n begins one, q quits"}
		return nil
	case l.Back != "":
		return m.takeUp(m.page(l.Back))
	case l.Room < act.Whole:
		return m.takeUp(m.front(l.Room))
	}
	return m.takeUp(m.standing[m.focus])
}

// front is the page that stands in a room from the start.
func (m *Model) front(r act.Room) *leaf {
	for _, l := range m.pages {
		if l.Room == r {
			return l
		}
	}
	return nil
}

// tell hands a page a message and does what it answers. Stays: it has to be answered
// before another is taken in hand.
func (m *Model) tell(l *leaf, msg tea.Msg) (cmd tea.Cmd, stays bool) {
	pane, out := l.pane.Update(msg)
	l.pane, l.drawn = pane, nil
	for _, o := range out {
		if _, ok := o.(act.Stay); ok {
			stays = true
		}
	}
	return m.do(out), stays
}

// tellAll hands every page what no one else knows: what a command of one has brought.
func (m *Model) tellAll(msg tea.Msg) tea.Cmd {
	var all []tea.Cmd
	for _, l := range m.pages {
		cmd, _ := m.tell(l, msg)
		all = append(all, cmd)
	}
	return tea.Batch(all...)
}
