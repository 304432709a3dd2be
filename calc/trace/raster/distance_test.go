package raster

import (
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/curve"
)

// Distances from a set are those of looking at every dot of it, whatever the field's shape.
func TestFromSet(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	for _, size := range [][2]int{{31, 22}, {7, 40}, {1, 1}, {1, 9}, {12, 1}, {120, 90}} {
		w, h := size[0], size[1]
		set := make([]bool, w*h)
		for range 1 + r.IntN(6) {
			set[r.IntN(w*h)] = true
		}
		same(t, "FromSet", FromSet(set, w, h), func(x, y int) float64 {
			least := math.Inf(1)
			for j, on := range set {
				if on {
					least = min(least, math.Hypot(float64(x-j%w), float64(y-j/w)))
				}
			}
			return least
		}, 1e-4)
	}
}

// By hand: 3 and 4 dots away are 5; all set is 0 everywhere; none set is further than any field is wide.
func TestFromSetByHand(t *testing.T) {
	set := make([]bool, 6*6)
	set[6*1+1] = true
	got := FromSet(set, 6, 6)
	if d := got.V[6*5+4]; d != 5 {
		t.Errorf("3 right and 4 down is %v, want 5", d)
	}
	none := FromSet(make([]bool, 9), 3, 3)
	for i := range set {
		set[i] = true
	}
	for i, d := range FromSet(set, 6, 6).V {
		if d != 0 {
			t.Errorf("dot %d of a full set is %v away", i, d)
		}
	}
	for i, d := range none.V {
		if !(d > 1e5) || math.IsInf(float64(d), 0) {
			t.Errorf("dot %d of an empty set is %v away", i, d)
		}
	}
}

// Distances from points between dots are those of looking at every one of them: exact beside them, and a small part of a dot off at most.
func TestNearest(t *testing.T) {
	const w, h = 41, 30
	for seed := range uint64(6) {
		r := rand.New(rand.NewPCG(seed, 3))
		var points curve.Line
		for range 1 + 4*seed {
			points = append(points, curve.Vec{X: float64(w-1) * r.Float64(), Y: float64(h-1) * r.Float64()})
		}
		same(t, "Nearest", Nearest(points, w, h), func(x, y int) float64 {
			to := math.Inf(1)
			for _, p := range points {
				to = min(to, p.Dist(curve.Vec{X: float64(x), Y: float64(y)}))
			}
			return to
		}, 0.05)
	}
}

// One point anywhere, at the rims too: every dot has its own true distance, for there is nothing to mistake it for.
func TestNearestOfOne(t *testing.T) {
	const w, h = 9, 7
	for _, p := range []curve.Vec{{}, {X: w - 1, Y: h - 1}, {X: w - 1}, {Y: h - 1}, {X: 0.4, Y: 6.3}, {X: 7.7, Y: 0.2}, {X: 4, Y: 3}, {X: 3.5, Y: 6}} {
		same(t, "Nearest", Nearest(curve.Line{p}, w, h), func(x, y int) float64 {
			return math.Hypot(float64(x)-p.X, float64(y)-p.Y)
		}, 1e-5)
	}
	for _, d := range Nearest(nil, 3, 2).V {
		if !(d > 1e9) {
			t.Errorf("no point is %v away", d)
		}
	}
}

// Of a circle of points, four a dot, the distance is that to the circle, inside and outside, to an eighth of a dot and on the mean to a
// fiftieth: a dot hears of the points that its neighbours are nearest to, not of all.
func TestNearestOfCircle(t *testing.T) {
	mid := curve.Vec{X: 30.2, Y: 29.6}
	var l curve.Line
	for a := 0.0; a < 2*math.Pi; a += 0.0125 {
		l = append(l, mid.Add(curve.Vec{X: math.Cos(a), Y: math.Sin(a)}.Mul(20)))
	}
	got := Nearest(l, 60, 60)
	to := func(x, y int) float64 { return math.Abs(mid.Dist(curve.Vec{X: float64(x), Y: float64(y)}) - 20) }
	same(t, "Nearest", got, to, 0.13)
	sum := 0.0
	for i, d := range got.V {
		sum += float64(d) - to(i%60, i/60)
	}
	if mean := sum / float64(len(got.V)); math.Abs(mean) > 0.02 {
		t.Errorf("on the mean the distance is off by %v dots", mean)
	}
}
