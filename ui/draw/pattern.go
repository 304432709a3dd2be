package draw

import (
	"math"
	"strconv"

	"chape/calc"
	"chape/calc/curve"
	"chape/ui/canvas"
	"chape/ui/term/ink"
)

// Mark is the chosen station.
type Mark struct {
	At    float64 // mm from the point
	Label string  // short: its number
}

// The strokes of the lines, told apart without colour by their types.
var (
	cutLine    = canvas.Stroke{Type: canvas.Continuous, Pen: ink.PenCut}
	stitchLine = canvas.Stroke{Type: canvas.Dashed, Pen: ink.PenStitch}
	foldLine   = canvas.Stroke{Type: canvas.LongDashDot, Pen: ink.PenFold}
	glueLine   = canvas.Stroke{Type: canvas.Thin, Pen: ink.PenGlue}
	markLine   = canvas.Stroke{Type: canvas.Thin, Pen: ink.PenMark}
	holeRim    = canvas.Stroke{Type: canvas.Thin, Pen: ink.PenHole}
	reliefRim  = canvas.Stroke{Type: canvas.Thin, Pen: ink.PenCut}
	lyingKnife = canvas.Stroke{Type: canvas.Thin, Pen: ink.PenKnife}
	knifeLine  = canvas.Stroke{Type: canvas.Continuous, Pen: ink.PenKnife}
)

// Holes are drawn from this many dot widths apart, and numbered from that
// many.
const (
	holesApart   = 3.5
	numbersApart = 7
)

// Draw draws the sheet's shape with the chosen mark; without a mark, m is nil.
func (s Sheet) Draw(c *canvas.Canvas, p *calc.Plan, m *Mark) {
	if s.Shape == Closed {
		s.closed(c, p, m)
		return
	}
	halves := []float64{1, -1}
	if s.Shape == Half {
		halves = halves[:1]
	}
	s.lies(c, p)
	for _, half := range halves {
		c.Polyline(s.dots(p.Flat.Glue, half), glueLine)
		c.Polyline(s.dots(p.Flat.Stitch, half), stitchLine)
	}
	s.fold(c, p.Flat.Cut[0].X, p.Flat.Mouth[0].X)
	s.cut(c, p)
	for _, half := range halves {
		s.holes(c, p.Stitch.Flat, half, p.Stitch.Walk, p.Stitch.Choice().Diameter)
	}
	s.loop(c, p)
	if d := p.Flat.Drain; d != nil { // in the back half alone
		s.circle(c, *d, 1, reliefRim)
	}
	s.mark(c, m, cutAt(p, m), halves)
	s.names(c, p, m, halves)
}

// lies draws the knife thin where it lies on the back half, as far as it is in the sheath.
// Where its back touches the fold, the fold is drawn alone.
func (s Sheet) lies(c *canvas.Canvas, p *calc.Plan) {
	const clear = 3 // dots
	spine, edge := p.Outline(2)
	mouth := p.Input.Sheath.Mouth.MM()
	for _, l := range []curve.Line{spine, edge} {
		var piece curve.Line
		for _, v := range l {
			if v.X <= mouth && v.Y*s.View.Scale() >= clear {
				piece = append(piece, v)
				continue
			}
			c.Polyline(s.dots(piece, 1), lyingKnife)
			piece = nil
		}
		c.Polyline(s.dots(piece, 1), lyingKnife)
	}
}

// fold draws the fold from x0 to x1.
func (s Sheet) fold(c *canvas.Canvas, x0, x1 float64) {
	a, b := s.dot(curve.Vec{X: x0}, 1), s.dot(curve.Vec{X: x1}, 1)
	c.Line(a.X, a.Y, b.X, b.Y, foldLine)
}

// cut draws the outline: closed, or of the back half alone.
func (s Sheet) cut(c *canvas.Canvas, p *calc.Plan) {
	if s.Shape == Whole {
		c.Polygon(s.dots(p.Flat.Outline, 1), cutLine)
		return
	}
	var half curve.Line
	for _, v := range p.Flat.Outline {
		if v.Y >= 0 {
			half = append(half, v)
		}
	}
	c.Polyline(s.dots(half, 1), cutLine)
}

