package calc

import (
	"math"

	"chape/calc/curve"
	"chape/calc/knife"
)

// lowerEdge walks the lower edge of what the edge needs (or the handle, which
// the knife's profile tells apart) from the point on: the knife's own edge, or
// the greatest depth so far where that is lower. Past its deepest part a
// sheath never narrows, or the edge would ride over the stitches on its way in.
type lowerEdge struct {
	handle  bool
	deepest float64 // greatest depth so far
	bottom  float64 // the knife's own edge here
	buf     []knife.Section
}

// at is the lower edge at x, which must not lie before the last one asked.
func (l *lowerEdge) at(k *knife.Profile, x float64) float64 {
	l.buf = k.Sections(l.buf[:0], max(x, 0))
	l.bottom = 0
	for _, sec := range l.buf {
		if sec.Handle == l.handle {
			l.deepest = max(l.deepest, sec.Depth())
			l.bottom = max(l.bottom, sec.Bottom)
		}
	}
	return max(l.bottom, l.deepest)
}

// lower is the lower edge over xs.
func (s *sampled) lower(xs []float64, handle bool) curve.Graph {
	g := curve.Graph{X: xs, Y: make([]float64, len(xs))}
	l := lowerEdge{handle: handle}
	for i, x := range xs {
		g.Y[i] = l.at(s.inside, x)
	}
	return g
}

// bends are the places where a lower edge changes over from the knife's own
// edge to what its deepest part needs, or back; and that edge over xs, which
// are to lie inside.
func (s *sampled) bends(xs []float64, handle bool) (at []float64, edge curve.Graph) {
	edge = curve.Graph{X: xs, Y: make([]float64, len(xs))}
	l := lowerEdge{handle: handle}
	was, x0, first := 0.0, 0.0, true
	for i, x := range xs {
		before := l.deepest
		edge.Y[i] = l.at(s.inside, x)
		over := l.bottom - l.deepest
		if !first && over*was < 0 {
			lo, hi := x0, x
			for range 30 {
				mid := (lo + hi) / 2
				m := lowerEdge{handle: handle, deepest: before, buf: l.buf}
				if m.at(s.inside, mid); (m.bottom-m.deepest)*was > 0 {
					lo = mid
				} else {
					hi = mid
				}
			}
			at = append(at, lo, hi)
		}
		was, x0, first = over, x, false
	}
	return at, edge
}

// meetings are where, on both sides of the handle's front, the welt's inner
// edge changes over between the edge's clearance and the handle's; none where
// that is a jump. The arcs round the front's corners are steep there, so the
// places have to be among the samples. edge and handle are what the two need.
func (s *sampled) meetings(edge, handle curve.Graph) (at []float64) {
	edge = edge.Between(s.front-s.ch-s.c, s.front+2*s.c)
	handle = handle.Between(s.front, s.front+s.c+s.ch)
	// By how much the handle asks for more than the edge.
	over := func(x float64) float64 { return curve.DilateAt(handle, x, s.ch) - curve.DilateAt(edge, x, s.c) }
	for _, side := range [][2]float64{{s.front - s.ch, s.front}, {s.front, s.front + s.c}} {
		lo, hi := side[0], math.Min(side[1], s.mouth)
		was := over(lo)
		if was*over(hi) >= 0 {
			continue
		}
		for range 24 {
			if mid := (lo + hi) / 2; over(mid)*was > 0 {
				lo = mid
			} else {
				hi = mid
			}
		}
		at = append(at, lo, hi)
	}
	return at
}
