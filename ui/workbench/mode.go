package workbench

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/panel"
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

// over puts a panel over the panes.
func (m *Model) over(md mode, p panel.Panel) {
	m.mode, m.panel = md, p
	r := m.overlay()
	p.SetSize(r.W, r.H)
}

// ask puts a question over the panes, in place of another panel; one that comes while
// the bench view is on waits until it is left.
func (m *Model) ask(q act.Question) {
	if m.mode == bench {
		m.waiting = &q
		return
	}
	m.over(asking, panel.NewQuestion(q, m.panelStyle()))
}

// closed ends the mode that was on.
func (m *Model) closed() {
	m.mode, m.panel = browsing, nil
	if q := m.waiting; q != nil {
		m.waiting = nil
		m.ask(*q)
	}
	m.settleMode()
}

// settleMode tells browsing from editing: a pane may have opened a text, or closed it.
func (m *Model) settleMode() {
	if m.mode > editing {
		return
	}
	m.mode = browsing
	if m.typingInHand() {
		m.mode = editing
	}
}

// asksFont tells whether it is still open how drawings are to be made.
func (m *Model) asksFont() bool {
	q, ok := m.panel.(*panel.Question)
	return ok && q.AboutFont()
}

// panelKey hands a key to the panel.
func (m *Model) panelKey(k tea.KeyMsg, reading bool) tea.Cmd {
	out, done := m.panel.Key(k, reading)
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
