package nest

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
)

// gene is one copy of a part, and the turn it is to lie in: a number that
// stands for one of those it may.
type gene struct {
	part, copy int
	turn       int
}

// window is the part of a piece that parts are laid in while there is room, from the
// lower left corner of its box.
type window struct{ left, low, top float64 }

// plan is an order of parts and, for each piece, the window that is used; it comes
// to a placing.
type plan struct {
	order  []gene
	limits []window
	down   []lying // in the same order; shape -1 where there was no room
	cost   float64
}

func (p *plan) clone() *plan {
	return &plan{slices.Clone(p.order), slices.Clone(p.limits), slices.Clone(p.down), p.cost}
}

// overhead is what there is to do for a change beside looking at columns, as work.
const overhead = 50

// carryOut lays the parts from the place at on; those before it lie already. It
// gives up, at an endless cost, once that is above bound.
func (f *filler) carryOut(p *plan, at int, bound float64) {
	clear(f.start)
	clear(f.hopeless)
	p.down = p.down[:at]
	f.work += overhead + len(p.order) // however little comes of it
	e := newExtents(f, p.order, p.down)
	for _, g := range p.order[at:] {
		l := f.lay(g, p.limits, p.down)
		p.down = append(p.down, l)
		e.add(f, g, l)
		if p.cost = e.cost(f); p.cost > bound {
			p.cost = math.Inf(1)
			return
		}
	}
	p.cost = e.cost(f)
}

// largestFirst is the plan to begin with: large parts first, all as drawn.
func (f *floor) largestFirst() *plan {
	p := &plan{}
	for i, part := range f.task.Parts {
		for c := range part.Count {
			p.order = append(p.order, gene{part: i, copy: c})
		}
	}
	slices.SortStableFunc(p.order, func(a, b gene) int { return cmp.Compare(f.area[b.part], f.area[a.part]) })
	for _, b := range f.boards {
		p.limits = append(p.limits, window{top: b.h})
	}
	return p
}

// change makes one random change and gives the first place in the order that it
// touches. Without turning, the turns stay.
func (f *filler) change(p *plan, r *rand.Rand, turning bool) int {
	n := len(p.order)
	what := r.IntN(100)
	switch {
	case what < 15 || n == 1 && !turning:
		i := r.IntN(len(p.limits))
		p.limits[i] = f.boards[i].other(p.limits[i], r)
		return 0
	case turning && (what < 55 || n == 1):
		i := r.IntN(n)
		p.order[i].turn = r.IntN(1 << 20)
		return i
	case what < 80:
		i, j := r.IntN(n), r.IntN(n)
		p.order[i], p.order[j] = p.order[j], p.order[i]
		return min(i, j)
	}
	i, j := r.IntN(n), r.IntN(n)
	g := p.order[i]
	p.order = slices.Insert(slices.Delete(p.order, i, i+1), j, g)
	return min(i, j)
}

// other is a window changed at random: its height anew or by a tenth at most; on a
// piece that is no bare rectangle also where it begins, for parts pushed into a
// slanting corner make no small rectangle.
func (b *board) other(w window, r *rand.Rand) window {
	if len(b.obstacles) > 0 {
		switch r.IntN(4) {
		case 0:
			w.left = max(0, b.w*(0.6*r.Float64()-0.2))
			return w
		case 1:
			w.low = max(0, b.h*(0.6*r.Float64()-0.2))
			return w
		}
	}
	if r.IntN(3) == 0 {
		w.top = b.h * (0.15 + 0.85*r.Float64())
	} else {
		w.top = min(b.h, w.top*(0.9+0.2*r.Float64()))
	}
	return w
}

// memory is for how many tries a climb takes back what it would not take now.
const memory = 40

// fewest is how many changes are tried however dear they are.
const fewest = 24

// climb changes a plan again and again, until as much work is done, and keeps the best.
func (f *filler) climb(from *plan, effort int, r *rand.Rand, turning bool, told func(*plan) bool) *plan {
	now, best := from.clone(), from.clone()
	past := make([]float64, memory)
	for i := range past {
		past[i] = from.cost
	}
	next := from.clone()
	for i := 0; i < fewest || f.work < effort; i++ {
		next.order = append(next.order[:0], now.order...)
		next.limits = append(next.limits[:0], now.limits...)
		next.down = append(next.down[:0], now.down...)
		bound := max(now.cost, past[i%memory])
		f.carryOut(next, f.change(next, r, turning), bound)
		if next.cost <= bound {
			now, next = next, now
		}
		past[i%memory] = now.cost
		if now.cost < best.cost {
			best = now.clone()
		}
		if !told(best) {
			break
		}
	}
	return best
}
