package calc

import (
	"slices"

	"chape/calc/curve"
)

// byX gives the order of the holes along the fold.
func byX(holes []sewn) []int {
	order := make([]int, len(holes))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		switch x, y := holes[a].Centre.X, holes[b].Centre.X; {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return a - b
	})
	return order
}

// rim is a closed outline in pieces with a box round each, so that most of it need not
// be looked at.
type rim struct {
	line   curve.Line
	pieces []piece
}

type piece struct {
	from, to int // of the segments
	lo, hi   curve.Vec
}

const pieceSize = 32

func newRim(l curve.Line) rim {
	r := rim{line: l, pieces: make([]piece, 0, len(l)/pieceSize+1)}
	for from := 0; from < len(l); from += pieceSize {
		to := min(from+pieceSize, len(l))
		lo, hi := l[from:to].Bounds()
		end := l[to%len(l)]
		r.pieces = append(r.pieces, piece{from, to, curve.Vec{X: min(lo.X, end.X), Y: min(lo.Y, end.Y)}, curve.Vec{X: max(hi.X, end.X), Y: max(hi.Y, end.Y)}})
	}
	return r
}

// depth is how far a point lies inside the outline, mm, and less than 0 outside; what is
// further from the outline than enough counts as that far, so that most of it need not be
// looked at.
func (r rim) depth(v curve.Vec, enough float64) float64 {
	inside, least := false, enough
	for _, q := range r.pieces {
		crosses := q.lo.Y <= v.Y && q.hi.Y > v.Y && q.hi.X > v.X // a ray to the right may
		dx, dy := max(0, q.lo.X-v.X, v.X-q.hi.X), max(0, q.lo.Y-v.Y, v.Y-q.hi.Y)
		near := dx*dx+dy*dy < least*least
		if !crosses && !near {
			continue
		}
		for i := q.from; i < q.to; i++ {
			a, b := r.line[i], r.line[(i+1)%len(r.line)]
			if (a.Y > v.Y) != (b.Y > v.Y) && v.X < a.X+(b.X-a.X)*(v.Y-a.Y)/(b.Y-a.Y) {
				inside = !inside
			}
			if near {
				least = min(least, toSegment(v, a, b))
			}
		}
	}
	if !inside {
		return -least
	}
	return least
}

// toSegment is the distance from v to the segment from a to b.
func toSegment(v, a, b curve.Vec) float64 {
	d, w := b.Sub(a), v.Sub(a)
	t := 0.0
	if n := d.X*d.X + d.Y*d.Y; n > 0 {
		t = max(0, min(1, (w.X*d.X+w.Y*d.Y)/n))
	}
	return v.Dist(a.Add(d.Mul(t)))
}
