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
// s1, and the places where the dividers fall. n >= 1 and s1 > s0. On a line
// that turns back on itself within a chord a setting a hair longer may leap
// past s1; then the last place lies short of it.
func (l Line) Walk(s0, s1 float64, n int) (chord float64, at []Place) {
	start := l.Along(s0)
	over := func(chord float64) float64 { // how far past s1 the last place lies
		p := start
		for range n {
			p = l.next(p, chord)
		}
		return p.S - s1
	}
	// A chord is never longer than its arc, so the mean arc is not too short.
	lo, hi := 0.0, (s1-s0)/float64(n)
	below, above := s0-s1, over(hi)
	if above <= 0 { // straight all along
		return hi, l.Dividers(s0, hi, n)
	}
	// False position, after Illinois: an end that stays twice counts half.
	for side := 0; hi-lo > 1e-13; {
		chord := min(max(hi-above*(hi-lo)/(above-below), lo), hi)
		switch d := over(chord); {
		case d <= 0 && d > -1e-9:
			return chord, l.Dividers(s0, chord, n)
		case d > 0:
			hi, above = chord, d
			if side > 0 {
				below /= 2
			}
			side = 1
		default:
			lo, below = chord, d
			if side < 0 {
				above /= 2
			}
			side = -1
		}
	}
	return lo, l.Dividers(s0, lo, n)
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
