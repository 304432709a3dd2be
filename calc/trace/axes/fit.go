package axes

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/interp"
)

// How close marks follow the outline, and how many there may be.
const (
	within = 0.15 // mm
	most   = 60
	spread = 0.5 // mm between marks, at least
	corner = 1.0 // mm beside a step where the pencil rounds corners: what is further off is carried on
	coarse = 0.3 // mm between the samples that are compared
)

// run is a stretch between steps, sampled.
type run struct {
	from, to        float64
	x               []float64
	top, bottom     []float64
	slopeT, slopeB  []float64
	openFrom, openT bool // the end is the knife's own
}

// fit gives the marks of all runs, by a wider tolerance where there were too many.
func (k Knife) fit() []Mark {
	for tolerance := within - 0.01; ; tolerance *= 1.3 {
		var out []Mark
		for _, r := range k.runs() {
			out = append(out, r.marks(tolerance)...)
		}
		if len(out) <= most || tolerance > 5 {
			return out
		}
	}
}

func (k Knife) runs() []run {
	ends := append(append([]float64{0}, k.Steps...), round(k.Length()))
	var out []run
	for i := 1; i < len(ends); i++ {
		out = append(out, k.run(ends[i-1], ends[i], i == 1, i == len(ends)-1))
	}
	return out
}

func (k Knife) run(from, to float64, first, last bool) run {
	r := run{from: from, to: to, openFrom: first, openT: last}
	n := max(4, int((to-from)/coarse))
	lo, hi := from, to
	inset := min(corner, (to-from)/4)
	if !first {
		lo += inset
	}
	if !last {
		hi -= inset
	}
	for i := range n + 1 {
		x := from + (to-from)*float64(i)/float64(n)
		y := min(max(x, lo), hi)
		top, bottom := k.sides.at(y)
		top, bottom = top+k.Rule, bottom+k.Rule
		if y != x { // carried on straight from further inside
			t, b := k.sides.at(min(max(2*y-x, from), to))
			top, bottom = 2*top-t-k.Rule, 2*bottom-b-k.Rule
		}
		r.x, r.top, r.bottom = append(r.x, x), append(r.top, top), append(r.bottom, bottom)
	}
	r.slopeT, r.slopeB = slopes(r.x, r.top), slopes(r.x, r.bottom)
	return r
}

func slopes(x, y []float64) []float64 {
	out := make([]float64, len(x))
	for i := range x {
		a, b := max(i-1, 0), min(i+1, len(x)-1)
		out[i] = (y[b] - y[a]) / (x[b] - x[a])
	}
	return out
}

func (r run) mark(x float64) Mark {
	i := min(max(int((x-r.from)/(r.to-r.from)*float64(len(r.x)-1)), 0), len(r.x)-2)
	f := min(max((x-r.x[i])/(r.x[i+1]-r.x[i]), 0), 1)
	return mark(x, r.top[i]*(1-f)+r.top[i+1]*f, r.bottom[i]*(1-f)+r.bottom[i+1]*f)
}

// marks puts marks where the curves stray most until they stay within the tolerance, then takes away and
// moves marks as long as they stay there.
func (r run) marks(tolerance float64) []Mark {
	ms := []Mark{r.mark(r.from), r.mark(r.to)}
	for len(ms) <= 2*most {
		off, at := r.off(ms)
		if off <= tolerance {
			break
		}
		i, ok := r.insert(ms, at)
		if !ok {
			break
		}
		ms = slices.Insert(ms, i, r.mark(r.free(ms, i, at)))
	}
	reached, _ := r.off(ms)
	tolerance = max(tolerance, reached)
	for again := true; again; {
		again = false
		for i := 1; i < len(ms)-1; i++ {
			less := slices.Delete(slices.Clone(ms), i, i+1)
			if better, ok := r.settle(less, tolerance); ok {
				ms, again = better, true
				i--
			}
		}
	}
	return ms
}

// insert is the place among the marks of one at x.
func (r run) insert(ms []Mark, x float64) (int, bool) {
	i, _ := slices.BinarySearchFunc(ms, x, func(m Mark, x float64) int { return int(math.Copysign(1, m.At-x)) })
	i = min(max(i, 1), len(ms)-1)
	return i, ms[i].At-ms[i-1].At > 2*spread
}

// free keeps a new mark off its neighbours.
func (r run) free(ms []Mark, i int, x float64) float64 {
	return min(max(x, ms[i-1].At+spread), ms[i].At-spread)
}

// settle moves marks to bring the curves within the tolerance.
func (r run) settle(ms []Mark, tolerance float64) ([]Mark, bool) {
	off, at := r.off(ms)
	for range 4 {
		if off <= tolerance {
			return ms, true
		}
		if off > 3*tolerance {
			return ms, false
		}
		best := ms
		for i := 1; i < len(ms)-1; i++ {
			if math.Abs(ms[i].At-at) > 60 {
				continue
			}
			for _, by := range []float64{-3, -1, 1, 3} {
				x := ms[i].At + by
				if x < ms[i-1].At+spread || x > ms[i+1].At-spread {
					continue
				}
				moved := slices.Clone(ms)
				moved[i] = r.mark(x)
				if o, _ := r.off(moved); o < off-1e-9 {
					best, off = moved, o
				}
			}
		}
		if &best[0] == &ms[0] {
			return ms, false
		}
		ms = best
		off, at = r.off(ms)
	}
	return ms, off <= tolerance
}

// off is how far the curves through the marks stray from both sides at most, square to the outline, and where.
// The last third of a millimetre at the knife's own ends, where it turns round, does not count.
func (r run) off(ms []Mark) (worst, at float64) {
	xs, tops, bottoms := make([]float64, len(ms)), make([]float64, len(ms)), make([]float64, len(ms))
	for i, m := range ms {
		xs[i], tops[i], bottoms[i] = m.At, m.Gap, m.Gap+m.Depth
	}
	var t, b interp.FritschButland
	if t.Fit(xs, tops) != nil || b.Fit(xs, bottoms) != nil {
		return math.Inf(1), (r.from + r.to) / 2
	}
	const turn = 0.35
	for i, x := range r.x {
		if r.openFrom && x < r.from+turn || r.openT && x > r.to-turn {
			continue
		}
		e := math.Abs(t.Predict(x)-r.top[i]) / math.Hypot(1, r.slopeT[i])
		e = max(e, math.Abs(b.Predict(x)-r.bottom[i])/math.Hypot(1, r.slopeB[i]))
		if e > worst {
			worst, at = e, x
		}
	}
	return worst, at
}
