package calc

import (
	"math"

	"chape/calc/curve"
)

// tabPoints is more points than a tab with its relief holes has: arcs of less
// than a turn each, in pieces of two degrees.
const tabPoints = 2*182 + 2

// outline is the whole body: the back half (y > 0) with the tab, then the
// front half mirrored.
func (s *sampled) outline(back, front curve.Line, l Loop, tabLength, tab float64) curve.Line {
	out := make(curve.Line, 0, len(back)+len(front)+tabPoints)
	fold := 0.0 // how far past the fold the tab and its relief hole reach
	if tabLength > 0 && len(l.Relief) == 2 {
		out = s.withTab(out, back, l, tabLength, tab)
		fold = min(0, out[len(out)-1].Y)
	} else {
		out = append(out, back...)
	}
	for i := len(front) - 2; i > 0; i-- { // both ends lie on the fold
		if p := front[i]; p.X < s.mouth || -p.Y < fold {
			out = append(out, curve.Vec{X: p.X, Y: -p.Y})
		}
	}
	return out
}

// withTab appends a half with the tab put into its mouth line. Each cut along
// the tab ends in a relief hole, whose rim is followed round the body's side.
// The check on the tab warns where there is no room for it; the outline then
// is only a drawing of what was asked for.
func (s *sampled) withTab(out, half curve.Line, l Loop, tabLength, tab float64) curve.Line {
	near, far := l.Relief[0], l.Relief[1]
	outer := arcFrom(far, s.rim(far, 1), 3*math.Pi/2)
	inner := arcFrom(near, math.Pi/2, s.rim(near, -1))
	first, last := outer[0].Y, inner[len(inner)-1].Y
	i := 0
	for ; i < len(half) && (half[i].X < s.mouth || half[i].Y > first); i++ {
		out = append(out, half[i])
	}
	out = append(out, outer...)
	end := l.Start + tabLength
	out = append(out, curve.Vec{X: end, Y: l.Offset + tab}, curve.Vec{X: end, Y: l.Offset})
	out = append(out, inner...)
	for ; i < len(half); i++ {
		if half[i].Y < last {
			out = append(out, half[i])
		}
	}
	return out
}

// rim is the angle at which the mouth line leaves a relief hole that lies on
// it: on the side of larger y for side 1, of smaller y for side -1.
func (s *sampled) rim(hole Circle, side float64) float64 {
	r := hole.Diameter / 2
	from := func(dy float64) curve.Vec {
		y := hole.Centre.Y + side*dy
		return curve.Vec{X: s.mouthX(y), Y: y}.Sub(hole.Centre)
	}
	lo, hi := 0.0, r
	for range 40 {
		if mid := (lo + hi) / 2; from(mid).Norm() < r {
			lo = mid
		} else {
			hi = mid
		}
	}
	v := from(hi)
	return math.Mod(math.Atan2(v.Y, v.X)+2*math.Pi, 2*math.Pi)
}

// arcFrom follows the rim of a hole from one angle up to another.
func arcFrom(c Circle, t0, t1 float64) curve.Line {
	return arcRound(c.Centre, c.Diameter/2, t0, t1-t0)
}
