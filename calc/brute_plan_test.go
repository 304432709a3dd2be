package calc

import (
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
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
	for k := range inner.y { // the welt reaches the fold left of -c
		if t.x(inner.from+k) < -sh.Clearance.MM()-t.h/2 {
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
		for i, b := range t.lower.y {
			d = math.Min(d, h.Dist(curve.Vec{X: t.x(i), Y: math.Min(h.Y, b)}))
		}
		if d < sh.Gap.MM()+0.002 { // the line keeps the gap, its samples stray
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
	for i := range t.lower.y {
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

// step walks the dividers along the line from the mouth in steps far smaller
// than a chord, and halves the setting until the last hole is hit.
func (t *bruteTwin) step(f *figures) {
	st := t.in.Stitch
	run := t.seam.y[0]
	var line curve.Line // from the mouth to the fold
	for k := len(t.seam.y) - 1; k >= 0; k-- {
		line = append(line, curve.Vec{X: t.x(t.seam.from + k), Y: t.seam.y[k]})
	}
	for y := run - t.h; y > 0; y -= t.h {
		line = append(line, curve.Vec{X: line[len(line)-1].X, Y: y})
	}
	line = append(line, curve.Vec{X: line[len(line)-1].X})
	scale := 1.0
	if st.Measured > 0 {
		scale = st.Measured.MM() / f.planeLine
	}
	sewn := f.planeLine*scale - (st.First + st.Last).MM()
	n := int(math.Max(1, math.Floor(sewn/st.Pitch.MM()+0.5)))
	first, last := st.First.MM()/scale, f.planeLine-st.Last.MM()/scale

	// fall gives the holes for a setting, and how far along the last one lies.
	fall := func(chord float64) (holes []curve.Vec, far float64) {
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
	lo, hi := 0.0, 1.001*sewn/scale/float64(n)
	for range 40 {
		f.walk = (lo + hi) / 2
		if _, far := fall(f.walk); far > last {
			hi = f.walk
		} else {
			lo = f.walk
		}
	}
	f.holes, _ = fall(lo)
	f.walk *= scale
	left := line[len(line)-1].X
	for _, h := range f.holes {
		p := curve.Vec{X: h.X}
		if h.X <= left+1e-9 && h.Y < run {
			p.Y = t.end + h.Y/run*(t.stitch.y[0]-t.end)
		} else {
			i := int(math.Floor(h.X/t.h)) - t.stitch.from
			i = min(max(i, 0), len(t.stitch.y)-2)
			share := h.X/t.h - float64(i+t.stitch.from)
			p.Y = t.stitch.y[i] + share*(t.stitch.y[i+1]-t.stitch.y[i])
		}
		f.flat = append(f.flat, p)
	}
}

// believable makes a knife as people forge them: gentle slopes, steps of 1 to
// 8 mm, its places in sixteenths so that the twin's samples meet them.
func believable(rng *rand.Rand) Input {
	mm := func(lo, hi float64) length.Length {
		return length.Length(math.Round((lo+(hi-lo)*rng.Float64())*16) / 16)
	}
	mark := func(at, top, depth, thick length.Length, k knife.Kind, bevel float64, round length.Length) knife.Station {
		return knife.Station{At: at, Top: top, Bottom: top + depth, Thick: thick, Kind: k, Bevel: bevel, Round: round}
	}
	in := bar()
	blade, depth, thick := mm(70, 150), mm(20, 40), mm(2.5, 5)
	bevel := 0.5 + 0.5*rng.Float64()
	front := mm(6, 14)
	st := []knife.Station{
		mark(0, mm(2, 9), 0, mm(0.5, 1), knife.Blade, bevel, 0),
		mark(front, mm(2, 4), depth*length.Length(math.Round(8*(0.3+0.2*rng.Float64()))/8), thick/2, knife.Blade, bevel, 0),
		mark(2*front+4, mm(0, 2), depth-2, thick-1, knife.Blade, bevel, 0),
		mark(blade, mm(0, 1), depth, thick, knife.Blade, bevel, 0),
	}
	at := blade
	step := mm(1, 8)
	wide := thick + mm(6, 12)
	if rng.IntN(3) > 0 { // a bolster or guard
		top := mm(0, 1)
		st = append(st, mark(at, top, depth+step, wide, knife.Slab, 1, mm(0, 3)))
		at += mm(4, 14)
		st = append(st, mark(at, top, depth+step, wide, knife.Slab, 1, 0))
		depth += step - mm(1, min(8, step.MM()+2))
	}
	kind := knife.Kinds[1+rng.IntN(2)]
	round := mm(1, 5)
	half, end := mm(25, 45), mm(40, 60)
	st = append(st, mark(at, mm(0, 1), depth, wide-1, kind, 1, round),
		mark(at+half, mm(0, 2), depth+mm(0, 4), wide+mm(1, 6), kind, 1, round),
		mark(at+half+end, mm(0, 2), depth, wide, kind, 1, round))
	in.Knife.Stations = st
	sh := &in.Sheath
	sh.Mouth = at + mm(10, half.MM())
	sh.Leather, sh.Welt = mm(2, 4), mm(2, 7)
	sh.Clearance = mm(1, 4)
	sh.Gap = sh.Clearance + mm(2, 6)
	sh.Margin, sh.Sanding = mm(4, 7), mm(0, 2)
	sh.Blend = sh.Margin + sh.Sanding + mm(5, 60)
	sh.Ease, sh.MouthRise, sh.Neutral = mm(-0.5, 2), mm(0, 25), 0.3+0.3*rng.Float64()
	in.Stitch.Pitch, in.Stitch.First, in.Stitch.Last = mm(3, 6), mm(3, 8), mm(3, 8)
	if rng.IntN(2) == 0 {
		in.Fits = []Fit{{At: mm(20, at.MM()), By: mm(-1, 3), Reach: mm(15, 40)}}
	}
	if rng.IntN(3) == 0 {
		in.Stitch.Measured = mm(170, 260)
	}
	return in
}

// compareFigures holds a plan's figures against the twin's: lengths and
// places within 0.02 mm, areas within 0.05 %, shares within 0.002.
func compareFigures(t *testing.T, name string, p *Plan, tw *bruteTwin) {
	t.Helper()
	const mm, share = 0.02, 0.002
	f := tw.figures(p.Stitch.Choice().Diameter)
	check := map[string]Check{}
	for _, c := range p.Checks {
		check[c.Name] = c
	}
	within(t, name+": squeeze", check["squeeze"].Value, f.squeeze, share)
	within(t, name+": squeeze at", check["squeeze"].At, f.squeezeAt, 0.25)
	within(t, name+": gather", check["gather"].Value, f.gather, share)
	within(t, name+": gather at", check["gather"].At, f.gatherAt, 0.25)
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

func TestFiguresAgainstBruteTwin(t *testing.T) {
	compareFigures(t, "bar", mustPlan(t, bar()), bruteCurves(bar(), 0.02))
	compareFigures(t, "orchard", mustPlan(t, orchard()), bruteCurves(orchard(), 0.02))
	rng := rand.New(rand.NewPCG(21, 34))
	for i := range 8 {
		in := believable(rng)
		compareFigures(t, string(rune('a'+i)), mustPlan(t, in), bruteCurves(in, 1.0/32))
	}
}
