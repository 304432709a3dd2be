package calc

import (
	"slices"

	"chape/calc/curve"
	"chape/calc/knife"
)

// ridge is the upper half of one section, moved up to the fold. It is bent
// one way only, so that a string over it touches it along one stretch; how far
// it is along the points is summed up once for every string laid over it.
type ridge struct {
	pts   []curve.Vec
	along []float64 // from the first point to each
}

// set puts another section in its place.
func (r *ridge) set(s knife.Section) {
	r.pts = s.Shift(-s.Top).Upper(r.pts[:0])
	r.along = slices.Grow(r.along[:0], len(r.pts))[:len(r.pts)]
	r.along[0] = 0
	for i := 1; i < len(r.pts); i++ {
		r.along[i] = r.along[i-1] + r.pts[i].Dist(r.pts[i-1])
	}
}

// string is tautString.over for this section alone: from the fold apex, which
// lies before the section, over half the welt's thickness to end, down to that
// thickness there. The section may not reach past end.
func (r *ridge) string(halfWelt, before, end float64) float64 {
	first, last := curve.Vec{X: -before, Y: halfWelt}, curve.Vec{X: end - before, Y: halfWelt}
	i, k := 0, len(r.pts)-1
	for ; i <= k && r.pts[i].X <= first.X; i++ {
		first.Y = max(first.Y, r.pts[i].Y)
	}
	for ; k >= 0 && r.pts[k].X >= last.X; k-- {
		last.Y = max(last.Y, r.pts[k].Y)
	}
	length := first.Y + last.Y - halfWelt
	if i <= k {
		i = r.touches(first, i, k, 1)
	}
	if i > k || !turnsDown(first, r.pts[i], last) { // nothing stands up to it
		return length + first.Dist(last)
	}
	k = r.touches(last, k, i, -1)
	return length + first.Dist(r.pts[i]) + r.along[k] - r.along[i] + r.pts[k].Dist(last)
}

// clearly is by how much the ridge falls below a string, as an area in mm²,
// before it is taken to stay below it: far more than rounding makes of a point
// that stands twice.
const clearly = 1e-9

// touches is the point of the ridge, from i on to k, where a string from v
// first touches it; step is 1, or -1 to look from the other side.
func (r *ridge) touches(v curve.Vec, i, k, step int) int {
	best := r.pts[i].Sub(v)
	for j := i; j != k; {
		j += step
		p := r.pts[j].Sub(v)
		switch over := float64(step) * (best.X*p.Y - best.Y*p.X); {
		case over >= 0:
			i, best = j, p
		case over < -clearly:
			return i
		}
	}
	return i
}
