package nest

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"chape/calc/curve"
	"github.com/peterstace/simplefeatures/geom"
)

// Turned over, then by a quarter, then moved: (3, 1) → (3, −1) → (1, 3) → (11, 23).
func TestPutByHand(t *testing.T) {
	for _, c := range []struct {
		p    Placement
		want curve.Vec
	}{
		{Placement{}, curve.Vec{X: 3, Y: 1}},
		{Placement{At: curve.Vec{X: 10, Y: 20}}, curve.Vec{X: 13, Y: 21}},
		{Placement{Angle: math.Pi / 2}, curve.Vec{X: -1, Y: 3}},
		{Placement{Angle: math.Pi}, curve.Vec{X: -3, Y: -1}},
		{Placement{Angle: -math.Pi / 2}, curve.Vec{X: 1, Y: -3}},
		{Placement{Turned: true}, curve.Vec{X: 3, Y: -1}},
		{Placement{Turned: true, Angle: math.Pi / 2, At: curve.Vec{X: 10, Y: 20}}, curve.Vec{X: 11, Y: 23}},
		{Placement{Angle: math.Pi / 6}, curve.Vec{X: 3*math.Sqrt(3)/2 - 0.5, Y: 1.5 + math.Sqrt(3)/2}},
	} {
		if got := c.p.Put(curve.Line{{X: 3, Y: 1}})[0]; got.Dist(c.want) > 1e-12 {
			t.Errorf("%+v puts (3, 1) at %v, want %v", c.p, got, c.want)
		}
	}
	out := Rect(3, 1)
	(Placement{Angle: 1, Turned: true}).Put(out)
	if !slices.Equal(out, Rect(3, 1)) {
		t.Error("Put changes the outline it is given")
	}
}

// Quarter turns are exact to the last bit, however many there are of them, so that a
// part as wide as its leather fits; others are the library's.
func TestSincosIsExactAtQuarters(t *testing.T) {
	want := [4][2]float64{{0, 1}, {1, 0}, {0, -1}, {-1, 0}}
	for q := -9; q <= 9; q++ {
		sin, cos := sincos(float64(q) * math.Pi / 2)
		if w := want[(q%4+4)%4]; sin != w[0] || cos != w[1] {
			t.Errorf("%d quarters: %v, %v, want %v", q, sin, cos, w)
		}
	}
	for _, a := range []float64{0.3, -2, 1e-6, 5} {
		sin, cos := sincos(a)
		if s, c := math.Sincos(a); sin != s || cos != c {
			t.Errorf("sincos(%v) = %v, %v", a, sin, cos)
		}
	}
}

// A flaw's outline holds its circle and stands off it by less than 0.3 %.
func TestRoundHoldsItsCircle(t *testing.T) {
	c := curve.Vec{X: 40, Y: -7}
	l := Round(c, 12)
	closed := append(slices.Clone(l), l[0])
	if d := closed.Nearest(c).Dist(c); math.Abs(d-12) > 1e-9 {
		t.Errorf("its sides come as near as %v to the middle, want 12", d)
	}
	for _, v := range l {
		if d := v.Dist(c); d < 12 || d > 12*1.003 {
			t.Errorf("a corner %v from the middle", d)
		}
	}
	if l.Area() <= 0 {
		t.Error("it runs clockwise")
	}
}

// The turn that gives the smallest box gives that of the geometry library, which comes
// to it its own way.
func TestTightestAgainstLibrary(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	for n := range 40 {
		l := simplify(simpleStar(r, 3+n%9).Hull(), 1.1) // its sides are tried, those of the hull that join two others are not
		if _, _, bad := crossing(l); bad || len(l) != len(l.Hull()) {
			continue
		}
		lo, hi := lay(l, false, tightest(l)).Bounds()
		got, want := (hi.X-lo.X)*(hi.Y-lo.Y), geom.RotatedMinimumAreaBoundingRectangle(polygon(l)).Area()
		if math.Abs(got-want) > 1e-6*want {
			t.Errorf("outline %d: a box of %v, the smallest is %v", n, got, want)
		}
	}
	for a := 0.05; a < 3; a += 0.37 {
		l := lay(curve.Line{{}, {X: 90}, {X: 90, Y: 20}, {X: 30, Y: 26}, {Y: 20}}, false, a)
		lo, hi := lay(l, false, tightest(l)).Bounds()
		want := geom.RotatedMinimumAreaBoundingRectangle(polygon(l)).Area()
		if got := (hi.X - lo.X) * (hi.Y - lo.Y); math.Abs(got-want) > 1e-6*want {
			t.Errorf("turned by %v its box is %v, want %v", a, got, want)
		}
	}
}

