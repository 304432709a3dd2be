package curve

import "slices"

// Crossing looks for two pieces of the closed polyline that cross; i and
// j are their first points. Pieces that only touch do not cross. They are swept
// by x, so a line that goes to and fro little costs n log n.
func (l Line) Crossing() (i, j int, found bool) {
	n := len(l)
	order := make([]piece, n)
	sorted := true
	for k, a := range l {
		b := l[(k+1)%n]
		order[k] = piece{min(a.X, b.X), max(a.X, b.X), k}
		sorted = sorted && (k == 0 || order[k-1].lo <= order[k].lo)
	}
	if !sorted {
		order = merged(order)
	}
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

// merged sorts the pieces by where they begin. An outline goes up and comes
// down again: its few rising and falling stretches are merged, which takes a
// fraction of sorting them.
func merged(all []piece) []piece {
	var runs [][]piece
	for from := 0; from < len(all); {
		to := from + 1
		up := to < len(all) && all[to].lo >= all[from].lo
		for to < len(all) && (all[to].lo >= all[to-1].lo) == up {
			to++
		}
		if !up {
			slices.Reverse(all[from:to])
		}
		runs = append(runs, all[from:to])
		from = to
	}
	spare := make([]piece, 0, len(all))
	for len(runs) > 1 {
		var next [][]piece
		for i := 0; i < len(runs); i += 2 {
			if i+1 == len(runs) {
				next = append(next, runs[i])
				continue
			}
			spare = spare[:0]
			a, b := runs[i], runs[i+1]
			for len(a) > 0 && len(b) > 0 {
				if a[0].lo <= b[0].lo {
					spare, a = append(spare, a[0]), a[1:]
				} else {
					spare, b = append(spare, b[0]), b[1:]
				}
			}
			spare = append(append(spare, a...), b...)
			whole := runs[i][:len(spare)]
			copy(whole, spare)
			next = append(next, whole)
		}
		runs = next
	}
	return runs[0]
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
