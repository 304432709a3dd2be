package compare

import (
	"math"
	"slices"
	"testing"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
)

func within(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tol {
		t.Errorf("%s = %v, want %v ± %v", what, got, want, tol)
	}
}

// By hand: marks 0, 60, 100, 140 onto 0, 90, 120, 160.
func TestMapByHand(t *testing.T) {
	from, to := Marks{0, 60, 100, 140}, Marks{0, 90, 120, 160}
	for _, c := range [][2]float64{{-5, -5}, {0, 0}, {30, 45}, {60, 90}, {80, 105}, {100, 120}, {120, 140}, {140, 160}, {150, 170}} {
		within(t, "Map", Map(c[0], from, to), c[1], 1e-12)
		within(t, "Map back", Map(c[1], to, from), c[0], 1e-12)
	}
	// Two marks that are one: what lies at them goes to the first.
	one := Marks{0, 60, 60, 140}
	for _, c := range [][2]float64{{60, 90}, {61, 120.5}, {100, 140}} {
		within(t, "Map with two marks in one", Map(c[0], one, to), c[1], 1e-12)
	}
}

func fit(at, by, reach float64) calc.Fit {
	return calc.Fit{At: length.Length(at), By: length.Length(by), Reach: length.Length(reach)}
}

// A correction 12 short of the mouth with reach 10 stays 12 short and 10 wide where
// both handles are alike; one on the blade grows with the blade.
func TestCarryByHand(t *testing.T) {
	from, to := Marks{0, 60, 100, 140}, Marks{0, 90, 130, 170}
	for _, c := range []struct{ in, want calc.Fit }{
		{fit(128, 1.5, 10), fit(158, 1.5, 10)},
		{fit(30, -1, 20), fit(45, -1, 30)},
		{fit(60, 2, 20), fit(90, 2, 25)}, // 40..80 becomes 60..110
	} {
		if got := Carry(c.in, from, to); got != c.want {
			t.Errorf("Carry(%v) = %v, want %v", c.in, got, c.want)
		}
	}
	if got := Carry(fit(20, 1, 20), from, Marks{0, 3, 3, 50}); got.Reach < leastReach {
		t.Errorf("carried into no room the reach is %v", got.Reach)
	}
}

func TestMarksOf(t *testing.T) {
	st := func(at, bottom length.Length, kind knife.Kind) knife.Station {
		return knife.Station{At: at, Bottom: bottom, Thick: 4, Kind: kind, Bevel: 1}
	}
	k := knife.Knife{Stations: []knife.Station{st(0, 1, knife.Blade), st(70, 30, knife.Blade), st(100, 30, knife.Blade),
		st(100, 26, knife.Slab), st(200, 30, knife.Oval)}}
	m, err := MarksOf(k, 140)
	if err != nil || m.Front != 100 || m.Mouth != 140 || m.Deepest < 55 || m.Deepest > 70 {
		t.Errorf("MarksOf = %+v, %v", m, err)
	}
	if m, _ = MarksOf(k, 90); m.Front != 90 || m.Mouth != 90 {
		t.Errorf("without a handle inside: %+v", m)
	}
	bar := knife.Knife{Stations: []knife.Station{st(0, 20, knife.Slab), st(100, 20, knife.Slab)}}
	if m, err = MarksOf(bar, 80); err != nil || m != (Marks{0, 0, 80, 80}) {
		t.Errorf("of a bar: %+v, %v", m, err)
	}
	if _, err = MarksOf(knife.Knife{}, 80); err == nil {
		t.Error("marks of no knife")
	}
}

// An old sheath 4 wider at 100 and 6 narrower at 140 than a plan that is level at 40.
func TestDifferencesByHand(t *testing.T) {
	old := curve.Graph{X: []float64{0, 60, 100, 140}, Y: []float64{40, 40, 44, 34}}
	plan := curve.Graph{X: []float64{-10, 160}, Y: []float64{40, 40}}
	ds := At(old, plan, []float64{-5, 0, 80, 100, 120, 140, 150})
	want := []Difference{{0, 40, 40, 0}, {80, 42, 40, 2}, {100, 44, 40, 4}, {120, 39, 40, -1}, {140, 34, 40, -6}}
	if len(ds) != len(want) {
		t.Fatalf("At gives %v, want %v", ds, want)
	}
	for i := range want {
		if ds[i] != want[i] {
			t.Errorf("At gives %v, want %v", ds[i], want[i])
		}
	}
	short, over, isShort, isOver := Most(ds)
	if !isShort || !isOver || short.At != 100 || over.At != 140 {
		t.Errorf("most short %v, most over %v", short, over)
	}
	if _, _, isShort, isOver = Most(ds[:1]); isShort || isOver {
		t.Error("no difference is short or over")
	}
	if g := Curves(old, plan); len(g.X) != 4 || g.At(80) != 2 {
		t.Errorf("Curves = %v", g)
	}
}

// By hand: marks 0, 60, 100, 140 onto 0, 90, 120, 160. What was 4 at 100 is 4 at 120, half
// way between is half way; where the marks leave no room the last place stays.
func TestCarryCurveByHand(t *testing.T) {
	from, to := Marks{0, 60, 100, 140}, Marks{0, 90, 120, 160}
	g := CarryCurve(curve.Graph{X: []float64{60, 80, 100, 140}, Y: []float64{0, 2, 4, -6}}, from, to)
	if want := (curve.Graph{X: []float64{90, 105, 120, 160}, Y: []float64{0, 2, 4, -6}}); !slices.Equal(g.X, want.X) || !slices.Equal(g.Y, want.Y) {
		t.Errorf("carried to %v, want %v", g, want)
	}
	g = CarryCurve(curve.Graph{X: []float64{50, 60, 80, 100}, Y: []float64{1, 2, 3, 4}}, from, Marks{0, 90, 90, 160})
	if !slices.Equal(g.X, []float64{75, 90}) || !slices.Equal(g.Y, []float64{1, 4}) {
		t.Errorf("carried into no room: %v", g)
	}
}

