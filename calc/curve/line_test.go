package curve

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
)

// knot is a ring of points round the origin; tame ones do not cross themselves.
func knot(rng *rand.Rand, n int, wild float64) Line {
	var l Line
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + wild*rng.Float64()) / float64(n))
		far := 5 + 20*rng.Float64()
		l = append(l, Vec{far * cos, far * sin})
	}
	return l
}

// Vectors by hand: 3-4-5.
func TestVec(t *testing.T) {
	v, w := Vec{3, 4}, Vec{-1, 2}
	if v.Add(w) != (Vec{2, 6}) || v.Sub(w) != (Vec{4, 2}) || v.Mul(-2) != (Vec{-6, -8}) || v.Norm() != 5 || (Vec{7, 1}).Dist(Vec{4, 5}) != 5 {
		t.Errorf("%v and %v: %v, %v, %v, %v", v, w, v.Add(w), v.Sub(w), v.Mul(-2), v.Norm())
	}
}

// Area and length, and the box, are those of the geometry library; the area changes
// its sign with the way round, and is 0 of a line there and back.
func TestLineAgainstLibrary(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 7))
	for n := range 40 {
		l := knot(rng, 3+n%20, 0.9)
		ring := append(slices.Clone(l), l[0])
		if got, want := l.Area(), polygon(l).Area(); math.Abs(got-want) > 1e-9*want {
			t.Errorf("ring %d: area %v, by the library %v", n, got, want)
		}
		if got := l.Reverse().Area(); math.Abs(got+l.Area()) > 1e-9 {
			t.Errorf("ring %d: the other way round its area is %v, not -%v", n, got, l.Area())
		}
		if got, want := ring.Length(), polygon(l).Boundary().Length(); math.Abs(got-want) > 1e-9 {
			t.Errorf("ring %d: %v round, by the library %v", n, got, want)
		}
		lo, hi := l.Bounds()
		box := polygon(l).Envelope()
		if math.Abs(hi.X-lo.X-box.Width()) > 1e-12 || math.Abs(hi.Y-lo.Y-box.Height()) > 1e-12 {
			t.Errorf("ring %d: a box of %v by %v, by the library %v by %v", n, hi.X-lo.X, hi.Y-lo.Y, box.Width(), box.Height())
		}
		p := Vec{60*rng.Float64() - 30, 60*rng.Float64() - 30}
		d, _ := geom.Distance(polygon(l).Boundary(), geom.XY{X: p.X, Y: p.Y}.AsPoint().AsGeometry())
		if got := ring.Nearest(p).Dist(p); math.Abs(got-d) > 1e-9 {
			t.Errorf("ring %d: %v lies %v off, by the library %v", n, p, got, d)
		}
	}
	if (Line{}).Length() != 0 || (Line{{1, 1}}).Length() != 0 || (Line{{0, 0}, {5, 5}}).Area() != 0 {
		t.Error("a line without length has some, or one there and back an area")
	}
}

// Hull and smallest box are those of the geometry library, which finds them its own way.
func TestHullAgainstLibrary(t *testing.T) {
	rng := rand.New(rand.NewPCG(10, 7))
	for n := range 60 {
		l := knot(rng, 3+n%30, 3)
		points := make([]geom.Point, len(l))
		for i, p := range l {
			points[i] = geom.XY{X: p.X, Y: p.Y}.AsPoint()
		}
		all := geom.NewMultiPoint(points).AsGeometry()
		if hull := all.ConvexHull(); math.Abs(hull.Area()-l.Hull().Area()) > 1e-9*hull.Area() {
			t.Errorf("points %d: a hull of %v, by the library %v", n, l.Hull().Area(), hull.Area())
		}
		w, h := l.SmallestBox()
		if box := geom.RotatedMinimumAreaBoundingRectangle(all).Area(); math.Abs(w*h-box) > 1e-6*box {
			t.Errorf("points %d: a box of %v by %v, by the library of %v", n, w, h, box)
		}
	}
}

// Whether a ring crosses itself is what the geometry library says, where no corner
// touches a side (random places do not).
func TestCrossingAgainstLibrary(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 7))
	crossed := 0
	for n := range 120 {
		l := knot(rng, 4+n%25, []float64{0.9, 1.6, 4}[n%3])
		_, _, got := l.Crossing()
		simple, _ := polygon(l).Boundary().IsSimple()
		if got == simple {
			t.Errorf("ring %d: crosses itself %v, by the library simple %v", n, got, simple)
		}
		if got {
			crossed++
		}
	}
	if crossed < 20 || crossed > 100 {
		t.Errorf("%d of 120 cross themselves: the test has no teeth", crossed)
	}
}

// Clip keeps what lies in the box: the piece between its shares is inside, and what it
// leaves out is not; against the geometry library's intersection.
func TestClipAgainstLibrary(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 7))
	lo, hi := Vec{-5, 2}, Vec{12, 9}
	box := polygon(Line{lo, {hi.X, lo.Y}, hi, {lo.X, hi.Y}})
	some := 0
	for range 300 {
		a, b := Vec{40*rng.Float64() - 20, 30*rng.Float64() - 10}, Vec{40*rng.Float64() - 20, 30*rng.Float64() - 10}
		t0, t1, ok := Clip(a, b, lo, hi)
		in, err := geom.Intersection(box, geom.NewLineString(geom.NewSequence([]float64{a.X, a.Y, b.X, b.Y}, geom.DimXY)).AsGeometry())
		if err != nil {
			t.Fatal(err)
		}
		got := 0.0
		if ok {
			got = (t1 - t0) * a.Dist(b)
			some++
		}
		if math.Abs(got-in.Length()) > 1e-9 {
			t.Errorf("%v to %v: %v of it in the box, by the library %v", a, b, got, in.Length())
		}
	}
	if some < 50 {
		t.Errorf("only %d pieces met the box", some)
	}
}
