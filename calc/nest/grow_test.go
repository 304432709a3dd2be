package nest

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"chape/calc/curve"
	"github.com/peterstace/simplefeatures/geom"
)

// perimeter is the length of a closed outline.
func perimeter(l curve.Line) float64 { return append(slices.Clone(l), l[0]).Length() }

// shallowest is how far the curve round a corner, drawn as tangents over a fifth of a
// half turn each, may stand off the arc, as a share of the radius.
var shallowest = 1/math.Cos(math.Pi/10) - 1

// A convex outline grown by r has its area and P·r + π·r² more. Source: Steiner's
// formula (do Carmo, Differential Geometry of Curves and Surfaces); here corners are
// tangents outside the arcs, by little.
func TestGrowAgainstSteiner(t *testing.T) {
	for name, l := range map[string]curve.Line{
		"rectangle": Rect(50, 20), "triangle": {{}, {X: 40}, {X: 5, Y: 30}}, "round": Round(curve.Vec{}, 20),
	} {
		for _, r := range []float64{0.05, 1.5, 8} {
			got, want := grow(l, r).Area(), l.Area()+perimeter(l)*r+math.Pi*r*r
			if most := want + math.Pi*r*r*shallowest*1.4; got < want-1e-9 || got > most {
				t.Errorf("%s grown by %v: %v mm², want %v to %v", name, r, got, want, most)
			}
		}
	}
}

// Round any outline, hollows and all, what the grown curve winds round lies r and more
// from it everywhere outside: nothing within r is left out, by the geometry library's
// distance; and nothing further off than corners stand out is taken in.
func TestGrowHoldsAllWithin(t *testing.T) {
	rnd := rand.New(rand.NewPCG(6, 1))
	for n := range 20 {
		l := simpleStar(rnd, 4+n%8)
		if n%3 == 0 {
			l = ragged(rnd)
		}
		r := 0.5 + 9*rnd.Float64()
		cs, p := cells(grow(l, r)), polygon(l)
		for range 60 {
			v := curve.Vec{X: 200*rnd.Float64() - 100, Y: 200*rnd.Float64() - 100}
			d, ok := geom.Distance(p, geom.XY{X: v.X, Y: v.Y}.AsPoint().AsGeometry())
			if !ok {
				t.Fatal("no distance")
			}
			switch in := holds(cs, v); {
			case d < r-1e-6 && !in:
				t.Errorf("star %d grown by %.2f: %v lies %.3f from it and is left out", n, r, v, d)
			case d > r*(1+shallowest)+1e-6 && in:
				t.Errorf("star %d grown by %.2f: %v lies %.3f from it and is taken in", n, r, v, d)
			}
		}
	}
}

// Round notches sharper and smaller than the radius nothing is left out, right up to
// the straight line that runs r over them.
func TestGrowOverNotches(t *testing.T) {
	for _, c := range []struct{ wide, deep, r float64 }{{1, 3, 4}, {2, 1, 5}, {0.2, 6, 3}, {6, 2, 9}, {3, 12, 2}} {
		var l curve.Line
		for i := range 4 {
			x := 20 + 9*float64(i)
			l = append(l, curve.Vec{X: x}, curve.Vec{X: x + c.wide/2, Y: c.deep}, curve.Vec{X: x + c.wide})
		}
		l = append(curve.Line{{}}, append(l, curve.Vec{X: 80}, curve.Vec{X: 80, Y: 40}, curve.Vec{Y: 40})...)
		cs, p := cells(grow(l, c.r)), polygon(l)
		for x := 10.05; x < 70; x += 0.61 {
			for y := -1.4 * c.r; y < c.deep+1; y += 0.23 {
				d, _ := geom.Distance(p, geom.XY{X: x, Y: y}.AsPoint().AsGeometry())
				if in := holds(cs, curve.Vec{X: x, Y: y}); d < c.r-1e-6 && !in || d > c.r*(1+shallowest)+1e-6 && in {
					t.Fatalf("notches %v by %v grown by %v: %.2f, %.2f lies %.3f off, taken in %v", c.wide, c.deep, c.r, x, y, d, in)
				}
			}
		}
	}
}

// ragged is a ring of many short sides, its notches smaller than what it is grown by.
func ragged(rnd *rand.Rand) curve.Line {
	var l curve.Line
	for i := range 90 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 90)
		far := 50 + 5*rnd.Float64()
		l = append(l, curve.Vec{X: far * cos, Y: far * sin})
	}
	return l
}

