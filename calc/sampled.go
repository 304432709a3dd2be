package calc

import (
	"chape/calc/curve"
	"chape/calc/knife"
)

// spacing is how far apart the curves are sampled, mm. Between the points
// they are straight; at steps the points crowd (curve.Grid).
const spacing = 0.25

// sampled holds the curves over x that everything else is read from. Names
// follow the definitions: c clearance, g gap, b blend, m margin and sanding.
type sampled struct {
	in         Input
	knife      *knife.Profile
	c, g, b, m float64
	mouth      float64
	step       float64

	lower  curve.Graph // B: lower edge of what the knife needs, 0..mouth
	seam   curve.Graph // u_s: stitch line in the plane, -g..mouth
	inner  curve.Graph // u_c: welt's inner edge, -g..mouth, 0 left of -c
	outer  curve.Graph // welt's outer edge, -(g+m)..mouth
	stitch curve.Graph // Y: stitch line in the flat, -g..mouth
	cut    curve.Graph // cut line, -(g+m)..mouth
	need   curve.Graph // half girth that must pass, 0..mouth
	room   curve.Graph // half girth there is, 0..mouth
}

// sample makes all curves of a valid input.
func sample(in Input, step float64) (*sampled, error) {
	profile, err := knife.NewProfile(in.Knife)
	if err != nil {
		return nil, err
	}
	sh := in.Sheath
	s := &sampled{
		in: in, knife: profile, step: step,
		c: sh.Clearance.MM(), g: sh.Gap.MM(), b: sh.Blend.MM(), m: (sh.Margin + sh.Sanding).MM(),
		mouth: sh.Mouth.MM(),
	}
	if long := s.mouth / 1000; long > 1 {
		s.step *= long // a long knife has no finer curves than a short one
	}
	xs := s.grid()
	base := curve.Graph{X: xs, Y: make([]float64, len(xs))}
	s.inPlane(base)
	s.inFlat(base)
	return s, s.eaten()
}

// jumps are the places where the flat line before its closing may jump: the
// point, the mouth and the steps; and where the welt's edges round them begin.
func (s *sampled) jumps() (steps, round []float64) {
	steps, round = []float64{0, s.mouth}, []float64{-s.c, -s.g}
	for _, x := range s.knife.Breaks() {
		if x > s.mouth+s.g {
			break
		}
		steps = append(steps, x)
		round = append(round, x-s.c, x-s.g, x+s.c, x+s.g)
	}
	return steps, round
}

// perStretch is how many pieces the shortest stretch between two marks has.
const perStretch = 24

// grid is where the curves are sampled: evenly, crowding at jumps, closer
// where marks stand close, and at the bends of the lower edge.
func (s *sampled) grid() []float64 {
	steps, round := s.jumps()
	xs := curve.Grid(-(s.g + s.m), s.mouth+s.g, s.step, steps, round)
	var more []float64
	for _, x := range append(steps, round...) { // a jump of the stitch line stands m away on the cut line
		more = append(more, x-s.m-curve.Wall, x-s.m, x+s.m, x+s.m+curve.Wall)
	}
	marks := s.knife.Marks()
	for i := 1; i < len(marks); i++ {
		d := (marks[i] - marks[i-1]) / perStretch * (s.step / spacing)
		if d <= 0 || d >= s.step {
			continue
		}
		for x := marks[i-1] + d; x < marks[i]; x += d {
			more = append(more, x)
		}
	}
	xs = curve.Insert(xs, more...)
	return curve.Insert(xs, s.bends(xs)...)
}

// bends are the places where the lower edge changes over from the knife's
// own edge to what its deepest part needs, or back.
func (s *sampled) bends(xs []float64) []float64 {
	var at []float64
	var l lowerEdge
	was, x0, first := 0.0, 0.0, true
	for _, x := range xs {
		if x < 0 || x > s.mouth {
			continue
		}
		before := l.deepest
		l.at(s.knife, x)
		over := l.bottom - l.deepest
		if !first && over*was < 0 {
			lo, hi := x0, x
			for range 30 {
				mid := (lo + hi) / 2
				m := lowerEdge{deepest: before}
				if m.at(s.knife, mid); (m.bottom-m.deepest)*was > 0 {
					lo = mid
				} else {
					hi = mid
				}
			}
			at = append(at, lo, hi)
		}
		was, x0, first = over, x, false
	}
	return at
}

// lowerEdge walks the lower edge of what the knife needs from the point on.
type lowerEdge struct {
	deepest float64 // greatest depth so far
	bottom  float64 // the knife's own edge here
	buf     []knife.Section
}

// at is the lower edge at x, which must not lie before the last one asked.
func (l *lowerEdge) at(k *knife.Profile, x float64) float64 {
	l.buf = k.Sections(l.buf[:0], x)
	l.bottom = 0
	for _, sec := range l.buf {
		l.deepest = max(l.deepest, sec.Depth())
		l.bottom = max(l.bottom, sec.Bottom)
	}
	return max(l.bottom, l.deepest)
}

// inPlane makes the curves on the closed sheath.
func (s *sampled) inPlane(base curve.Graph) {
	over := base.Between(0, s.mouth).X
	s.lower = curve.Graph{X: over, Y: make([]float64, len(over))}
	var l lowerEdge
	for i, x := range over {
		s.lower.Y[i] = l.at(s.knife, x)
	}
	grown := curve.Dilate(s.lower, base.Between(-s.g, s.mouth+s.g).X, s.g)
	s.seam = curve.Close(grown, s.b, s.step).Between(-s.g, s.mouth)

	s.inner = curve.Dilate(s.lower, s.seam.X, s.c)
	for i, x := range s.inner.X {
		if x < -s.c {
			s.inner.Y[i] = 0 // the welt reaches the fold
		}
	}
	s.outer = curve.Dilate(s.seam, base.Between(-(s.g+s.m), s.mouth).X, s.m)
}
