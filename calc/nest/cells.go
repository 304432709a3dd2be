package nest

import (
	"math"
	"slices"

	"chape/calc/curve"
)

// trapezoid is a part of a region between two upright lines.
type trapezoid struct {
	x0, x1, lo0, lo1, hi0, hi1 float64
	lower, upper               float64 // how its sides rise
}

// at gives the lower and upper side at x.
func (t *trapezoid) at(x float64) (lo, hi float64) {
	return t.lo0 + (x-t.x0)*t.lower, t.hi0 + (x-t.x0)*t.upper
}

// cell is a chain of trapezoids, left to right: every upright line meets it in
// one stretch at most, and neighbours share a stretch.
type cell []trapezoid

// side is a side of an outline that is not upright; it runs to the right where
// wind is 1, to the left where it is -1.
type side struct {
	a, b curve.Vec // a.X < b.X
	wind int
}

func (s side) at(x float64) float64 { return s.a.Y + (x-s.a.X)/(s.b.X-s.a.X)*(s.b.Y-s.a.Y) }

const hair = 1e-9 // widths below it are none, mm

// cells cuts what the outlines wind round, counter-clockwise, into cells.
func cells(outlines ...curve.Line) []cell {
	sides, xs := sidesOf(outlines)
	slices.SortFunc(sides, func(s, t side) int {
		switch {
		case s.a.X < t.a.X:
			return -1
		case s.a.X > t.a.X:
			return 1
		}
		return 0
	})
	var done, open []cell
	first := 0
	for i := 1; i < len(xs); i++ {
		for first < len(sides) && sides[first].b.X <= xs[i-1] {
			first++
		}
		var still []cell
		still, done = link(open, slab(sides[first:], xs[i-1], xs[i]), done)
		open = still
	}
	done = append(done, open...)
	for _, c := range done {
		for i := range c {
			t := &c[i]
			t.lower, t.upper = (t.lo1-t.lo0)/(t.x1-t.x0), (t.hi1-t.hi0)/(t.x1-t.x0)
		}
	}
	return done
}

// sidesOf lists the sides, and every x where one begins, ends or crosses another.
func sidesOf(outlines []curve.Line) ([]side, []float64) {
	var sides []side
	var xs []float64
	for _, l := range outlines {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			xs = append(xs, p.X)
			switch {
			case q.X > p.X+hair:
				sides = append(sides, side{p, q, 1})
			case q.X < p.X-hair:
				sides = append(sides, side{q, p, -1})
			}
		}
	}
	for i, s := range sides {
		for _, t := range sides[i+1:] {
			if x, ok := meet(s.a, s.b, t.a, t.b); ok {
				xs = append(xs, x)
			}
		}
	}
	slices.Sort(xs)
	return sides, slices.CompactFunc(xs, func(a, b float64) bool { return math.Abs(b-a) < 10*hair })
}

// slab cuts the stretch between two neighbouring x; sides come by their left ends.
func slab(sides []side, x0, x1 float64) []trapezoid {
	mid := (x0 + x1) / 2
	type hit struct {
		y float64
		s side
	}
	var hits []hit
	for _, s := range sides {
		if s.a.X > mid {
			break
		}
		if s.b.X > mid {
			hits = append(hits, hit{s.at(mid), s})
		}
	}
	slices.SortFunc(hits, func(a, b hit) int {
		switch {
		case a.y < b.y:
			return -1
		case a.y > b.y:
			return 1
		}
		return 0
	})
	var ts []trapezoid
	wind, from := 0, side{}
	for _, h := range hits {
		was := wind
		wind += h.s.wind
		switch {
		case was <= 0 && wind > 0:
			from = h.s
		case was > 0 && wind <= 0:
			ts = append(ts, trapezoid{x0: x0, x1: x1, lo0: from.at(x0), lo1: from.at(x1), hi0: h.s.at(x0), hi1: h.s.at(x1)})
		}
	}
	return ts
}

// link carries on the cells that end where the trapezoids begin: one that meets
// one alone. The others are done.
func link(open []cell, ts []trapezoid, done []cell) (still, all []cell) {
	meets := func(c cell, t trapezoid) bool {
		last := c[len(c)-1]
		return max(last.lo1, t.lo0) < min(last.hi1, t.hi0)
	}
	onto := make([]int, len(ts)) // the cell a trapezoid carries on, plus one; -1: several
	uses := make([]int, len(open))
	for i, t := range ts {
		for j, c := range open {
			if meets(c, t) {
				uses[j]++
				if onto[i] == 0 {
					onto[i] = j + 1
				} else {
					onto[i] = -1
				}
			}
		}
	}
	taken := make([]bool, len(open))
	for i, t := range ts {
		if j := onto[i] - 1; j >= 0 && uses[j] == 1 {
			taken[j] = true
			still = append(still, carryOn(open[j], t))
			continue
		}
		still = append(still, cell{t})
	}
	for j, c := range open {
		if !taken[j] {
			done = append(done, c)
		}
	}
	return still, done
}

// carryOn lengthens the last trapezoid where both sides run on straight.
func carryOn(c cell, t trapezoid) cell {
	l := &c[len(c)-1]
	f := (t.x1 - l.x0) / (l.x1 - l.x0)
	straight := func(y0, y1, z0, z1 float64) bool {
		return math.Abs(y1-z0) < hair && math.Abs(y0+f*(y1-y0)-z1) < hair
	}
	if straight(l.lo0, l.lo1, t.lo0, t.lo1) && straight(l.hi0, l.hi1, t.hi0, t.hi1) {
		l.x1, l.lo1, l.hi1 = t.x1, t.lo1, t.hi1
		return c
	}
	return append(c, t)
}
