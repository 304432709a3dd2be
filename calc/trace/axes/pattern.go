package axes

import (
	"math"
	"slices"

	"chape/calc/curve"
)

// Pattern is an earlier pattern laid along its fold.
type Pattern struct {
	Axes
	Whole bool    // both halves, or one with its straight side on the fold
	Off   float64 // of a whole one: how far the halves differ, mm, root mean square; half of it is the cutter's error
	Worst float64 // and at most
	// Half is the half-width over x: the mean of both halves of a whole one.
	Half []Width
}

// Width is a half-width, mm, at a place along the fold.
type Width struct{ X, Y float64 }

// alike is how far the halves of a whole pattern differ at most, root mean square, mm: twice a poor cutter's error. A half
// differs from itself turned over by far more.
const alike = 1.2

// NewPattern lays a pattern: a whole one along the line about which it is most nearly the same on both sides, a half
// or folded one along its straight side.
func NewPattern(outline curve.Line, t Turns) Pattern {
	mid, along := principal(outline)
	best, least := Axes{}, math.Inf(1)
	across := curve.Vec{X: -along.Y, Y: along.X}
	for _, way := range []curve.Vec{along, across} {
		a, off := mirrorLine(outline, mid, way)
		if off < least {
			best, least = a, off
		}
	}
	if least < alike {
		return whole(outline, best, t)
	}
	return half(outline, t)
}

// mirrorLine turns and moves a line by small steps, each half of the last, to where the halves differ least.
func mirrorLine(l curve.Line, mid, along curve.Vec) (Axes, float64) {
	turn, move := math.Atan2(along.Y, along.X), 0.0
	at := func(turn, move float64) Axes {
		a := curve.Vec{X: math.Cos(turn), Y: math.Sin(turn)}
		d := curve.Vec{X: -a.Y, Y: a.X}
		return Axes{mid.Add(d.Mul(move)), a, d}
	}
	off, _ := differ(at(turn, move).in(l))
	for dt, dm := 0.04, 2.0; dm > 0.002; dt, dm = dt/2, dm/2 {
		for again := true; again; {
			again = false
			for _, s := range [][2]float64{{dt, 0}, {-dt, 0}, {0, dm}, {0, -dm}} {
				if o, _ := differ(at(turn+s[0], move+s[1]).in(l)); o < off-1e-12 {
					off, turn, move, again = o, turn+s[0], move+s[1], true
					break
				}
			}
		}
	}
	return at(turn, move), off
}

// differ is how far the sides' distances from the line differ: root mean square and most, mm. The last part at both
// ends, where they turn round, does not count.
func differ(l curve.Line) (rms, worst float64) {
	x0 := least(l)
	moved := make(curve.Line, len(l))
	for i, v := range l {
		moved[i] = curve.Vec{X: v.X - x0, Y: v.Y}
	}
	s := sidesOf(moved)
	n, sum := 0, 0.0
	skip := min(len(s.top)/20, int(6/sampled))
	for i := skip; i < len(s.top)-skip; i += 3 {
		d := math.Abs(s.top[i] + s.bottom[i])
		sum += d * d
		worst = max(worst, d)
		n++
	}
	return math.Sqrt(sum / float64(max(n, 1))), worst
}

func whole(outline curve.Line, a Axes, t Turns) Pattern {
	p := Pattern{Axes: a, Whole: true}
	p.Off, p.Worst = differ(a.in(outline))
	p.lay(outline, t)
	s := sidesOf(p.in(outline))
	for i := 0; i < len(s.top); i += int(math.Round(1 / sampled)) {
		p.Half = append(p.Half, Width{float64(i) * s.step, (s.bottom[i] - s.top[i]) / 2})
	}
	return p
}

// half lays a half pattern along its longest straight side.
func half(outline curve.Line, t Turns) Pattern {
	hull := convex(outline)
	var best Axes
	long := 0.0
	for i, a := range hull {
		b := hull[(i+1)%len(hull)]
		if d := a.Dist(b); d > long {
			w := b.Sub(a).Mul(1 / d)
			long, best = d, Axes{a, w, curve.Vec{X: -w.Y, Y: w.X}}
		}
	}
	best = best.along(outline)
	p := Pattern{Axes: best}
	if lo, hi := best.in(outline).Bounds(); -lo.Y > hi.Y {
		p.Down = p.Down.Mul(-1)
	}
	p.lay(outline, t)
	s := sidesOf(p.in(outline))
	for i := 0; i < len(s.top); i += int(math.Round(1 / sampled)) {
		p.Half = append(p.Half, Width{float64(i) * s.step, max(s.bottom[i], 0)})
	}
	return p
}

// along fits the line to the outline's points within half a millimetre of it.
func (a Axes) along(outline curve.Line) Axes {
	for range 3 {
		var n, sx, sy, xx, xy float64
		for _, v := range outline {
			if q := a.In(v); math.Abs(q.Y) < 0.5 {
				n, sx, sy, xx, xy = n+1, sx+q.X, sy+q.Y, xx+q.X*q.X, xy+q.X*q.Y
			}
		}
		if d := n*xx - sx*sx; d > 1e-9 {
			slope := (n*xy - sx*sy) / d
			k := 1 / math.Hypot(1, slope)
			a.From = a.Out(curve.Vec{Y: (sy - slope*sx) / n})
			a.Along, a.Down = a.Along.Add(a.Down.Mul(slope)).Mul(k), a.Down.Sub(a.Along.Mul(slope)).Mul(k)
		}
	}
	return a
}

// lay puts x = 0 at the narrow end, or at the other one, and turns the sides over if asked.
func (p *Pattern) lay(outline curve.Line, t Turns) {
	if narrowAtFar(p.in(outline)) != t.Ends {
		p.Along = p.Along.Mul(-1)
	}
	if t.Back && p.Whole {
		p.Down = p.Down.Mul(-1)
	}
	p.From = p.Out(curve.Vec{X: least(p.in(outline))})
}

// convex is the convex hull of points (Andrew's chain).
func convex(l curve.Line) curve.Line {
	pts := slices.Clone(l)
	slices.SortFunc(pts, func(a, b curve.Vec) int {
		if a.X < b.X || a.X == b.X && a.Y < b.Y {
			return -1
		}
		return 1
	})
	chain := func(pts curve.Line) (h curve.Line) {
		for _, v := range pts {
			for len(h) > 1 {
				a, b := h[len(h)-2], h[len(h)-1]
				if (b.X-a.X)*(v.Y-a.Y)-(b.Y-a.Y)*(v.X-a.X) > 0 {
					break
				}
				h = h[:len(h)-1]
			}
			h = append(h, v)
		}
		return h[:len(h)-1]
	}
	return append(chain(pts), chain(pts.Reverse())...)
}

// Band is the width between the long sides of a traced rule, and its length, mm: the mean distance of the two sides
// over the middle eight tenths, square to them.
func Band(outline curve.Line) (width, long float64) {
	mid, along := principal(outline)
	a := Axes{mid, along, curve.Vec{X: -along.Y, Y: along.X}}
	a.From = a.Out(curve.Vec{X: least(a.in(outline))})
	s := sidesOf(a.in(outline))
	n := len(s.top)
	count := 0.0
	for i := n / 10; i < n-n/10; i++ {
		width, count = width+s.depth(i), count+1
	}
	return width / max(count, 1), s.length()
}
