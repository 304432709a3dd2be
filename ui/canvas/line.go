package canvas

import (
	"math"

	"chape/calc/curve"
)

// Point is a place on the canvas in dots, y down.
type Point struct{ X, Y float64 }

// LineType is one of the line types of technical drawings (ISO 128-2:2020,
// basic types and widths), told apart without colour.
type LineType uint8

// The line types, with what they are for here.
const (
	Continuous  LineType = iota // wide: the cut line, visible outlines
	Thin                        // continuous narrow: the glue line, hatching
	Dashed                      // the stitch line
	LongDashDot                 // the line of symmetry: the fold
)

// Lengths drawn and left out in turn, in dot widths. ISO 128-2 has a dash of 12,
// a long dash of 24, a gap of 3 and a dot of half a line width: the proportions
// are kept as far as dots allow, closer together where a dot is a whole cell.
var (
	dashed           = []float64{4, 2}
	dashedASCII      = []float64{2, 1}
	longDashDot      = []float64{10, 2, 1, 2}
	longDashDotASCII = []float64{5, 1, 1, 1}
)

// dashes starts the type's pattern; that of an unbroken line is always on.
func (t LineType) dashes(g Glyphs) dash {
	switch {
	case t == Dashed && g == ASCII:
		return newDash(dashedASCII)
	case t == Dashed:
		return newDash(dashed)
	case t == LongDashDot && g == ASCII:
		return newDash(longDashDotASCII)
	case t == LongDashDot:
		return newDash(longDashDot)
	default:
		return dash{}
	}
}

// look is what the cells are told about the line.
func (t LineType) look() uint8 {
	switch t {
	case Continuous:
		return lookWide
	case Thin:
		return 0
	default:
		return lookBroken
	}
}

// Stroke is how a line is drawn.
type Stroke struct {
	Type LineType
	Pen  Pen
}

// Line draws from (x0, y0) to (x1, y1), in dots. What lies outside the canvas
// is cut off; a line with a coordinate that is not a finite number is left out.
func (c *Canvas) Line(x0, y0, x1, y1 float64, s Stroke) {
	d := s.Type.dashes(c.glyphs)
	c.segment(Point{x0, y0}, Point{x1, y1}, s, &d)
}

// Polyline draws an open line through the points; the dashes run on over its
// corners by length.
func (c *Canvas) Polyline(pts []Point, s Stroke) {
	d := s.Type.dashes(c.glyphs)
	for i := 1; i < len(pts); i++ {
		c.segment(pts[i-1], pts[i], s, &d)
	}
}

// Polygon draws a closed line; the last point is joined to the first.
func (c *Canvas) Polygon(pts []Point, s Stroke) {
	if len(pts) < 2 {
		return
	}
	d := s.Type.dashes(c.glyphs)
	for i, p := range pts {
		c.segment(p, pts[(i+1)%len(pts)], s, &d)
	}
}

// length is the distance in dot widths, which is true to scale. What is too far
// to square is infinitely far.
func (c *Canvas) length(a, b Point) float64 {
	dx, dy := b.X-a.X, (b.Y-a.Y)*c.tall
	return math.Sqrt(dx*dx + dy*dy)
}

// segment draws one piece of a line and leaves the dashes where it ends.
func (c *Canvas) segment(a, b Point, s Stroke, d *dash) {
	whole := c.length(a, b)
	if !finite(whole) {
		return
	}
	w, h := c.Dots()
	if inside(a, w, h) && inside(b, w, h) {
		c.walk(a, b, s, d)
		return
	}
	t0, t1, ok := curve.Clip(curve.Vec(a), curve.Vec(b), curve.Vec{}, curve.Vec{X: float64(w), Y: float64(h)})
	if !ok {
		d.skip(whole)
		return
	}
	d.skip(t0 * whole)
	c.walk(c.along(a, b, t0), c.along(a, b, t1), s, d)
	d.skip((1 - t1) * whole)
}

// inside spares most lines the clipping.
func inside(p Point, w, h int) bool {
	return p.X >= 0 && p.Y >= 0 && p.X <= float64(w) && p.Y <= float64(h)
}

// along is the place a share t of the way from a to b, kept on the canvas
// where rounding of places far away would take it off.
func (c *Canvas) along(a, b Point, t float64) Point {
	w, h := c.Dots()
	return Point{
		min(max(a.X+t*(b.X-a.X), 0), float64(w)),
		min(max(a.Y+t*(b.Y-a.Y), 0), float64(h)),
	}
}

// walk steps from p to q, both within the canvas, one dot at a time along the
// steeper axis.
func (c *Canvas) walk(p, q Point, s Stroke, d *dash) {
	dx, dy := q.X-p.X, q.Y-p.Y
	steps := int(math.Ceil(max(math.Abs(dx), math.Abs(dy))))
	dir, look := c.direction(dx, dy), s.Type.look()
	// A wide line is two dots wide where dots are fine enough.
	wideX, wideY := 0, 0
	if s.Type == Continuous && c.glyphs == Braille {
		if math.Abs(dy) > math.Abs(dx) {
			wideX = 1
		} else {
			wideY = 1
		}
	}
	n := float64(max(steps, 1))
	step := c.length(p, q) / n
	stepX, stepY := dx/n, dy/n
	for i := range steps + 1 {
		if d.on() {
			x, y := int(p.X+float64(i)*stepX), int(p.Y+float64(i)*stepY) // never negative: int is floor
			c.set(x, y, dir, look, s.Pen)
			if wideX+wideY > 0 {
				c.set(x+wideX, y+wideY, dir, look, s.Pen)
			}
		}
		if i < steps {
			d.advance(step)
		}
	}
}

// direction sorts a line's slope, true to scale, into the four characters that
// can show it.
func (c *Canvas) direction(dx, dy float64) uint8 {
	dy *= c.tall
	ax, ay := math.Abs(dx), math.Abs(dy)
	// The slants / and \ stand at the cell's own diagonal; the borders lie
	// halfway to level and to upright.
	const flat, steep = 0.5, 5
	switch {
	case ay <= ax*flat:
		return dirLevel
	case ay >= ax*steep:
		return dirUpright
	case (dx > 0) == (dy < 0):
		return dirRising
	default:
		return dirFalling
	}
}

// dash follows a pattern of dashes along a line; the zero value is always on.
type dash struct {
	lengths []float64
	whole   float64 // their sum
	part    int     // the part of the pattern at hand; even ones are drawn
	left    float64 // what remains of it
}

func newDash(lengths []float64) dash {
	d := dash{lengths: lengths, left: lengths[0]}
	for _, l := range lengths {
		d.whole += l
	}
	return d
}

func (d *dash) on() bool { return d.part%2 == 0 }

// advance goes on by a step of a few dots.
func (d *dash) advance(by float64) {
	if d.lengths == nil {
		return
	}
	d.left -= by
	for d.left <= 0 {
		d.part = (d.part + 1) % len(d.lengths)
		d.left += d.lengths[d.part]
	}
}

// skip goes on by any finite length.
func (d *dash) skip(by float64) {
	if d.lengths != nil {
		d.advance(math.Mod(by, d.whole))
	}
}
