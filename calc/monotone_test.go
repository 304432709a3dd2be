package calc

import (
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/length"
)

// planned makes believable knives until n of them have a plan.
func planned(t *testing.T, seed uint64, n int, each func(in Input, p *Plan)) {
	t.Helper()
	rng := rand.New(rand.NewPCG(seed, 29))
	for tried := 0; n > 0; tried++ {
		if tried > 500 {
			t.Fatal("hardly a knife has a plan")
		}
		in := believable(rng)
		in.Sheath.Drain = 0 // what it asks for is not of interest here
		if p, err := Compute(in); err == nil {
			n--
			each(in, p)
		}
	}
}

// More ease is wider by as much everywhere, holes and all, and nothing in the plane of
// the blade moves.
func TestEaseWidensByItself(t *testing.T) {
	planned(t, 1, 12, func(in Input, p *Plan) {
		in.Sheath.Ease += 1.25
		q := mustPlan(t, in)
		for i, y := range p.at.stitch.Y {
			// Where a wall is higher than the closing bridges, the samples beside it stray.
			if d := q.at.stitch.Y[i] - y; math.Abs(d-1.25) > 0.02 {
				t.Fatalf("1.25 of ease moves the stitch line at %v by %v", p.at.stitch.X[i], d)
			}
		}
		within(t, "plane line", q.Stitch.PlaneLine, p.Stitch.PlaneLine, 0)
		within(t, "width", q.Body.Width, p.Body.Width+2*1.25, 0.02)
		within(t, "end of the seam", q.Flat.EndY, p.Flat.EndY+1.25, 1e-9)
		if q.Checks[0].Value >= p.Checks[0].Value {
			t.Errorf("more ease squeezes more: %v, %v", q.Checks[0].Value, p.Checks[0].Value)
		}
	})
}

// Thicker leather, a thicker welt, a longer pitch, more margin: what each may change and
// which way. Leather adds (π/2)·k of its thickness to a half.
func TestWhatMakesMore(t *testing.T) {
	planned(t, 2, 12, func(in Input, p *Plan) {
		try := func(what string, change func(*Input)) *Plan {
			in := in
			change(&in)
			q, err := Compute(in)
			if err != nil {
				t.Fatalf("%s: %v", what, err)
			}
			return q
		}
		q := try("thicker leather", func(in *Input) { in.Sheath.Leather += 0.8 })
		within(t, "bend of thicker leather", q.Body.Bend, p.Body.Bend+math.Pi/2*in.Sheath.Neutral*0.8, 1e-12)
		within(t, "stack of thicker leather", q.Stitch.Stack, p.Stitch.Stack+1.6, 1e-12)
		if q.Thread.Length <= p.Thread.Length || q.Loop.Thread < p.Loop.Thread || q.Body.TabLength < p.Body.TabLength {
			t.Errorf("thicker leather takes %v of thread, %v for the loop, a tab of %v, not more than %v, %v, %v",
				q.Thread.Length, q.Loop.Thread, q.Body.TabLength, p.Thread.Length, p.Loop.Thread, p.Body.TabLength)
		}
		q = try("a thicker welt", func(in *Input) { in.Sheath.Welt++ })
		within(t, "stack of a thicker welt", q.Stitch.Stack, p.Stitch.Stack+1, 1e-12)
		within(t, "end of the seam over a thicker welt", q.Flat.EndY, p.Flat.EndY+0.5, 1e-9)
		if q.Thread.Length <= p.Thread.Length {
			t.Errorf("a thicker welt takes %v of thread, the thinner %v", q.Thread.Length, p.Thread.Length)
		}
		q = try("a longer pitch", func(in *Input) { in.Stitch.Pitch *= 1.3 })
		if q.Stitch.Stitches >= p.Stitch.Stitches || q.Thread.Length >= p.Thread.Length || q.Stitch.Walk <= p.Stitch.Walk {
			t.Errorf("a longer pitch: %d stitches, %v of thread, was %d, %v", q.Stitch.Stitches, q.Thread.Length, p.Stitch.Stitches, p.Thread.Length)
		}
		q = try("more margin", func(in *Input) { in.Sheath.Margin++; in.Sheath.Blend++ })
		if q.Body.Length != p.Body.Length+1 || q.Welt.Area <= p.Welt.Area || q.Body.Area <= p.Body.Area {
			t.Errorf("more margin: %v long, a welt of %v", q.Body.Length, q.Welt.Area)
		}
		q = try("a larger blend", func(in *Input) { in.Sheath.Blend += 20 })
		for i, y := range p.at.seam.Y {
			if x := p.at.seam.X[i]; q.at.seam.At(x) < math.Min(y, math.Min(p.at.seam.At(x-0.02), p.at.seam.At(x+0.02)))-0.01 {
				t.Fatalf("a larger blend brings the stitch line in at %v, from %v to %v", x, y, q.at.seam.At(x))
			}
		}
		q = try("more tail", func(in *Input) { in.Stitch.Tail += 100 })
		within(t, "thread with longer tails", q.Thread.Length, p.Thread.Length+200, 1e-9)
		within(t, "ratio with longer tails", q.Thread.Ratio, p.Thread.Ratio, 0)
	})
}

