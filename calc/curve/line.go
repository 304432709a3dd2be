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
		lo = Vec{math.Min(lo.X, p.X), math.Min(lo.Y, p.Y)}
		hi = Vec{math.Max(hi.X, p.X), math.Max(hi.Y, p.Y)}
	}
	return lo, hi
}
