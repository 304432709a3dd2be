package workbench

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/panel"
	"chape/ui/part"
)

// mode is who has the keyboard: one at a time.
type mode uint8

const (
	browsing mode = iota // the pane in hand, and the keys of the root
	editing              // a text that is open in the pane in hand
	asking               // a question
	helping              // the list of keys
	printing             // the panel that asks how to print
	bench                // the bench view
)

// put puts a panel over the panes.
func (m *Model) put(md mode, p panel.Panel) {
	m.mode, m.panel = md, p
	r := m.overlay()
	p.SetSize(r.W, r.H)
}

// ask puts a question over the panes, in place of another panel; one that comes while
// the bench view is on waits until it is left.
func (m *Model) ask(q act.Question) {
	if m.book.InHand().Room == act.Screen {
		m.waiting = &q
		return
	}
	m.put(asking, panel.NewQuestion(q, m.panelStyle()))
}

// closed takes the panel away.
func (m *Model) closed() {
	m.panel = nil
	m.settleMode()
}

// settleMode tells which mode is on where no panel says so: a page may have opened a
// text, or closed it.
func (m *Model) settleMode() {
	l := m.book.InHand()
	if q := m.waiting; q != nil && l.Room != act.Screen {
		m.waiting = nil
		m.ask(*q)
	}
	switch {
	case m.panel != nil:
	case l.Room == act.Screen:
		m.mode = bench
	case act.Typing(l.Pane):
		m.mode = editing
	default:
		m.mode = browsing
	}
}

// panelKey hands a key to the panel.
func (m *Model) panelKey(p part.Press) tea.Cmd {
	out, done := m.panel.Take(p)
	if done {
		m.closed()
	}
	return m.do(out)
}

func (m *Model) panelStyle() panel.Style { return panel.Style{Styles: m.o.Styles, Edges: m.edges()} }

func (m *Model) edges() layout.Edges {
	st := m.o.Styles
	return layout.Edges{InHand: st.Edge, Plain: st.EdgePlain, Title: st.Heading, ASCII: m.o.ascii()}
}

// overlay is the room between head and foot.
func (m *Model) overlay() layout.Rect {
	y := m.lay.Holds.Y + m.lay.Holds.H
	return layout.Rect{X: 0, Y: y, W: m.width, H: max(0, m.height-y-1)}
}
