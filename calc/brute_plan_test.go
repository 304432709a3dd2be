package calc

import (
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/curve"
)

// figures are the numbers of a plan as the twin reads them off its samples.
type figures struct {
	squeeze, squeezeAt, gather, gatherAt, guard, guardAt float64
	area, weltArea, line, planeLine, walk                float64
	holes, flat                                          []curve.Vec
}

// points is a sampled curve as a polyline.
func (t *bruteTwin) points(s samples) curve.Line {
	var l curve.Line
	for k, y := range s.y {
		l = append(l, curve.Vec{X: t.x(s.from + k), Y: y})
	}
	return l
}

func (t *bruteTwin) area(s samples) float64 {
	var sum float64
	for k := 1; k < len(s.y); k++ {
		if !math.IsNaN(s.y[k-1]) && !math.IsNaN(s.y[k]) {
			sum += (s.y[k-1] + s.y[k]) / 2 * t.h
		}
	}
	return sum
}

func (t *bruteTwin) figures(drill float64) figures {
	var f figures
	sh := t.in.Sheath
	f.squeeze, f.squeezeAt = math.Inf(-1), 0
	for i, need := range t.need.y {
		if v := need/t.room.at(i) - 1; v > f.squeeze+1e-9 {
			f.squeeze, f.squeezeAt = v, t.x(i)
		}
	}
	f.area = 2 * (t.area(t.cut) + sh.MouthRise.MM()*t.cut.y[len(t.cut.y)-1]/2)
	inner := t.inner
	for k := range inner.y { // the welt reaches the fold left of -q
		if t.x(inner.from+k) < -(sh.PointRoom+sh.Clearance).MM()-t.h/2 {
			inner.y[k] = math.NaN()
		}
	}
	f.weltArea = t.area(t.outer) - t.area(inner)
	f.line = t.points(t.stitch).Length() + t.stitch.y[0] - t.end
	f.planeLine = t.points(t.seam).Length() + t.seam.y[0]
	t.gather(&f)
	t.step(&f)
	f.guard = math.Inf(1)
	for _, h := range f.holes {
		d := math.Inf(1)
		for k, b := range t.edge.y {
			d = math.Min(d, h.Dist(curve.Vec{X: t.x(t.edge.from + k), Y: math.Min(h.Y, b)}))
		}
		front := math.Inf(1)
		if len(t.handle.y) > 0 {
			front = t.x(t.handle.from) - (sh.Gap - sh.Clearance + sh.HandleClearance).MM()
		}
		if g := sh.Gap.MM(); d < g+0.002 && (d > g-0.002 || h.X < front) { // the line keeps the gap, its samples stray
			d = sh.Gap.MM()
		}
		d -= drill / 2
		if d < f.guard-1e-9 || (d < f.guard+1e-9 && h.X < f.guardAt) {
			f.guard, f.guardAt = d, h.X
		}
	}
	return f
}

// gather slides a stretch of 20 mm of plane length along, from sample to
// sample; its far end lies between two.
func (t *bruteTwin) gather(f *figures) {
	var plane, flat, x []float64
	p, q := 0.0, 0.0
	for i := range t.seam.to() + 1 {
		if i > 0 {
			p += math.Hypot(t.h, t.seam.at(i)-t.seam.at(i-1))
			q += math.Hypot(t.h, t.stitch.at(i)-t.stitch.at(i-1))
		}
		plane, flat, x = append(plane, p), append(flat, q), append(x, t.x(i))
	}
	reach := math.Min(20, p)
	f.gather = math.Inf(-1)
	j := 0
	for i := range plane {
		for j < len(plane)-1 && plane[j]-plane[i] < reach {
			j++
		}
		if plane[j]-plane[i] < reach-1e-9 {
			break
		}
		share := (plane[i] + reach - plane[j-1]) / (plane[j] - plane[j-1])
		at := func(v []float64) float64 { return v[j-1] + share*(v[j]-v[j-1]) }
		if g := (at(flat)-flat[i])/reach - 1; g > f.gather+1e-9 {
			f.gather, f.gatherAt = g, (at(x)+x[i])/2
		}
	}
}

// sewn is the stitch line on the closed sheath from the mouth to the fold.
func (t *bruteTwin) sewn() curve.Line {
	var line curve.Line
	for k := len(t.seam.y) - 1; k >= 0; k-- {
		line = append(line, curve.Vec{X: t.x(t.seam.from + k), Y: t.seam.y[k]})
	}
	left := line[len(line)-1]
	for y := left.Y - t.h; y > 0; y -= t.h {
		line = append(line, curve.Vec{X: left.X, Y: y})
	}
	return append(line, curve.Vec{X: left.X})
}

