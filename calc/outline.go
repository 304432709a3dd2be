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
	z := math.Min(math.Abs(y)/wide, 1) // past the fold it goes down again
	return s.mouth + rise*(1+math.Cos(math.Pi*z))/2
}

// corner is how an outer corner of the mouth is taken off: an arc from the
// cut line to the mouth line. Without rounding both ends are the corner.
type corner struct {
	radius     float64
	cut, mouth curve.Vec
	arc        curve.Line
}

// mostRound is mouth_round, or as much of it as half the mouth and half the
// sheath have room for.
func (s *sampled) mostRound() float64 {
	return math.Min(s.in.Sheath.MouthRound.MM(), math.Min(s.cut.Y[len(s.cut.Y)-1], s.mouth)/2)
}

// mouthCorner rounds the corner between cut line and mouth with the radius r.
// The stitch line runs on to the mouth.
func (s *sampled) mouthCorner(r float64) corner {
	if r >= leastRound {
		return s.roundCorner(r)
	}
	tip := curve.Vec{X: s.mouth, Y: s.cut.Y[len(s.cut.Y)-1]}
	return corner{0, tip, tip, curve.Line{tip}}
}

// besideTab is the leather left on the mouth line between a rounded corner and
// the relief hole of the tab, mm.
const besideTab = 2

// roundBesideTab is the largest radius that keeps a corner on the tab's half
// off the tab; at most that of p.corner.
func (p *Plan) roundBesideTab() float64 {
	r := p.corner.radius
	if r == 0 || len(p.Loop.Relief) == 0 {
		return r
	}
	hole := p.Loop.Relief[1]
	spare := func(end curve.Vec) float64 {
		d := end.Dist(hole.Centre)
		if end.Y < hole.Centre.Y {
			d = -d
		}
		return d - hole.Diameter/2 - besideTab
	}
	short := spare(p.corner.mouth)
	if short >= 0 {
		return r
	}
	lo, hi := 0.0, r
	free := spare(p.at.mouthCorner(0).mouth)
	if free <= 0 {
		return 0
	}
	for range 30 { // nearly straight: false position closes in at once
		mid := min(max(lo+(hi-lo)*free/(free-short), lo), hi)
		v := spare(p.at.mouthCorner(mid).mouth)
		if v >= 0 && v < 1e-6 {
			return mid
		}
		if v >= 0 {
			lo, free = mid, v
			short /= 2
		} else {
			hi, short = mid, v
			free /= 2
		}
	}
	return lo
}

// leastRound is the smallest radius that is worth drawing, mm.
const leastRound = 0.01

// roundCorner takes the corner off with the radius r.
func (s *sampled) roundCorner(r float64) corner {
	wide := s.cut.Y[len(s.cut.Y)-1]
	near := s.cut.Between(s.mouth-4*r, s.mouth)
	edge := s.mouthGraph(math.Max(0, wide-3*r), wide)
	// The arc's centre lies r below the cut line and r short of the mouth line.
	below, left := near.Neg(), edge.Neg()
	height := func(x float64) float64 { return -curve.DilateAt(below, x, r) }
	lo, hi := s.mouth-3*r, s.mouth
	for range 32 { // to a millionth of a hair
		x := (lo + hi) / 2
		if -curve.DilateAt(left, height(x), r) > x {
			lo = x
		} else {
			hi = x
		}
	}
	c := curve.Vec{X: lo, Y: height(lo)}
	on := corner{radius: r, cut: near.Nearest(c), mouth: flip(edge).Nearest(c)}
	on.arc = arcBetween(c, on.cut, on.mouth)
	return on
}

// mouthGraph is the mouth line as x over y, from lo to hi.
func (s *sampled) mouthGraph(lo, hi float64) curve.Graph {
	g := curve.Graph{X: curve.Grid(lo, hi, 0.5)}
	g.Y = make([]float64, 0, len(g.X))
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

// half is the closed outline of one half without the tab, from the fold
// at the point end along the cut line to the mouth and back along the fold.
func (s *sampled) half(c corner) curve.Line {
	mouth := s.mouthLine(c)
	l := make(curve.Line, 0, len(s.cut.X)+len(c.arc)+len(mouth))
	l = append(l, curve.Vec{X: s.cut.X[0]})
	for i, x := range s.cut.X {
		if x < c.cut.X {
			l = append(l, curve.Vec{X: x, Y: s.cut.Y[i]})
		}
	}
	l = append(l, c.arc...)
	return append(l, mouth[:len(mouth)-1].Reverse()...)
}
