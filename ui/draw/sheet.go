// Package draw puts a plan's curves onto a canvas: the flat pattern, the
// closed sheath and the section through it, in the line types of technical
// drawings, true to scale.
package draw

import (
	"math"

	"chape/calc"
	"chape/calc/curve"
	"chape/ui/canvas"
)

// Shape is what is drawn of a plan.
type Shape uint8

// The shapes. The half is the back half, the one with the tab.
const (
	Whole Shape = iota
	Half
	Closed // the closed sheath with the knife in it, seen from the front
)

// Sheet is how a shape lies on a canvas: which way up, and how large.
type Sheet struct {
	Shape   Shape
	Upright bool        // the mouth is up; else it is to the right
	View    canvas.View // from the sheet's own millimetres, see place

	side   float64    // +1: y grows to the right (mouth up) or downwards
	box    canvas.Box // all of the shape, on the sheet
	fit    float64    // the scale at which all of it is seen
	glyphs canvas.Glyphs
	w, h   int // cells
}

// Lay fits a shape into the canvas, mouth up or to the right, whichever shows
// it larger. backRight is calc.BackIsRight for the grain side up.
func Lay(c *canvas.Canvas, g canvas.Glyphs, p *calc.Plan, shape Shape, backRight bool) Sheet {
	var best Sheet
	for _, upright := range []bool{false, true} {
		s := Sheet{Shape: shape, Upright: upright, side: -1, glyphs: g}
		if backRight != (shape == Closed) { // folded over, the front shows its other hand
			s.side = 1
		}
		s.w, s.h = c.Size()
		s.box = s.bounds(p)
		// Room beside the cut line for the pointer of the chosen mark.
		across, _ := g.Dots()
		cell := float64(across) / c.Fit(s.box).Scale()
		s.box = s.aside(s.box, 2*cell)
		s.View = c.Fit(s.box)
		s.fit = s.View.Scale()
		if upright && s.fit <= best.fit*1.05 {
			continue
		}
		best = s
	}
	return best
}

// aside makes the box wider across the fold, little over the fold of a half;
// upright there is room for a word below the point.
func (s Sheet) aside(b canvas.Box, mm float64) canvas.Box {
	both := s.Shape == Whole
	lo, hi := mm, mm
	if !both && s.side > 0 {
		lo = mm / 4
	} else if !both {
		hi = mm / 4
	}
	if s.Upright {
		b.MinX, b.MaxX, b.MaxY = b.MinX-lo, b.MaxX+hi, b.MaxY+mm
	} else {
		b.MinY, b.MaxY = b.MinY-lo, b.MaxY+hi
	}
	return b
}

// bounds is the shape's box on the sheet.
func (s Sheet) bounds(p *calc.Plan) canvas.Box {
	lo, hi := flatBounds(p)
	switch s.Shape {
	case Half:
		lo.Y = 0
	case Closed:
		lo, hi = p.Plane.Outer.Bounds()
		lo.Y, hi.X = 0, math.Max(hi.X, p.Input.Knife.Length().MM())
		for _, st := range p.Input.Knife.Stations {
			hi.Y = math.Max(hi.Y, st.Bottom.MM())
		}
	}
	ax, ay := s.onSheet(lo, 1)
	bx, by := s.onSheet(hi, 1)
	return canvas.Box{MinX: math.Min(ax, bx), MinY: math.Min(ay, by), MaxX: math.Max(ax, bx), MaxY: math.Max(ay, by)}
}

// flatBounds are the corners of the whole pattern, read from its figures: the
// outline's many points would have to be looked through for each frame.
func flatBounds(p *calc.Plan) (lo, hi curve.Vec) {
	wide := p.Body.Width / 2
	lo = curve.Vec{X: p.Flat.Cut[0].X, Y: -wide}
	hi = curve.Vec{X: p.Flat.Mouth[0].X, Y: wide}
	if p.Body.TabLength > 0 {
		hi.X = math.Max(hi.X, p.Loop.Start+p.Body.TabLength)
		lo.Y = math.Min(lo.Y, p.Loop.Offset)
		hi.Y = math.Max(hi.Y, p.Loop.Offset+p.Input.Belt.Tab.MM())
	}
	return lo, hi
}

