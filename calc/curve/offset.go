package curve

import "math"

// Dilate gives, at each x of at (ascending), the lower edge of everything
// within r of the region under g: max over |ξ| <= r of g(x+ξ) + √(r²−ξ²).
// Places further than r from g get -Inf.
//
// The kernel is concave and the same everywhere, so the arcs round any two
// points of g cross once at most: which one is on top changes hands from left
// to right, and one sweep with a stack finds all. The curve is taken as
// straight between its points.
func Dilate(g Graph, at []float64, r float64) Graph { return new(Disc).Dilate(g, at, r) }

// Disc dilates and closes graph after graph, and keeps what it has to note on
// the way for the next one. Its zero value is ready; what it returns is the
// caller's. One goroutine at a time.
type Disc struct {
	// Room is how many points the longest curve has, Close's surroundings
	// counted, so that its notes need not grow; 0 if that is not known.
	Room          int
	tops          []top
	around, grown []float64
	x, y          []float64
}

// room is an empty list with place for n; a new one is made for most at once.
func room[T any](list []T, n, most int) []T {
	if cap(list) < n {
		list = make([]T, 0, max(n, most))
	}
	return list[:0]
}

// Dilate is the function of that name.
func (d *Disc) Dilate(g Graph, at []float64, r float64) Graph {
	return d.dilate(make([]float64, len(at)), g, at, r)
}

// Raise lifts base to the dilation of g over its stretch at.
func (d *Disc) Raise(base, g Graph, at []float64, r float64) {
	d.grown = room(d.grown, len(at), d.Room)[:len(at)]
	base.Raise(d.dilate(d.grown, g, at, r))
}

