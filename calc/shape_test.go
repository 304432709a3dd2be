package calc

import (
	"math"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/length"
)

// TestMouth: a rise adds half of it over the mouth's width to each half, a
// rounded corner takes (1 - π/4) r² off, and neither moves the stitch line.
func TestMouth(t *testing.T) {
	plain := mustPlan(t, bar())
	wide := plain.Body.MouthCut
	in := bar()
	in.Sheath.MouthRise = 20
	risen := mustPlan(t, in)
	within(t, "area with a rise", risen.Body.Area, plain.Body.Area+20*wide, 0.05)
	within(t, "length with a rise", risen.Body.Length, plain.Body.Length+20, 1e-9)
	within(t, "height of the mouth half-way", risen.at.mouthX(wide/2), 130, 1e-9)
	in = bar()
	in.Sheath.MouthRound = 4
	round := mustPlan(t, in)
	within(t, "area with round corners", round.Body.Area, plain.Body.Area-2*(1-math.Pi/4)*16, 0.02)
	within(t, "stitch line with round corners", round.Stitch.Line, plain.Stitch.Line, 0)

	in.Sheath.MouthRound = 10
	round = mustPlan(t, in)
	within(t, "area with larger corners", round.Body.Area, plain.Body.Area-2*(1-math.Pi/4)*100, 0.05)
	within(t, "stitch line with larger corners", round.Stitch.Line, plain.Stitch.Line, 0)
}

// TestReliefHoles: centres on the mouth line, one radius outside the tab, the
// tab's neck as wide as the tab.
func TestReliefHoles(t *testing.T) {
	in := orchard()
	in.Sheath.Leather = 4
	p := mustPlan(t, in)
	near, far := p.Loop.Relief[0], p.Loop.Relief[1]
	within(t, "diameter", near.Diameter, 4, 0)
	within(t, "near hole", near.Centre.Y, 8-2, 1e-12)
	within(t, "far hole", far.Centre.Y, 8+30+2, 1e-12)
	for _, hole := range p.Loop.Relief {
		within(t, "hole on the mouth line", hole.Centre.X, p.at.mouthX(hole.Centre.Y), 1e-12)
	}
	// The outline stays out of the holes and touches their rims.
	touched := [2]int{}
	for _, v := range p.Flat.Outline {
		for i, hole := range p.Loop.Relief {
			d := v.Dist(hole.Centre) - hole.Diameter/2
			if d < -1e-6 {
				t.Errorf("the outline runs into a relief hole at %v", v)
			} else if d < 1e-6 {
				touched[i]++
			}
		}
	}
	if touched[0] < 20 || touched[1] < 20 {
		t.Errorf("the outline follows the rims at %v points only", touched)
	}
	in.Sheath.Leather = 2
	within(t, "least diameter", mustPlan(t, in).Loop.Relief[0].Diameter, 3, 0)
}

// TestTab: the outline with tab encloses the area said, but for the half
// holes and the slope of the mouth beside the tab.
func TestTab(t *testing.T) {
	p := mustPlan(t, bar())
	holes := math.Pi * 1.5 * 1.5 // two half ones of 3 mm
	within(t, "area of the outline", math.Abs(p.Flat.Outline.Area()), p.Body.AreaWithTab-holes, 0.1)
	_, hi := p.Flat.Outline.Bounds()
	within(t, "top of the tab", hi.X, 120+90.99557, 1e-5)
	within(t, "tab in the middle", p.Loop.Offset, (40.65897-20)/2, 1e-5)
	// 20 mm take whole stitches of 4 with 4 or more at both sides: three.
	if p.Loop.Rows != 1 || p.Loop.Stitches != 3 || p.Loop.Holes != 4 {
		t.Errorf("loop: %d rows of %d stitches, %d holes, want 1, 3, 4", p.Loop.Rows, p.Loop.Stitches, p.Loop.Holes)
	}
	within(t, "loop thread", p.Loop.Thread, 1.05*2*((3+4)*4+(4+4)*6)+2*150, 1e-9)
	in := bar()
	in.Belt.Lap = 16
	l := mustPlan(t, in).Loop
	if l.Rows != 2 || l.Holes != 8 {
		t.Errorf("loop with a long lap: %d rows, %d holes, want 2, 8", l.Rows, l.Holes)
	}
	within(t, "second row below the first", l.RowX[0]-l.RowX[1], 12, 1e-12)
	// Folded over the belt, each hole of the lap meets its hole in the body:
	// the way round is the tab less what lies flat.
	for i := range l.RowX {
		within(t, "lap row", l.LapX[i]-l.Start-l.Bends[1], l.Bends[0]+(l.Start-l.RowX[i]), 1e-9)
	}
}

// TestMeasured: holes are laid out on the line as measured, the computed line
// scaled to it.
func TestMeasured(t *testing.T) {
	in := bar()
	in.Stitch.Measured = 200
	p := mustPlan(t, in)
	scale := 200 / p.Stitch.PlaneLine
	if p.Stitch.Stitches != 48 {
		t.Errorf("%d stitches, want 192/4 = 48", p.Stitch.Stitches)
	}
	within(t, "pitch", p.Stitch.Pitch, 4, 1e-9)
	within(t, "first hole", p.Stitch.Positions[0].X, 120-4/scale, 1e-6)
	within(t, "last hole above the fold", p.Stitch.Positions[48].Y, 4/scale, 1e-6)
	within(t, "setting on the real line", p.Stitch.Walk/scale, p.Stitch.Positions[1].Dist(p.Stitch.Positions[0]), 1e-6)
	within(t, "last hole along the line", p.Stitch.Along[48], 196, 1e-6)
}

// TestStitchesRoundHalvesUp: 36.5 pitches are 37 stitches; never fewer than one.
func TestStitchesRoundHalvesUp(t *testing.T) {
	for _, c := range []struct {
		measured, pitch length.Length
		want            int
	}{{8 + 36.5*4, 4, 37}, {8 + 36.4*4, 4, 36}, {8 + 36.5*2, 2, 37}, {9, 4, 1}} {
		in := bar()
		in.Stitch.Measured, in.Stitch.Pitch = c.measured, c.pitch
		if got := mustPlan(t, in).Stitch.Stitches; got != c.want {
			t.Errorf("%v mm at %v: %d stitches, want %d", c.measured-8, c.pitch, got, c.want)
		}
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		change func(*Input)
		want   string
	}{
		{func(in *Input) { in.Stitch.First, in.Stitch.Last = 100, 60 }, "make first and last shorter"},
		{func(in *Input) { in.Stitch.Pitch = 0.001 }, "make the pitch longer"},
		{func(in *Input) { in.Sheath.Ease = -9 }, "raise ease by at least 4.6"},
		{func(in *Input) { in.Fits = []Fit{{At: 60, By: -50, Reach: 30}} }, "raise ease by at least"},
		{func(in *Input) { in.Knife.Stations = in.Knife.Stations[:1] }, "at least two marks"},
	} {
		in := bar()
		c.change(&in)
		if _, err := Compute(in); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("Compute = %v, want an error with %q", err, c.want)
		}
	}
	in := bar()
	in.Sheath.Ease = -4.35 // what the end of the seam can just bear: 2 + 3π/4
	within(t, "end of the seam", mustPlan(t, in).Flat.EndY, 2+math.Pi/4*3-4.35, 1e-12)
}

// TestFitIsLevelBeforeThePoint: left of the point a correction keeps its value.
func TestFitIsLevelBeforeThePoint(t *testing.T) {
	in := bar()
	in.Fits = []Fit{{At: 0, By: 2, Reach: 4}}
	p, plain := mustPlan(t, in), mustPlan(t, bar())
	within(t, "end of the seam", p.Flat.EndY, plain.Flat.EndY+2, 1e-12)
	within(t, "half-width beyond the point", p.at.stitch.Y[0], plain.at.stitch.Y[0]+2, 1e-9)
}

// TestAcross cuts the bar: the inside runs over the box and along the welt.
func TestAcross(t *testing.T) {
	a := mustPlan(t, bar()).Across(60)
	want := curve.Line{{}, {Y: 3}, {X: 30, Y: 3}, {X: 31.5, Y: 2}, {X: 40, Y: 2}}
	if len(a.Inside) != len(want) {
		t.Fatalf("the inside is %v, want %v", a.Inside, want)
	}
	for i := range want {
		if a.Inside[i].Dist(want[i]) > 1e-9 {
			t.Errorf("corner %d of the inside = %v, want %v", i, a.Inside[i], want[i])
		}
	}
}
