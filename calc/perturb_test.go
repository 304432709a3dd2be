package calc

import (
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/length"
)

// jittered is the same knife and sheath with every measure off by rounding: 1e-12 mm,
// but for the places of the marks, where two that share one are a step.
func jittered(rng *rand.Rand, in Input, by float64) Input {
	off := func(l *length.Length) { *l += length.Length(by * (2*rng.Float64() - 1)) }
	in.Knife.Stations = append(in.Knife.Stations[:0:0], in.Knife.Stations...)
	for i := range in.Knife.Stations {
		st := &in.Knife.Stations[i]
		off(&st.Top)
		off(&st.Bottom)
		off(&st.Thick)
		st.Bottom = max(st.Bottom, st.Top)
	}
	sh := &in.Sheath
	for _, l := range []*length.Length{&sh.Leather, &sh.Welt, &sh.Gap, &sh.Margin, &sh.Blend, &sh.Ease, &sh.Mouth} {
		off(l)
	}
	return in
}

// farthest is by how much the figures of two plans for the same knife differ, mm.
func farthest(p, q *Plan) (worst float64, what string) {
	look := func(name string, a, b float64) {
		if d := math.Abs(a - b); !(d <= worst) {
			worst, what = d, name
		}
	}
	look("stitch line", p.Stitch.Line, q.Stitch.Line)
	look("plane line", p.Stitch.PlaneLine, q.Stitch.PlaneLine)
	look("ten steps", p.Stitch.Walk10(), q.Stitch.Walk10())
	look("width", p.Body.Width, q.Body.Width)
	look("end of the seam", p.Flat.EndY, q.Flat.EndY)
	look("strap", p.Strap.length(), q.Strap.length())
	for i, o := range p.Body.Offsets {
		look("offset, stitch", o.Stitch, q.Body.Offsets[i].Stitch)
		look("offset, glue", o.Glue, q.Body.Offsets[i].Glue)
		look("offset, cut", o.Cut, q.Body.Offsets[i].Cut)
	}
	for i, h := range p.Stitch.Positions {
		look("hole", h.Dist(q.Stitch.Positions[i]), 0)
		look("hole in the flat", p.Stitch.Flat[i].Dist(q.Stitch.Flat[i]), 0)
	}
	return worst, what
}

func (c *StrapCut) length() float64 {
	if c == nil {
		return 0
	}
	return c.Length
}

// Rounding stays rounding: measures that differ by 1e-12 mm make plans that differ by
// nothing a maker could cut, also where a disc rests in a hollow of its own radius or
// against a wall higher than that.
func TestRoundingStaysRounding(t *testing.T) {
	rng := rand.New(rand.NewPCG(55, 89))
	noise := rand.New(rand.NewPCG(1, 3))
	compared := 0
	for range 60 {
		in := believable(rng)
		p, err := Compute(in)
		if err != nil {
			continue
		}
		q, err := Compute(jittered(noise, in, 1e-12))
		if err != nil {
			continue // a drain that had just room
		}
		if p.Stitch.Stitches != q.Stitch.Stitches || len(p.Body.Offsets) != len(q.Body.Offsets) {
			t.Errorf("%d stitches became %d", p.Stitch.Stitches, q.Stitch.Stitches)
			continue
		}
		compared++
		if d, what := farthest(p, q); d > 0.02 {
			t.Errorf("measures off by 1e-12 mm move the %s by %.4f mm: %+v", what, d, in.Sheath)
		}
	}
	if compared < 30 {
		t.Errorf("only %d plans were compared", compared)
	}
}
