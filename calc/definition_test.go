package calc

import (
	"math"
	"testing"

	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
)

// The lines in the plane round the bar by hand: B = 30, c = 1.5, g = 5, m = 5, no room at
// the point. Before it, each line is a quarter circle round the corner (0, 30).
func TestLinesRoundTheBar(t *testing.T) {
	s := mustPlan(t, bar()).at
	for _, x := range []float64{0, 40, 120} {
		within(t, "what the edge needs", s.edge.At(x), 30, 0)
		within(t, "welt's inner edge", s.inner.At(x), 31.5, 1e-9)
		within(t, "stitch line", s.seam.At(x), 35, 1e-9)
		within(t, "welt's outer edge", s.outer.At(x), 40, 1e-9)
	}
	for _, x := range []float64{-1, -3, -4.5} {
		within(t, "stitch line round the corner", s.seam.At(x), 30+math.Sqrt(25-x*x), 0.01)
	}
	for _, x := range []float64{-2, -6, -9} {
		within(t, "outer edge round the corner", s.outer.At(x), 30+math.Sqrt(100-x*x), 0.02)
	}
	within(t, "inner edge before the welt's end", s.inner.At(-1.2), 30+math.Sqrt(1.5*1.5-1.2*1.2), 0.02)
	within(t, "inner edge past the welt's end", s.inner.At(-1.6), 0, 0)
	within(t, "flat line before the point: half the welt, the plane line, the bend", s.stitch.At(-4), 2+33+math.Pi/4*3, 0.02)
	// The welt's strip: a rectangle with a rounded corner less another, closed at the fold.
	round := 1 - math.Pi/4
	want := (120+10)*40 - round*100 - ((120+1.5)*31.5 - round*1.5*1.5)
	within(t, "area of the welt", mustPlan(t, bar()).Welt.Area, want, 0.05)
}

// What the edge needs never narrows towards the mouth, and runs on under the handle;
// what the handle needs begins with it. By hand on a blade that is deepest, 30, at 40 and
// 24 at the handle of 26.
func TestWhatEdgeAndHandleNeed(t *testing.T) {
	in := bar()
	st := func(x, d length.Length, k knife.Kind) knife.Station {
		return knife.Station{At: x, Bottom: d, Thick: 4, Kind: k, Bevel: 1}
	}
	in.Knife.Stations = []knife.Station{st(0, 10, knife.Blade), st(40, 30, knife.Blade), st(90, 24, knife.Blade), st(90, 26, knife.Slab), st(200, 26, knife.Slab)}
	s := mustPlan(t, in).at
	for x, want := range map[float64]float64{0: 10, 40: 30, 60: 30, 90: 30, 119: 30} {
		within(t, "what the edge needs", s.edge.At(x), want, 1e-9)
	}
	within(t, "where the handle begins", s.handle.X[0], 90, 0)
	within(t, "what the handle needs", s.handle.At(100), 26, 1e-9)
	within(t, "room before the point", s.edge.X[0], 0, 1e-12)
	in.Sheath.PointRoom = 2.5
	s = mustPlan(t, in).at
	within(t, "room before the point", s.edge.X[0], -2.5, 1e-12)
	within(t, "what the edge needs before the point", s.edge.Y[0], 10, 1e-12)
	// A bevel section whose bottom hangs lower than it is deep: the lower counts.
	in.Knife.Stations[1].Top, in.Knife.Stations[1].Bottom = 2, 32
	s = mustPlan(t, in).at
	within(t, "the edge itself, where that is lower", s.edge.At(40), 32-s.line.At(40), 1e-9)
}

// The string by hand: over a square section of 6 × 30 and a welt of 4 down to 1.5 beside
// it; over one thinner than the welt it lies straight; over a wedge it leaves the spine's
// corner for the welt.
func TestStringByHand(t *testing.T) {
	var s tautString
	for _, c := range []struct {
		what string
		sec  []knife.Section
		half float64
		last curve.Vec
		want float64
	}{
		{"square", []knife.Section{{Kind: knife.Slab, Bottom: 30, Thick: 6}}, 2, curve.Vec{X: 31.5, Y: 2}, 3 + 30 + math.Hypot(1.5, 1)},
		{"square, to its own edge", []knife.Section{{Kind: knife.Slab, Bottom: 30, Thick: 6}}, 2, curve.Vec{X: 30, Y: 2}, 3 + 30 + 1},
		{"thin", []knife.Section{{Kind: knife.Slab, Bottom: 30, Thick: 2}}, 2, curve.Vec{X: 31.5, Y: 2}, 2 + 31.5},
		{"wedge", []knife.Section{{Kind: knife.Blade, Bottom: 30, Thick: 8, Bevel: 1}}, 2, curve.Vec{X: 32, Y: 2}, 4 + math.Hypot(32, 2)},
		{"wedge off the fold", []knife.Section{{Kind: knife.Blade, Top: 3, Bottom: 33, Thick: 8, Bevel: 1}}, 2, curve.Vec{X: 35, Y: 2}, 2 + math.Hypot(3, 2) + math.Hypot(32, 2)},
		{"no knife", nil, 2, curve.Vec{X: 10, Y: 2}, 2 + 10},
		{"a step: both", []knife.Section{{Kind: knife.Slab, Bottom: 20, Thick: 12}, {Kind: knife.Slab, Bottom: 30, Thick: 6}}, 2, curve.Vec{X: 31, Y: 2},
			6 + 20 + math.Hypot(10, 3) + math.Hypot(1, 1)},
	} {
		within(t, c.what, s.over(c.half, c.sec, c.last), c.want, 1e-9)
	}
}

