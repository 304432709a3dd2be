package curve

import (
	"cmp"
	"math"
	"slices"
)

// Hull is the convex hull of the points, counter-clockwise, closed; points on
// its edges are left out. Of fewer than three points it is those points.
func (l Line) Hull() Line {
	pts := slices.Clone(l)
	slices.SortFunc(pts, func(a, b Vec) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	pts = slices.Compact(pts)
	if len(pts) < 3 {
		return pts
	}
	chain := func(out Line, pts Line) Line {
		from := len(out)
		for _, p := range pts {
			for len(out) >= from+2 && side(out[len(out)-2], out[len(out)-1], p) <= 0 {
				out = out[:len(out)-1]
			}
			out = append(out, p)
		}
		return out[:len(out)-1] // the other chain begins with it
	}
	out := chain(make(Line, 0, 64), pts)
	slices.Reverse(pts)
	return chain(out, pts)
}

// SmallestBox gives the sides of the rectangle of least area round the line, in
// whatever direction: one of its sides lies along an edge of the convex hull.
// Of no points it is 0 by 0.
func (l Line) SmallestBox() (w, h float64) {
	hull := l.Hull()
	if len(hull) == 0 {
		return 0, 0
	}
	best := math.Inf(1)
	for i, a := range hull {
		d := hull[(i+1)%len(hull)].Sub(a)
		n := d.Norm()
		if n == 0 {
			return 0, 0
		}
		d = d.Mul(1 / n)
		lo, hi, high := math.Inf(1), math.Inf(-1), 0.0
		for _, p := range hull {
			v := p.Sub(a)
			along := v.X*d.X + v.Y*d.Y
			lo, hi, high = min(lo, along), max(hi, along), max(high, math.Abs(v.X*d.Y-v.Y*d.X))
		}
		if area := (hi - lo) * high; area < best {
			best, w, h = area, hi-lo, high
		}
	}
	return w, h
}
