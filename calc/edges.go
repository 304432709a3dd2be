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

// meeting is where, before the handle's front, the welt's inner edge changes
// over from the edge's clearance to the handle's; none where that is a jump.
// The arc round the front's corner is steep there, so the place has to be among
// the samples. edge is what the edge needs.
func (s *sampled) meeting(edge curve.Graph) []float64 {
	edge = edge.Between(s.front-s.ch-s.c, s.front+s.c)
	l := lowerEdge{handle: true}
	corner := l.at(s.inside, s.front)
	// What the handle asks for less what the edge asks for; it rises with x.
	over := func(x float64) float64 {
		z := s.front - x
		return corner + math.Sqrt(max(0, s.ch*s.ch-z*z)) - curve.DilateAt(edge, x, s.c)
	}
	lo, hi := s.front-s.ch, s.front
	if over(lo) >= 0 || over(hi) <= 0 {
		return nil
	}
	for range 24 {
		if mid := (lo + hi) / 2; over(mid) < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return []float64{lo}
}
