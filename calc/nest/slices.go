package nest

import (
	"math"
	"slices"
	"sync/atomic"
)

// stretch is an open stretch of y.
type stretch struct{ lo, hi float64 }

// nofit holds the upright slices of a no-fit polygon, step apart: slice i tells
// how far up b may not be moved against a once it stands (first + i)·step to
// the right of it. Slices left and right of those kept are empty. They are cut when
// they are asked for: many never are.
type nofit struct {
	a, b   []cell // b is moved against a, which stands still
	step   float64
	first  int
	slices int
	blocks []atomic.Pointer[block]
}

// blockWide is how many slices are cut at a time.
const blockWide = 16

// block holds slices side by side. Most are one stretch, or none: one with lo above hi.
type block struct {
	one   [blockWide]stretch
	more  [][]stretch // by slice; nil where none has more than one
	pairs int         // of trapezoids looked at to cut it
}

// none is a stretch without a place.
var none = stretch{math.Inf(1), math.Inf(-1)}

// noFit makes ready the slices for b moved against a.
func noFit(a, b []cell, step float64) *nofit {
	a0, a1 := reach(a)
	b0, b1 := reach(b)
	n := &nofit{a: a, b: b, step: step, first: int(math.Ceil((a0 - b1) / step))}
	n.slices = max(0, int(math.Floor((a1-b0)/step))-n.first+1)
	n.blocks = make([]atomic.Pointer[block], (n.slices+blockWide-1)/blockWide)
	return n
}

// block gives the slices from blockWide·i on. Whoever asks first cuts them; what comes
// of it is the same whoever does.
func (n *nofit) block(i int) *block {
	if b := n.blocks[i].Load(); b != nil {
		return b
	}
	b := &block{}
	var s []stretch
	for k := range blockWide {
		s = s[:0]
		dx := float64(n.first+i*blockWide+k) * n.step
		for _, c := range n.a {
			for _, d := range n.b {
				f, pairs := forbidden(c, d, dx)
				if b.pairs += pairs; f.lo < f.hi {
					s = append(s, f)
				}
			}
		}
		b.one[k] = none
		if s = union(s); len(s) > 0 {
			b.one[k] = s[0]
		}
		if len(s) > 1 {
			if b.more == nil {
				b.more = make([][]stretch, blockWide)
			}
			b.more[k] = slices.Clone(s[1:])
		}
	}
	n.blocks[i].Store(b)
	return b
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
// together they are one; none where the two never meet. It tells how many pairs of
// trapezoids were looked at.
func forbidden(c, d cell, dx float64) (f stretch, pairs int) {
	f = none
	if c[len(c)-1].x1 <= d[0].x0+dx || d[len(d)-1].x1+dx <= c[0].x0 {
		return f, 1
	}
	i, j := 0, 0
	for i < len(c) && j < len(d) {
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
	return f, i + j
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
