package nest

import (
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/curve"
	"github.com/peterstace/simplefeatures/geom"
)

// star is an outline round the origin that does not cross itself, some sides upright,
// some corners over one another.
func star(r *rand.Rand, corners int) curve.Line {
	var l curve.Line
	for i := range corners {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.8*r.Float64()) / float64(corners))
		far := 20 + 60*r.Float64()
		l = append(l, curve.Vec{X: math.Round(far*cos/4) * 4, Y: far * sin})
	}
	return l
}

// simpleStar draws stars until one does not cross itself after the rounding.
func simpleStar(r *rand.Rand, corners int) curve.Line {
	for {
		l := star(r, corners)
		if _, _, bad := crossing(l); !bad && polygonOK(l) {
			return simplify(l, 1e-9)
		}
	}
}

// polygonOK asks the library whether an outline is one.
func polygonOK(l curve.Line) bool { return polygon(l).Validate() == nil && l.Area() > 100 }

// areaOf sums up trapezoids.
func areaOf(cs []cell) (a float64) {
	for _, c := range cs {
		for _, t := range c {
			a += (t.x1 - t.x0) * (t.hi0 - t.lo0 + t.hi1 - t.lo1) / 2
		}
	}
	return a
}

// holds tells whether a place lies in one of the cells, by their slices.
func holds(cs []cell, v curve.Vec) bool {
	for _, c := range cs {
		for i := range c {
			if v.X >= c[i].x0 && v.X < c[i].x1 {
				if lo, hi := c[i].at(v.X); v.Y > lo && v.Y < hi {
					return true
				}
			}
		}
	}
	return false
}

// A U of 30 × 20 with a slot of 10 × 15 open to the top: 600 less 150 by hand.
func TestCellsOfAU(t *testing.T) {
	u := curve.Line{{}, {X: 30}, {X: 30, Y: 20}, {X: 20, Y: 20}, {X: 20, Y: 5}, {X: 10, Y: 5}, {X: 10, Y: 20}, {Y: 20}}
	cs := cells(u)
	if got := areaOf(cs); math.Abs(got-450) > 1e-9 {
		t.Errorf("the cells of a U have %v mm², want 450", got)
	}
	for _, c := range []struct {
		at   curve.Vec
		want bool
	}{{curve.Vec{X: 5, Y: 19}, true}, {curve.Vec{X: 15, Y: 4.9}, true}, {curve.Vec{X: 15, Y: 5.1}, false},
		{curve.Vec{X: 25, Y: 19}, true}, {curve.Vec{X: 31, Y: 1}, false}, {curve.Vec{X: 5, Y: 20.1}, false}} {
		if got := holds(cs, c.at); got != c.want {
			t.Errorf("%v in the U: %v, want %v", c.at, got, c.want)
		}
	}
}

// An outline inside another, the other way round, is a hole: 100 × 60 less 20 × 30.
func TestCellsRoundAHole(t *testing.T) {
	hole := moved(Rect(20, 30), curve.Vec{X: -40, Y: -10}).Reverse()
	cs := cells(Rect(100, 60), hole)
	if got := areaOf(cs); math.Abs(got-5400) > 1e-9 {
		t.Errorf("a rectangle with a hole has %v mm², want 5400", got)
	}
	if holds(cs, curve.Vec{X: 50, Y: 25}) || !holds(cs, curve.Vec{X: 50, Y: 45}) || !holds(cs, curve.Vec{X: 30, Y: 25}) {
		t.Error("the hole is not where it was put")
	}
	if got := areaOf(cells(Rect(10, 10), moved(Rect(10, 10), curve.Vec{X: -5, Y: -5}))); math.Abs(got-175) > 1e-9 {
		t.Errorf("two squares that overlap in a quarter have %v mm², want 175", got)
	}
}

// Two squares that meet at a corner alone stay two cells: no upright line through the
// corner has a stretch of both.
func TestCellsThatTouchAtACorner(t *testing.T) {
	if cs := cells(Rect(10, 10), moved(Rect(10, 10), curve.Vec{X: -10, Y: -10})); len(cs) != 2 {
		t.Errorf("%d cells, want 2", len(cs))
	}
}

// Sides that cross between their ends are cut there: two triangles laid over each other
// slantwise have the area of their union, by the geometry library.
func TestCellsOfCrossingSides(t *testing.T) {
	a, b := curve.Line{{}, {X: 40, Y: 3}, {X: 12, Y: 30}}, curve.Line{{X: 3, Y: 21}, {X: 15, Y: -9}, {X: 33, Y: 24}}
	both, err := geom.Union(polygon(a), polygon(b))
	if err != nil {
		t.Fatal(err)
	}
	if got := areaOf(cells(a, b)); math.Abs(got-both.Area()) > 1e-6 {
		t.Errorf("two triangles cover %v mm², by the library %v", got, both.Area())
	}
}

// The cells of random stars are the stars: by area, and together by the geometry
// library's symmetric difference; no two of them overlap, each meets an upright line
// in one stretch, and neighbours in a chain share a stretch.
func TestCellsAgainstLibrary(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for n := range 25 {
		l := simpleStar(r, 4+n%9)
		cs := cells(l)
		if got := areaOf(cs); math.Abs(got-l.Area()) > 1e-6 {
			t.Errorf("star %d: its cells have %v mm², the star %v", n, got, l.Area())
		}
		var pieces []geom.Geometry
		for _, c := range cs {
			for i := range c {
				if i > 0 {
					if c[i].x0 != c[i-1].x1 || math.Max(c[i].lo0, c[i-1].lo1) >= math.Min(c[i].hi0, c[i-1].hi1) {
						t.Errorf("star %d: a chain breaks at %v", n, c[i].x0)
					}
				}
				pieces = append(pieces, polygon(trapezoidLine(c[i])))
			}
		}
		all, err := geom.UnaryUnion(geom.NewGeometryCollection(pieces).AsGeometry())
		if err != nil {
			t.Fatal(err)
		}
		if diff, err := geom.SymmetricDifference(all, polygon(l)); err != nil || diff.Area() > 1e-3 {
			t.Errorf("star %d: cells and star differ by %v mm² (%v)", n, diff.Area(), err)
		}
	}
}

// trapezoidLine is a trapezoid, or the triangle that it comes to, as an outline.
func trapezoidLine(z trapezoid) curve.Line {
	l := curve.Line{{X: z.x0, Y: z.lo0}, {X: z.x1, Y: z.lo1}}
	if z.hi1 > z.lo1 {
		l = append(l, curve.Vec{X: z.x1, Y: z.hi1})
	}
	if z.hi0 > z.lo0 {
		l = append(l, curve.Vec{X: z.x0, Y: z.hi0})
	}
	return l
}

// What runs on straight is one trapezoid, however many corners stand on the way.
func TestCellsCarryOn(t *testing.T) {
	l := curve.Line{{}, {X: 10, Y: 1}, {X: 25, Y: 2.5}, {X: 40, Y: 4}, {X: 40, Y: 20}, {X: 30, Y: 20}, {X: 5, Y: 20}, {Y: 20}}
	if cs := cells(l); len(cs) != 1 || len(cs[0]) != 1 {
		t.Errorf("%d cells, the first of %d trapezoids, want 1 of 1", len(cs), len(cs[0]))
	}
	l[2].Y = 3 // a bend: two more
	if cs := cells(l); len(cs) != 1 || len(cs[0]) != 3 {
		t.Errorf("with a bend %d cells, the first of %d trapezoids, want 1 of 3", len(cs), len(cs[0]))
	}
}
