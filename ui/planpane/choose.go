package planpane

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/draw"
)

// choose asks for another mark.
func (m *Model) choose(mark int) []act.Msg {
	n := len(m.snap.Project.Knife.Stations)
	mark = max(0, min(mark, n-1))
	if n == 0 || mark == m.snap.Mark {
		return nil
	}
	m.centre = nil
	return []act.Msg{act.Choose{Mark: mark}}
}

// mouse scrolls by the wheel; a press on a page's name turns to it, one on
// the drawing chooses the nearest mark.
func (m *Model) mouse(msg tea.MouseMsg) []act.Msg {
	switch {
	case msg.Button == tea.MouseButtonWheelDown:
		m.scroll[m.page] += wheel
	case msg.Button == tea.MouseButtonWheelUp:
		m.scroll[m.page] -= wheel
	case msg.Button != tea.MouseButtonLeft || msg.Action != tea.MouseActionPress:
		return nil
	case msg.Y == 0:
		if p, ok := m.pageAt(msg.X); ok {
			m.page = p
		}
	case m.snap.Plan != nil && m.page == Drawing:
		lay, sheet := m.arrange()
		if lay.drawing.Contains(msg.X, msg.Y) {
			return m.choose(m.nearest(sheet.At(msg.X-lay.drawing.X, msg.Y-lay.drawing.Y).X))
		}
		if m.onFine(msg.X, msg.Y, lay, sheet) {
			m.openChecks()
		}
	}
	m.clamp()
	return nil
}

// onFine tells whether the line that counts what is fine stands at a cell.
func (m *Model) onFine(x, y int, lay places, sheet draw.Sheet) bool {
	fine := m.fineLine()
	if len(fine) == 0 || !lay.text.Contains(x, y) {
		return false
	}
	shown, _ := m.scrolled(m.text(lay, sheet), lay)
	at := y - lay.text.Y
	return at < len(shown) && shown[at] == fine[0]
}

// wheel is how many lines one notch of the wheel scrolls.
const wheel = 3

// nearest is the mark nearest to a place along the fold, mm. Of a pair, as at
// a step, it is the other one when the first is chosen already.
func (m *Model) nearest(x float64) int {
	best, least := m.snap.Mark, -1.0
	for i, s := range m.snap.Project.Knife.Stations {
		d := max(s.At.MM()-x, x-s.At.MM())
		if least < 0 || d < least || d == least && best == m.snap.Mark {
			best, least = i, d
		}
	}
	return best
}

// mark is the chosen mark of the plan that is shown, and its number from 0.
func (m *Model) mark() (draw.Mark, int, bool) {
	s := m.snap.Plan.Input.Knife.Stations
	if len(s) == 0 {
		return draw.Mark{}, 0, false
	}
	i := max(0, min(m.snap.Mark, len(s)-1))
	return draw.Mark{At: s[i].At.MM(), Label: number(i + 1)}, i, true
}
