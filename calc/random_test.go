package calc

import (
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
)

// randomInput makes a valid knife and sheath from anything a maker could
// measure, steps, guards and narrow handles included.
func randomInput(rng *rand.Rand) Input {
	mm := func(lo, hi float64) length.Length {
		return length.Length(math.Round((lo+(hi-lo)*rng.Float64())*16) / 16)
	}
	in := bar()
	in.Knife.Stations = nil
	x := length.Length(0)
	runs := 1 + rng.IntN(4)
	for range runs {
		for k := range 2 + rng.IntN(4) {
			if k > 0 {
				x += mm(3, 40)
			}
			top := mm(0, 8)
			in.Knife.Stations = append(in.Knife.Stations, knife.Station{
				At: x, Top: top, Bottom: top + mm(0, 45), Thick: mm(0, 25),
				Kind: knife.Kinds[rng.IntN(3)], Bevel: rng.Float64(), Round: mm(0, 6),
			})
		}
	}
	sh := &in.Sheath
	sh.Mouth = max(1, mm(0.2*x.MM(), x.MM()))
	sh.Leather, sh.Welt = mm(1, 5), mm(0, 8)
	sh.Clearance = mm(0, 5)
	sh.Gap = sh.Clearance + mm(0.5, 8)
	sh.HandleClearance, sh.PointRoom = mm(0, sh.Clearance.MM()), mm(0, 6)
	sh.Margin, sh.Sanding = mm(1, 8), mm(0, 3)
	sh.Blend = sh.Margin + sh.Sanding + mm(0.5, 80)
	sh.Ease, sh.Neutral = mm(-1, 3), rng.Float64()
	sh.MouthRise, sh.MouthRound = mm(0, 25), mm(0, 20)
	sh.Drain = mm(0, 6)
	in.Belt.Tab, in.Belt.Lap, in.Belt.Centred = mm(10, 50), mm(0, 30), rng.IntN(2) == 0
	in.Belt.Offset = mm(0, 20)
	in.Stitch.Pitch, in.Stitch.Back = mm(1, 8), rng.IntN(4)
	for range rng.IntN(3) {
		in.Fits = append(in.Fits, Fit{At: mm(0, x.MM()), By: mm(-3, 3), Reach: mm(1, 60), Paper: rng.IntN(2) == 0})
	}
	return in
}

func TestRandomKnivesAgainstBruteTwin(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	for done := 0; done < 4; {
		in := randomInput(rng)
		// Sixteenths are exact, so the twin sees each step at its very place.
		const h = 1.0 / 32
		p, err := Compute(in)
		if err != nil { // a tab wider than the sheath, a drain without room
			continue
		}
		done++
		tw := bruteCurves(in, h)
		compareTwin(t, "what the edge needs", p.at.edge, tw.edge, tw, 0.02)
		if p.at.hasHandle() {
			compareTwin(t, "what the handle needs", p.at.handle, tw.handle, tw, 0.02)
		}
		compareTwin(t, "stitch line in the plane", p.at.seam, tw.seam, tw, 0.05)
		compareTwin(t, "stitch line in the flat", p.at.stitch, tw.stitch, tw, 0.06)
		compareTwin(t, "cut line", p.at.cut, tw.cut, tw, 0.06)
	}
}

// checkSane looks for what must hold of any plan.
func checkSane(t *testing.T, p *Plan) {
	t.Helper()
	finite := func(what string, vs ...float64) {
		for _, v := range vs {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%s is %v in %+v", what, v, p.Input)
			}
		}
	}
	b, q := p.Body, p.Stitch
	finite("body", b.Length, b.Width, b.Area, b.TabLength, b.AreaWithTab, b.MouthStitch, b.MouthCut, b.Bend)
	finite("stitch", q.Line, q.PlaneLine, q.Pitch, q.Walk, q.Stack, p.Thread.Length, p.Thread.Ratio, p.Loop.Thread)
	finite("welt", p.Welt.Area)
	for _, l := range []curve.Line{p.Flat.Stitch, p.Flat.Glue, p.Flat.Cut, p.Flat.Outline, p.Plane.Stitch, p.Plane.Inner,
		p.Plane.Outer, p.Welt.Outline, q.Positions, q.Flat, p.Loop.Body, p.Loop.Lap, p.Flat.Mouth} {
		for _, v := range l {
			finite("curve", v.X, v.Y)
		}
	}
	for _, l := range []curve.Line{p.Flat.Stitch, p.Flat.Glue, p.Flat.Cut, q.Flat} {
		for _, v := range l {
			if v.Y < -1e-6 {
				t.Fatalf("the pattern reaches past the fold at %v in %+v", v, p.Input)
			}
		}
	}
	for _, c := range p.Checks {
		finite("check "+c.Name, c.Value, c.At)
		if c.Text(length.Millimetres) == "" || c.Text(length.Inches) == "" {
			t.Fatalf("check %s says nothing", c.Name)
		}
	}
	if q.Walk > q.Pitch+1e-9 {
		t.Errorf("divider setting %v is longer than the pitch %v", q.Walk, q.Pitch)
	}
	if q.Holes != q.Stitches+1 || len(q.Positions) != q.Holes || len(q.Flat) != q.Holes {
		t.Errorf("%d stitches, %d holes, %d and %d places", q.Stitches, q.Holes, len(q.Positions), len(q.Flat))
	}
	for i, x := range p.at.seam.X {
		if p.at.seam.Y[i] < p.at.inner.Y[i] {
			t.Fatalf("stitch line %v inside the welt's edge %v at %v", p.at.seam.Y[i], p.at.inner.Y[i], x)
		}
	}
}

func TestRandomKnivesAreSane(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 150 {
		in := randomInput(rng)
		p, err := Compute(in)
		if err != nil {
			continue
		}
		checkSane(t, p)
	}
}

// TestDividersLand: equal chords from the first hole land on the last.
func TestDividersLand(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 9))
	for range 40 {
		in := randomInput(rng)
		p, err := Compute(in)
		if err != nil {
			continue
		}
		q := p.Stitch
		last := q.Along[len(q.Along)-1]
		within(t, "first hole", q.Along[0], in.Stitch.First.MM(), 1e-6)
		within(t, "last hole", last, q.Laid-in.Stitch.Last.MM(), 1e-4)
		for i := 1; i < len(q.Positions); i++ {
			within(t, "chord", q.Positions[i].Dist(q.Positions[i-1]), q.Walk, 1e-6)
		}
	}
}

// FuzzPlan: any numbers inside their ranges give a plan or a line of refusal.
func FuzzPlan(f *testing.F) {
	f.Add(uint64(1), uint64(2))
	f.Fuzz(func(t *testing.T, a, b uint64) {
		p, err := Compute(randomInput(rand.New(rand.NewPCG(a, b))))
		if err == nil {
			checkSane(t, p)
		}
	})
}
