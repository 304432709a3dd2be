package draw

import (
	"math"

	"chape/calc"
	"chape/calc/curve"
	"chape/ui/canvas"
	"chape/ui/term/ink"
)

// The lines of a pair: what stands is thin and quiet, what would come is drawn as it
// would be cut.
var (
	wasLine  = canvas.Stroke{Type: canvas.Thin, Pen: ink.PenQuiet}
	tickLine = canvas.Stroke{Type: canvas.Thin, Pen: ink.PenFold}
)

// LayPair fits the back halves of one or two patterns into the canvas, the mouth to the
// right, with their tabs or without. backRight is calc.BackIsRight for the grain side up.
func LayPair(c *canvas.Canvas, g canvas.Glyphs, backRight, tabs bool, plans ...*calc.Plan) Sheet {
	s := Sheet{Shape: Half, side: -1, glyphs: g}
	if backRight {
		s.side = 1
	}
	s.w, s.h = c.Size()
	for i, p := range plans {
		lo, hi := flatBounds(p)
		lo.Y = 0
		if !tabs {
			hi = curve.Vec{X: p.Flat.Mouth[0].X, Y: p.Body.Width / 2}
		}
		ax, ay := s.onSheet(lo, 1)
		bx, by := s.onSheet(hi, 1)
		b := canvas.Box{MinX: math.Min(ax, bx), MinY: math.Min(ay, by), MaxX: math.Max(ax, bx), MaxY: math.Max(ay, by)}
		if i > 0 {
			b = b.Join(s.box)
		}
		s.box = b
	}
	across, _ := g.Dots()
	cell := float64(across) / c.Fit(s.box).Scale()
	s.box = s.aside(s.box, 2*cell) // room for the pointer of the cursor
	s.View = c.Fit(s.box)
	s.fit = s.View.Scale()
	return s
}

// Pair draws a pattern heavy and, beside it, the one it was, thin; was may be nil.
func (s Sheet) Pair(c *canvas.Canvas, was, is *calc.Plan, tabs bool) {
	if was != nil {
		c.Polyline(s.dots(halfCut(was, tabs), 1), wasLine)
		c.Polyline(s.dots(was.Flat.Stitch, 1), wasLine)
	}
	s.fold(c, is.Flat.Cut[0].X, is.Flat.Mouth[0].X)
	c.Polyline(s.dots(halfCut(is, tabs), 1), cutLine)
	c.Polyline(s.dots(is.Flat.Stitch, 1), stitchLine)
}

// halfCut is the back half's outline, from the point end on, with or without the tab.
func halfCut(p *calc.Plan, tab bool) curve.Line {
	if !tab {
		line := append(curve.Line{}, p.Flat.Cut...)
		return append(line, p.Flat.Mouth.Reverse()...)
	}
	var half curve.Line
	for _, v := range p.Flat.Outline {
		if v.Y >= 0 {
			half = append(half, v)
		}
	}
	return half
}

// Ticks marks places on the fold.
func (s Sheet) Ticks(c *canvas.Canvas, at []float64) {
	_, down := s.glyphs.Dots()
	long := float64(down) / s.View.Scale() // a cell
	for _, x := range at {
		a, b := s.dot(curve.Vec{X: x}, 1), s.dot(curve.Vec{X: x, Y: long / 2}, 1)
		c.Line(a.X, a.Y, b.X, b.Y, tickLine)
	}
}

// Cursor draws a line from the fold to past the cut line, and points at it.
func (s Sheet) Cursor(c *canvas.Canvas, p *calc.Plan, at float64, label string) {
	m := &Mark{At: at, Label: label}
	s.mark(c, m, cutAt(p, m), []float64{1})
}

// Measured draws half-widths that were measured, in the order of the fold, joined by a thin
// line.
func (s Sheet) Measured(c *canvas.Canvas, at, wide []float64) {
	var line curve.Line
	for i := range at {
		line = append(line, curve.Vec{X: at[i], Y: wide[i]})
	}
	c.Polyline(s.dots(line, 1), markLine)
	for _, v := range line { // a letter is seen from further away than a dot
		cx, cy := s.cell(c, v, 1)
		c.Text(cx, cy, "o", ink.PenMark)
	}
}
