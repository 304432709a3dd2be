package curve

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestHull: the hull of points on a circle and inside it is the circle's
// polygon, n·2r·sin(π/n) round (chords dividing a circle); points inside and on
// an edge are left out.
func TestHull(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 9))
	var pts Line
	const n, r = 24, 7.0
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		pts = append(pts, Vec{r * cos, r * sin})
	}
	for range 100 {
		pts = append(pts, Vec{4 * rng.Float64(), -4 * rng.Float64()})
	}
	hull := pts.Hull()
	if got, want := append(hull, hull[0]).Length(), n*2*r*math.Sin(math.Pi/n); len(hull) != n || math.Abs(got-want) > 1e-9 {
		t.Errorf("%d corners, %v round, want %d and %v", len(hull), got, n, want)
	}
	if hull.Area() <= 0 {
		t.Error("the hull runs clockwise")
	}
	square := Line{{0, 0}, {1, 0}, {2, 0}, {2, 2}, {1, 1}, {0, 2}, {0, 1}, {2, 2}}
	if got := square.Hull(); len(got) != 4 {
		t.Errorf("the hull of a square with points on its sides is %v", got)
	}
	for _, few := range []Line{{}, {{1, 2}}, {{1, 2}, {3, 4}}, {{1, 2}, {1, 2}}} {
		if got := few.Hull(); len(got) > len(few) {
			t.Errorf("the hull of %v is %v", few, got)
		}
	}
}

// TestSmallestBox: a rectangle turned by any angle has its own sides, and no
// direction of many gives a smaller one.
func TestSmallestBox(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 9))
	for range 50 {
		sin, cos := math.Sincos(7 * rng.Float64())
		a, b := 1+9*rng.Float64(), 1+9*rng.Float64()
		var l Line
		for _, v := range []Vec{{0, 0}, {a, 0}, {a, b}, {0, b}, {a / 2, b / 2}} {
			l = append(l, Vec{v.X*cos - v.Y*sin, v.X*sin + v.Y*cos})
		}
		w, h := l.SmallestBox()
		if math.Abs(min(w, h)-min(a, b)) > 1e-9 || math.Abs(max(w, h)-max(a, b)) > 1e-9 {
			t.Errorf("a rectangle of %v by %v has a box of %v by %v", a, b, w, h)
		}
	}
	var l Line
	for range 30 {
		l = append(l, Vec{20 * rng.Float64(), 9 * rng.Float64()})
	}
	w, h := l.SmallestBox()
	for i := range 3000 {
		sin, cos := math.Sincos(math.Pi * float64(i) / 3000)
		var turned Line
		for _, v := range l {
			turned = append(turned, Vec{v.X*cos - v.Y*sin, v.X*sin + v.Y*cos})
		}
		lo, hi := turned.Bounds()
		if area := (hi.X - lo.X) * (hi.Y - lo.Y); area < w*h-1e-9 {
			t.Fatalf("turned by %d/3000 of a half turn the box has %v, less than %v", i, area, w*h)
		}
	}
	if w, h := (Line{}).SmallestBox(); w != 0 || h != 0 {
		t.Errorf("the box of nothing is %v by %v", w, h)
	}
	if w, h := (Line{{0, 0}, {3, 4}}).SmallestBox(); math.Abs(w*h) > 1e-9 {
		t.Errorf("the box of a straight line is %v by %v", w, h)
	}
}

// pairwise looks for a crossing with every piece against every other.
func pairwise(l Line) bool {
	n := len(l)
	for i := range l {
		for j := i + 2; j < n && (i > 0 || j < n-1); j++ {
			if cross(l[i], l[(i+1)%n], l[j], l[(j+1)%n]) {
				return true
			}
		}
	}
	return false
}

// TestCrossing: on outlines that go up and down like a sheath's, some knotted,
// the boxes find what every piece against every other finds.
func TestCrossing(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 9))
	found, clear := 0, 0
	for k := range 400 {
		var l Line
		n := 3 + rng.IntN(40)
		if k%8 == 0 {
			n *= 6 // more than a stretch on the way up and on the way down
		}
		for i := range n { // a star with a wobble of its own
			sin, cos := math.Sincos(2*math.Pi*float64(i)/float64(n) + 0.25*rng.NormFloat64()*float64(rng.IntN(2)))
			r := 5 + 4*rng.Float64()
			l = append(l, Vec{math.Round(4*r*cos) / 4, r * sin}) // with upright pieces
		}
		i, j, got := l.Crossing()
		if want := pairwise(l); got != want {
			t.Fatalf("a crossing is found: %v, by every piece against every other: %v\n%v", got, want, l)
		}
		if !got {
			clear++
			continue
		}
		found++
		if m := len(l); !cross(l[i], l[(i+1)%m], l[j], l[(j+1)%m]) {
			t.Errorf("the pieces at %d and %d do not cross", i, j)
		}
	}
	if found < 50 || clear < 50 {
		t.Errorf("%d cross and %d do not: the test has no teeth", found, clear)
	}
	if _, _, got := (Line{{0, 0}, {4, 0}, {4, 3}, {2, 0}, {0, 3}}).Crossing(); got {
		t.Error("a corner that touches a side counts as crossing")
	}
}
