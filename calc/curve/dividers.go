package curve

import "math"

// Place is a point of a polyline: on the piece that begins at point Seg, at
// the distance S along the line.
type Place struct {
	Vec
	Seg int
	S   float64
}

// Along is the place at distance s along the line, kept to its ends. The
// line needs two points at least.
func (l Line) Along(s float64) Place {
	var sum float64
	for i := 0; ; i++ {
		d := l[i].Dist(l[i+1])
		if sum+d >= s || i == len(l)-2 {
			f := 0.0
			if d > 0 {
				f = min(max((s-sum)/d, 0), 1)
			}
			return Place{l[i].Add(l[i+1].Sub(l[i]).Mul(f)), i, sum + f*d}
		}
		sum += d
	}
}

// Dividers steps n equal chords along the line from the place s0: each next
// point is the first further along that lies chord away from the last one.
// Past its end the line goes on straight. The n+1 places include the first.
func (l Line) Dividers(s0, chord float64, n int) []Place {
	at := make([]Place, 1, n+1)
	at[0] = l.Along(s0)
	for range n {
		at = append(at, l.next(at[len(at)-1], chord))
	}
	return at
}

// next is the first place after p that lies chord away from it.
func (l Line) next(p Place, chord float64) Place {
	last := len(l) - 2
	from, s := p.Vec, p.S
	for i := p.Seg; ; i++ {
		to := l[i+1]
		dx, dy := to.X-p.X, to.Y-p.Y
		if i < last && dx*dx+dy*dy < chord*chord {
			s += from.Dist(to)
			from = to
			continue
		}
		step := exit(from.Sub(p.Vec), l[i+1].Sub(l[i]), chord)
		dir := l[i+1].Sub(l[i])
		if n := dir.Norm(); n > 0 {
			dir = dir.Mul(1 / n)
		}
		return Place{from.Add(dir.Mul(step)), i, s + step}
	}
}

// exit is how far along the direction dir from q, which lies inside the
// circle of radius r round the origin, the circle is left. 0 where q lies on
// or outside it.
func exit(q, dir Vec, r float64) float64 {
	n := dir.Norm()
	if n == 0 {
		return 0
	}
	b := (q.X*dir.X + q.Y*dir.Y) / n
	c := q.X*q.X + q.Y*q.Y - r*r
	return max(0, -b+math.Sqrt(max(0, b*b-c)))
}

// Walk finds the one divider setting whose n chords, stepped from s0, land on
// s1, and the places where the dividers fall. n >= 1 and s1 > s0.
func (l Line) Walk(s0, s1 float64, n int) (chord float64, at []Place) {
	// A chord is never longer than its arc, so the mean arc is too far at least.
	lo, hi := 0.0, (s1-s0)/float64(n)
	for range 60 {
		mid := (lo + hi) / 2
		p := l.Along(s0)
		for range n {
			p = l.next(p, mid)
		}
		if p.S > s1 {
			hi = mid
		} else {
			lo = mid
		}
		if hi-lo < 1e-10 {
			break
		}
	}
	return hi, l.Dividers(s0, hi, n)
}

// Nearest is the point of the open polyline nearest to p. The line needs a
// point at least.
func (l Line) Nearest(p Vec) Vec {
	best, dist := l[0], l[0].Dist(p)
	for i := 1; i < len(l); i++ {
		q := nearestOn(l[i-1], l[i], p)
		if r := q.Dist(p); r < dist {
			best, dist = q, r
		}
	}
	return best
}

// nearestOn is the point of the piece from a to b nearest to p.
func nearestOn(a, b, p Vec) Vec {
	d, w := b.Sub(a), p.Sub(a)
	n := d.X*d.X + d.Y*d.Y
	if n == 0 {
		return a
	}
	return a.Add(d.Mul(min(max((w.X*d.X+w.Y*d.Y)/n, 0), 1)))
}
