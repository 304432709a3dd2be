// Package axes lays an outline along a line: which end is the point, which side the back, how the
// fold line lies; and it finds the fewest marks that say the outline.
package axes

import (
	"math"
	"slices"

	"chape/calc/curve"
)

// Axes are where x = 0 lies, which way x runs, and which way u runs, to the edge; both ways of length 1.
type Axes struct {
	From, Along, Down curve.Vec
}

// In gives x and u of a place.
func (a Axes) In(v curve.Vec) curve.Vec {
	d := v.Sub(a.From)
	return curve.Vec{X: dot(d, a.Along), Y: dot(d, a.Down)}
}

// Out gives the place of x and u.
func (a Axes) Out(v curve.Vec) curve.Vec {
	return a.From.Add(a.Along.Mul(v.X)).Add(a.Down.Mul(v.Y))
}

func dot(a, b curve.Vec) float64 { return a.X*b.X + a.Y*b.Y }

// in gives all places in the axes.
func (a Axes) in(l curve.Line) curve.Line {
	out := make(curve.Line, len(l))
	for i, v := range l {
		out[i] = a.In(v)
	}
	return out
}

// Turns say what a user turned over.
type Turns struct {
	Ends bool // the point is at the other end
	Back bool // the back is the other side
}

// ofKnife finds a knife's axes: the long way of its area, the point at the narrow end, the back the straighter
// side, then the fold line (see fold). steps are the feet of the strokes.
func ofKnife(outline curve.Line, feet []curve.Vec, t Turns) Axes {
	mid, along := principal(outline)
	a := Axes{From: mid, Along: along, Down: curve.Vec{X: -along.Y, Y: along.X}}
	if narrowAtFar(a.in(outline)) != t.Ends {
		a.Along, a.Down = a.Along.Mul(-1), a.Down.Mul(-1)
	}
	a.From = a.Out(curve.Vec{X: least(a.in(outline))})
	s := sidesOf(a.in(outline))
	end := blade(a, s, feet)
	if bent(s.bottom, s.step, end) < bent(s.top, s.step, end) != t.Back {
		a.Down = a.Down.Mul(-1)
	}
	return a.fold(outline, feet)
}

// principal is the middle of an area and the direction in which it is longest, from its moments (Green's theorem
// on a polygon).
func principal(l curve.Line) (mid, along curve.Vec) {
	var area, mx, my, xx, xy, yy float64
	o := l[0]
	for i := range l {
		p, q := l[i].Sub(o), l[(i+1)%len(l)].Sub(o)
		c := p.X*q.Y - q.X*p.Y
		area += c / 2
		mx += c * (p.X + q.X) / 6
		my += c * (p.Y + q.Y) / 6
		xx += c * (p.X*p.X + p.X*q.X + q.X*q.X) / 12
		yy += c * (p.Y*p.Y + p.Y*q.Y + q.Y*q.Y) / 12
		xy += c * (p.X*q.Y + 2*p.X*p.Y + 2*q.X*q.Y + q.X*p.Y) / 24
	}
	mx, my = mx/area, my/area
	xx, xy, yy = xx/area-mx*mx, xy/area-mx*my, yy/area-my*my
	turn := math.Atan2(2*xy, xx-yy) / 2
	return o.Add(curve.Vec{X: mx, Y: my}), curve.Vec{X: math.Cos(turn), Y: math.Sin(turn)}
}

func least(l curve.Line) float64 {
	return slices.MinFunc(l, func(a, b curve.Vec) int {
		if a.X < b.X {
			return -1
		}
		return 1
	}).X
}

// narrowAtFar tells whether the far end is narrower, by the depth over the outer eighths.
func narrowAtFar(l curve.Line) bool {
	x0 := least(l)
	moved := make(curve.Line, len(l))
	for i, v := range l {
		moved[i] = curve.Vec{X: v.X - x0, Y: v.Y}
	}
	s := sidesOf(moved)
	n := len(s.top) / 8
	near, far := 0.0, 0.0
	for i := range n {
		near += s.depth(i)
		far += s.depth(len(s.top) - 1 - i)
	}
	return far < near
}

// blade is where the first stroke stands, or the whole length without any.
func blade(a Axes, s sides, feet []curve.Vec) float64 {
	end := s.length()
	for _, f := range feet {
		if x := a.In(f).X; x > 0.15*s.length() {
			end = min(end, x)
		}
	}
	return end
}

// bent is how far a side is from straight over the middle nine tenths up to end: root mean square, mm.
func bent(u []float64, step, end float64) float64 {
	from, to := int(0.05*end/step), min(int(0.95*end/step), len(u)-1)
	var n, sx, sy, xx, xy, yy float64
	for i := from; i <= to; i++ {
		x := float64(i) * step
		n, sx, sy, xx, xy, yy = n+1, sx+x, sy+u[i], xx+x*x, xy+x*u[i], yy+u[i]*u[i]
	}
	cx, cy := n*xx-sx*sx, n*xy-sx*sy
	return math.Sqrt(max(n*yy-sy*sy-cy*cy/max(cx, 1e-9), 0)) / max(n, 1)
}