// A slot narrower than twice the radius is filled: 8 wide, grown by 5.
func TestGrowFillsASlot(t *testing.T) {
	u := curve.Line{{}, {X: 48}, {X: 48, Y: 40}, {X: 28, Y: 40}, {X: 28, Y: 10}, {X: 20, Y: 10}, {X: 20, Y: 40}, {Y: 40}}
	for _, y := range []float64{11, 20, 39} {
		if !holds(cells(grow(u, 5)), curve.Vec{X: 24, Y: y}) {
			t.Errorf("the middle of the slot at %v is left out", y)
		}
		if holds(cells(grow(u, 3)), curve.Vec{X: 24, Y: y + 3}) {
			t.Errorf("grown by 3, the slot of 8 is filled at %v", y+3)
		}
	}
}

// What simplify leaves out lies within the tolerance of what it keeps, the corners it
// keeps are corners of the outline in their order, and it runs counter-clockwise.
func TestSimplify(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 1))
	for n := range 30 {
		var l curve.Line
		for i := range 200 { // a wobbling ring
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / 200)
			far := 60 + 8*math.Sin(float64(n%5)*2*math.Pi*float64(i)/200) + 0.2*rnd.Float64()
			l = append(l, curve.Vec{X: far * cos, Y: far * sin})
		}
		if n%2 == 1 {
			l = l.Reverse()
		}
		tol := 0.1 + 2*rnd.Float64()
		s := simplify(l, tol)
		if s.Area() <= 0 || len(s) >= len(l) {
			t.Errorf("ring %d within %.2f: %d of %d corners, area %v", n, tol, len(s), len(l), s.Area())
		}
		closed := append(slices.Clone(s), s[0])
		for _, p := range l {
			if d := closed.Nearest(p).Dist(p); d > tol+1e-9 {
				t.Errorf("ring %d: %v lies %v off, more than %v", n, p, d, tol)
			}
		}
		for _, p := range s {
			if !slices.Contains(l, p) {
				t.Errorf("ring %d: %v is no corner of it", n, p)
			}
		}
	}
	// By hand: corners on a straight side go, a bend of 1 stays for 0.9 and goes for 1.1.
	l := curve.Line{{}, {X: 10}, {X: 20, Y: -1}, {X: 30}, {X: 40}, {X: 40, Y: 30}, {X: 20, Y: 30}, {Y: 30}}
	if got := simplify(l, 0.9); len(got) != 5 || !slices.Contains(got, curve.Vec{X: 20, Y: -1}) {
		t.Errorf("within 0.9: %v", got)
	}
	if got := Corners(l, 1.1); len(got) != 4 {
		t.Errorf("within 1.1: %v", got)
	}
}

// The outline that is held against the edge of odd leather and flaws holds the true
// one and no more than a tenth of a millimetre round it; that held against other parts
// half the gap round it.
func TestDrawnHoldsTheTrueOutline(t *testing.T) {
	for _, k := range readTasks(t)[:6] {
		for _, s := range k.Parts {
			own := s.outline()
			d := draw(own, 3)
			for name, c := range map[string]struct {
				l      curve.Line
				lo, hi float64
			}{"edge": {d.edge, 0, 0.2}, "grown": {d.grown, 1.5, 3.2}} {
				cs := cells(c.l)
				for _, v := range own {
					for i := range 8 {
						sin, cos := math.Sincos(2 * math.Pi * float64(i) / 8)
						if near := v.Add(curve.Vec{X: cos, Y: sin}.Mul(c.lo * 0.999)); !holds(cs, near) && !onRim(c.l, near) {
							t.Fatalf("%s, %s: %s leaves out %v, %v from its outline", k.Name, s.Shape, name, near, c.lo)
						}
					}
				}
				far := append(slices.Clone(own), own[0])
				for _, v := range c.l {
					if d := far.Nearest(v).Dist(v); d > c.hi && !inside(own, v) {
						t.Errorf("%s, %s: %s stands %v off at %v", k.Name, s.Shape, name, d, v)
					}
				}
			}
		}
	}
}

// onRim is for places that the slices, open at their ends, do not count.
func onRim(l curve.Line, v curve.Vec) bool {
	return append(slices.Clone(l), l[0]).Nearest(v).Dist(v) < 1e-6
}

func inside(l curve.Line, v curve.Vec) bool {
	return geom.Intersects(polygon(l), geom.XY{X: v.X, Y: v.Y}.AsPoint().AsGeometry())
}
