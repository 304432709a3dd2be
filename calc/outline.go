package calc

import (
	"math"

	"chape/calc/curve"
)

// mouthX is the mouth line's place along the fold at the half-width y. With
// a rise it climbs from the seam to the fold in one fair S.
func (s *sampled) mouthX(y float64) float64 {
	rise := s.in.Sheath.MouthRise.MM()
	wide := s.cut.Y[len(s.cut.Y)-1]
	z := math.Min(math.Max(y/wide, 0), 1)
	return s.mouth + rise*(1+math.Cos(math.Pi*z))/2
}

// corner is how an outer corner of the mouth is taken off: an arc from the
// cut line to the mouth line. Without rounding both ends are the corner.
type corner struct {
	cut, mouth curve.Vec
	arc        curve.Line
}

// mouthCorner rounds the corner between cut line and mouth by mouth_round,
// or as much of it as half the mouth and half the sheath have room for.
func (s *sampled) mouthCorner() corner {
	wide := s.cut.Y[len(s.cut.Y)-1]
	tip := curve.Vec{X: s.mouth, Y: wide}
	r := math.Min(s.in.Sheath.MouthRound.MM(), math.Min(wide, s.mouth)/2)
	if r <= 0 {
		return corner{tip, tip, curve.Line{tip}}
	}
	near := s.cut.Between(s.mouth-4*r, s.mouth)
	edge := s.mouthGraph(math.Max(0, wide-3*r), wide)
	// The arc's centre lies r below the cut line and r short of the mouth line.
	height := func(x float64) float64 { return curve.Erode(near, []float64{x}, r).Y[0] }
	lo, hi := s.mouth-3*r, s.mouth
	for range 50 {
		x := (lo + hi) / 2
		if curve.Erode(edge, []float64{height(x)}, r).Y[0] > x {
			lo = x
		} else {
			hi = x
		}
	}
	c := curve.Vec{X: lo, Y: height(lo)}
	on := corner{cut: near.Line().Nearest(c), mouth: flip(edge).Nearest(c)}
	on.arc = arcBetween(c, on.cut, on.mouth)
	return on
}

// mouthGraph is the mouth line as x over y, from lo to hi.
func (s *sampled) mouthGraph(lo, hi float64) curve.Graph {
	g := curve.Graph{X: curve.Grid(lo, hi, 0.5)}
	for _, y := range g.X {
		g.Y = append(g.Y, s.mouthX(y))
	}
	return g
}

// flip is a graph over y as a polyline in (x, y).
func flip(g curve.Graph) curve.Line {
	l := make(curve.Line, len(g.X))
	for i := range g.X {
		l[i] = curve.Vec{X: g.Y[i], Y: g.X[i]}
	}
	return l
}

// arcBetween goes from a to b round c the shorter way, both ends included.
func arcBetween(c, a, b curve.Vec) curve.Line {
	t0 := math.Atan2(a.Y-c.Y, a.X-c.X)
	turn := math.Remainder(math.Atan2(b.Y-c.Y, b.X-c.X)-t0, 2*math.Pi)
	return arcRound(c, a.Dist(c), t0, turn)
}

// arcRound is an arc of radius r round c from angle t0 over the given turn,
// in pieces of two degrees at most.
func arcRound(c curve.Vec, r, t0, turn float64) curve.Line {
	n := max(1, int(math.Ceil(math.Abs(turn)*90/math.Pi)))
	l := make(curve.Line, 0, n+1)
	for i := 0; i <= n; i++ {
		sin, cos := math.Sincos(t0 + turn*float64(i)/float64(n))
		l = append(l, curve.Vec{X: c.X + r*cos, Y: c.Y + r*sin})
	}
	return l
}

// mouthLine runs from the fold to where the corner begins.
func (s *sampled) mouthLine(c corner) curve.Line {
	l := flip(s.mouthGraph(0, c.mouth.Y))
	l[len(l)-1] = c.mouth
	return l
}

// frontHalf is the closed outline of one half without the tab, from the fold
// at the point end along the cut line to the mouth and back along the fold.
func (s *sampled) frontHalf(c corner) curve.Line {
	l := curve.Line{{X: s.cut.X[0]}}
	for _, p := range s.cut.Line() {
		if p.X < c.cut.X {
			l = append(l, p)
		}
	}
	l = append(l, c.arc...)
	mouth := s.mouthLine(c)
	return append(l, mouth[:len(mouth)-1].Reverse()...)
}

// outline is the whole body: the back half (y > 0) with the tab, then the
// front half mirrored.
func (s *sampled) outline(half curve.Line, l Loop, tabLength, tab float64) curve.Line {
	out := half
	if tabLength > 0 && len(l.Relief) == 2 {
		out = s.withTab(half, l, tabLength, tab)
	}
	out = append(curve.Line(nil), out...)
	for i := len(half) - 2; i > 0; i-- { // both ends lie on the fold
		out = append(out, curve.Vec{X: half[i].X, Y: -half[i].Y})
	}
	return out
}

// withTab puts the tab into the mouth line of a half. Each cut along the tab
// ends in a relief hole, whose rim is followed round the body's side.
func (s *sampled) withTab(half curve.Line, l Loop, tabLength, tab float64) curve.Line {
	near, far := l.Relief[0], l.Relief[1]
	outer := arcRound(far.Centre, far.Diameter/2, math.Pi/2, math.Pi)
	inner := arcRound(near.Centre, near.Diameter/2, math.Pi/2, math.Pi)
	end := l.Start + tabLength
	var out curve.Line
	i := 0
	for ; i < len(half) && !(half[i].X >= s.mouth && half[i].Y <= outer[0].Y); i++ {
		out = append(out, half[i])
	}
	out = append(out, outer...)
	out = append(out, curve.Vec{X: end, Y: l.Offset + tab}, curve.Vec{X: end, Y: l.Offset})
	out = append(out, inner...)
	last := inner[len(inner)-1].Y
	for ; i < len(half); i++ {
		if half[i].Y < last {
			out = append(out, half[i])
		}
	}
	return out
}
