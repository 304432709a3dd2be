package sheet

import (
	"math"

	"chape/calc/curve"
)

// deviation is how far a drawn segment may stray from the curve, mm: half of
// the 0.05 mm that is asked of the file for a cutter, so that the sampling of
// the curve itself has room.
const deviation = 0.025

// Thinned leaves out the points of a polyline that are not needed to stay
// within deviation of it: from each point it takes the farthest that will do.
// A closed line keeps its first point.
func Thinned(l curve.Line, closed bool) curve.Line {
	if len(l) < 3 {
		return l
	}
	if closed {
		open := Thinned(append(append(curve.Line{}, l...), l[0]), false)
		return open[:len(open)-1]
	}
	out := curve.Line{l[0]}
	for i := 0; i < len(l)-1; {
		i = reach(l, i)
		out = append(out, l[i])
	}
	return out
}

// reach finds how far one segment can go from l[i]: it doubles the stride
// while that will do, then halves what is left.
func reach(l curve.Line, i int) int {
	last := len(l) - 1
	good, bad := i+1, last+1
	for stride := 2; i+stride <= last; stride *= 2 {
		if !straight(l[i : i+stride+1]) {
			bad = i + stride
			break
		}
		good = i + stride
	}
	for bad-good > 1 {
		if m := (good + bad) / 2; straight(l[i : m+1]) {
			good = m
		} else {
			bad = m
		}
	}
	return good
}

// straight tells whether all points lie within deviation of the segment from
// first to last.
func straight(l curve.Line) bool {
	a, b := l[0], l[len(l)-1]
	for _, p := range l[1 : len(l)-1] {
		if toSegment(p, a, b) > deviation {
			return false
		}
	}
	return true
}

// toSegment is the distance from p to the segment from a to b.
func toSegment(p, a, b curve.Vec) float64 {
	d := b.Sub(a)
	q := p.Sub(a)
	n := d.X*d.X + d.Y*d.Y
	if n == 0 {
		return q.Norm()
	}
	t := math.Min(1, math.Max(0, (q.X*d.X+q.Y*d.Y)/n))
	return q.Sub(d.Mul(t)).Norm()
}