// Closer is the sheet at a multiple of the scale that shows all, with a place
// of the shape, (x, y) in mm, in the middle as far as the shape reaches.
func (s Sheet) Closer(c *canvas.Canvas, times float64, at curve.Vec) Sheet {
	if !(times > 1) {
		return s
	}
	v := c.About(0, 0, s.fit*times)
	x, y := v.MM(canvas.Point{})
	cx, cy := s.onSheet(at, 1)
	cx = within(cx, s.box.MinX-x, s.box.MaxX+x)
	cy = within(cy, s.box.MinY-y, s.box.MaxY+y)
	s.View = c.About(cx, cy, s.fit*times)
	return s
}

// within keeps x between lo and hi; where there is no between, in the middle.
func within(x, lo, hi float64) float64 {
	if lo > hi {
		return (lo + hi) / 2
	}
	return math.Min(math.Max(x, lo), hi)
}

// Rows is how many rows of cells the whole shape takes at the scale that
// shows all of it.
func (s Sheet) Rows() int {
	_, down := s.glyphs.Dots()
	high := s.View.Dot(0, s.box.MaxY).Y - s.View.Dot(0, s.box.MinY).Y
	return int(math.Ceil(high/float64(down))) + 1
}

// Fitted is the scale at which all of the shape is seen, in dots a millimetre.
func (s Sheet) Fitted() float64 { return s.fit }

// BackAfter tells whether the back half, or in a closed sheath the seam, lies
// to the right of the fold (mouth up) or below it.
func (s Sheet) BackAfter() bool { return s.side > 0 }

// Scale is how many cells wide a millimetre is.
func (s Sheet) Scale() float64 {
	across, _ := s.glyphs.Dots()
	return s.View.Scale() / float64(across)
}

// onSheet turns a place of the shape into one on the sheet; half is +1, or -1
// for the half on the other side of the fold. All turns are rotations, so
// that nothing is mirrored.
func (s Sheet) onSheet(v curve.Vec, half float64) (x, y float64) {
	if s.Upright {
		return s.side * half * v.Y, -v.X
	}
	return v.X, s.side * half * v.Y
}

// At is the place of the shape, in mm, in the middle of a cell.
func (s Sheet) At(cx, cy int) curve.Vec {
	across, down := s.glyphs.Dots()
	x, y := s.View.MM(canvas.Point{X: (float64(cx) + 0.5) * float64(across), Y: (float64(cy) + 0.5) * float64(down)})
	if s.Upright {
		return curve.Vec{X: -y, Y: s.side * x}
	}
	return curve.Vec{X: x, Y: s.side * y}
}

// Beside is the place of the shape in the middle of the canvas when the view
// is moved by shares of its width and height.
func (s Sheet) Beside(right, down float64) curve.Vec {
	return s.At(int(float64(s.w)*(0.5+right)), int(float64(s.h)*(0.5+down)))
}

// dot is a place of the shape on the canvas.
func (s Sheet) dot(v curve.Vec, half float64) canvas.Point { return s.View.Dot(s.onSheet(v, half)) }

// cell is the cell that holds a place of the shape.
func (s Sheet) cell(c *canvas.Canvas, v curve.Vec, half float64) (cx, cy int) {
	d := s.dot(v, half)
	return c.Cell(d.X, d.Y)
}

// dots is a curve on the canvas, without the points that no dot could show.
func (s Sheet) dots(l curve.Line, half float64) []canvas.Point {
	const least = 0.6 // of a dot
	out := make([]canvas.Point, 0, len(l)/2+2)
	for i, v := range l {
		d := s.dot(v, half)
		if n := len(out); n > 0 && i < len(l)-1 &&
			math.Abs(d.X-out[n-1].X) < least && math.Abs(d.Y-out[n-1].Y) < least {
			continue
		}
		out = append(out, d)
	}
	return out
}
