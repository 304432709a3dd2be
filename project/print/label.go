package print

import (
	"cmp"
	"math"
	"slices"
	"sync"

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
		if t, ok := p.words(within, taken, d.paths); ok {
			taken = append(taken, t.box().grow(0.3))
			d.texts = append(d.texts, t)
		}
	}
}

// words finds a place for the path's name: as near to the middle as may be, on
// the side it belongs to, close to the line, and across no line.
func (p path) words(within box, taken []box, lines []path) (text, bool) {
	pts := p.pts
	if p.closed {
		pts = append(append(curve.Line{}, pts...), pts[0])
	}
	long := pts.Length()
	w := textWidth(p.name, false) * wordSize
	const tries = 40
	for _, away := range []float64{0.7, 1.1, -0.7, -1.1} {
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
			t := p.beside(a, b, away)
			if free(t.box(), within, taken) && !t.crossed(lines) {
				return t, true
			}
		}
	}
	return text{}, false
}

// beside sets the words between a and b so far from the line, on the path's side
// for them or, with less than 0, on the other, so that they read from below or
// from the right.
func (p path) beside(a, b curve.Vec, away float64) text {
	d := b.Sub(a).Mul(1 / a.Dist(b))
	side := p.side
	if away < 0 {
		side, away = -side, -away
	}
	n := curve.Vec{X: d.Y, Y: -d.X}.Mul(side) // y points down: left of d
	if d.X < -1e-6 || math.Abs(d.X) <= 1e-6 && d.Y > 0 {
		d = d.Mul(-1)
	}
	up := curve.Vec{X: d.Y, Y: -d.X}
	c := a.Add(b).Mul(0.5).Add(n.Mul(0.525*wordSize + away))
	return text{layer: wordLayer, at: c.Sub(up.Mul(0.275 * wordSize)), s: p.name, size: wordSize,
		angle: math.Atan2(-d.Y, d.X), anchor: middle}
}

// crossed tells whether a line runs through the words.
func (t text) crossed(lines []path) bool {
	own, round := t.own(), t.box()
	sin, cos := math.Sincos(t.angle)
	local := func(v curve.Vec) curve.Vec {
		v = v.Sub(t.at)
		return curve.Vec{X: v.X*cos - v.Y*sin, Y: v.X*sin + v.Y*cos}
	}
	for _, p := range lines {
		for i, z := range p.pts {
			a := z
			switch {
			case i > 0:
				a = p.pts[i-1]
			case p.closed:
				a = p.pts[len(p.pts)-1]
			}
			lo, hi := curve.Line{a, z}.Bounds()
			if !round.meets(box{lo, hi}) {
				continue
			}
			if _, _, ok := segmentIn(local(a), local(z), own); ok {
				return true
			}
		}
	}
	return false
}

// settle moves words off the lines that run through them on a sheet, such as the
// joint with its neighbour, by a few millimetres where there is room.
func (d *drawing) settle(within box) {
	for i, t := range d.texts {
		if t.layer != wordLayer || !t.crossed(d.paths) {
			continue
		}
		taken := d.others(i)
		for _, v := range nearby() {
			moved := t
			moved.at = t.at.Add(v)
			if free(moved.box(), within, taken) && !moved.crossed(d.paths) {
				d.texts[i] = moved
				break
			}
		}
	}
}

// nearby are the ways that words may move, up to so many millimetres, the
// shortest first.
var nearby = sync.OnceValue(func() []curve.Vec {
	const far, step = 14.0, 0.5
	var out []curve.Vec
	for y := -far; y <= far; y += step {
		for x := -far; x <= far; x += step {
			out = append(out, curve.Vec{X: x, Y: y})
		}
	}
	slices.SortStableFunc(out, func(a, b curve.Vec) int { return cmp.Compare(a.Norm(), b.Norm()) })
	return out
})

// others is what words i may not meet: all other words, and the circles.
func (d *drawing) others(i int) []box {
	var out []box
	for k, t := range d.texts {
		if k != i && t.layer != trialLayer {
			out = append(out, t.box())
		}
	}
	for _, c := range d.circles {
		out = append(out, c.box())
	}
	return out
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
