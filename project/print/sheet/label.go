package sheet

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"chape/calc/curve"
	"chape/project/print/letters"
)

// Label says the name of each line along it, on every piece of it that has a
// straight stretch with room for the words.
func (d *Drawing) Label(within Box) {
	taken := make([]Box, 0, len(d.Texts))
	for _, t := range d.Texts {
		taken = append(taken, t.Box())
	}
	for _, c := range d.Circles {
		taken = append(taken, c.box())
	}
	for _, p := range d.Paths {
		if p.Name == "" {
			continue
		}
		if t, ok := p.words(within, taken, d.Paths); ok {
			taken = append(taken, t.Box().Grow(0.3))
			d.Texts = append(d.Texts, t)
		}
	}
}

// words finds a place for the path's name: as near to the middle as may be, on
// the side it belongs to, close to the line, and across no line.
func (p Path) words(within Box, taken []Box, lines []Path) (Text, bool) {
	pts := p.Pts
	if p.Closed {
		pts = append(append(curve.Line{}, pts...), pts[0])
	}
	long := pts.Length()
	w := letters.Width(p.Name, false) * WordSize
	const tries = 40
	for _, away := range []float64{0.7, 1.1, -0.7, -1.1, 1.8, -1.8, 2.6, -2.6} {
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
			if free(t.Box(), within, taken) && !t.Crossed(lines) {
				return t, true
			}
		}
	}
	return Text{}, false
}

// beside sets the words between a and b so far from the line, on the path's side
// for them or, with less than 0, on the other, so that they read from below or
// from the right.
func (p Path) beside(a, b curve.Vec, away float64) Text {
	d := b.Sub(a).Mul(1 / a.Dist(b))
	side := p.Side
	if away < 0 {
		side, away = -side, -away
	}
	n := curve.Vec{X: d.Y, Y: -d.X}.Mul(side) // y points down: left of d
	if d.X < -1e-6 || math.Abs(d.X) <= 1e-6 && d.Y > 0 {
		d = d.Mul(-1)
	}
	return running(p.Name, d, a.Add(b).Mul(0.5).Add(n.Mul(0.525*WordSize+away)))
}

// running sets words in a direction about a place.
func running(says string, d, mid curve.Vec) Text {
	up := curve.Vec{X: d.Y, Y: -d.X}
	return Text{Layer: WordLayer, At: mid.Sub(up.Mul(0.275 * WordSize)), Says: says, Size: WordSize,
		Angle: math.Atan2(-d.Y, d.X), Anchor: Middle}
}

// Crossed tells whether a line runs through the words.
func (t Text) Crossed(lines []Path) bool {
	own, round := t.own(), t.Box()
	sin, cos := math.Sincos(t.Angle)
	local := func(v curve.Vec) curve.Vec {
		v = v.Sub(t.At)
		return curve.Vec{X: v.X*cos - v.Y*sin, Y: v.X*sin + v.Y*cos}
	}
	for _, p := range lines {
		for i, z := range p.Pts {
			a := z
			switch {
			case i > 0:
				a = p.Pts[i-1]
			case p.Closed:
				a = p.Pts[len(p.Pts)-1]
			}
			lo, hi := curve.Line{a, z}.Bounds()
			if !round.meets(Box{lo, hi}) {
				continue
			}
			if _, _, ok := curve.Clip(local(a), local(z), own.Lo, own.Hi); ok {
				return true
			}
		}
	}
	return false
}

// Settle moves words off what runs through them on a sheet, other words and lines such as
// the joint with its neighbour, to the nearest place with room. A number stays by what it
// counts; words for which there is no place at all are left out.
func (d *Drawing) Settle(within Box) {
	for i := 0; i < len(d.Texts); i++ {
		t := d.Texts[i]
		if t.Layer != WordLayer {
			continue
		}
		taken := d.others(i)
		if free(t.Box(), within, taken) && !t.Crossed(d.Paths) {
			continue
		}
		far := 28.0
		if len([]rune(t.Says)) <= 4 {
			far = 6
		}
		found := false
		for _, v := range nearby() {
			if v.Norm() > far {
				break
			}
			moved := t
			moved.At = t.At.Add(v)
			if found = free(moved.Box(), within, taken) && !moved.Crossed(d.Paths); found {
				d.Texts[i] = moved
				break
			}
		}
		if !found {
			d.Texts = slices.Delete(d.Texts, i, i+1)
			i--
		}
	}
}

// nearby are the ways that words may move, the shortest first: close by in small steps,
// farther in large ones.
var nearby = sync.OnceValue(func() []curve.Vec {
	const near, far, step = 9.0, 28.0, 0.5
	var out []curve.Vec
	add := func(far, step float64) {
		for y := -far; y <= far; y += step {
			for x := -far; x <= far; x += step {
				if v := (curve.Vec{X: x, Y: y}); step == 0.5 || v.Norm() > near {
					out = append(out, v)
				}
			}
		}
	}
	add(near, step)
	add(far, 4*step)
	slices.SortStableFunc(out, func(a, b curve.Vec) int { return cmp.Compare(a.Norm(), b.Norm()) })
	return out
})

// others is what words i may not meet: all other words, and the circles.
func (d *Drawing) others(i int) []Box {
	var out []Box
	for k, t := range d.Texts {
		if k != i && t.Layer != TrialLayer {
			out = append(out, t.Box())
		}
	}
	for _, c := range d.Circles {
		out = append(out, c.box())
	}
	return out
}

func free(b, within Box, taken []Box) bool {
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
