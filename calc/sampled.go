package calc

import (
	"math"

	"chape/calc/curve"
	"chape/calc/knife"
)

// spacing is how far apart the curves are sampled, mm. Between the points
// they are straight; at steps the points crowd (curve.Grid).
const spacing = 0.25

// sampled holds the curves over x that everything else is read from. Names
// follow the definitions: c clearance, g gap, ch and gh the same from the
// handle, b blend, m margin and sanding, p point room, q = p + c, e = p + g.
type sampled struct {
	in                       Input
	knife                    *knife.Profile // the whole knife, from the fold line
	inside                   *knife.Profile // what counts in the sheath: nothing that begins at the mouth
	line                     knife.FoldLine
	c, g, ch, gh, b, m, q, e float64
	mouth, front             float64 // front: where the handle begins inside, +Inf without one
	step                     float64

	edge   curve.Graph // B_E: what the edge needs, -p..mouth
	handle curve.Graph // B_H: what the handle needs, front..mouth; empty without one
	seam   curve.Graph // u_s: stitch line in the plane, -e..mouth
	inner  curve.Graph // u_c: welt's inner edge, -e..mouth, 0 left of -q
	outer  curve.Graph // welt's outer edge, -(e+m)..mouth
	stitch curve.Graph // Y: stitch line in the flat, -e..mouth
	cut    curve.Graph // cut line, -(e+m)..mouth
	need   curve.Graph // half girth that must pass, 0..mouth
	room   curve.Graph // half girth there is, 0..mouth

	fold, foldAt float64 // least inside radius of the fold over the knife, and where
}

// sample makes all curves of a valid input.
func sample(in Input, step float64) (*sampled, error) {
	profile, err := knife.NewProfile(in.Knife)
	if err != nil {
		return nil, err
	}
	sh := in.Sheath
	line := profile.Resting(sh.Mouth.MM())
	s := &sampled{
		in: in, knife: profile.Laid(line), line: line, step: step,
		c: sh.Clearance.MM(), g: sh.Gap.MM(), ch: sh.HandleClearance.MM(), gh: sh.handleGap().MM(),
		b: sh.Blend.MM(), m: sh.outside().MM(), q: sh.pointWelt().MM(), e: sh.pointEnd().MM(),
		mouth: sh.Mouth.MM(), front: math.Inf(1), fold: math.Inf(1),
	}
	s.inside = s.knife.Before(s.mouth)
	if at, has := s.inside.HandleFront(); has && at < s.mouth-tie {
		s.front = at
	}
	if long := s.mouth / 1000; long > 1 {
		s.step *= long // a long knife has no finer curves than a short one
	}
	xs := s.grid()
	base := curve.Graph{X: xs, Y: xs} // only for its abscissae
	disc := &curve.Disc{Room: len(xs) + int(2*s.b/s.step) + 64}
	s.inPlane(base, disc)
	s.inFlat(base, disc)
	return s, s.eaten()
}

// hasHandle tells whether a part of the handle lies inside the sheath.
func (s *sampled) hasHandle() bool { return !math.IsInf(s.front, 1) }

// jumps are the places where the flat line before its closing may jump: the
// point, the mouth and the steps; and where the welt's edges round them begin.
func (s *sampled) jumps() (steps, round []float64) {
	steps, round = []float64{0, s.mouth}, []float64{-s.q, -s.e, s.c - s.q}
	for _, x := range s.inside.Breaks() {
		if x > s.mouth {
			break
		}
		steps = append(steps, x)
		// Round a wall, the welt keeps off by what the higher side asks for.
		left, right := [2]float64{s.c, s.g}, [2]float64{s.c, s.g}
		if x >= s.front-tie {
			left = [2]float64{s.ch, s.gh}
		}
		if x > s.front+tie {
			right = left
		}
		round = append(round, x-left[0], x-left[1], x+right[0], x+right[1])
	}
	return steps, round
}

// perStretch is how many pieces the shortest stretch between two marks has.
const perStretch = 24

// grid is where the curves are sampled: evenly, crowding at jumps, closer
// where marks stand close, and at the bends of the lower edges.
func (s *sampled) grid() []float64 {
	steps, round := s.jumps()
	xs := curve.Grid(-(s.e + s.m), s.mouth+s.g, s.step, steps, round)
	var more []float64
	for _, x := range append(steps, round...) { // a jump of the stitch line stands m away on the cut line
		more = append(more, x-s.m-curve.Wall, x-s.m, x-s.m+s.step/16, x-s.m+s.step/3)
		more = append(more, x+s.m-s.step/3, x+s.m-s.step/16, x+s.m, x+s.m+curve.Wall)
	}
	marks := s.inside.Marks()
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
	over := func(lo float64) []float64 { return curve.Graph{X: xs, Y: xs}.Between(lo, s.mouth).X }
	bends, edge := s.bends(over(0), false)
	if s.hasHandle() {
		more, handle := s.bends(over(s.front), true)
		bends = append(append(bends, more...), s.meetings(edge, handle)...)
	}
	return curve.Insert(xs, bends...)
}

// inPlane makes the curves on the closed sheath: the stitch line and the
// welt's edges run round what the edge needs and round what the handle needs.
func (s *sampled) inPlane(base curve.Graph, disc *curve.Disc) {
	s.edge = s.lower(base.Between(s.c-s.q, s.mouth).X, false)
	grown := disc.Dilate(s.edge, base.Between(-s.e, s.mouth+s.g).X, s.g)
	if s.hasHandle() {
		s.handle = s.lower(base.Between(s.front, s.mouth).X, true)
		disc.Raise(grown, s.handle, base.Between(s.front-s.gh, s.mouth+s.gh).X, s.gh)
	}
	s.seam = disc.Close(grown, s.b, s.step).Between(-s.e, s.mouth)

	s.inner = disc.Dilate(s.edge, s.seam.X, s.c)
	if s.hasHandle() {
		disc.Raise(s.inner, s.handle, s.seam.Between(s.front-s.ch, s.mouth).X, s.ch)
	}
	for i, x := range s.inner.X {
		if x < -s.q {
			s.inner.Y[i] = 0 // the welt reaches the fold
		}
	}
	s.outer = disc.Dilate(s.seam, base.Between(-(s.e+s.m), s.mouth).X, s.m)
}