// With the fold tied to the grain every turn lies within the angle, either end first;
// without it all twelve turns of a quarter's half and the quarters are there.
func TestTurns(t *testing.T) {
	p := Part{Kind: Body, Outline: Rect(90, 40), Along: true}
	for _, grain := range []float64{0, 0.4, 2, -1} {
		for _, within := range []float64{0, 0.1, math.Pi / 2, 3} {
			l := turns(p, Piece{Fixed: true, Grain: grain, Within: within})
			ends := map[bool]bool{}
			for _, a := range l {
				if offGrain(a-grain) > math.Min(within, math.Pi/2)+1e-9 {
					t.Errorf("grain %v within %v: a turn of %v", grain, within, a)
				}
				ends[math.Cos(a-grain) > 0] = true
			}
			across := slices.ContainsFunc(l, func(a float64) bool { return offGrain(a-grain) > math.Pi/2-1e-9 })
			if across != (within > 1.5) {
				t.Errorf("grain %v within %v: one lies straight across: %v", grain, within, across)
			}
			if within < 1.5 && (!ends[true] || !ends[false]) {
				t.Errorf("grain %v within %v: only one end first in %v", grain, within, l)
			}
		}
	}
	p.Along = false
	free := turns(p, Piece{Fixed: true, Grain: 0.4})
	for i := range 24 {
		a := float64(i) * math.Pi / 12
		if !slices.ContainsFunc(free, func(b float64) bool { return math.Abs(math.Remainder(a-b, 2*math.Pi)) < 1e-9 }) {
			t.Errorf("where any turn will do, %v is not among them", a)
		}
	}
}

// What a gauge shows as one thickness is one: 0.05 mm, no more (common practice, no
// source).
func TestAlike(t *testing.T) {
	for _, c := range []struct {
		a, b float64
		want bool
	}{{3, 3, true}, {3, 3.05, true}, {3.05, 3, true}, {3, 3.051, false}, {2.9, 3, false}} {
		if got := alike(c.a, c.b); got != c.want {
			t.Errorf("%v and %v mm alike: %v, want %v", c.a, c.b, got, c.want)
		}
	}
}

// Leather counts from the corner of its box; a bare rectangle has nothing in the way,
// a triangle the half of its box, a flaw itself.
func TestBoard(t *testing.T) {
	b := newBoard(Piece{Outline: moved(Rect(100, 60), curve.Vec{X: -30, Y: 5})})
	if (b.low != curve.Vec{X: 30, Y: -5}) || b.w != 100 || b.h != 60 || len(b.obstacles) != 0 || b.leather != 6000 {
		t.Errorf("a rectangle: %+v", b)
	}
	triangle := curve.Line{{X: 10, Y: 10}, {X: 110, Y: 10}, {X: 10, Y: 70}}
	b = newBoard(Piece{Outline: triangle, Flaws: []curve.Line{moved(Rect(5, 4), curve.Vec{X: -20, Y: -20})}})
	if math.Abs(b.leather-2980) > 1e-9 || math.Abs(areaOf(b.obstacles)-3020) > 1e-3 {
		t.Errorf("a triangle with a flaw: %v mm² of leather, %v in the way, want 2980, 3020", b.leather, areaOf(b.obstacles))
	}
	for v, want := range map[curve.Vec]bool{{X: 12, Y: 12}: true, {X: 99, Y: 59}: true, {X: 1, Y: 1}: false, {X: 20, Y: 40}: false, {X: 60, Y: 30}: true} {
		if got := holds(b.obstacles, v); got != want {
			t.Errorf("%v from the corner is in the way: %v, want %v", v, got, want)
		}
	}
}
