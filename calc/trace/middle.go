package trace

import (
	"math"

	"chape/calc/curve"
	"chape/calc/trace/raster"
)

const (
	widest  = 2.0  // mm, of a drawn line
	finest  = 0.15 // mm that the line's middle is passed by, so that strokes vanish
	between = 0.25 // mm between the outline's points
)

// middle finds the outline: from the line's outer edge inwards by half of its width and the stand-off.
func (d *drawn) middle(t *truth, k ink, soft float64, o Options) error {
	d.outer = largest(d.field.Levels(d.level))
	if d.outer == nil {
		return refuse("the line on the sheet closes round nothing: draw it all the way round the knife")
	}
	d.depth = inwards(d.outer, d.field.Width, d.field.Height, int(math.Ceil(1.2/t.dot)))
	seen, width := d.lineWidth(t, k, soft)
	d.width = width
	if seen <= 0 {
		return refuse("the line is wider than %.0f mm, or the shape is filled: use a sharp pencil, or say that it is a pattern or a piece of leather", widest)
	}
	d.standoff = o.Standoff
	if d.standoff == 0 {
		d.standoff = d.width / 2
	}
	past := max(d.standoff, finest)
	l := largest(d.depth.Levels(float32((seen/2 + past) / t.dot)))
	if l == nil {
		return refuse("the line on the sheet closes round nothing: draw it all the way round the knife")
	}
	out := make(curve.Line, len(l))
	for i, v := range l {
		out[i] = t.place(v)
	}
	d.outline = rightWay(evenly(grown(out, past-d.standoff), between))
	return nil
}

// largest is the line that encloses most.
func largest(ls []curve.Line) (best curve.Line) {
	most := 0.0
	for _, l := range ls {
		if a := math.Abs(l.Area()); a > most {
			best, most = l, a
		}
	}
	return best
}

// inwards is the distance from a closed line in a field of so many dots, positive inside and negative
// outside; what is further outside than room has that.
func inwards(l curve.Line, w, h, room int) *raster.Grey {
	lo, hi := l.Bounds()
	x0, y0 := max(0, int(lo.X)-room), max(0, int(lo.Y)-room)
	x1, y1 := min(w, int(hi.X)+room+2), min(h, int(hi.Y)+room+2)
	moved := make(curve.Line, len(l))
	for i, v := range l {
		moved[i] = v.Sub(curve.Vec{X: float64(x0), Y: float64(y0)})
	}
	near := raster.Nearest(moved, x1-x0, y1-y0)
	for i := range near.V {
		near.V[i] = -near.V[i]
	}
	raster.Fill(moved, near.Width, near.Height, func(y, from, to int) {
		for x := from; x < to; x++ {
			near.V[y*near.Width+x] *= -1
		}
	})
	out := raster.NewGrey(w, h)
	for i := range out.V {
		out.V[i] = -float32(room)
	}
	for y := y0; y < y1; y++ {
		copy(out.V[y*w+x0:y*w+x1], near.V[(y-y0)*near.Width:(y-y0+1)*near.Width])
	}
	return out
}

// bin is the step of a line's profile, mm.
const bin = 0.05

// profile is the mean light over the distance from the line's outer edge, from before mm outside of it.
func (d *drawn) profile(t *truth, before float64) []float64 {
	n := int((before + 1.5*widest) / bin)
	sum, count := make([]float64, n), make([]float64, n)
	for i, v := range d.depth.V {
		if k := int(math.Floor((float64(v)*t.dot + before) / bin)); k >= 0 && k < n && t.kept[i] {
			sum[k] += float64(t.grey.V[i])
			count[k]++
		}
	}
	last := 1.0
	for k := range sum {
		if count[k] > 0 {
			last = sum[k] / count[k]
		}
		sum[k] = last
	}
	return sum
}

// lineWidth finds the width that the line has at the level, mm, and the width that was drawn: a band of
// one darkness that the camera has softened. Of such a band the whole of the light taken away, over what is
// taken away in its middle, is w / erf(w / (2 √2 σ)). 0: the light does not come back, or it is no line.
func (d *drawn) lineWidth(t *truth, k ink, soft float64) (seen, drawn float64) {
	const before = 0.8
	p := d.profile(t, before)
	level := float64(d.level)
	from := int((before + 0.1) / bin)
	at := -1
	for i := from; i < len(p) && at < 0; i++ {
		if p[i] > level {
			at = i
		}
	}
	if at < 0 {
		return 0, 0
	}
	f := (p[at] - level) / max(p[at]-p[at-1], 1e-9)
	seen = (float64(at)+0.5-min(f, 1))*bin - before
	if seen > widest {
		return 0, 0
	}
	taken, most := 0.0, 0.0
	for i := range min(len(p), at+int(before/bin)) {
		by := float64(k.paper) - p[i]
		taken, most = taken+by*bin, max(most, by)
	}
	sigma := math.Hypot(soft, t.dot*0.82)
	if drawn = unsoften(taken/most, sigma); drawn <= thinnest && sigma < sharp {
		return 0, 0 // the edge of something dark, which no pencil drew
	}
	return seen, drawn
}

const (
	thinnest = 0.08 // mm, that a line is taken for
	sharp    = 0.25 // mm of softness; beyond, a thin line and a thinner one look the same
)

// unsoften solves w / erf(w / (2 √2 σ)) = ratio for w, which grows with it; at least thinnest.
func unsoften(ratio, sigma float64) float64 {
	lo, hi := thinnest, 2*widest
	for range 50 {
		w := (lo + hi) / 2
		if w/math.Erf(w/(2*math.Sqrt2*sigma)) < ratio {
			lo = w
		} else {
			hi = w
		}
	}
	return lo
}

// grown moves a closed line outwards along its normals.
func grown(l curve.Line, by float64) curve.Line {
	if by == 0 {
		return l
	}
	if l.Area() < 0 {
		by = -by
	}
	out := make(curve.Line, len(l))
	for i, v := range l {
		d := l[(i+3)%len(l)].Sub(l[(i+len(l)-3)%len(l)])
		n := max(d.Norm(), 1e-9)
		out[i] = v.Add(curve.Vec{X: d.Y, Y: -d.X}.Mul(by / n))
	}
	return out
}

// evenly gives points along a closed line, so far apart at most.
func evenly(l curve.Line, apart float64) curve.Line {
	all := l.Length() + l[len(l)-1].Dist(l[0])
	n := max(8, int(math.Ceil(all/apart)))
	out := make(curve.Line, 0, n)
	step, s := all/float64(n), 0.0
	for i := range l {
		a, b := l[i], l[(i+1)%len(l)]
		long := a.Dist(b)
		for ; s < long && len(out) < n; s += step {
			out = append(out, a.Add(b.Sub(a).Mul(s/long)))
		}
		s -= long
	}
	return out
}

// rightWay turns a closed line counter-clockwise, as its signed area says, beginning at its least x.
func rightWay(l curve.Line) curve.Line {
	if l.Area() < 0 {
		l = l.Reverse()
	}
	first := 0
	for i, v := range l {
		if v.X < l[first].X {
			first = i
		}
	}
	return append(append(curve.Line{}, l[first:]...), l[:first]...)
}