// fall walks along a line whose pieces are far shorter than a chord and gives
// the holes for a divider setting, and how far along the last one lies.
func fall(line curve.Line, first, chord float64, n int) (holes []curve.Vec, far float64) {
	s := 0.0
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		d := a.Dist(b)
		if len(holes) == 0 && s+d >= first {
			holes = append(holes, a.Add(b.Sub(a).Mul((first-s)/d)))
		} else if len(holes) > 0 {
			from := holes[len(holes)-1]
			if r0, r1 := from.Dist(a), from.Dist(b); r1 >= chord {
				share := (chord - r0) / (r1 - r0)
				holes, far = append(holes, a.Add(b.Sub(a).Mul(share))), s+share*d
			}
		}
		if len(holes) > n {
			return holes, far
		}
		s += d
	}
	return holes, math.Inf(1)
}

// step halves the divider setting until the last hole is hit, and finds the
// holes in the flat.
func (t *bruteTwin) step(f *figures) {
	st, line := t.in.Stitch, t.sewn()
	scale := 1.0
	if st.Measured > 0 {
		scale = st.Measured.MM() / f.planeLine
	}
	sewn := f.planeLine*scale - (st.First + st.Last).MM()
	n := int(math.Max(1, math.Floor(sewn/st.Pitch.MM()+0.5)))
	first, last := st.First.MM()/scale, f.planeLine-st.Last.MM()/scale
	lo, hi := 0.0, 1.001*sewn/scale/float64(n)
	for range 40 {
		f.walk = (lo + hi) / 2
		if _, far := fall(line, first, f.walk, n); far > last {
			hi = f.walk
		} else {
			lo = f.walk
		}
	}
	f.holes, _ = fall(line, first, lo, n)
	f.walk *= scale
	for _, h := range f.holes {
		f.flat = append(f.flat, curve.Vec{X: h.X, Y: t.flatten(h, line[len(line)-1].X)})
	}
}

// flatten is how far from the fold the place h of the stitch line lies in the
// flat: over the same x, or at the same share of the run at x = left.
func (t *bruteTwin) flatten(h curve.Vec, left float64) float64 {
	if run := t.seam.y[0]; h.X <= left+1e-9 && h.Y < run {
		return t.end + h.Y/run*(t.stitch.y[0]-t.end)
	}
	i := int(math.Floor(h.X/t.h)) - t.stitch.from
	i = min(max(i, 0), len(t.stitch.y)-2)
	share := h.X/t.h - float64(i+t.stitch.from)
	return t.stitch.y[i] + share*(t.stitch.y[i+1]-t.stitch.y[i])
}

// compareFigures holds a plan's figures against the twin's: lengths and
// places within 0.03 mm, areas within 0.05 %, shares within 0.003.
func compareFigures(t *testing.T, name string, p *Plan, tw *bruteTwin) {
	t.Helper()
	const mm, share = 0.03, 0.003
	f := tw.figures(p.Stitch.Choice().Diameter)
	check := map[string]Check{}
	for _, c := range p.Checks {
		check[c.Name] = c
	}
	within(t, name+": squeeze", check["squeeze"].Value, f.squeeze, share)
	within(t, name+": squeeze at", check["squeeze"].At, f.squeezeAt, 0.25)
	within(t, name+": gather", check["gather"].Value, f.gather, share)
	if f.gather > 0.01 { // where next to nothing is gathered, rounding says where
		within(t, name+": gather at", check["gather"].At, f.gatherAt, 0.25)
	}
	within(t, name+": thread guard", check["thread guard"].Value, f.guard, mm)
	within(t, name+": thread guard at", check["thread guard"].At, f.guardAt, 0.1)
	within(t, name+": welt area", p.Welt.Area, f.weltArea, 0.0005*f.weltArea)
	within(t, name+": stitch line", p.Stitch.Line, f.line, mm)
	within(t, name+": plane line", p.Stitch.PlaneLine, f.planeLine, mm)
	within(t, name+": divider setting", p.Stitch.Walk, f.walk, mm/10)
	if p.Input.Sheath.MouthRound == 0 {
		within(t, name+": area", p.Body.Area, f.area, 0.0005*f.area)
	}
	if len(f.holes) != p.Stitch.Holes {
		t.Errorf("%s: %d holes, brute twin %d", name, p.Stitch.Holes, len(f.holes))
		return
	}
	for i, h := range f.holes {
		if d := h.Dist(p.Stitch.Positions[i]); d > mm {
			t.Errorf("%s: hole %d at %v, brute twin %v: %.3f apart", name, i+1, p.Stitch.Positions[i], h, d)
		}
		if d := f.flat[i].Dist(p.Stitch.Flat[i]); d > 2*mm {
			t.Errorf("%s: hole %d in the flat at %v, brute twin %v: %.3f apart", name, i+1, p.Stitch.Flat[i], f.flat[i], d)
		}
	}
}

// TestFiguresAgainstBruteTwin: the bar and the orchard knife are held beside
// their curves.
func TestFiguresAgainstBruteTwin(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 34))
	for i := range 3 {
		in := believable(rng)
		compareFigures(t, string(rune('a'+i)), mustPlan(t, in), bruteCurves(in, 1.0/32))
	}
}
