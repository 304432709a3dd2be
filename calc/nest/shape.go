package nest

import (
	"math"
	"slices"
	"sync"

	"chape/calc/curve"
)

// shape is a part in one of its turns, moved so that the upright box round it
// has its lower left corner at the origin.
type shape struct {
	part   int
	turned bool
	angle  float64
	low    curve.Vec // where that corner was
	w, h   float64

	once  sync.Once
	edge  []cell // the outline that is held against the edge of the leather and flaws
	grown []cell // half the gap round it, and a little
}

// board is a piece of leather; places on it count from the lower left corner of
// the upright box round it.
type board struct {
	low       curve.Vec
	w, h      float64
	obstacles []cell  // where no part may lie; none on a bare rectangle
	leather   float64 // area less flaws
}

func newBoard(p Piece) board {
	lo, hi := p.Outline.Bounds()
	b := board{low: lo, w: hi.X - lo.X, h: hi.Y - lo.Y, leather: math.Abs(p.Outline.Area())}
	if b.leather < b.w*b.h-1e-6 {
		b.obstacles = cells(Rect(b.w, b.h), simplify(moved(p.Outline, lo), 1e-6).Reverse())
	}
	for _, f := range p.Flaws {
		b.leather -= math.Abs(f.Area())
		b.obstacles = append(b.obstacles, cells(simplify(moved(f, lo), 1e-6))...)
	}
	return b
}

// moved is the line with o as its origin.
func moved(l curve.Line, o curve.Vec) curve.Line {
	m := make(curve.Line, len(l))
	for i, p := range l {
		m[i] = p.Sub(o)
	}
	return m
}

// make cuts the shape into cells, the first time it is needed.
func (s *shape) make(outlines []drawn) {
	s.once.Do(func() {
		put := func(l curve.Line) curve.Line {
			l = moved(lay(l, s.turned, s.angle), s.low)
			if s.turned {
				l = l.Reverse() // counter-clockwise again
			}
			return l
		}
		s.edge = cells(put(outlines[s.part].edge))
		s.grown = cells(put(outlines[s.part].grown))
	})
}

// drawn is a part's outline as the search uses it, counter-clockwise.
type drawn struct{ edge, grown curve.Line }

// fine is how far the outline held against the edge of an odd piece, and against
// flaws, may lie outside the true one, mm. On a bare rectangle the true size counts.
const fine = 0.05

func draw(outline curve.Line, gap float64) drawn {
	return drawn{grow(simplify(outline, fine), fine), grow(simplify(outline, coarse), gap/2+coarse)}
}

// turnStep is the angle between the turns tried where any turn will do.
const turnStep = math.Pi / 12

// turns lists the angles a part may lie at on a piece. Those square to the piece
// come several times, as most of the turns to be tried.
func turns(p Part, on Piece) []float64 {
	if p.Along && on.Fixed {
		var l []float64
		for _, end := range [2]float64{0, math.Pi} {
			for _, f := range [5]float64{0, 1, -1, 0.5, -0.5} {
				l = append(l, math.Mod(on.Grain+end+f*min(on.Within, math.Pi/2), 2*math.Pi))
			}
		}
		return l
	}
	tight := tightest(p.Outline)
	var l []float64
	for q := range 4 {
		quarter := float64(q) * math.Pi / 2
		l = append(l, quarter, quarter, quarter, quarter)
		if math.Abs(math.Sin(2*tight)) > 1e-6 {
			l = append(l, tight+quarter)
		}
	}
	for i := range int(math.Round(2 * math.Pi / turnStep)) {
		if a := float64(i) * turnStep; math.Abs(math.Sin(2*a)) > 1e-6 {
			l = append(l, a)
		}
	}
	return l
}

// tightest is the turn that gives the smallest box round the outline; one of its
// sides then lies along the box (Freeman and Shapira 1975).
func tightest(l curve.Line) float64 {
	s := simplify(l, 1)
	best, at := math.Inf(1), 0.0
	for i, p := range s {
		d := s[(i+1)%len(s)].Sub(p)
		a := -math.Atan2(d.Y, d.X)
		lo, hi := lay(s, false, a).Bounds()
		if area := (hi.X - lo.X) * (hi.Y - lo.Y); area < best-1e-6 {
			best, at = area, a
		}
	}
	return at
}

// shapesOf lists a part's shapes on each piece by their number in all, adding
// those that are new. Parts lie on leather of their own thickness alone.
func shapesOf(all []*shape, t Task, part int) ([]*shape, [][]int) {
	p := t.Parts[part]
	on := make([][]int, len(t.Pieces))
	for i, piece := range t.Pieces {
		if !alike(piece.Thickness, p.Thickness) {
			continue
		}
		for _, a := range turns(p, piece) {
			for _, over := range [2]bool{false, true} {
				if over && !p.Kind.MayTurn() {
					continue
				}
				k := slices.IndexFunc(all, func(s *shape) bool { return s.part == part && s.turned == over && s.angle == a })
				if k < 0 {
					k = len(all)
					lo, hi := lay(p.Outline, over, a).Bounds()
					all = append(all, &shape{part: part, turned: over, angle: a, low: lo, w: hi.X - lo.X, h: hi.Y - lo.Y})
				}
				on[i] = append(on[i], k)
			}
		}
	}
	return all, on
}

// alike tells whether two thicknesses are one: within what a gauge shows.
func alike(a, b float64) bool { return math.Abs(a-b) <= 0.05+1e-9 }