// Bend allowance where it stands in the plan: a quarter turn for a half, half a turn for
// the tab and each arm of the strap, each of the neutral fibre, worked with k = 0.4.
func TestNeutralFibre(t *testing.T) {
	in := bladed()
	in.Sheath.Neutral, in.Sheath.Leather = 0.4, 2.5
	in.Strap = snap()
	p := mustPlan(t, in)
	within(t, "bend of a half", p.Body.Bend, math.Pi/2*0.4*2.5, 1e-12)
	within(t, "turn of the tab", p.Loop.Bends[1]-p.Loop.Bends[0], math.Pi*(2+0.4*2.5), 1e-12)
	within(t, "rise of the tab", p.Loop.Bends[0], 44-12-2, 1e-12)
	within(t, "tab", p.Body.TabLength, 30+math.Pi*3+42+8, 1e-12)
	within(t, "arm", p.Strap.ArmBack, 30+6+math.Pi*0.4*2.4, 1e-9)
	within(t, "paper hangs loose by", in.Sheath.Looseness(Paper).MM(), math.Pi/2*0.4*2.4, 1e-12)
}

// Thread by hand: 37 stitches of p', 38 holes, 2 sewn twice at each end, a stack of 10,
// tails of 150 and 5 % of waste, twice for two strands.
func TestThreadByHand(t *testing.T) {
	p := mustPlan(t, bar())
	pitch := p.Stitch.Pitch
	one := (37+4)*pitch + (38+4)*10
	within(t, "thread", p.Thread.Length, 1.05*2*one+300, 1e-9)
	within(t, "ratio", p.Thread.Ratio, 2*one/(37*pitch), 1e-12)
	// A stack as thick as the pitch: about four times the seam (common practice, no source).
	q := Stitching{Stitches: 1000, Holes: 1001, Pitch: 4, Stack: 4}
	within(t, "rule of thumb", seamThread(q, Stitch{}).Ratio, 4, 0.01)
	// Three layers of 8 oz at 6 an inch take 6.5 times the seam (sources: as TestThreadUse).
	q.Pitch, q.Stack = 25.4/6, 3*25.4/8
	within(t, "welted", seamThread(q, Stitch{}).Ratio, 6.5, 0.01)
}

// The first hole of the seam lies first from the mouth, the last as far before the fold,
// along the line; flat and plane places share their x, and on the run their share of it.
func TestHolesLieWhereSaid(t *testing.T) {
	p := mustPlan(t, bar())
	q := p.Stitch
	n := len(q.Positions) - 1
	within(t, "first hole", q.Positions[0].X, 116, 1e-9)
	within(t, "first hole, u", q.Positions[0].Y, 35, 1e-9)
	within(t, "last hole", q.Positions[n].Y, 4, 1e-6)
	within(t, "last hole, x", q.Positions[n].X, -5, 1e-9)
	run, flatRun := p.at.seam.Y[0], p.at.stitch.Y[0]-p.Flat.EndY
	for i, h := range q.Positions {
		f := q.Flat[i]
		if f.X != h.X && math.Abs(f.X-h.X) > 1e-9 {
			t.Errorf("hole %d: x %v in the flat, %v in the plane", i+1, f.X, h.X)
		}
		if h.X == -5 && h.Y < run-1e-9 {
			within(t, "share of the run", (f.Y-p.Flat.EndY)/flatRun, h.Y/run, 1e-9)
		}
	}
	for i := 1; i < len(q.Along); i++ {
		if d := q.Along[i] - q.Along[i-1]; d < q.Walk-1e-9 {
			t.Errorf("holes %d and %d are %v apart along the line, less than the chord %v", i, i+1, d, q.Walk)
		}
	}
}
