package sheet

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"chape/calc/curve"
)

// The rule is 4 inches of 25.4 mm long, with a tick every eighth: longer at halves, longest at
// whole inches, which are numbered right below.
func TestRule(t *testing.T) {
	at := curve.Vec{X: 7, Y: 30}
	var d Drawing
	d.Rule(at)
	var ticks []Path
	long := 0.0
	for _, p := range d.Paths {
		if p.Pts[0].Y == p.Pts[1].Y {
			long = p.Pts.Length()
			if p.Pts[0] != at {
				t.Errorf("the rule begins at %v, want %v", p.Pts[0], at)
			}
			continue
		}
		ticks = append(ticks, p)
	}
	if math.Abs(long-101.6) > 1e-9 {
		t.Errorf("the rule is %v mm long, want 101.6", long)
	}
	if len(ticks) != 33 {
		t.Fatalf("%d ticks, want 33", len(ticks))
	}
	for i, p := range ticks {
		if x := p.Pts[0].X - at.X; math.Abs(x-float64(i)*3.175) > 1e-9 || p.Pts[0].X != p.Pts[1].X || p.Pts[0].Y != at.Y {
			t.Errorf("tick %d stands at %v, want %v", i, x, float64(i)*3.175)
		}
		high := p.Pts.Length()
		for k, q := range ticks {
			if rank(i) < rank(k) && high <= q.Pts.Length() {
				t.Errorf("tick %d is %v mm high, tick %d %v", i, high, k, q.Pts.Length())
			}
		}
	}
	if len(d.Texts) != 5 {
		t.Fatalf("%d numbers", len(d.Texts))
	}
	for i, w := range d.Texts {
		b := w.Box()
		if mid := (b.Lo.X + b.Hi.X) / 2; math.Abs(mid-at.X-float64(i)*25.4) > 0.01 || strings.TrimSuffix(w.Says, "″") != fmt.Sprint(i) || b.Lo.Y < at.Y+3.4 {
			t.Errorf("number %d is %q, its middle at %v", i, w.Says, mid-at.X)
		}
		if strings.HasSuffix(w.Says, "″") != (i == 4) {
			t.Errorf("%q", w.Says)
		}
	}
}

// rank is 0 for whole inches, 1 for halves, 2 for the rest.
func rank(eighth int) int {
	switch {
	case eighth%8 == 0:
		return 0
	case eighth%4 == 0:
		return 1
	}
	return 2
}

// A prick is a small cross in a ring, both about the place itself.
func TestPrick(t *testing.T) {
	v := curve.Vec{X: 12, Y: 34}
	var d Drawing
	d.Prick(v)
	if len(d.Circles) != 1 || d.Circles[0].At != v || len(d.Paths) != 2 {
		t.Fatalf("%+v", d)
	}
	for _, p := range d.Paths {
		if mid := p.Pts[0].Add(p.Pts[1]).Mul(0.5); mid.Dist(v) > 1e-12 || p.Pts.Length() <= 2*d.Circles[0].Radius || p.Stroke.Width > 0.2 {
			t.Errorf("a stroke of %v, %v wide, about %v", p.Pts, p.Stroke.Width, mid)
		}
	}
	if u, w := d.Paths[0].Pts, d.Paths[1].Pts; u[0].Y != u[1].Y || w[0].X != w[1].X {
		t.Errorf("no upright cross: %v, %v", u, w)
	}
}

func TestScaleWords(t *testing.T) {
	plain, corrected := ScaleWords(Correction{}), ScaleWords(Correction{X: 98.5, Y: 101.2})
	if !strings.Contains(plain, "100 %") || strings.Contains(plain, "orrected") {
		t.Errorf("uncorrected: %q", plain)
	}
	if !strings.Contains(corrected, "gave 98.5 × 101.2 mm for 100 × 100 mm") || !strings.HasPrefix(corrected, plain) {
		t.Errorf("corrected: %q", corrected)
	}
	if got := ScaleWords(Correction{X: 99}); !strings.Contains(got, "99 × 100 mm for") {
		t.Errorf("measured across alone: %q", got)
	}
}

// A printer is measured, the sheet corrected and measured once more: whatever the first
// reading was off by, the two together are what the printer really makes of 100 mm.
func TestThenIsTheProduct(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 3))
	for range 500 {
		real := Correction{X: 96.5 + 7*r.Float64(), Y: 96.5 + 7*r.Float64()}
		first := Correction{X: real.X + r.Float64() - 0.5, Y: real.Y + r.Float64() - 0.5}
		fx, fy := first.Factors()
		got, err := first.Then(Correction{X: real.X * fx, Y: real.Y * fy})
		if err != nil || math.Abs(got.X-real.X) > 0.0051 || math.Abs(got.Y-real.Y) > 0.0051 {
			t.Fatalf("%v, then measured on that: %v, %v, want %v", first, got, err, real)
		}
	}
}

// No printer is off by more than 5 in 100; what was not measured is no error.
func TestCorrectionCheck(t *testing.T) {
	for _, c := range []Correction{{}, {X: 95}, {Y: 105}, {X: 100, Y: 100}, {X: 104.99, Y: 95.01}} {
		if err := c.Check(); err != nil {
			t.Errorf("%v: %v", c, err)
		}
	}
	for _, c := range []Correction{{X: 94.9}, {Y: 105.1}, {X: -100}, {X: math.NaN()}, {Y: math.Inf(1)}, {X: 100, Y: 10}, {X: 3.94}} {
		if err := c.Check(); err == nil || !strings.Contains(err.Error(), "without fitting to the page") {
			t.Errorf("%v: %v", c, err)
		}
	}
	if (Correction{X: 100, Y: 100}).Set() || !(Correction{Y: 99}).Set() {
		t.Error("100 mm for 100 is a correction, or 99 is none")
	}
}
