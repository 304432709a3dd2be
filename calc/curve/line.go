// Package curve holds the plane geometry: points, polylines, and curves over
// x that can be dilated, eroded and closed with a circle.
package curve

import "math"

// Vec is a point or a difference of two, mm.
type Vec struct{ X, Y float64 }

// Add returns v + w.
func (v Vec) Add(w Vec) Vec { return Vec{v.X + w.X, v.Y + w.Y} }

// Sub returns v - w.
func (v Vec) Sub(w Vec) Vec { return Vec{v.X - w.X, v.Y - w.Y} }

// Mul returns v scaled by f.
func (v Vec) Mul(f float64) Vec { return Vec{v.X * f, v.Y * f} }

// Norm is the length of v. Figures here are far from overflow, so the plain
// root does; math.Hypot costs three times as much.
func (v Vec) Norm() float64 { return math.Sqrt(v.X*v.X + v.Y*v.Y) }

// Dist is the distance from v to w.
func (v Vec) Dist(w Vec) float64 { return v.Sub(w).Norm() }

// Line is a polyline; a closed one does not repeat its first point.
type Line []Vec

// Length is the length of the open polyline; 0 for fewer than two points.
func (l Line) Length() float64 {
	var s float64
	for i := 1; i < len(l); i++ {
		s += l[i].Dist(l[i-1])
	}
	return s
}

// Area is the signed area of the closed polyline, counter-clockwise positive.
func (l Line) Area() float64 {
	var a float64
	for i, p := range l {
		q := l[(i+1)%len(l)]
		a += p.X*q.Y - q.X*p.Y
	}
	return a / 2
}

// Reverse returns the points in the other order.
func (l Line) Reverse() Line {
	r := make(Line, len(l))
	for i, p := range l {
		r[len(l)-1-i] = p
	}
	return r
}

// Bounds are the corners of the smallest upright box round the line.
func (l Line) Bounds() (lo, hi Vec) {
	lo, hi = Vec{math.Inf(1), math.Inf(1)}, Vec{math.Inf(-1), math.Inf(-1)}
	for _, p := range l {
		lo = Vec{min(lo.X, p.X), min(lo.Y, p.Y)}
		hi = Vec{max(hi.X, p.X), max(hi.Y, p.Y)}
	}
	return lo, hi
}

// Height is the largest y of the line over x, level beyond its ends; x may not fall along
// the line. Upright pieces count with both their ends.
func (l Line) Height(x float64) float64 {
	switch {
	case len(l) == 0:
		return 0
	case x < l[0].X:
		return l[0].Y
	}
	y := math.Inf(-1)
	for i, p := range l {
		if p.X == x {
			y = math.Max(y, p.Y)
		}
		if i > 0 && l[i-1].X < x && x < p.X {
			a := l[i-1]
			y = math.Max(y, a.Y+(p.Y-a.Y)*(x-a.X)/(p.X-a.X))
		}
	}
	if math.IsInf(y, -1) {
		return l[len(l)-1].Y
	}
	return y
}

// Clip gives the part of the segment from a to b that lies in the box from lo to hi, as
// shares of it; ok is false where none does. After Liang and Barsky (ACM Transactions on
// Graphics 3, 1984, pages 1-22).
func Clip(a, b, lo, hi Vec) (t0, t1 float64, ok bool) {
	t1 = 1
	d := b.Sub(a)
	for _, side := range [4][2]float64{{-d.X, a.X - lo.X}, {d.X, hi.X - a.X}, {-d.Y, a.Y - lo.Y}, {d.Y, hi.Y - a.Y}} {
		move, room := side[0], side[1]
		switch {
		case move == 0 && room < 0:
			return 0, 0, false
		case move < 0:
			t0 = math.Max(t0, room/move)
		case move > 0:
			t1 = math.Min(t1, room/move)
		}
	}
	return t0, t1, t0 <= t1
}
