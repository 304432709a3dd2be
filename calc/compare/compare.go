package compare

import (
	"math"
	"slices"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
)

// Difference is how two patterns differ at a place.
type Difference struct {
	At       float64
	Measured float64 // half-width of the earlier sheath
	Plan     float64
	By       float64 // measured less plan: above 0 the plan is short there, below it is over
}

// At compares at the places that both curves have.
func At(measured, plan curve.Graph, places []float64) []Difference {
	var ds []Difference
	for _, x := range places {
		if inside(measured, x) && inside(plan, x) {
			m, p := measured.At(x), plan.At(x)
			ds = append(ds, Difference{x, m, p, m - p})
		}
	}
	return ds
}

func inside(g curve.Graph, x float64) bool {
	return len(g.X) > 0 && x >= g.X[0]-1e-9 && x <= g.X[len(g.X)-1]+1e-9
}

// Curves is the difference as a curve, measured less plan, at every place where
// either bends, where both are; empty where they have no stretch in common.
func Curves(measured, plan curve.Graph) curve.Graph {
	xs := slices.Concat(measured.X, plan.X)
	slices.Sort(xs)
	var g curve.Graph
	for _, d := range At(measured, plan, slices.Compact(xs)) {
		g.X, g.Y = append(g.X, d.At), append(g.Y, d.By)
	}
	return g
}

// tie is how near two differences are, mm, to count as the same: of such the first along
// the fold is picked, whatever the last digits are.
const tie = 0.01

// Most picks where the plan is shortest and where it is most over; false where it
// is nowhere so.
func Most(ds []Difference) (short, over Difference, isShort, isOver bool) {
	for _, d := range ds {
		if d.By > 0 && (!isShort || d.By > short.By+tie) {
			short, isShort = d, true
		}
		if d.By < 0 && (!isOver || d.By < over.By-tie) {
			over, isOver = d, true
		}
	}
	return short, over, isShort, isOver
}

// Corrections come no more and no smaller than these.
const (
	mostCorrections = 16
	leastBy         = 0.02 // mm
)

// Corrections turns a part (a share, 1 for all) of a difference over x from lo to
// hi into corrections whose sum follows it: evenly spaced, each reaching to the
// next ones' places, so that at each place one of them counts alone and in between
// one fades into the other. It takes the fewest that follow within tol, or the
// most there may be, and says how far their sum is off at worst, in [lo, hi].
// Outside they fade away within one reach. lo may not lie before the point.
func Corrections(diff curve.Graph, part, lo, hi, tol float64) (fits []calc.Fit, off float64) {
	if len(diff.X) == 0 {
		return nil, 0
	}
	lo, hi = max(lo, 0, diff.X[0]), min(hi, diff.X[len(diff.X)-1])
	if hi-lo < leastReach {
		return nil, 0
	}
	off = math.Inf(1)
	for n := 1; n < mostCorrections && off > tol; n++ {
		if (hi-lo)/float64(n) < leastReach {
			break
		}
		next := evenly(diff, part, lo, hi, n)
		if o := worst(diff, part, lo, hi, next); o < off {
			fits, off = next, o
		}
	}
	return fits, off
}

// evenly spaces n+1 corrections; those of no height are left out.
func evenly(diff curve.Graph, part, lo, hi float64, n int) []calc.Fit {
	reach := (hi - lo) / float64(n)
	var fits []calc.Fit
	for i := range n + 1 {
		x := lo + reach*float64(i)
		if by := part * diff.At(x); math.Abs(by) >= leastBy {
			fits = append(fits, calc.Fit{At: length.Length(x), By: length.Length(by), Reach: length.Length(reach)})
		}
	}
	return fits
}

// worst is how far the sum of corrections is from the part at worst.
func worst(diff curve.Graph, part, lo, hi float64, fits []calc.Fit) float64 {
	const places = 400
	w := 0.0
	for i := range places + 1 {
		x := lo + (hi-lo)*float64(i)/places
		w = max(w, math.Abs(part*diff.At(x)-Sum(fits, x)))
	}
	return w
}

// Sum is what corrections add to the half-width at x: each By·(1 + cos πz)/2 with
// z = (x − At)/Reach, while |z| < 1. Left of the point it keeps its value.
func Sum(fits []calc.Fit, x float64) float64 {
	var s float64
	for _, f := range fits {
		if z := (max(x, 0) - f.At.MM()) / f.Reach.MM(); math.Abs(z) < 1 {
			s += f.By.MM() * (1 + math.Cos(math.Pi*z)) / 2
		}
	}
	return s
}
