package draw

import (
	"chape/calc"
	"chape/calc/curve"
	"chape/ui/canvas"
	"chape/ui/term/ink"
)

// Measure is one measure as it is marked on a drawing: from one end to the other, or
// round a hollow.
type Measure struct {
	View   View
	At     float64   // of a section: mm from the point
	A, B   curve.Vec // its ends in the drawing's own axes: (x, u), (x, y) or (u, v)
	Hollow float64   // radius of a circle about A, mm; 0: it has ends
}

// View is what a measure is marked on.
type View uint8

// The views.
const (
	Side    View = iota // the closed sheath with the knife in it
	Pattern             // the back half, opened
	Across              // the section
)

// measureLine is heavier than what it is drawn on, with a cross at each end.
var measureLine = canvas.Stroke{Type: canvas.Continuous, Pen: ink.PenMark}

// endCross is how far the crosses reach, in dots.
const endCross = 2

// Draw draws the view that the measure is read on, and the measure with its name.
func (m Measure) Draw(c *canvas.Canvas, g canvas.Glyphs, p *calc.Plan, backRight bool, name string) {
	if m.View == Across {
		s, _ := laySection(c, g, p.Across(m.At))
		s.draw()
		m.between(c, s.view.Dot(m.A.X, -m.A.Y), s.view.Dot(m.B.X, -m.B.Y), name)
		return
	}
	shape := Closed
	if m.View == Pattern {
		shape = Half
	}
	s := Lay(c, g, p, shape, backRight)
	s.Draw(c, p, nil)
	if m.Hollow > 0 {
		at := s.dot(m.A, 1)
		c.Circle(at.X, at.Y, m.Hollow*s.View.Scale(), measureLine)
		m.label(c, s.dot(curve.Vec{X: m.A.X, Y: m.A.Y - m.Hollow}, 1), name) // where it touches
		return
	}
	m.between(c, s.dot(m.A, 1), s.dot(m.B, 1), name)
}

func (m Measure) between(c *canvas.Canvas, a, b canvas.Point, name string) {
	c.Line(a.X, a.Y, b.X, b.Y, measureLine)
	c.Cross(a.X, a.Y, endCross, ink.PenMark)
	c.Cross(b.X, b.Y, endCross, ink.PenMark)
	m.label(c, canvas.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}, name)
}

// label writes the name beside the middle of the measure, below it where there is room.
func (m Measure) label(c *canvas.Canvas, at canvas.Point, name string) {
	w, h := c.Size()
	cx, cy := c.Cell(at.X, at.Y)
	wide := len([]rune(name))
	cx = max(0, min(cx-wide/2, w-wide))
	if cy+1 < h {
		cy++
	} else {
		cy--
	}
	c.Text(cx, cy, name, ink.PenMark)
}
