package curve

import (
	"cmp"
	"slices"
)

// Crossing looks for two pieces of the closed polyline that cross; i and
// j are their first points. Pieces that only touch do not cross. They are swept
// by x, so a line that goes to and fro little costs n log n.
func (l Line) Crossing() (i, j int, found bool) {
	n := len(l)
	order := make([]piece, n)
	for k, a := range l {
		b := l[(k+1)%n]
		order[k] = piece{min(a.X, b.X), max(a.X, b.X), k}
	}
	slices.SortFunc(order, func(a, b piece) int { return cmp.Compare(a.lo, b.lo) })
	open := make([]piece, 0, 64)
	for _, p := range order {
		kept := open[:0]
		for _, q := range open {
			if q.hi < p.lo {
				continue
			}
			kept = append(kept, q)
			if d := p.k - q.k; d == 1 || d == -1 || d == n-1 || d == 1-n {
				continue
			}
			if cross(l[p.k], l[(p.k+1)%n], l[q.k], l[(q.k+1)%n]) {
				return min(p.k, q.k), max(p.k, q.k), true
			}
		}
		open = append(kept, p)
	}
	return 0, 0, false
}

// piece is the stretch of x of the piece that begins at point k.
type piece struct {
	lo, hi float64
	k      int
}

// cross tells whether the pieces ab and cd have a point in common inside both.
func cross(a, b, c, d Vec) bool {
	if max(a.Y, b.Y) < min(c.Y, d.Y) || max(c.Y, d.Y) < min(a.Y, b.Y) {
		return false
	}
	const hair = 1e-15
	return side(a, b, c)*side(a, b, d) < -hair && side(c, d, a)*side(c, d, b) < -hair
}

// side is positive where c lies left of the way from a to b.
func side(a, b, c Vec) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }
