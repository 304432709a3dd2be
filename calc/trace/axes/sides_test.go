package axes

import (
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/curve"
)

// By hand: a rectangle and a wedge, at samples and between them, and beyond both ends.
func TestSidesByHand(t *testing.T) {
	s := sidesOf(curve.Line{{X: 0, Y: 2}, {X: 50, Y: -3}, {X: 50, Y: 17}, {X: 0, Y: 12}})
	if math.Abs(s.length()-50) > 1e-9 {
		t.Errorf("the length is %v, want 50", s.length())
	}
	for _, c := range []struct{ x, top, bottom float64 }{{10, 1, 13}, {25.03, -0.503, 14.503}, {40, -2, 16}} {
		if top, bottom := s.at(c.x); math.Abs(top-c.top) > 1e-9 || math.Abs(bottom-c.bottom) > 1e-9 {
			t.Errorf("at %v: %v and %v, want %v and %v", c.x, top, bottom, c.top, c.bottom)
		}
	}
	for _, x := range []float64{-5, 0, 50, 99} { // the ends are taken a little inside
		top, bottom := s.at(x)
		if want := map[bool]float64{true: 10, false: 20}[x < 25]; math.Abs(bottom-top-want) > 0.05 {
			t.Errorf("at %v it is %v deep, want %v", x, bottom-top, want)
		}
	}
	point := sidesOf(curve.Line{{X: 0, Y: 5}, {X: 50, Y: 0}, {X: 50, Y: 10}})
	if d := point.depth(0); d <= 0 || d > 0.1 {
		t.Errorf("at its point a wedge is %v deep, want a little", d)
	}
	if got := s.depth(len(s.top) / 2); math.Abs(got-15) > 0.05 {
		t.Errorf("half-way it is %v deep, want 15", got)
	}
}

// An outline of any length is sampled from 0 to its end: nothing is cut off.
func TestSidesReachTheEnd(t *testing.T) {
	for _, long := range []float64{0.05, 0.1, 7.77, 123.456, 200.049} {
		s := sidesOf(curve.Line{{}, {X: long}, {X: long, Y: 9}, {Y: 9}})
		if math.Abs(s.length()-long) > 1e-9 || s.step < 0.04 || s.step > 0.2 {
			t.Errorf("of %v mm: %v long, every %v", long, s.length(), s.step)
		}
		for i := range s.top {
			if s.top[i] != 0 || s.bottom[i] != 9 {
				t.Fatalf("of %v mm: sample %d is %v to %v", long, i, s.top[i], s.bottom[i])
			}
		}
	}
}

// At every sample the sides are the least and the greatest of where an upright line meets the outline, met edge by edge.
func TestSidesAgainstUprights(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 42))
	for range 15 {
		l := star(r, 4+r.IntN(12))
		x0 := least(l)
		for i := range l {
			l[i].X -= x0
		}
		s := sidesOf(l)
		for k := 1; k < len(s.top)-1; k++ {
			x, top, bottom := float64(k)*s.step, math.Inf(1), math.Inf(-1)
			for i, a := range l {
				b := l[(i+1)%len(l)]
				if (a.X-x)*(b.X-x) <= 0 && a.X != b.X {
					u := a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X)
					top, bottom = min(top, u), max(bottom, u)
				}
			}
			if math.Abs(s.top[k]-top) > 1e-6 || math.Abs(s.bottom[k]-bottom) > 1e-6 {
				t.Fatalf("at %v: %v to %v, want %v to %v", x, s.top[k], s.bottom[k], top, bottom)
			}
		}
	}
}

// Of all lines through two samples that lie nowhere past the others, the edge is the one that comes highest over the place: the definition of
// the fold line, tried on every pair.
func TestHullEdgeAgainstPairs(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 42))
	const step = 0.5
	for range 60 {
		u := make([]float64, 3+r.IntN(30))
		for i := range u {
			u[i] = 10 * r.Float64()
		}
		mid := step * float64(len(u)-1) * (0.02 + 0.96*r.Float64())
		p, q := hullEdge(u, step, mid)
		got := p.Y + (q.Y-p.Y)/(q.X-p.X)*(mid-p.X)
		best := math.Inf(-1)
		for i := range u {
			for j := i + 1; j < len(u); j++ {
				slope, under := (u[j]-u[i])/(step*float64(j-i)), true
				for k := range u {
					under = under && u[i]+slope*step*float64(k-i) <= u[k]+1e-9
				}
				if under {
					best = max(best, u[i]+slope*(mid-step*float64(i)))
				}
			}
		}
		if math.Abs(got-best) > 1e-9 || p.X > mid || q.X < mid {
			t.Fatalf("over %v of %v the edge from %v to %v is at %v, want %v", mid, u, p, q, got, best)
		}
	}
	if p, q := hullEdge([]float64{7}, step, 0); p != (curve.Vec{Y: 7}) || q.Y != 7 || q.X <= p.X {
		t.Errorf("of one sample: %v to %v", p, q)
	}
}

