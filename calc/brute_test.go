package calc

import (
	"math"
	"testing"

	"chape/calc/curve"
)

// The brute twin: the definitions read out over plain samples, no grid that
// crowds at steps, no divide and conquer, no valleys, a string of its own.

type bruteTwin struct {
	in                                                 Input
	h                                                  float64
	lower, seam, inner, outer, stitch, cut, need, room samples
	end                                                float64 // where the seam meets the fold in the flat
}

// samples is a curve over whole samples, y[0] at sample from; NaN where
// there is none.
type samples struct {
	from int
	y    []float64
}

func newSamples(from, to int) samples {
	s := samples{from, make([]float64, to-from+1)}
	for i := range s.y {
		s.y[i] = math.NaN()
	}
	return s
}

func (s samples) to() int              { return s.from + len(s.y) - 1 }
func (s samples) at(i int) float64     { return s.y[i-s.from] }
func (s samples) put(i int, y float64) { s.y[i-s.from] = y }

func (t *bruteTwin) x(i int) float64 { return float64(i) * t.h }

// grow is max over |ξ| <= r of f(x+ξ) + √(r²−ξ²), over the samples there are.
func (t *bruteTwin) grow(f samples, from, to int, r float64) samples {
	out := newSamples(from, to)
	w := int(math.Floor(r/t.h + 1e-6))
	kernel := make([]float64, 2*w+1)
	for k := range kernel {
		d := float64(k-w) * t.h
		kernel[k] = math.Sqrt(max(0, r*r-d*d))
	}
	for i := from; i <= to; i++ {
		best := math.Inf(-1)
		for j := max(i-w, f.from); j <= min(i+w, f.to()); j++ {
			if y := f.at(j) + kernel[j-i+w]; y > best {
				best = y
			}
		}
		if !math.IsInf(best, -1) {
			out.put(i, best)
		}
	}
	return out
}

func (t *bruteTwin) shrink(f samples, from, to int, r float64) samples {
	neg := newSamples(f.from, f.to())
	for i, y := range f.y {
		neg.y[i] = -y
	}
	out := t.grow(neg, from, to, r)
	for i, y := range out.y {
		out.y[i] = -y
	}
	return out
}

// lowerAt is the lower edge found so far at sample i.
func (t *bruteTwin) lowerAt(i int) float64 {
	if y := t.lower.at(i); !math.IsNaN(y) {
		return y
	}
	return 0
}

// bruteCurves reads the definitions out over samples h apart. Steps, mouth and
// radii should be whole samples.
func bruteCurves(in Input, h float64) *bruteTwin {
	runs := bruteRuns(in.Knife.Stations)
	sh := in.Sheath
	c, g, b, m := sh.Clearance.MM(), sh.Gap.MM(), sh.Blend.MM(), (sh.Margin + sh.Sanding).MM()
	tw := &bruteTwin{in: in, h: h}
	n := func(x float64) int { return int(math.Round(x / h)) }
	mouth := n(sh.Mouth.MM())
	deepest := 0.0
	secs := make([][]bruteSection, mouth+1)
	tw.lower = newSamples(0, mouth)
	for i := range secs {
		secs[i] = sectionsAt(runs, tw.x(i))
		for _, s := range secs[i] {
			deepest = math.Max(deepest, s.depth())
			tw.lower.put(i, max(s.bottom, deepest, tw.lowerAt(i)))
		}
	}
	grown := tw.grow(tw.lower, n(-g), mouth+n(g), g)
	wide := tw.grow(grown, n(-g-b), mouth+n(g+b), b)
	tw.seam = tw.shrink(wide, n(-g), mouth, b)
	tw.outer = tw.grow(tw.seam, n(-g-m), mouth, m)
	tw.inner = tw.grow(tw.lower, n(-g), mouth, c)
	for i := n(-g); tw.x(i) < -c-h/2; i++ {
		tw.inner.put(i, 0)
	}
	tw.flat(secs)
	return tw
}

// flat reads out the curves of the opened leather, and what passing takes.
func (t *bruteTwin) flat(secs [][]bruteSection) {
	sh := t.in.Sheath
	b, m := sh.Blend.MM(), (sh.Margin + sh.Sanding).MM()
	n := func(x float64) int { return int(math.Round(x / t.h)) }
	left, mouth := t.seam.from, t.seam.to()
	half, bend := sh.Welt.MM()/2, math.Pi/2*sh.Neutral*sh.Leather.MM()
	raw := newSamples(left, mouth+n(2*b))
	t.need = newSamples(0, mouth)
	passing := 0.0
	for i := left; i <= raw.to(); i++ {
		if i > mouth {
			raw.put(i, raw.at(mouth))
			continue
		}
		uc, us := t.inner.at(i), t.seam.at(i)
		inside := half + us
		if i >= 0 {
			var pts []curve.Vec
			for _, s := range secs[i] {
				pts = append(pts, s.upper(0)...)
				passing = math.Max(passing, bruteString(s.upper(-s.top), half, curve.Vec{X: s.depth(), Y: half}))
			}
			inside = bruteString(pts, half, curve.Vec{X: uc, Y: half}) + us - uc
			t.need.put(i, passing)
		}
		raw.put(i, inside+bend+sh.Ease.MM()+t.fit(t.x(i)))
	}
	t.end = half + bend + sh.Ease.MM() + t.fit(0)
	wide := t.grow(raw, left-n(b), mouth+n(b), b)
	t.stitch = t.shrink(wide, left, mouth, b)
	t.cut = t.grow(t.stitch, left-n(m), mouth, m)
	t.room = newSamples(0, mouth)
	for i := range mouth + 1 {
		t.room.put(i, t.stitch.at(i)-bend-(t.seam.at(i)-t.inner.at(i)))
	}
}

// fit is the sum of the corrections.
func (t *bruteTwin) fit(x float64) float64 {
	var sum float64
	for _, f := range t.in.Fits {
		if z := (math.Max(0, x) - f.At.MM()) / f.Reach.MM(); z > -1 && z < 1 {
			sum += f.By.MM() * (1 + math.Cos(math.Pi*z)) / 2
		}
	}
	return sum
}

// compareTwin checks a curve against the twin, allowing 0.02 mm in either
// direction: beside a wall a hair in x is a lot in y. The twin itself is only
// as good as its samples, which tol allows for.
func compareTwin(t *testing.T, what string, got curve.Graph, want samples, tw *bruteTwin, tol float64) {
	t.Helper()
	for k, w := range want.y {
		x := tw.x(want.from + k)
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, dx := range []float64{-tw.h, -tw.h / 2, 0, tw.h / 2, tw.h} {
			lo, hi = math.Min(lo, got.At(x+dx)), math.Max(hi, got.At(x+dx))
		}
		if w < lo-tol || w > hi+tol {
			t.Errorf("%s at %.2f = %.4f, brute twin %.4f", what, x, got.At(x), w)
			return
		}
	}
}

func TestCurvesAgainstBruteTwin(t *testing.T) {
	inputs := map[string]Input{"bar": bar(), "orchard": orchard()}
	for name, in := range inputs {
		tw := bruteCurves(in, 0.02)
		p := mustPlan(t, in)
		compareFigures(t, name, p, tw)
		compareTwin(t, name+": lower edge", p.at.lower, tw.lower, tw, 0.01)
		compareTwin(t, name+": stitch line in the plane", p.at.seam, tw.seam, tw, 0.02)
		compareTwin(t, name+": stitch line in the flat", p.at.stitch, tw.stitch, tw, 0.02)
		compareTwin(t, name+": cut line", p.at.cut, tw.cut, tw, 0.02)
	}
}
