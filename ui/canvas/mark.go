package canvas

import "math"

// Circle draws a circle of radius r dot widths, true to scale: a round hole.
// One too small for the glyphs to be seen as round is a dot.
func (c *Canvas) Circle(x, y, r float64, s Stroke) {
	least := 0.5
	if c.glyphs == ASCII {
		least = 1
	}
	if !(r > least) {
		c.Dot(x, y, s.Pen)
		return
	}
	if c.outside(x, y, r) {
		return
	}
	n := min(max(8, math.Ceil(3*r)), 360)
	d := s.Type.dashes(c.glyphs)
	from := Point{x + r, y}
	for i := range int(n) {
		sin, cos := math.Sincos(2 * math.Pi * float64(i+1) / n)
		to := Point{x + r*cos, y + r*sin/c.tall}
		c.segment(from, to, s, &d)
		from = to
	}
}

// outside says whether a circle lies wholly off the canvas, or has no place.
func (c *Canvas) outside(x, y, r float64) bool {
	w, h := c.Dots()
	return !(x+r >= 0 && x-r <= float64(w) && y+r/c.tall >= 0 && y-r/c.tall <= float64(h))
}

// Cross draws a plus sign of r dot widths each way.
func (c *Canvas) Cross(x, y, r float64, pen Pen) {
	s := Stroke{Thin, pen}
	c.Line(x-r, y, x+r, y, s)
	c.Line(x, y-r/c.tall, x, y+r/c.tall, s)
}

// Fill sets every dot inside the closed line (even-odd rule) that lies on a
// grid of one dot in every; 1 is solid. It serves for what is cut through.
func (c *Canvas) Fill(pts []Point, every int, pen Pen) {
	every = max(every, 1)
	w, h := c.Dots()
	for row := 0; row < h; row++ {
		y := float64(row) + 0.5
		xs := crossings(pts, y)
		for i := 0; i+1 < len(xs); i += 2 {
			from, to := max(floor(xs[i]+0.5), 0), min(floor(xs[i+1]-0.5), w-1)
			for x := from; x <= to; x++ {
				if (x+row)%every == 0 {
					c.set(x, row, dirLevel, lookWide, pen)
				}
			}
		}
	}
}

// crossings are the places, in order, where the closed line crosses the level
// y.
func crossings(pts []Point, y float64) []float64 {
	var xs []float64
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		if (a.Y <= y) == (b.Y <= y) {
			continue
		}
		x := a.X + (y-a.Y)/(b.Y-a.Y)*(b.X-a.X)
		if math.IsNaN(x) {
			continue
		}
		at := len(xs)
		xs = append(xs, x)
		for at > 0 && xs[at-1] > x {
			xs[at], xs[at-1] = xs[at-1], x
			at--
		}
	}
	return xs
}