// The fold line of random knives, laid anyhow: the back stands nowhere past it before the handle, touches it on both sides of the
// place, and the outline begins at x = 0.
func TestFoldRestsOnTheBack(t *testing.T) {
	for seed := range uint64(8) {
		d := randomKnife(seed)
		turn := 0.8 * float64(seed)
		by := curve.Vec{X: 50, Y: 130}
		a := ofKnife(moved(d.line(), turn, by), moved(d.feet(), turn, by), Turns{})
		l := a.in(moved(d.line(), turn, by))
		if x := least(l); math.Abs(x) > 1e-9 {
			t.Errorf("knife %d begins at %v", seed, x)
		}
		if k := a.Along.X*a.Down.X + a.Along.Y*a.Down.Y; math.Abs(a.Along.Norm()-1) > 1e-9 || math.Abs(a.Down.Norm()-1) > 1e-9 || math.Abs(k) > 1e-9 {
			t.Errorf("knife %d: axes along %v and %v are not square and of length 1", seed, a.Along, a.Down)
		}
		s := sidesOf(l)
		mid := min((d.blade+d.long)/4, 0.9*d.blade)
		before, after := math.Inf(1), math.Inf(1)
		for i, u := range s.top {
			x := float64(i) * s.step
			if x > d.blade-0.5 {
				break
			}
			if u < -2e-3 {
				t.Fatalf("knife %d: at %v the back stands %v past the fold", seed, x, -u)
			}
			if x <= mid {
				before = min(before, u)
			} else {
				after = min(after, u)
			}
		}
		if before > 5e-3 || after > 5e-3 {
			t.Errorf("knife %d: the back is %v and %v off the fold, before and after %v", seed, before, after, mid)
		}
	}
}

// By hand: a back that rises by 4 in 100 on the blade, with a handle that stands out: the fold lies along the blade's back, not along both.
func TestFoldKeepsToTheBlade(t *testing.T) {
	line := curve.Line{{X: 0, Y: 10}, {X: 100, Y: 6}, {X: 100, Y: 2}, {X: 200, Y: -2}, {X: 200, Y: 30}, {X: 100, Y: 30}, {X: 60, Y: 29}, {X: 20, Y: 20}}
	a := ofKnife(line, []curve.Vec{{X: 100, Y: 6}, {X: 100, Y: 30}}, Turns{})
	if got := math.Atan2(a.Along.Y, a.Along.X); math.Abs(got-math.Atan2(-4, 100)) > 1e-4 {
		t.Errorf("the fold runs at %v, want %v", got, math.Atan2(-4, 100))
	}
	if a.Down.Y < 0.9 || a.In(curve.Vec{X: 50, Y: 8}).Y > 0.01 {
		t.Errorf("u runs along %v; the back is at %v", a.Down, a.In(curve.Vec{X: 50, Y: 8}))
	}
}

// By hand: the mouth is taken half-way down the handle, 75 of 100 and 200, and the fold is the hull's edge there: past its corner at 60.
func TestFoldOverTheMouth(t *testing.T) {
	line := curve.Line{{X: 0, Y: 3}, {X: 60, Y: 0}, {X: 100, Y: 1}, {X: 100, Y: 4}, {X: 200, Y: 4}, {X: 200, Y: 30}, {X: 100, Y: 30}, {X: 60, Y: 29}, {X: 20, Y: 20}}
	a := Axes{Along: curve.Vec{X: 1}, Down: curve.Vec{Y: 1}}.fold(line, []curve.Vec{{X: 100, Y: 1}, {X: 100, Y: 30}})
	if got := math.Atan2(a.Along.Y, a.Along.X); math.Abs(got-math.Atan2(1, 40)) > 2e-4 {
		t.Errorf("the fold runs at %v, want %v", got, math.Atan2(1, 40))
	}
}

// Either end and either side can be turned over, each alone, and twice is as before.
func TestTurns(t *testing.T) {
	line, feet := bladeLine(), curve.Line{{X: 80, Y: 0}, {X: 80, Y: 28}}
	plain := ofKnife(line, feet, Turns{})
	for _, c := range []struct {
		t           Turns
		along, down float64
	}{{Turns{}, 1, 1}, {Turns{Ends: true}, -1, 1}, {Turns{Back: true}, 1, -1}, {Turns{true, true}, -1, -1}} {
		a := ofKnife(line, feet, c.t)
		if a.Along.X*plain.Along.X*c.along < 0.9 {
			t.Errorf("%+v: x runs along %v", c.t, a.Along)
		}
		if !c.t.Ends && a.Down.Y*plain.Down.Y*c.down < 0.9 {
			t.Errorf("%+v: u runs along %v", c.t, a.Down)
		}
	}
}