// erodeNeg is the opposite of Dilate for a graph that is mirrored already: min over
// |ξ| <= r of g(x+ξ) − √(r²−ξ²), +Inf further than r from it.
func (d *Disc) erodeNeg(mirrored Graph, at []float64, r float64) Graph {
	out := d.Dilate(mirrored, at, r)
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
func (d *Disc) Close(g Graph, r, step float64) Graph {
	n := len(g.X)
	around := room(d.around, n+int(2*r/step)+4, d.Room)
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
	d.around, d.grown = around, room(d.grown, len(around), d.Room)[:len(around)]
	grown := d.addValleys(g, d.dilate(d.grown, g, around, r), r, step)
	for i, y := range grown.Y {
		grown.Y[i] = -y
	}
	out := d.erodeNeg(grown, g.X, r)
	for i, y := range out.Y {
		out.Y[i] = max(y, g.Y[i])
	}
	return out
}

// dilate writes the heights to y, and leaves in tops which point of g is
// nearest the best from where on.
func (d *Disc) dilate(y []float64, g Graph, at []float64, r float64) Graph {
	if len(g.X) == 0 {
		for i := range y {
			y[i] = math.Inf(-1)
		}
		return Graph{at, y}
	}
	d.onTop(g, r)
	p := 0
	for i, x := range at {
		for p+1 < len(d.tops) && d.tops[p+1].from <= x {
			p++
		}
		y[i] = g.round(d.tops[p].point, x, r)
	}
	return Graph{at, y}
}

// round is the best height over x from the straight pieces on both sides of
// point j. A piece is looked at only where the height rises along it.
func (g Graph) round(j int, x, r float64) float64 {
	dx, last := g.X[j]-x, len(g.X)-1
	if math.Abs(dx) > r+same {
		return near(g, j, j, x, r, math.Inf(-1))
	}
	h := math.Sqrt(max(0, r*r-dx*dx))
	high := g.Y[j] + h
	if j > 0 && (g.Y[j]-g.Y[j-1])*h < dx*(g.X[j]-g.X[j-1]) {
		high = g.piece(j, x, r, high)
	}
	if j < last && (g.Y[j+1]-g.Y[j])*h > dx*(g.X[j+1]-g.X[j]) {
		high = g.piece(j+1, x, r, high)
	}
	return high
}

// top tells from which x on the arc round a point lies above all others.
type top struct {
	point int
	from  float64
}

// onTop finds the points whose arcs of radius r lie above all others
// somewhere, from left to right.
func (d *Disc) onTop(g Graph, r float64) {
	tops := append(room(d.tops, len(g.X), d.Room), top{0, math.Inf(-1)})
	for k := 1; k < len(g.X); k++ {
		x := math.Inf(-1)
		for len(tops) > 0 {
			last := tops[len(tops)-1]
			if x = g.overtakes(last.point, k, r); x >= last.from {
				break
			}
			tops = tops[:len(tops)-1]
			x = math.Inf(-1)
		}
		tops = append(tops, top{k, x})
	}
	d.tops = tops
}

// overtakes is the x from which on the arc round point k lies above that round
// point j < k: where they cross, or else the end of what they have in common.
func (g Graph) overtakes(j, k int, r float64) float64 {
	dx, dy := g.X[k]-g.X[j], g.Y[k]-g.Y[j]
	if dy*dy >= dx*(2*r-dx) {
		if dy >= 0 {
			return g.X[k] - r // it begins above the other
		}
		return g.X[j] + r // the other ends above it
	}
	h := math.Sqrt(r*r/(dx*dx+dy*dy) - 0.25)
	return (g.X[j]+g.X[k])/2 - h*dy
}

// near is the best height over x from the straight pieces that touch the
// points jlo to jhi, and at least top.
func near(g Graph, jlo, jhi int, x, r, top float64) float64 {
	for j := max(jlo, 1); j <= min(jhi+1, len(g.X)-1); j++ {
		top = g.piece(j, x, r, top)
	}
	return top
}

// piece is the best height over x from the straight piece that ends at point
// j, and at least top.
func (g Graph) piece(j int, x, r, top float64) float64 {
	x0, x1 := max(g.X[j-1], x-r), min(g.X[j], x+r)
	if x0 > x1 {
		return top
	}
	slope := (g.Y[j] - g.Y[j-1]) / (g.X[j] - g.X[j-1])
	best := min(max(x+r*slope/math.Sqrt(1+slope*slope), x0), x1)
	return max(top, g.Y[j-1]+slope*(best-g.X[j-1])+math.Sqrt(max(0, r*r-(best-x)*(best-x))))
}

// addValleys inserts the bottoms of the valleys of a dilated graph. Where the
// best point leaps from one side of a hollow to the other the two arcs meet in
// a sharp valley; the disc of an erosion that rests there draws the arc of the
// closing, so the valley has to be among the points.
func (d *Disc) addValleys(g, grown Graph, r, step float64) Graph {
	tops, out := d.tops, Graph{room(d.x, len(grown.X)+16, d.Room), room(d.y, len(grown.X)+16, d.Room)}
	i := 0
	for p := 1; p < len(tops); p++ {
		j, k, x := tops[p-1].point, tops[p].point, tops[p].from
		if g.X[k]-g.X[j] <= 1.5*step {
			continue
		}
		// Between them lies the place, a hair further on either side where one is on top at a single x.
		lo, hi := math.Max(x-step, math.Min(tops[p-1].from, x-4*Wall)), x+step
		if p+1 < len(tops) {
			hi = math.Min(hi, math.Max(tops[p+1].from, x+4*Wall))
		}
		vx, vy := valley(g, j, k, lo, hi, r)
		for ; i < len(grown.X) && grown.X[i] < vx-same; i++ {
			out.X, out.Y = append(out.X, grown.X[i]), append(out.Y, grown.Y[i])
		}
		if n := len(out.X); n > 0 && i < len(grown.X) && vx-out.X[n-1] > same && grown.X[i]-vx > same {
			out.X, out.Y = append(out.X, vx), append(out.Y, vy)
		}
	}
	d.x, d.y = append(out.X, grown.X[i:]...), append(out.Y, grown.Y[i:]...)
	return Graph{d.x, d.y}
}

// valley finds where the arc from around point j meets that from around
// point k, between x0 and x1. Beside a wall one of them falls by millimetres
// within the last step of the search, so the lower end of that is the place.
func valley(g Graph, j, k int, x0, x1, r float64) (x, y float64) {
	const around = 3
	mid := (j + k) / 2 // what lies on both sides of it is looked at once
	y0, y1 := math.Inf(1), math.Inf(1)
	for range 24 { // to a hundred-millionth of the samples' distance
		x = (x0 + x1) / 2
		left := near(g, max(j-around, 0), min(j+around, mid-1), x, r, math.Inf(-1))
		if right := near(g, max(k-around, mid+1), k+around, x, r, math.Inf(-1)); left > right {
			x0, y0 = x, left
		} else {
			x1, y1 = x, right
		}
	}
	if y0 < y1 {
		return x0, y0
	}
	return x1, y1
}
