package curve

import (
	"math"
	"testing"
)

// A step up at 10, from 2 to 6, and one down at 20.
func TestHeight(t *testing.T) {
	l := Line{{X: 0, Y: 1}, {X: 10, Y: 2}, {X: 10, Y: 6}, {X: 20, Y: 6}, {X: 20, Y: 3}, {X: 30, Y: 0}}
	for x, want := range map[float64]float64{-5: 1, -0.5: 1, 0: 1, 5: 1.5, 10: 6, 15: 6, 20: 6, 25: 1.5, 30: 0, 31: 0} {
		if got := l.Height(x); math.Abs(got-want) > 1e-12 {
			t.Errorf("Height(%v) = %v, want %v", x, got, want)
		}
	}
	if got := (Line{}).Height(3); got != 0 {
		t.Errorf("the height of no line is %v", got)
	}
}

// The shares by similar triangles, in the box from (0, 0) to (10, 10).
func TestClip(t *testing.T) {
	hi := Vec{X: 10, Y: 10}
	for _, c := range []struct {
		a, b   Vec
		t0, t1 float64
		ok     bool
	}{
		{Vec{2, 2}, Vec{8, 8}, 0, 1, true},
		{Vec{-10, 5}, Vec{30, 5}, 0.25, 0.5, true},
		{Vec{5, 15}, Vec{5, 5}, 0.5, 1, true},
		{Vec{-5, -5}, Vec{5, 5}, 0.5, 1, true},
		{Vec{-1, 2}, Vec{-1, 8}, 0, 0, false},
		{Vec{-4, 0}, Vec{0, 14}, 0, 0, false},
		{Vec{0, 3}, Vec{0, 4}, 0, 1, true}, // on a side
	} {
		t0, t1, ok := Clip(c.a, c.b, Vec{}, hi)
		if ok != c.ok || ok && (math.Abs(t0-c.t0) > 1e-12 || math.Abs(t1-c.t1) > 1e-12) {
			t.Errorf("Clip(%v, %v) = %v, %v, %v, want %v, %v, %v", c.a, c.b, t0, t1, ok, c.t0, c.t1, c.ok)
		}
	}
}
