package nest

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
)

// somePlan is the plan of an invented knife of random dimensions.
func somePlan(t *testing.T, seed uint64) *calc.Plan {
	t.Helper()
	r := rand.New(rand.NewPCG(seed, 3))
	u := func(lo, hi float64) length.Length { return length.Length(math.Round(10*(lo+(hi-lo)*r.Float64())) / 10) }
	o := knife.Outline{
		Point: knife.Points[r.IntN(len(knife.Points))], Blade: u(80, 160), Depth: u(24, 40), Spine: u(2.5, 5),
		Front: knife.Fronts[r.IntN(len(knife.Fronts))], FrontLength: u(6, 14), FrontDepth: u(28, 36), FrontThick: u(10, 16),
		Handle: u(95, 120), HandleDepth: u(24, 30), HandleThick: u(16, 22), Swell: u(0, 3), Section: knife.Oval,
	}
	st, err := o.Stations()
	if err != nil {
		t.Fatal(err)
	}
	p, err := calc.Compute(calc.Input{
		Knife: knife.Knife{Stations: st},
		Sheath: calc.Sheath{Mouth: o.Blade + 40, Leather: 3.2, Welt: 6.4, Plies: 2, Clearance: 3, Gap: 7.5, Margin: 5,
			Sanding: 1.5, Blend: 40, Neutral: 0.5, MouthRound: u(0, 8), MouthRise: u(0, 15)},
		Belt:   calc.Belt{Width: 38, Thickness: 4, Ease: 4, Tab: 26, Row: 12, Lap: 20, Centred: true},
		Stitch: calc.Stitch{Pitch: 4, Thread: 0.8, First: 4, Last: 4, Back: 2, Tail: 150, Waste: 0.05},
		Limits: calc.DefaultLimits(),
	})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// The parts of a plan come with its own areas, and can be placed: body and two
// plies of an odd offcut with a flaw, the fold along the grain.
func TestPartsOfAPlan(t *testing.T) {
	offcut := Piece{Thickness: 3.2, Fixed: true, Grain: 0.2, Within: 0.3,
		Outline: curve.Line{{X: 0, Y: 20}, {X: 300, Y: -10}, {X: 420, Y: 60}, {X: 410, Y: 330}, {X: 120, Y: 380}, {X: 10, Y: 250}}}
	offcut.Flaws = []curve.Line{Round(curve.Vec{X: 330, Y: 300}, 15)}
	for seed := range uint64(10) {
		p := somePlan(t, seed)
		k := Task{Gap: 3, Parts: PartsOf(p), Pieces: []Piece{offcut}}
		if err := k.Validate(); err != nil {
			t.Errorf("plan %d: %v", seed, err)
			continue
		}
		if w := k.Parts[1]; w.Count != 2 || math.Abs(w.Thickness-3.2) > 1e-9 || math.Abs(math.Abs(w.Outline.Area())-p.Welt.Area) > 0.01*p.Welt.Area {
			t.Errorf("plan %d: welt of %.0f mm², %d of %v mm, want %.0f", seed, w.Outline.Area(), w.Count, w.Thickness, p.Welt.Area)
		}
		if a := math.Abs(k.Parts[0].Outline.Area()); math.Abs(a-p.Body.AreaWithTab) > 0.01*p.Body.AreaWithTab {
			t.Errorf("plan %d: body of %.0f mm², want %.0f", seed, a, p.Body.AreaWithTab)
		}
		if seed > 2 {
			continue
		}
		r := place(context.Background(), k, some(15), nil)
		check(t, fmt.Sprint("plan ", seed), k, r)
		if !r.Fits() {
			t.Errorf("plan %d does not fit: %v", seed, r.Missing)
		}
	}
}

// By hand: half-widths 10, 20, 0 at 0, 30, 60 enclose 2·(450 + 300) = 1500.
func TestHalves(t *testing.T) {
	l, err := Halves([]curve.Vec{{X: 0, Y: 10}, {X: 30, Y: 20}, {X: 60, Y: 0}})
	if err != nil || math.Abs(l.Area()-1500) > 1e-9 || len(l) != 5 {
		t.Errorf("Halves = %v of %v, %v", l, l.Area(), err)
	}
	for _, bad := range [][]curve.Vec{nil, {{X: 1, Y: 2}}, {{X: 1, Y: 2}, {X: 1, Y: 3}}, {{X: 1, Y: -2}, {X: 3, Y: 3}}, {{X: 1}, {X: 2}}, {{X: math.NaN(), Y: 1}, {X: 2, Y: 1}}} {
		if _, err := Halves(bad); err == nil {
			t.Errorf("Halves(%v) is taken", bad)
		}
	}
}
