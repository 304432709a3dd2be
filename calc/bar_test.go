package calc

import (
	"chape/calc/curve"
	"math"
	"testing"

	"chape/calc/knife"
)

// bar is the worked case of the definitions: a square bar.
func bar() Input {
	st := knife.Station{Bottom: 30, Thick: 6, Kind: knife.Slab}
	end := st
	end.At = 160
	return Input{
		Knife: knife.Knife{Stations: []knife.Station{st, end}},
		Sheath: Sheath{Mouth: 120, Leather: 3, Welt: 4, Plies: 1, Clearance: 1.5, HandleClearance: 1, Gap: 5, Margin: 5,
			Blend: 12, Neutral: 0.5},
		Belt:   Belt{Width: 40, Thickness: 4, Ease: 4, Row: 12, Lap: 8, Tab: 20, Centred: true},
		Stitch: Stitch{Pitch: 4, Thread: 0.8, First: 4, Last: 4, Back: 2, Tail: 150, Waste: 0.05},
		Limits: DefaultLimits(),
	}
}

func mustPlan(t testing.TB, in Input) *Plan {
	t.Helper()
	p, err := Compute(in)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// within is the one tolerance check of the tests.
func within(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tol {
		t.Errorf("%s = %.6f, want %.6f ± %g", what, got, want, tol)
	}
}

// TestBar works the square bar by hand: the taut string over a box, straight
// welt, quarter circle at the point end.
func TestBar(t *testing.T) {
	p := mustPlan(t, bar())
	half := 3 + 30 + math.Hypot(1.5, 1) + 3.5 + math.Pi/4*3
	for _, o := range p.Body.Offsets {
		if o.At >= 0 {
			within(t, "half-width to the stitch line", o.Stitch, half, 1e-6)
			within(t, "half-width to the cut line", o.Cut, half+5, 1e-6)
			within(t, "half-width to the glue line", o.Glue, half-3.5, 1e-6)
		}
	}
	within(t, "bend", p.Body.Bend, 2.35619, 1e-5)
	within(t, "tab length", p.Body.TabLength, 90.99557, 1e-5)
	within(t, "stack", p.Stitch.Stack, 10, 0)
	within(t, "plane line", p.Stitch.PlaneLine, 120+math.Pi/2*5+30, 0.01)
	within(t, "pitch", p.Stitch.Pitch, 4.0501, 5e-4)
	if p.Stitch.Stitches != 37 || p.Stitch.Holes != 38 {
		t.Errorf("%d stitches, %d holes, want 37, 38", p.Stitch.Stitches, p.Stitch.Holes)
	}
	within(t, "half-width at the mouth", p.Body.MouthStitch, 40.65897, 1e-5)
	within(t, "cut line at the mouth", p.Body.MouthCut, 45.65897, 1e-5)
	squeeze := p.Checks[0]
	within(t, "squeeze", squeeze.Value, -0.02306, 1e-5)
	within(t, "squeeze at", squeeze.At, 0, 0)
	within(t, "thread guard", p.Checks[2].Value, 5-0.9, 1e-9)
	within(t, "thread guard at", p.Checks[2].At, -5, 0) // the run lies as near as the rest
	end := 2 + math.Pi/4*3
	within(t, "end of the seam", p.Flat.EndY, end, 1e-12)
	within(t, "room", p.at.room.At(60), 34.80278, 1e-5)
	within(t, "need", p.at.need.At(60), 34, 1e-9)
}

// The thresholds that hold unless the user changes them: common practice, no source.
func TestThresholds(t *testing.T) {
	want := Limits{
		Loose: -2.5, Snug: 1.5, Tight: 3, GatherEasy: 0.06, GatherMost: 0.18, GuardNote: 3, GuardWarn: 1.5,
		Drum: 50, ArmSpans: 3400, HandleLeft: 50, GatherReach: 20, FoldShare: 0.5, HeldOff: 1, StrapClear: 3, Unlikely: 2,
	}
	if got := DefaultLimits(); got != want {
		t.Errorf("DefaultLimits() = %+v, want %+v", got, want)
	}
}

// Two holes need one and a half drills between their centres, or the leather between
// them tears (common practice, no source).
func TestHolesTooClose(t *testing.T) {
	for _, c := range []struct {
		apart float64
		want  bool
	}{{2.69, true}, {2.71, false}} {
		holes := []sewn{{Circle: Circle{curve.Vec{X: 0, Y: 10}, 1.8}}, {Circle: Circle{curve.Vec{X: c.apart, Y: 10}, 1.8}}}
		if _, _, got := tooClose(holes); got != c.want {
			t.Errorf("1.8 mm holes %v mm apart: too close %v, want %v", c.apart, got, c.want)
		}
	}
}
