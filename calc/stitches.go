package calc

import (
	"fmt"
	"math"

	"chape/calc/curve"
	"chape/calc/length"
)

// layStitches steps the holes off with dividers on the closed sheath and
// finds their places in the flat.
func (p *Plan) layStitches() error {
	s, st := p.at, p.Input.Stitch
	line := p.Plane.Stitch.Reverse()
	p.fromMouth = line
	q := &p.Stitch
	q.Line = p.Flat.Stitch.Length()
	q.PlaneLine = line.Length()
	q.Stack = 2*p.Input.Sheath.Leather.MM() + p.Input.Sheath.Welt.MM()
	q.Laid = q.PlaneLine
	if st.Measured > 0 {
		q.Laid = st.Measured.MM()
	}
	sewn := q.Laid - (st.First + st.Last).MM()
	if sewn <= 0 {
		return fmt.Errorf("first hole and last hole take %s of a stitch line of %s: make first and last shorter",
			(st.First+st.Last).Format(length.Millimetres, length.Ruler),
			length.Length(q.Laid).Format(length.Millimetres, length.Ruler))
	}
	n := math.Max(1, math.Floor(sewn/st.Pitch.MM()+0.5))
	if n > maxStitches {
		return fmt.Errorf("%.0f stitches are more than anyone sews: make the pitch longer", n)
	}
	q.Stitches = int(n)
	q.Holes = q.Stitches + 1
	q.Pitch = sewn / n

	scale := q.Laid / q.PlaneLine // the computed line is scaled to the measured one
	chord, at := line.Walk(st.First.MM()/scale, (q.Laid-st.Last.MM())/scale, q.Stitches)
	q.Walk = chord * scale
	q.Positions, q.Flat = make([]curve.Vec, 0, len(at)), make([]curve.Vec, 0, len(at))
	for _, h := range at {
		q.Positions = append(q.Positions, h.Vec)
		q.Along = append(q.Along, h.S*scale)
		q.Flat = append(q.Flat, s.flatten(h.Vec, q.PlaneLine-h.S))
	}
	return nil
}

// flatten is the place in the flat of a point of the stitch line in the plane
// that lies left mm along it before the fold: over the same x, or at the same
// share of the straight run.
func (s *sampled) flatten(h curve.Vec, left float64) curve.Vec {
	if run := s.seam.Y[0]; left < run && run > 0 {
		return curve.Vec{X: -s.e, Y: s.end() + h.Y/run*(s.stitch.Y[0]-s.end())}
	}
	return curve.Vec{X: h.X, Y: s.stitch.At(h.X)}
}

// maxStitches keeps a mistyped pitch from filling the memory.
const maxStitches = 20000

// Walk10 is the length of ten divider steps along a straight line, mm: what a
// maker measures, since nobody sets dividers to a hundredth by eye.
func (q Stitching) Walk10() float64 { return 10 * q.Walk }
