package sheet

import (
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/curve"
)

// smooth is a fair curve with a corner in it, of closely set points.
func smooth(r *rand.Rand) curve.Line {
	a, b, c := 5+20*r.Float64(), 0.02+0.1*r.Float64(), r.Float64()
	var l curve.Line
	for x := 0.0; x <= 150; x += 0.1 + 0.3*r.Float64() {
		y := a * math.Sin(b*x+c)
		if x > 100 {
			y += 0.8 * (x - 100)
		}
		l = append(l, curve.Vec{X: x, Y: y})
	}
	return l
}

// What is left of a line is points of its own, both ends among them, from which it strays by
// half of the 0.05 mm that a cutter's file may; and not many more points than it takes.
func TestThinnedStaysOnTheLine(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 4))
	for range 40 {
		l := smooth(r)
		got := Thinned(l, false)
		if got[0] != l[0] || got[len(got)-1] != l[len(l)-1] {
			t.Fatalf("from %v to %v, the line from %v to %v", got[0], got[len(got)-1], l[0], l[len(l)-1])
		}
		k := 0
		for _, v := range l {
			if k < len(got) && v == got[k] {
				k++
			}
		}
		if k != len(got) {
			t.Fatalf("point %d, %v, is none of the line's, or out of its turn", k, got[k])
		}
		for _, v := range l {
			if d := toRing(v, got); d > 0.025+1e-9 {
				t.Fatalf("the line strays %.4f mm at %v", d, v)
			}
		}
		if len(got) > len(l)/4 {
			t.Errorf("%d points of %d are left", len(got), len(l))
		}
		for i := 2; i < len(got); i++ { // none that could have been left out: it was the farthest that will do
			if a, b := got[i-2], got[i]; a.Dist(b) < 0.5 {
				t.Errorf("points %v and %v are %.2f mm apart, with one between them", a, b, a.Dist(b))
			}
		}
	}
}

// Few points are left as they are, and a closed line stays closed from its first point on.
func TestThinnedShort(t *testing.T) {
	for _, l := range []curve.Line{nil, {{X: 1}}, {{X: 1}, {X: 2}}} {
		if got := Thinned(l, false); len(got) != len(l) {
			t.Errorf("of %v %v is left", l, got)
		}
	}
	b := Box{Hi: curve.Vec{X: 10, Y: 5}}
	var many curve.Line
	c := b.Corners()
	for i, v := range c {
		for k := range 50 {
			many = append(many, v.Add(c[(i+1)%4].Sub(v).Mul(float64(k)/50)))
		}
	}
	got := Thinned(many, true)
	if len(got) != 4 || got[0] != c[0] || math.Abs(math.Abs(got.Area())-50) > 1e-9 {
		t.Errorf("a rectangle of %d points becomes %v", len(many), got)
	}
}
