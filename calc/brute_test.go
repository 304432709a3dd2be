package calc

import (
	"math"
	"testing"

	"chape/calc/curve"
	"chape/calc/knife"
)

// The brute twin: the definitions read out over plain samples, no grid that
// crowds at steps, no divide and conquer, no valleys, a string of its own.

type bruteTwin struct {
	lower, seam, inner, stitch, cut samples
	h                               float64
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

// bruteString measures a taut string by the gift-wrapping of its upper hull.
func bruteString(secs []knife.Section, halfWelt float64, last curve.Vec) float64 {
	pts := []curve.Vec{{Y: halfWelt}}
	for _, s := range secs {
		pts = s.Upper(pts)
	}
	pts = append(pts, last)
	start, end := curve.Vec{}, last
	for _, p := range pts {
		if p.X <= 0 && p.Y > start.Y {
			start = curve.Vec{Y: p.Y}
		}
		if p.X >= last.X && p.Y > end.Y {
			end = curve.Vec{X: last.X, Y: p.Y}
		}
	}
	sum, at := start.Y+end.Y-last.Y, start
	for at.X < last.X-1e-12 {
		next, steepest := end, math.Inf(-1)
		for _, p := range append(pts, end) {
			if p.X > at.X+1e-12 && p.X <= last.X {
				if m := (p.Y - at.Y) / (p.X - at.X); m > steepest || (m == steepest && p.X > next.X) {
					steepest, next = m, p
				}
			}
		}
		sum += next.Dist(at)
		at = next
	}
	return sum
}

// lowerAt is the lower edge found so far at sample i.
func (t *bruteTwin) lowerAt(i int) float64 {
	if y := t.lower.at(i); !math.IsNaN(y) {
		return y
	}
	return 0
}

func bruteCurves(t testing.TB, in Input, h float64) *bruteTwin {
	k, err := knife.NewProfile(in.Knife)
	if err != nil {
		t.Fatal(err)
	}
	sh := in.Sheath
	c, g, b, m := sh.Clearance.MM(), sh.Gap.MM(), sh.Blend.MM(), (sh.Margin + sh.Sanding).MM()
	tw := &bruteTwin{h: h}
	n := func(x float64) int { return int(math.Round(x / h)) }
	mouth := n(sh.Mouth.MM())
	deepest := 0.0
	secs := map[int][]knife.Section{}
	tw.lower = newSamples(0, mouth)
	for i := 0; i <= mouth; i++ {
		secs[i] = k.Sections(nil, tw.x(i))
		for _, s := range secs[i] {
			deepest = math.Max(deepest, s.Depth())
			tw.lower.put(i, max(s.Bottom, deepest, tw.lowerAt(i)))
		}
	}
	grown := tw.grow(tw.lower, n(-g), mouth+n(g), g)
	wide := tw.grow(grown, n(-g-b), mouth+n(g+b), b)
	tw.seam = tw.shrink(wide, n(-g), mouth, b)
	tw.inner = tw.grow(tw.lower, n(-g), mouth, c)
	raw := newSamples(n(-g), mouth+n(2*b))
	for i := n(-g); i <= mouth+n(2*b); i++ {
		j := min(i, mouth)
		x := tw.x(j)
		uc, us := tw.inner.at(j), tw.seam.at(j)
		inside := sh.Welt.MM()/2 + us
		if j >= 0 {
			inside = bruteString(secs[j], sh.Welt.MM()/2, curve.Vec{X: uc, Y: sh.Welt.MM() / 2}) + us - uc
		}
		y := inside + math.Pi/2*sh.Neutral*sh.Leather.MM() + sh.Ease.MM()
		for _, f := range in.Fits {
			if z := (math.Max(0, x) - f.At.MM()) / f.Reach.MM(); z > -1 && z < 1 {
				y += f.By.MM() * (1 + math.Cos(math.Pi*z)) / 2
			}
		}
		raw.put(i, y)
	}
	wide = tw.grow(raw, n(-g-b), mouth+n(b), b)
	tw.stitch = tw.shrink(wide, n(-g), mouth, b)
	tw.cut = tw.grow(tw.stitch, n(-g-m), mouth, m)
	return tw
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
		tw := bruteCurves(t, in, 0.02)
		p := mustPlan(t, in)
		compareTwin(t, name+": lower edge", p.at.lower, tw.lower, tw, 0.01)
		compareTwin(t, name+": stitch line in the plane", p.at.seam, tw.seam, tw, 0.02)
		compareTwin(t, name+": stitch line in the flat", p.at.stitch, tw.stitch, tw, 0.02)
		compareTwin(t, name+": cut line", p.at.cut, tw.cut, tw, 0.02)
	}
}
