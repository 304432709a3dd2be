package calc

import (
	"chape/calc/curve"
)

// Compute makes the whole plan. The input must be valid (project.Validate);
// what only the plan can find is refused here with one line that says what
// would do: marks that make no knife, a seam shorter than first and last, a
// drain or strap that has no place, a body whose outline would cross itself.
func Compute(in Input) (*Plan, error) { return compute(in, spacing) }

// compute is Compute with the sample spacing to choose, for the benchmarks.
func compute(in Input, step float64) (*Plan, error) {
	s, err := sample(in, step)
	if err != nil {
		return nil, err
	}
	p := &Plan{Input: in, Fold: s.line, at: s}
	p.Plane = s.planeLines()
	p.Flat = s.flatLines()
	p.Welt = s.weltStrip()
	p.Stitch.Drills = in.Stitch.Drills()
	for _, part := range []func() error{p.layStitches, p.makeBody, p.makeDrain, p.makeStrap} {
		if err := part(); err != nil {
			return nil, err
		}
	}
	p.Thread = seamThread(p.Stitch, in.Stitch)
	p.makeChecks()
	return p, nil
}

func (s *sampled) planeLines() Plane {
	lower := s.edge.Between(0, s.mouth).Line()
	atHandle := lower[len(lower)-len(s.handle.X):] // both end at the mouth
	for i, y := range s.handle.Y {
		atHandle[i].Y = max(atHandle[i].Y, y)
	}
	return Plane{
		Knife:  lower,
		Stitch: s.seam.Line(curve.Vec{X: -s.e}),
		Inner:  s.inner.Line(),
		Outer:  s.outer.Line(curve.Vec{X: s.outer.X[0]}),
	}
}

// glue is the glue line's distance from the fold at sample i of the stitch
// line: where the welt's inner edge lies on the leather.
func (s *sampled) glue(i int) float64 { return s.stitch.Y[i] - (s.seam.Y[i] - s.inner.Y[i]) }

// glueAt is the same at any x.
func (s *sampled) glueAt(x float64) float64 {
	return s.stitch.At(x) - (s.seam.At(x) - s.inner.At(x))
}

func (s *sampled) flatLines() Flat {
	glue := make(curve.Line, len(s.stitch.X))
	for i, x := range s.stitch.X {
		glue[i] = curve.Vec{X: x, Y: s.glue(i)}
	}
	return Flat{
		EndY:   s.end(),
		Stitch: s.stitch.Line(curve.Vec{X: -s.e, Y: s.end()}),
		Glue:   glue,
		Cut:    s.cut.Line(curve.Vec{X: s.cut.X[0]}),
	}
}

// weltStrip is the strip between the welt's edges, closed over the point end.
func (s *sampled) weltStrip() Welt {
	inner := s.inner.Between(-s.q, s.mouth)
	out := make(curve.Line, 0, len(s.outer.X)+len(inner.X)+2)
	out = append(out, curve.Vec{X: s.outer.X[0]})
	for i, x := range s.outer.X {
		out = append(out, curve.Vec{X: x, Y: s.outer.Y[i]})
	}
	for i := len(inner.X) - 1; i >= 0; i-- {
		out = append(out, curve.Vec{X: inner.X[i], Y: inner.Y[i]})
	}
	out = append(out, curve.Vec{X: -s.q})
	return Welt{
		Area:      s.outer.Area() - inner.Area(),
		Thickness: s.in.Sheath.Welt.MM(),
		Plies:     s.in.Sheath.Plies,
		Outline:   out,
	}
}