// A swell of 4 over the handle and a dip at the mouth, as a curve: the corrections
// add up to it, whole and by half.
func TestCorrectionsAddUp(t *testing.T) {
	var d curve.Graph
	for x := 0.0; x <= 140; x++ {
		d.X = append(d.X, x)
		d.Y = append(d.Y, 4*math.Exp(-math.Pow((x-95)/22, 2))-3/(1+math.Exp((130-x)/6)))
	}
	for _, part := range []float64{1, 0.5} {
		fits, off := Corrections(d, part, 0, 140, 0.3)
		if off > 0.3 || len(fits) == 0 || len(fits) > mostCorrections {
			t.Errorf("%d corrections, off by %v", len(fits), off)
		}
		for x := 0.0; x <= 140; x += 3 {
			within(t, "sum", Sum(fits, x), part*d.At(x), 0.3)
		}
	}
}

// What corrections are made of comes back as they are: one of 2 at 60 with reach 30.
func TestCorrectionsOfOneCorrection(t *testing.T) {
	var d curve.Graph
	for x := 0.0; x <= 120; x++ {
		d.X, d.Y = append(d.X, x), append(d.Y, Sum([]calc.Fit{fit(60, 2, 30)}, x))
	}
	fits, off := Corrections(d, 1, 0, 120, 0.01)
	if len(fits) != 1 || off > 0.01 || fits[0] != fit(60, 2, 30) {
		t.Errorf("Corrections = %v, off by %v", fits, off)
	}
}

// They add up in the plan as well: half-widths of a plan with the corrections are
// the old ones, where nothing bridges a hollow.
func TestCorrectionsInAPlan(t *testing.T) {
	st := knife.Station{Bottom: 30, Thick: 6, Kind: knife.Slab}
	end := st
	end.At = 160
	in := calc.Input{
		Knife: knife.Knife{Stations: []knife.Station{st, end}},
		Sheath: calc.Sheath{Mouth: 120, Leather: 3, Welt: 4, Plies: 1, Clearance: 1.5, Gap: 5, Margin: 5,
			Blend: 12, Neutral: 0.5},
		Belt:   calc.Belt{Loop: calc.NoLoop},
		Stitch: calc.Stitch{Pitch: 4, Thread: 0.8, First: 4, Last: 4, Back: 2, Tail: 150, Waste: 0.05},
		Limits: calc.DefaultLimits(),
	}
	plan := func(fits []calc.Fit) *calc.Plan {
		in.Fits = fits
		p, err := calc.Compute(in)
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	half := func(p *calc.Plan) curve.Graph {
		var g curve.Graph
		for _, o := range p.Body.Offsets {
			if o.Sewn && o.At >= 0 {
				g.X, g.Y = append(g.X, o.At), append(g.Y, o.Stitch)
			}
		}
		return g
	}
	was := plan([]calc.Fit{fit(70, 3, 40)})
	is := plan(nil)
	fits, off := Corrections(Curves(half(was), half(is)), 1, 0, 120, 0.2)
	now := half(plan(fits))
	for _, d := range At(half(was), now, now.X) {
		within(t, "half-width", d.Plan, d.Measured, off+0.05)
	}
}

func TestNothingToCorrect(t *testing.T) {
	flat := curve.Graph{X: []float64{0, 100}, Y: []float64{0, 0}}
	if fits, off := Corrections(flat, 1, 0, 100, 0.1); len(fits) != 0 || off != 0 {
		t.Errorf("Corrections of nothing = %v, %v", fits, off)
	}
	if fits, _ := Corrections(curve.Graph{}, 1, 0, 100, 0.1); fits != nil {
		t.Errorf("Corrections without a curve = %v", fits)
	}
	if fits, _ := Corrections(flat, 1, 90, 92, 0.1); fits != nil {
		t.Errorf("Corrections over 2 mm = %v", fits)
	}
}

// Five sheaths by hand. On the handle +1, +2, +1.5 (as 1 and 0.5), 0, +3: median
// 1.5, four had one. Up to the deepest place one of five: nothing to offer.
func TestHabitsByHand(t *testing.T) {
	m := Marks{0, 60, 100, 140}
	past := []Tried{
		{m, []calc.Fit{fit(120, 1, 20)}},
		{m, []calc.Fit{fit(130, 2, 15), fit(20, 1, 20)}},
		{m, []calc.Fit{fit(110, 1, 20), fit(120, 0.5, 20)}},
		{m, nil},
		{Marks{0, 80, 120, 200}, []calc.Fit{fit(160, 3, 30)}},
	}
	hs := Habits(past)
	if got, want := hs[ToMouth], (Habit{ToMouth, 1.5, 4, 5, 0.5, 20}); got != want {
		t.Errorf("on the handle %+v, want %+v", got, want)
	}
	if got, ok := hs[ToMouth].Offer(Marks{0, 50, 90, 150}); !ok || got != fit(120, 1.5, 20) {
		t.Errorf("Offer = %v, %v", got, ok)
	}
	if h := hs[ToDeepest]; h.By != 0 || h.With != 1 || h.Of != 5 {
		t.Errorf("up to the deepest place %+v", h)
	}
	for _, r := range []Region{ToDeepest, ToFront} {
		if f, ok := hs[r].Offer(m); ok {
			t.Errorf("%v: offers %v", r, f)
		}
	}
	for _, h := range Habits(nil) {
		if _, ok := h.Offer(m); ok || h.Of != 0 {
			t.Errorf("of no sheaths %+v", h)
		}
	}
}
