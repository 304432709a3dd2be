package draw

import (
	"math"

	"chape/calc"
	"chape/calc/curve"
	"chape/ui/canvas"
	"chape/ui/term/ink"
)

var (
	leatherFace = canvas.Stroke{Type: canvas.Continuous, Pen: ink.PenLeather}
	innerFace   = canvas.Stroke{Type: canvas.Thin, Pen: ink.PenLeather}
	weltEdge    = canvas.Stroke{Type: canvas.Thin, Pen: ink.PenWelt}
)

// Section draws the cut across sheath and knife, fold at the left and edge at
// the right, both halves, and returns the row below it and its words. Past the
// mouth there is only the knife.
func Section(c *canvas.Canvas, g canvas.Glyphs, a calc.Across) (below int) {
	s, bottom := laySection(c, g, a)
	s.draw()
	last := s.view.Dot(0, bottom)
	_, below = c.Cell(last.X, last.Y)
	if s.named {
		return below + 2
	}
	return below + 1
}

// laySection fits the section into the canvas; bottom is its lowest place, mm.
func laySection(c *canvas.Canvas, g canvas.Glyphs, a calc.Across) (s section, bottom float64) {
	outer := outerFace(a)
	b := canvas.Box{MinX: -1, MinY: -1, MaxX: 1, MaxY: 1}
	for _, l := range append([]curve.Line{outer}, a.Knife...) {
		for _, v := range l {
			b = b.Join(canvas.Box{MinX: v.X, MinY: -v.Y, MaxX: v.X, MaxY: v.Y})
		}
	}
	w, h := c.Size()
	named := w >= 34 && h >= 7
	across, _ := g.Dots()
	cell := float64(across) / c.Fit(b).Scale() // mm
	bottom = b.MaxY
	if named {
		b.MinX, b.MaxX = b.MinX-7*cell, b.MaxX+2*cell
		b.MinY, b.MaxY = b.MinY-2*cell, b.MaxY+5*cell
	}
	return section{c: c, view: c.Fit(b), glyphs: g, a: a, outer: outer, named: named}, bottom
}

func (s section) draw() {
	if s.a.Sheathed {
		s.leather(s.outer)
		s.welt()
	}
	for _, l := range s.a.Knife {
		s.both(l, knifeLine)
		s.across(l[len(l)-1].X, l[len(l)-1].Y, knifeLine)
		s.across(l[0].X, l[0].Y, knifeLine)
	}
	if s.a.Sheathed {
		s.seam()
	}
	if s.named {
		s.names(s.outer)
	}
}

// outerFace is the leather's grain side: everything within the leather's
// thickness of the inner face, as the bend of a thick sheet runs.
func outerFace(a calc.Across) curve.Line {
	if !a.Sheathed {
		return nil
	}
	var g curve.Graph
	for _, v := range a.Inside {
		if n := len(g.X); n > 0 && v.X-g.X[n-1] < 1e-6 {
			g.Y[n-1] = math.Max(g.Y[n-1], v.Y)
			continue
		}
		g.X, g.Y = append(g.X, v.X), append(g.Y, v.Y)
	}
	if len(g.X) == 0 {
		return nil
	}
	const step = 0.2 // mm
	grown := curve.Dilate(g, curve.Grid(-a.Leather, a.Edge, step, nil), a.Leather)
	return append(curve.Line{{X: -a.Leather}}, grown.Line()...)
}

// section is one drawing of a section.
type section struct {
	c      *canvas.Canvas
	view   canvas.View
	glyphs canvas.Glyphs
	a      calc.Across
	outer  curve.Line // the leather's grain side
	named  bool       // there is room for words
}

// half is a curve (u, v) on the canvas, v times side.
func (s section) half(l curve.Line, side float64) []canvas.Point {
	out := make([]canvas.Point, len(l))
	for i, v := range l {
		out[i] = s.view.Dot(v.X, -side*v.Y)
	}
	return out
}

func (s section) both(l curve.Line, stroke canvas.Stroke) {
	for _, side := range []float64{1, -1} {
		s.c.Polyline(s.half(l, side), stroke)
	}
}

// across draws from (u, v) to its mirror image.
func (s section) across(u, v float64, stroke canvas.Stroke) {
	a, b := s.view.Dot(u, -v), s.view.Dot(u, v)
	s.c.Line(a.X, a.Y, b.X, b.Y, stroke)
}

// leather is cut through: dotted between its faces.
func (s section) leather(outer curve.Line) {
	ring := append(append(curve.Line(nil), outer...), s.a.Inside.Reverse()...)
	for _, side := range []float64{1, -1} {
		if s.glyphs != canvas.ASCII {
			s.c.Fill(s.half(ring, side), 4, ink.PenLeather)
		}
	}
	s.both(outer, leatherFace)
	s.both(s.a.Inside, innerFace)
	last := outer[len(outer)-1]
	s.across(last.X, last.Y, leatherFace)
}

// welt is cut through as well, closer dotted.
func (s section) welt() {
	box := curve.Line{{X: s.a.Welt, Y: s.a.HalfWelt}, {X: s.a.Edge, Y: s.a.HalfWelt},
		{X: s.a.Edge, Y: -s.a.HalfWelt}, {X: s.a.Welt, Y: -s.a.HalfWelt}}
	if s.glyphs != canvas.ASCII {
		s.c.Fill(s.half(box, 1), 2, ink.PenWelt)
	}
	s.c.Polygon(s.half(box, 1), weltEdge)
}

// seam is the thread through all layers.
func (s section) seam() {
	s.across(s.a.Stitch, s.a.HalfWelt+s.a.Leather, stitchLine)
}

// names writes what is what beside the drawing.
func (s section) names(outer curve.Line) {
	left := -1.0
	top := 0.0
	for _, l := range append([]curve.Line{outer}, s.a.Knife...) {
		for _, v := range l {
			left, top = math.Min(left, v.X), math.Max(top, v.Y)
		}
	}
	if !s.a.Sheathed {
		return
	}
	d := s.view.Dot(left, 0)
	cx, cy := s.c.Cell(d.X, d.Y)
	s.c.Text(cx-5, cy, "fold", ink.PenFold)
	d = s.view.Dot(s.a.Stitch, -(s.a.HalfWelt + s.a.Leather))
	cx, cy = s.c.Cell(d.X, d.Y)
	s.c.Text(cx-3, cy-1, "stitch", ink.PenStitch)
	d = s.view.Dot(s.a.Stitch, s.a.HalfWelt+s.a.Leather)
	cx, cy = s.c.Cell(d.X, d.Y)
	s.c.Text(cx-2, cy+1, "welt", ink.PenWelt)
}
