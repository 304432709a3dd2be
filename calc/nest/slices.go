package nest

import (
	"math"
	"slices"
)

// stretch is an open stretch of y.
type stretch struct{ lo, hi float64 }

// nofit holds the upright slices of a no-fit polygon, step apart: slice i tells
// how far up b may not be moved against a once it stands (first + i)·step to
// the right of it. Slices left and right of those kept are empty.
type nofit struct {
	first int
	from  []int32 // slice i is all[from[i]:from[i+1]]
	all   []stretch
}

// slice gives the stretches forbidden at column k.
func (n *nofit) slice(k int) []stretch {
	k -= n.first
	if k < 0 || k >= len(n.from)-1 {
		return nil
	}
	return n.all[n.from[k]:n.from[k+1]]
}

// noFit makes the slices for b moved against a that stands still.
func noFit(a, b []cell, step float64) *nofit {
	a0, a1 := reach(a)
	b0, b1 := reach(b)
	n := &nofit{first: int(math.Ceil((a0 - b1) / step)), from: []int32{0}}
	last := int(math.Floor((a1 - b0) / step))
	var s []stretch
	for k := n.first; k <= last; k++ {
		s = s[:0]
		dx := float64(k) * step
		for _, c := range a {
			for _, d := range b {
				if f, ok := forbidden(c, d, dx); ok {
					s = append(s, f)
				}
			}
		}
		n.all = append(n.all, union(s)...)
		n.from = append(n.from, int32(len(n.all)))
	}
	return n
}

// reach is how far left and right the cells lie.
func reach(cs []cell) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, c := range cs {
		lo, hi = min(lo, c[0].x0), max(hi, c[len(c)-1].x1)
	}
	return lo, hi
}

// forbidden is how far up d, moved right by dx, may not be moved, or it runs
// into c. At each x that is an open stretch; as x goes on they overlap, so
// together they are one.
func forbidden(c, d cell, dx float64) (stretch, bool) {
	f := stretch{math.Inf(1), math.Inf(-1)}
	if c[len(c)-1].x1 <= d[0].x0+dx || d[len(d)-1].x1+dx <= c[0].x0 {
		return f, false
	}
	for i, j := 0, 0; i < len(c) && j < len(d); {
		s, t := &c[i], &d[j]
		x0, x1 := max(s.x0, t.x0+dx), min(s.x1, t.x1+dx)
		if x1-x0 > hair {
			for _, x := range [2]float64{x0, x1} {
				lo, hi := s.at(x)
				below, above := t.at(x - dx)
				f.lo, f.hi = min(f.lo, lo-above), max(f.hi, hi-below)
			}
		}
		if s.x1 < t.x1+dx {
			i++
		} else {
			j++
		}
	}
	return f, f.lo < f.hi
}

// union joins stretches that meet; it sorts s and works in place.
func union(s []stretch) []stretch {
	slices.SortFunc(s, func(a, b stretch) int {
		switch {
		case a.lo < b.lo:
			return -1
		case a.lo > b.lo:
			return 1
		}
		return 0
	})
	out := s[:0]
	for _, f := range s {
		if n := len(out); n > 0 && f.lo < out[n-1].hi {
			out[n-1].hi = max(out[n-1].hi, f.hi)
			continue
		}
		out = append(out, f)
	}
	return out
}
