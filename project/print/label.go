package print

import (
	"math"

	"chape/calc/curve"
)

// label says the name of each line along it, on every piece of it that has a
// straight stretch with room for the words.
func (d *drawing) label(within box) {
	taken := make([]box, 0, len(d.texts))
	for _, t := range d.texts {
		taken = append(taken, t.box())
	}
	for _, c := range d.circles {
		taken = append(taken, c.box())
	}
	for _, p := range d.paths {
		if p.name == "" {
			continue
		}
		if t, ok := p.words(within, taken); ok {
			taken = append(taken, t.box().grow(0.3))
			d.texts = append(d.texts, t)
		}
	}
}

// words finds a place for the path's name: as near to the middle as may be.
func (p path) words(within box, taken []box) (text, bool) {
	pts := p.pts
	if p.closed {
		pts = append(append(curve.Line{}, pts...), pts[0])
	}
	long := pts.Length()
	w := textWidth(p.name, false) * wordSize
	const tries = 40
	for i := range tries {
		share := 0.5 + float64((i+1)/2)/tries*float64(1-2*(i%2))
		from := share*long - w/2
		if from < 0 || from+w > long {
			continue
		}
		a, b := along(pts, from), along(pts, from+w)
		mid := along(pts, from+w/2)
		if a.Dist(b) < 0.97*w || toSegment(mid, a, b) > 0.5 {
			continue
		}
		t := p.beside(a, b)
		if free(t.box(), within, taken) {
			return t, true
		}
	}
	return text{}, false
}

// beside sets the words between a and b, on the path's side for them, so that
// they read from below or from the right.
func (p path) beside(a, b curve.Vec) text {
	d := b.Sub(a).Mul(1 / a.Dist(b))
	n := curve.Vec{X: d.Y, Y: -d.X}.Mul(p.side) // y points down: left of d
	if d.X < -1e-6 || math.Abs(d.X) <= 1e-6 && d.Y > 0 {
		d = d.Mul(-1)
	}
	up := curve.Vec{X: d.Y, Y: -d.X}
	c := a.Add(b).Mul(0.5).Add(n.Mul(0.45*wordSize + 0.7))
	return text{layer: wordLayer, at: c.Sub(up.Mul(0.3 * wordSize)), s: p.name, size: wordSize,
		angle: math.Atan2(-d.Y, d.X), anchor: middle}
}

func free(b, within box, taken []box) bool {
	if !within.holds(b) {
		return false
	}
	for _, t := range taken {
		if t.meets(b) {
			return false
		}
	}
	return true
}

// along is the point of a polyline at a length from its start.
func along(l curve.Line, s float64) curve.Vec {
	for i := 1; i < len(l); i++ {
		n := l[i-1].Dist(l[i])
		if s <= n && n > 0 {
			return l[i-1].Add(l[i].Sub(l[i-1]).Mul(s / n))
		}
		s -= n
	}
	return l[len(l)-1]
}
