package calc

import (
	"math"
	"testing"

	"chape/calc/curve"
)

// The brute twin: the definitions read out over plain samples, no grid that
// crowds at steps, no divide and conquer, no valleys, a string of its own.

type bruteTwin struct {
	in                                                        Input
	h                                                         float64
	edge, handle, seam, inner, outer, stitch, cut, need, room samples
	gap, slope                                                float64 // of the fold line
	end                                                       float64 // where the seam meets the fold in the flat
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

// needs is what the edge needs, or the handle: over each sample from the first
// that has such a section, the lowest such section or the deepest before.
func (t *bruteTwin) needs(secs [][]bruteSection, handle bool) samples {
	first, deepest := -1, 0.0
	var out samples
	for i := range secs {
		low, found := 0.0, false
		for _, s := range secs[i] {
			if s.handle == handle {
				found = true
				low, deepest = math.Max(low, s.bottom), math.Max(deepest, s.depth())
			}
		}
		if first < 0 && found {
			first, out = i, newSamples(i, len(secs)-1)
		}
		if first >= 0 {
			out.put(i, math.Max(low, deepest))
		}
	}
	return out
}

// both is the higher of two curves where there are two, over the first.
func (t *bruteTwin) both(a, b samples) samples {
	for k, y := range b.y {
		if i := b.from + k; i >= a.from && i <= a.to() && !math.IsNaN(y) && !(a.at(i) > y) {
			a.put(i, y)
		}
	}
	return a
}

// bruteCurves reads the definitions out over samples h apart. Steps, mouth and
// radii should be whole samples.
func bruteCurves(in Input, h float64) *bruteTwin {
	sh := in.Sheath
	var runs []bruteRun // what begins before the mouth
	for _, r := range bruteRuns(in.Knife.Stations) {
		if r.st[0].At < sh.Mouth {
			runs = append(runs, r)
		}
	}
	c, g, b, m := sh.Clearance.MM(), sh.Gap.MM(), sh.Blend.MM(), (sh.Margin + sh.Sanding).MM()
	ch, p := sh.HandleClearance.MM(), sh.PointRoom.MM()
	gh := g - (c - ch)
	tw := &bruteTwin{in: in, h: h}
	n := func(x float64) int { return int(math.Round(x / h)) }
	mouth := n(sh.Mouth.MM())
	secs := make([][]bruteSection, mouth+1)
	for i := range secs {
		secs[i] = sectionsAt(runs, tw.x(i))
	}
	tw.rest(secs)
	edge, left := tw.needs(secs, false), n(-p-g)
	tw.edge = newSamples(n(-p), mouth)
	for i := n(-p); i <= mouth; i++ {
		tw.edge.put(i, edge.at(max(i, 0)))
	}
	tw.handle = tw.needs(secs, true)
	if tw.handle.from == mouth { // nothing of it lies inside
		tw.handle = samples{}
	}
	grown := tw.both(tw.grow(tw.edge, left, mouth+n(g), g), tw.grow(tw.handle, left, mouth+n(g), gh))
	wide := tw.grow(grown, left-n(b), mouth+n(g+b), b)
	tw.seam = tw.shrink(wide, left, mouth, b)
	tw.outer = tw.grow(tw.seam, left-n(m), mouth, m)
	tw.inner = tw.both(tw.grow(tw.edge, left, mouth, c), tw.grow(tw.handle, left, mouth, ch))
	for i := left; tw.x(i) < -p-c-h/2; i++ {
		tw.inner.put(i, 0)
	}
	tw.flat(secs)
	return tw
}

// rest lays the fold line: round all points of the back goes a string from
// below, and its piece over the middle (on the mouth's side of it) is the line.
func (t *bruteTwin) rest(secs [][]bruteSection) {
	var hull []curve.Vec
	for i := range secs {
		top := math.Inf(1)
		for _, s := range secs[i] {
			top = math.Min(top, s.top)
		}
		p := curve.Vec{X: t.x(i), Y: top}
		for k := len(hull); k >= 2; k-- {
			a, b := hull[k-2], hull[k-1]
			if (b.Y-a.Y)*(p.X-a.X) < (p.Y-a.Y)*(b.X-a.X)-1e-12 {
				break
			}
			hull = hull[:k-1]
		}
		hull = append(hull, p)
	}
	for k := 1; k < len(hull); k++ {
		a, b := hull[k-1], hull[k]
		if b.X > t.in.Sheath.Mouth.MM()/2+1e-9 {
			t.slope = (b.Y - a.Y) / (b.X - a.X)
			t.gap = a.Y - t.slope*a.X
			break
		}
	}
	for i := range secs {
		for k := range secs[i] {
			d := t.gap + t.slope*t.x(i)
			secs[i][k].top -= d
			secs[i][k].bottom -= d
		}
	}
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
			by := f.By.MM()
			if f.Paper {
				by += math.Pi / 2 * t.in.Sheath.Neutral * (t.in.Sheath.Leather.MM() - 0.1)
			}
			sum += by * (1 + math.Cos(math.Pi*z)) / 2
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
		near := math.Max(tw.h, 0.02)
		for _, dx := range []float64{-near, -near / 2, 0, near / 2, near} {
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
		compareTwin(t, name+": what the edge needs", p.at.edge, tw.edge, tw, 0.01)
		compareTwin(t, name+": stitch line in the plane", p.at.seam, tw.seam, tw, 0.02)
		compareTwin(t, name+": stitch line in the flat", p.at.stitch, tw.stitch, tw, 0.02)
		compareTwin(t, name+": cut line", p.at.cut, tw.cut, tw, 0.02)
	}
}
