package calc

import (
	"cmp"
	"slices"

	"chape/calc/curve"
	"chape/calc/knife"
)

// tautString measures a string pulled tight over points: from the first
// point (0, 0) straight up to the highest point over it, along the upper
// convex hull, and from the highest point over the last straight down to it.
// It keeps its buffers from one place along the sheath to the next.
type tautString struct {
	pts  []curve.Vec
	hull []curve.Vec
	one  ridge
}

// over lays the string from the fold apex over half the welt's thickness at
// the fold and the sections, down to last. Sections may not reach past last.
func (t *tautString) over(halfWelt float64, sections []knife.Section, last curve.Vec) float64 {
	t.pull(halfWelt, sections, last)
	length := t.hull[0].Y + t.hull[len(t.hull)-1].Y - last.Y
	for i := 1; i < len(t.hull); i++ {
		length += t.hull[i].Dist(t.hull[i-1])
	}
	return length
}

// pull finds the upper hull from the highest point over the fold to the
// highest over last.
func (t *tautString) pull(halfWelt float64, sections []knife.Section, last curve.Vec) {
	t.pts = append(t.pts[:0], curve.Vec{Y: halfWelt})
	for _, s := range sections {
		t.pts = s.Upper(t.pts)
	}
	t.pts = append(t.pts, last)
	if len(sections) > 1 {
		slices.SortFunc(t.pts, func(a, b curve.Vec) int { return cmp.Compare(a.X, b.X) })
	}
	h, at := t.hull[:0], 0.0
	for _, p := range t.pts {
		at = min(max(p.X, at), last.X) // a rounded arc may step back by a hair
		p.X = at
		if n := len(h); n > 0 && p.X == h[n-1].X { // one point a place, the highest
			if p.Y <= h[n-1].Y {
				continue
			}
			h = h[:n-1]
		}
		for len(h) >= 2 && !turnsDown(h[len(h)-2], h[len(h)-1], p) {
			h = h[:len(h)-1]
		}
		h = append(h, p)
	}
	t.hull = h
}

// turnsDown tells whether b lies above the straight line from a to c.
func turnsDown(a, b, c curve.Vec) bool {
	return (b.X-a.X)*(c.Y-a.Y)-(b.Y-a.Y)*(c.X-a.X) < 0
}

// through is over for the sections of one place, down to welt at half the
// welt's thickness; and the longest string alone, of these sections and of those
// that passed before. Most places have one section, which is drawn once for both.
func (t *tautString) through(halfWelt float64, sections []knife.Section, welt, passed float64) (inside, passing float64) {
	if len(sections) == 1 {
		s := sections[0]
		t.one.set(s)
		inside = t.one.string(halfWelt, s.Top, welt)
		if boxed(halfWelt, s) > passed {
			passed = max(passed, t.one.string(halfWelt, 0, s.Depth()))
		}
		return inside, passed
	}
	inside = t.over(halfWelt, sections, curve.Vec{X: welt, Y: halfWelt})
	for _, s := range sections {
		if boxed(halfWelt, s) > passed {
			passed = max(passed, t.alone(halfWelt, s))
		}
	}
	return inside, passed
}

// boxed is a string that is never shorter than that of alone, for sections that
// nobody need look at more closely: round the box that holds the section.
func boxed(halfWelt float64, s knife.Section) float64 {
	h := max(s.Thick/2, halfWelt)
	return 2*h - halfWelt + s.Depth()
}

// alone is the string over one section moved up to the fold, as it passes on
// its way in. It ends beside the edge at half the welt's thickness, below any
// corner that stands over it.
func (t *tautString) alone(halfWelt float64, s knife.Section) float64 {
	t.one.set(s)
	return t.one.string(halfWelt, 0, s.Depth())
}
