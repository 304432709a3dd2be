package curve

// Crossing looks for two pieces of the closed polyline that cross; i and
// j are their first points. Pieces that only touch do not cross. Along a
// stretch whose x never turns back none can cross; the stretches are held
// against each other by the boxes round them, so that on an outline that goes
// up and comes down again hardly a piece is looked at.
func (l Line) Crossing() (i, j int, found bool) {
	all := l.stretches()
	for n := range all {
		a := &all[n]
		for m := range all[:n] {
			if b := &all[m]; a.run == b.run || !a.meets(b.lo, b.hi) {
				continue
			} else if i, j, found = l.crossingOf(b, a); found {
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

// stretch is some neighbouring pieces of a polyline, and the box round them. x
// never turns back along all stretches of a run.
type stretch struct {
	from, to int // the pieces begin at these points, the last not included
	run      int
	lo, hi   Vec
}

// stretchSize is how many pieces a stretch has at most.
const stretchSize = 32

// stretches cuts the closed polyline.
func (l Line) stretches() []stretch {
	all := make([]stretch, 0, len(l)/stretchSize+32)
	run, way := 0, 0.0
	for k, a := range l {
		b := l.after(k)
		dx := b.X - a.X
		turns := dx*way < 0
		if turns {
			run, way = run+1, 0
		}
		if dx != 0 {
			way = dx
		}
		if n := len(all); n == 0 || turns || k-all[n-1].from == stretchSize {
			all = append(all, stretch{from: k, run: run, lo: a, hi: a})
		}
		s := &all[len(all)-1]
		s.to = k + 1
		s.lo = Vec{min(s.lo.X, b.X), min(s.lo.Y, b.Y)}
		s.hi = Vec{max(s.hi.X, b.X), max(s.hi.Y, b.Y)}
	}
	return all
}

// after is the point after point k of the closed polyline.
func (l Line) after(k int) Vec {
	if k++; k < len(l) {
		return l[k]
	}
	return l[0]
}

// meets tells whether the box has a point in common with that from lo to hi.
func (s *stretch) meets(lo, hi Vec) bool {
	return s.lo.X <= hi.X && lo.X <= s.hi.X && s.lo.Y <= hi.Y && lo.Y <= s.hi.Y
}

// crossingOf is Crossing for a piece of stretch a and one of the later stretch b.
func (l Line) crossingOf(a, b *stretch) (i, j int, found bool) {
	for i := a.from; i < a.to; i++ {
		p, q := l[i], l.after(i)
		lo, hi := Vec{min(p.X, q.X), min(p.Y, q.Y)}, Vec{max(p.X, q.X), max(p.Y, q.Y)}
		if !b.meets(lo, hi) {
			continue
		}
		for j := b.from; j < b.to; j++ {
			if d := j - i; d == 1 || d == len(l)-1 { // neighbours touch
				continue
			}
			r, s := l[j], l.after(j)
			if min(r.X, s.X) <= hi.X && lo.X <= max(r.X, s.X) && cross(p, q, r, s) {
				return i, j, true
			}
		}
	}
	return 0, 0, false
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
