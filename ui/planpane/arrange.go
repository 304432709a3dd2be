package planpane

import (
	"math"

	"chape/calc"
	"chape/calc/curve"
	"chape/ui/draw"
	"chape/ui/layout"
)

// From these sizes on the drawing page shows more at once.
const (
	twoColumns  = 100 // drawing and section at the left, figures and checks at the right
	sideBySide  = 60  // section beside the figures
	tallEnough  = 28
	tall        = 42
	pairFigures = 70 // figures in two columns
)

// shapes is how many ways of drawing there are to go round.
const shapes = 3

// places is where the parts of a page stand. The first row is the pages'
// names; an empty rectangle is not shown.
type places struct {
	head    int // rows, names and what is said about a stale plan
	drawing layout.Rect
	legend  layout.Rect
	section layout.Rect
	fixed   int // rows at the top of text that do not scroll
	text    layout.Rect
}

// arrange divides the pane, and lays the drawing where there is one.
func (m *Model) arrange() (places, draw.Sheet) {
	p := places{head: 1 + len(m.staleLines())}
	w, h := m.width, max(m.height-p.head, 0)
	p.text = layout.Rect{X: 0, Y: p.head, W: w, H: h}
	switch m.page {
	case Drawing:
		return m.arrangeDrawing(p, w, h)
	case Section:
		high := max(min(h-7, w/2), h/2)
		p.section = layout.Rect{X: 0, Y: p.head, W: w, H: high}
		p.text.Y, p.text.H = p.head+high, h-high
	case HalfWidths, Holes:
		p.fixed = min(2, h)
	}
	return p, draw.Sheet{}
}

// roomy says whether section, figures and checks stand beside the drawing.
func (m *Model) roomy() bool { return m.width >= sideBySide && m.height >= tallEnough }

func (m *Model) arrangeDrawing(p places, w, h int) (places, draw.Sheet) {
	two := w >= twoColumns && h >= tallEnough
	wide, most := w, h*9/20
	switch {
	case !m.roomy() && h >= tall:
		most = h * 6 / 10
	case !m.roomy():
		most = h * 11 / 20
	}
	if m.zoom > 0 {
		most = h * 7 / 10
	}
	if two {
		wide = w * 58 / 100
		most = h * 6 / 10
	}
	legend := draw.LegendRows(wide)
	if h < 8 {
		legend = 0
	}
	sheet, rows := m.lay(wide, max(most-legend, min(h, 3)))
	p.drawing = layout.Rect{X: 0, Y: p.head, W: wide, H: rows}
	p.legend = layout.Rect{X: 0, Y: p.head + rows, W: wide, H: legend}
	used := rows + legend
	if two {
		p.section = layout.Rect{X: 0, Y: p.head + used, W: wide, H: h - used}
		p.text = layout.Rect{X: wide + 2, Y: p.head, W: w - wide - 2, H: h}
		return p, sheet
	}
	p.text.Y, p.text.H = p.head+used, h-used
	return p, sheet
}

// lay fits the shape that suits into w×most cells and returns the rows it
// wants. The half is drawn where the whole would be much smaller.
func (m *Model) lay(w, most int) (draw.Sheet, int) {
	cust := m.snap.Project.Customer
	right := calc.BackIsRight(cust.Hand, cust.Edge, calc.GrainUp)
	put := func(s draw.Shape, rows int) draw.Sheet {
		m.c.Reset(w, rows, m.glyphs)
		return draw.Lay(m.c, m.glyphs, m.snap.Plan, s, right)
	}
	order := []draw.Shape{draw.Whole, draw.Half, draw.Closed}
	whole, half := put(draw.Whole, most), put(draw.Half, most)
	if whole.Fitted() < 0.7*half.Fitted() {
		order[0], order[1] = order[1], order[0]
	}
	shape := order[m.shape%shapes]
	sheet, rows := put(shape, most), most
	if m.zoom == 0 {
		rows = max(1, min(most, sheet.Rows()))
	}
	sheet = put(shape, rows)
	return sheet.Closer(m.c, math.Pow(1.5, float64(m.zoom)), m.middle(sheet)), rows
}

// middle is the place to look at when zoomed: where the drawing was moved to,
// else the stitch line at the chosen mark; past the mouth the handle or the tab,
// and without a tab the mouth.
func (m *Model) middle(s draw.Sheet) curve.Vec {
	if m.centre != nil {
		return *m.centre
	}
	mark, i, ok := m.mark()
	if !ok {
		return curve.Vec{}
	}
	plan := m.snap.Plan
	at, mouth, in := mark.At, plan.Input.Sheath.Mouth.MM(), plan.Input
	switch {
	case s.Shape == draw.Closed && at > mouth:
		return curve.Vec{X: at, Y: in.Knife.Stations[i].Bottom.MM()}
	case s.Shape == draw.Closed:
		return curve.Vec{X: at, Y: plan.Plane.Stitch.Height(at)}
	case at > mouth && plan.Body.TabLength > 0:
		return curve.Vec{X: min(at, plan.Loop.Start+plan.Body.TabLength), Y: plan.Loop.Offset + in.Belt.Tab.MM()/2}
	}
	at = min(at, mouth)
	return curve.Vec{X: at, Y: plan.Flat.Stitch.Height(at)}
}

// pageful is how far a page up or down scrolls.
func (m *Model) pageful() int {
	if m.snap.Plan == nil {
		return 1
	}
	p, _ := m.arrange()
	return max(1, p.text.H-p.fixed-1)
}

// clamp keeps the text in sight.
func (m *Model) clamp() {
	at := &m.scroll[m.page]
	if *at <= 0 {
		*at = 0
		return
	}
	most := 0
	if m.snap.Plan != nil {
		p, sheet := m.arrange()
		most = len(m.text(p, sheet)) - p.text.H
	}
	*at = max(0, min(*at, most))
}