// loop draws what belongs to the tab: relief holes, stitches, and where it
// begins and ends its turn over the belt.
func (s Sheet) loop(c *canvas.Canvas, p *calc.Plan) {
	l, tab := p.Loop, p.Input.Belt.Tab.MM()
	if p.Body.TabLength <= 0 {
		return
	}
	for _, r := range l.Relief {
		s.circle(c, r, 1, reliefRim)
	}
	for _, along := range l.Bends {
		a := s.dot(curve.Vec{X: l.Start + along, Y: l.Offset}, 1)
		b := s.dot(curve.Vec{X: l.Start + along, Y: l.Offset + tab}, 1)
		c.Line(a.X, a.Y, b.X, b.Y, foldLine)
	}
	if l.Rows == 0 {
		return
	}
	for _, xs := range [][]float64{l.RowX, l.LapX} {
		for _, x := range xs {
			a := s.dot(curve.Vec{X: x, Y: l.Body[0].Y}, 1)
			b := s.dot(curve.Vec{X: x, Y: l.Body[l.Stitches].Y}, 1)
			c.Line(a.X, a.Y, b.X, b.Y, stitchLine)
		}
	}
	pitch := l.Body[0].Dist(l.Body[1])
	s.holes(c, l.Body, 0, pitch, p.Stitch.Choice().Diameter)
	s.holes(c, l.Lap, 0, pitch, p.Stitch.Choice().Diameter)
}

// holes draws stitch holes where they lie far enough apart to be told from
// one another. Every tenth of a seam has its number; half 0 is the back half
// without numbers.
func (s Sheet) holes(c *canvas.Canvas, at []curve.Vec, half, apart, across float64) {
	scale := s.View.Scale()
	if apart*scale < holesApart {
		return
	}
	numbered := half == 1 && apart*scale >= numbersApart
	if half == 0 {
		half = 1
	}
	for i, v := range at {
		d := s.dot(v, half)
		s.hole(c, d, across/2*scale)
		if n := i + 1; numbered && (n == 1 || n%10 == 0 || n == len(at)) {
			in := v
			in.Y = math.Max(0, v.Y-apart*1.5)
			cx, cy := s.cell(c, in, half)
			c.Text(cx, cy, strconv.Itoa(n), ink.PenHole)
		}
	}
}

// hole is a ring where there is room for one; else a dot that stands out of
// the dashes of its line.
func (s Sheet) hole(c *canvas.Canvas, at canvas.Point, r float64) {
	switch {
	case s.glyphs == canvas.ASCII && r < 2:
		c.Dot(at.X, at.Y, ink.PenHole)
	case r < 1:
		c.Cross(at.X, at.Y, 1, ink.PenHole)
	default:
		c.Circle(at.X, at.Y, r, holeRim)
	}
}

func (s Sheet) circle(c *canvas.Canvas, at calc.Circle, half float64, stroke canvas.Stroke) {
	d := s.dot(at.Centre, half)
	c.Circle(d.X, d.Y, at.Diameter/2*s.View.Scale(), stroke)
}

// cutAt is the half-width of the cut line at the mark, mm.
func cutAt(p *calc.Plan, m *Mark) float64 {
	if m == nil {
		return 0
	}
	return p.Flat.Cut.Height(m.At)
}

// mark lights the line of the chosen mark and points at its ends.
func (s Sheet) mark(c *canvas.Canvas, m *Mark, wide float64, halves []float64) {
	if m == nil {
		return
	}
	from := s.dot(curve.Vec{X: m.At}, 1)
	for _, half := range halves {
		to := s.dot(curve.Vec{X: m.At, Y: wide}, half)
		c.Line(from.X, from.Y, to.X, to.Y, markLine)
		cx, cy := c.Cell(to.X, to.Y)
		right, down := s.side*half > 0, s.side*half > 0
		switch {
		case s.Upright && right:
			c.Text(cx+1, cy, s.pointer("◂", "<")+m.Label, ink.PenMark)
		case s.Upright:
			label := m.Label + s.pointer("▸", ">")
			c.Text(cx-len(m.Label)-1, cy, label, ink.PenMark)
		case down:
			c.Text(cx, cy+1, s.pointer("▴", "^")+m.Label, ink.PenMark)
		default:
			c.Text(cx, cy-1, s.pointer("▾", "v")+m.Label, ink.PenMark)
		}
	}
}

func (s Sheet) pointer(fine, plain string) string {
	if s.glyphs == canvas.ASCII {
		return plain
	}
	return fine
}
