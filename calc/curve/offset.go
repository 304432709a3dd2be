package curve

import (
	"math"
	"sort"
)

// Dilate gives, at each x of at, the lower edge of everything within r of
// the region under g: max over |ξ| <= r of g(x+ξ) + √(r²−ξ²). Places further
// than r from g get -Inf.
//
// The kernel is concave, so the best x+ξ moves monotonically with x: halving
// the places costs n log n. The curve is taken as straight between its points.
func Dilate(g Graph, at []float64, r float64) Graph {
	return dilate(g, at, r, nil)
}

// Erode is the opposite: min over |ξ| <= r of g(x+ξ) − √(r²−ξ²). Places
// further than r from g get +Inf.
func Erode(g Graph, at []float64, r float64) Graph {
	out := Dilate(g.Neg(), at, r)
	for i, y := range out.Y {
		out.Y[i] = -y
	}
	return out
}

// DilateAt is Dilate at a single place: every piece of g is looked at.
func DilateAt(g Graph, x, r float64) float64 {
	return near(g, 0, len(g.X)-1, x, r, math.Inf(-1))
}

// Close is dilation by r, then erosion by r: hollows tighter than r are
// filled with arcs of radius r, outward curves stay as they are. The graph has
// nothing beyond its ends. The result stands over g's own abscissae, and is
// nowhere below g. step is about the spacing of g.
func Close(g Graph, r, step float64) Graph {
	n := len(g.X)
	around := make([]float64, 0, n+int(2*r/step)+4)
	for x := g.X[0] - r; x < g.X[0]-step/2; x += step {
		around = append(around, x)
	}
	around = append(around, g.X...)
	m := len(around)
	for x := g.X[n-1] + r; x > g.X[n-1]+step/2; x -= step {
		around = append(around, x)
	}
	for i, j := m, len(around)-1; i < j; i, j = i+1, j-1 {
		around[i], around[j] = around[j], around[i]
	}
	from := make([]int, len(around))
	grown := dilate(g, around, r, from)
	grown = addValleys(g, grown, from, r, step)
	out := Erode(grown, g.X, r)
	for i, y := range out.Y {
		out.Y[i] = max(y, g.Y[i])
	}
	return out
}

// dilate also puts into from, unless it is nil, which point of g is nearest
// the best of each place.
func dilate(g Graph, at []float64, r float64, from []int) Graph {
	d := dilation{g: g, at: at, r: r, y: make([]float64, len(at)), from: from}
	if len(at) > 0 && len(g.X) > 0 {
		d.solve(0, len(at)-1, 0, len(g.X)-1)
	}
	return Graph{at, d.y}
}

// dilation is one run of the divide and conquer.
type dilation struct {
	g    Graph
	at   []float64
	r    float64
	y    []float64
	from []int
}

// solve fills the places a to b, whose best points lie in jlo to jhi.
func (d *dilation) solve(a, b, jlo, jhi int) {
	for a <= b {
		mid := (a + b) / 2
		x, rr := d.at[mid], d.r*d.r
		best, top := -1, math.Inf(-1)
		first := jlo + sort.SearchFloat64s(d.g.X[jlo:jhi+1], x-d.r-same)
		for j := first; j <= jhi && d.g.X[j] <= x+d.r+same; j++ {
			dx := d.g.X[j] - x
			if v := d.g.Y[j] + math.Sqrt(max(0, rr-dx*dx)); v > top {
				best, top = j, v
			}
		}
		found := best >= 0
		if !found { // a straight piece may pass within r for all that
			best = min(first, jhi)
		}
		d.y[mid] = near(d.g, best, best, x, d.r, top)
		if d.from != nil {
			d.from[mid] = best
		}
		if found {
			d.solve(a, mid-1, jlo, best)
			jlo = best
		} else { // the neighbours are searched over the whole range
			d.solve(a, mid-1, jlo, jhi)
		}
		a = mid + 1
	}
}

// near is the best height over x from the straight pieces that touch the
// points jlo to jhi, and at least top.
func near(g Graph, jlo, jhi int, x, r, top float64) float64 {
	for j := max(jlo, 1); j <= min(jhi+1, len(g.X)-1); j++ {
		x0, x1 := max(g.X[j-1], x-r), min(g.X[j], x+r)
		if x0 > x1 {
			continue
		}
		slope := (g.Y[j] - g.Y[j-1]) / (g.X[j] - g.X[j-1])
		best := min(max(x+r*slope/math.Sqrt(1+slope*slope), x0), x1)
		v := g.Y[j-1] + slope*(best-g.X[j-1]) + math.Sqrt(max(0, r*r-(best-x)*(best-x)))
		top = max(top, v)
	}
	return top
}

// addValleys inserts the bottoms of the valleys of a dilated graph. Where the
// best point leaps from one side of a hollow to the other the two arcs meet in
// a sharp valley; the disc of an erosion that rests there draws the arc of the
// closing, so the valley has to be among the points.
func addValleys(g, grown Graph, from []int, r, step float64) Graph {
	out := Graph{make([]float64, 0, len(grown.X)+16), make([]float64, 0, len(grown.X)+16)}
	for i, x := range grown.X {
		if i > 0 {
			dx := x - grown.X[i-1]
			if leap := g.X[from[i]] - g.X[from[i-1]]; leap > 2*dx+2*step {
				vx, vy := valley(g, from[i-1], from[i], grown.X[i-1], x, r)
				if vx > grown.X[i-1]+same && vx < x-same {
					out.X, out.Y = append(out.X, vx), append(out.Y, vy)
				}
			}
		}
		out.X, out.Y = append(out.X, x), append(out.Y, grown.Y[i])
	}
	return out
}

// valley finds where the arc from around point j meets that from around
// point k, between x0 and x1.
func valley(g Graph, j, k int, x0, x1, r float64) (x, y float64) {
	const around = 3
	left := func(x float64) float64 { return near(g, max(j-around, 0), j+around, x, r, math.Inf(-1)) }
	right := func(x float64) float64 { return near(g, max(k-around, 0), k+around, x, r, math.Inf(-1)) }
	for range 40 {
		x = (x0 + x1) / 2
		if left(x) > right(x) {
			x0 = x
		} else {
			x1 = x
		}
	}
	return x, max(left(x), right(x))
}
