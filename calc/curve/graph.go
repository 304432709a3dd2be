package curve

import (
	"math"
	"slices"
	"sort"
)

// Graph is a curve over x: Y[i] over X[i], X strictly ascending, straight in
// between. It stands for the region below it: everything from the fold down
// to the curve.
type Graph struct{ X, Y []float64 }

// same is the distance below which two abscissae are one, mm.
const same = 1e-9

// At is the curve's height at x, straight between points and level beyond the
// ends; NaN for an empty graph.
func (g Graph) At(x float64) float64 {
	n := len(g.X)
	if n == 0 {
		return math.NaN()
	}
	i := sort.SearchFloat64s(g.X, x-same)
	switch {
	case i == n:
		return g.Y[n-1]
	case i == 0 || math.Abs(g.X[i]-x) <= same:
		return g.Y[i]
	}
	f := (x - g.X[i-1]) / (g.X[i] - g.X[i-1])
	return g.Y[i-1] + f*(g.Y[i]-g.Y[i-1])
}

// Neg is the graph mirrored at the fold.
func (g Graph) Neg() Graph {
	y := make([]float64, len(g.Y))
	for i := range y {
		y[i] = -g.Y[i]
	}
	return Graph{g.X, y}
}

// Between is the part of the graph with lo <= x <= hi; it shares memory.
func (g Graph) Between(lo, hi float64) Graph {
	i := sort.SearchFloat64s(g.X, lo-same)
	j := sort.SearchFloat64s(g.X, hi+same)
	return Graph{g.X[i:j], g.Y[i:j]}
}

// Raise lifts the graph to h wherever that is higher. The abscissae of h must
// be a stretch of those of g.
func (g Graph) Raise(h Graph) {
	if len(h.X) == 0 {
		return
	}
	from := sort.SearchFloat64s(g.X, h.X[0])
	for i, y := range h.Y {
		g.Y[from+i] = max(g.Y[from+i], y)
	}
}

// Line is the graph as a polyline, with more points put before it.
func (g Graph) Line(before ...Vec) Line {
	l := append(make(Line, 0, len(before)+len(g.X)), before...)
	for i, x := range g.X {
		l = append(l, Vec{x, g.Y[i]})
	}
	return l
}

// Nearest is the point of the graph, drawn as a polyline, nearest to p. The
// graph needs a point at least.
func (g Graph) Nearest(p Vec) Vec {
	best := Vec{g.X[0], g.Y[0]}
	dist := best.Dist(p)
	for i := 1; i < len(g.X); i++ {
		q := nearestOn(Vec{g.X[i-1], g.Y[i-1]}, Vec{g.X[i], g.Y[i]}, p)
		if r := q.Dist(p); r < dist {
			best, dist = q, r
		}
	}
	return best
}

// Area is the area between the graph and the fold (y = 0), mm².
func (g Graph) Area() float64 {
	var a float64
	for i := 1; i < len(g.X); i++ {
		a += (g.X[i] - g.X[i-1]) * (g.Y[i] + g.Y[i-1]) / 2
	}
	return a
}

// Max is the largest height; -Inf for an empty graph.
func (g Graph) Max() float64 {
	m := math.Inf(-1)
	for _, y := range g.Y {
		m = max(m, y)
	}
	return m
}

// Wall is the width over which a jump is drawn, mm.
const Wall = 1e-6

// Grid gives abscissae from lo to hi about step apart, with every critical
// place inside among them and the points crowding towards it from both sides,
// so that a curve may jump there. Critical places stay to the last bit; where
// two lie within a hair the one in the earlier list does.
func Grid(lo, hi, step float64, critical ...[]float64) []float64 {
	xs := []float64{lo, hi}
	for _, c := range critical {
		xs = Insert(xs, slices.Clone(c)...)
	}
	n := max(1, int(math.Ceil((hi-lo)/step-same)))
	more := make([]float64, 0, n+8*len(xs))
	for _, c := range xs {
		for _, d := range [...]float64{Wall, step / 32, step / 8, step * 3 / 8} {
			more = append(more, c-d, c+d)
		}
	}
	for i := 1; i < n; i++ {
		more = append(more, lo+(hi-lo)*float64(i)/float64(n))
	}
	return Insert(xs, more...)
}

// Insert puts more abscissae between the first and the last of xs, and sorts
// more. What lies within a hair of one that is there already is left out.
func Insert(xs []float64, more ...float64) []float64 {
	slices.Sort(more)
	out := make([]float64, 0, len(xs)+len(more))
	i := 0
	for _, x := range more {
		for i < len(xs) && xs[i] <= x {
			out = append(out, xs[i])
			i++
		}
		if len(out) == 0 || i == len(xs) || x-out[len(out)-1] <= same || xs[i]-x <= same {
			continue
		}
		out = append(out, x)
	}
	return append(out, xs[i:]...)
}