// A correction of d moves the cut line by d where it stands, and nowhere beyond its
// reach: on the bar, whose lines are straight, to the last figure; on any knife no
// further than blend and margin carry.
func TestACorrectionStaysInItsReach(t *testing.T) {
	plain := mustPlan(t, bar())
	for _, d := range []float64{1, -0.6, 2.5} {
		in := bar()
		in.Fits = []Fit{{At: 70, By: length.Length(d), Reach: 30}}
		p := mustPlan(t, in)
		within(t, "cut line at the correction", p.at.cut.At(70), plain.at.cut.At(70)+d, 1e-4)
		within(t, "stitch line at half its reach", p.at.stitch.At(55), plain.at.stitch.At(55)+d/2, 0.01)
		for x := -9.0; x <= 120; x += 0.5 {
			if x > 70-30-5 && x < 70+30+5 {
				continue
			}
			within(t, "cut line beyond the reach", p.at.cut.At(x), plain.at.cut.At(x), 1e-9)
		}
	}
	planned(t, 3, 10, func(in Input, p *Plan) {
		mid, reach := in.Sheath.Mouth/2, length.Length(20)
		in.Fits = append(append([]Fit(nil), in.Fits...), Fit{At: mid, By: 1.5, Reach: reach})
		q, err := Compute(in)
		if err != nil {
			t.Fatal(err)
		}
		far := (reach + in.Sheath.Blend*2 + in.Sheath.outside()).MM()
		for i, x := range p.at.cut.X {
			d := q.at.cut.At(x) - p.at.cut.Y[i]
			if d < -0.02 || d > 1.5+0.05 && p.at.cut.Y[i] == p.at.cut.At(x+0.01) {
				t.Fatalf("1.5 mm out at %v moves the cut line at %v by %v", mid, x, d)
			}
			if math.Abs(x-mid.MM()) > far && math.Abs(d) > 1e-6 {
				t.Fatalf("a correction at %v of reach %v moves the cut line at %v by %v", mid, reach, x, d)
			}
		}
	})
}

// Two corrections at one place are one of their sum, one of nothing is none, and a
// correction and its opposite cancel each other.
func TestCorrectionsAddUp(t *testing.T) {
	line := func(fits ...Fit) []float64 {
		in := bar()
		in.Fits = fits
		return mustPlan(t, in).at.stitch.Y
	}
	same := func(what string, a, b []float64) {
		for i := range a {
			if math.Abs(a[i]-b[i]) > 1e-9 {
				t.Errorf("%s: %v at sample %d, want %v", what, a[i], i, b[i])
				return
			}
		}
	}
	half, whole := Fit{At: 60, By: 0.75, Reach: 25}, Fit{At: 60, By: 1.5, Reach: 25}
	same("twice the half", line(half, half), line(whole))
	same("nothing", line(Fit{At: 60, By: 0, Reach: 25}), line())
	same("there and back", line(whole, Fit{At: 60, By: -1.5, Reach: 25}), line())
}
