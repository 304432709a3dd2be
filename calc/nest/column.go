package nest

import "math"

// known is what a chain has asked for of a no-fit polygon.
type known struct {
	*nofit
	blocks []*block
}

// standing is what a new shape must keep off. Flipped, the slices are of that which
// stands moved against the new one: the same, seen from the other side.
type standing struct {
	fit     *known
	col     int
	y       float64
	flipped bool
}

// keep has the next shape k keep off what stands at a column and a height: shape a, or
// board -1-a.
func (f *filler) keep(a, k, col int, y float64) {
	flipped := a > k
	key := [2]int{min(a, k), max(a, k)}
	n := f.own[key]
	if n == nil {
		fit := f.floor.fit(key[0], key[1])
		n = &known{fit, make([]*block, len(fit.blocks))}
		f.own[key] = n
	}
	f.near = append(f.near, standing{n, col, y, flipped})
}

// ask takes a block of slices from the floor. Each chain is charged with it, whichever
// cuts it, so that what a chain does hangs on no other.
func (f *filler) ask(n *known, i int) *block {
	b := n.block(i)
	n.blocks[i] = b
	f.work += b.pairs
	return b
}

// reaching lists what reaches some of the columns.
func (f *filler) reaching(from, to int) {
	f.here = f.here[:0]
	f.work += len(f.near)
	for _, n := range f.near {
		lo, hi := n.col+n.fit.first, n.col+n.fit.first+n.fit.slices-1
		if n.flipped {
			lo, hi = 2*n.col-hi, 2*n.col-lo
		}
		if lo <= to && hi >= from {
			f.here = append(f.here, n)
		}
	}
}

// lowest is the lowest free place in a column from low on, or one above top.
func (f *filler) lowest(col int, low, top float64) float64 {
	f.closed = f.closed[:0]
	f.work += 2 + len(f.here)
	for i := range f.here {
		n := &f.here[i]
		k := col - n.col
		if n.flipped {
			k = -k
		}
		k -= n.fit.first
		if k < 0 || k >= n.fit.slices {
			continue
		}
		b := n.fit.blocks[k/blockWide]
		if b == nil {
			b = f.ask(n.fit, k/blockWide)
		}
		k %= blockWide
		if n.close(f, b.one[k], low, top) {
			f.here[0], f.here[i] = f.here[i], f.here[0] // likely so in the next column: the first to be asked
			return math.Inf(1)
		}
		if b.more == nil {
			continue
		}
		for _, s := range b.more[k] {
			n.close(f, s, low, top)
		}
	}
	return above(f.closed, low, top)
}

// close adds a stretch to those closed, and tells whether it closes all from low to top.
func (n *standing) close(f *filler, s stretch, low, top float64) bool {
	if n.flipped {
		s = stretch{-s.hi, -s.lo}
	}
	s.lo, s.hi = s.lo+n.y+hair, s.hi+n.y
	if s.hi-hair > low && s.lo < top {
		f.closed = append(f.closed, s)
		return s.lo < low && s.hi > top
	}
	return false
}

// above is the lowest place from y on in no stretch, or one above top. Stretches begin
// a hair late, and end a hair early.
func above(closed []stretch, y, top float64) float64 {
	for again := true; again; {
		again = false
		for _, s := range closed {
			if y > s.lo && y < s.hi-hair {
				if y = s.hi; y > top {
					return y
				}
				again = true
			}
		}
	}
	return y
}
