package axes

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"

	"chape/calc/curve"
)

// By hand: axes that begin at (10, 20), with x up and u to the left; and there and back is the same place.
func TestInAndOut(t *testing.T) {
	a := Axes{From: curve.Vec{X: 10, Y: 20}, Along: curve.Vec{Y: 1}, Down: curve.Vec{X: -1}}
	if got, want := a.In(curve.Vec{X: 7, Y: 25}), (curve.Vec{X: 5, Y: 3}); got != want {
		t.Errorf("In = %v, want %v", got, want)
	}
	if got, want := a.Out(curve.Vec{X: 5, Y: 3}), (curve.Vec{X: 7, Y: 25}); got != want {
		t.Errorf("Out = %v, want %v", got, want)
	}
	r := rand.New(rand.NewPCG(1, 42))
	for range 100 {
		sin, cos := math.Sincos(7 * r.Float64())
		a := Axes{curve.Vec{X: 300 * r.Float64(), Y: -90 * r.Float64()}, curve.Vec{X: cos, Y: sin}, curve.Vec{X: -sin, Y: cos}}
		if r.IntN(2) == 0 {
			a.Down = a.Down.Mul(-1)
		}
		v := curve.Vec{X: 500 * r.Float64(), Y: 500 * r.Float64()}
		if got := a.Out(a.In(v)); got.Dist(v) > 1e-10 {
			t.Errorf("%v comes back as %v", v, got)
		}
		if in := a.in(curve.Line{v}); len(in) != 1 || in[0] != a.In(v) {
			t.Errorf("in gives %v, want %v", in, a.In(v))
		}
	}
}

// The shoelace and Green's theorem against a rectangle's known moments.
func TestPrincipalOfRectangle(t *testing.T) {
	mid, along := principal(moved(curve.Line{{}, {X: 40}, {X: 40, Y: 10}, {Y: 10}}, 0.5, curve.Vec{X: 100, Y: 50}))
	want := moved(curve.Line{{X: 20, Y: 5}}, 0.5, curve.Vec{X: 100, Y: 50})[0]
	if mid.Dist(want) > 1e-9 || math.Abs(math.Abs(along.X)-math.Cos(0.5)) > 1e-9 {
		t.Errorf("middle %v along %v, want %v along 0.5", mid, along, want)
	}
}

// Of random outlines the middle is simplefeatures' centroid, and the direction that of gonum's first eigenvector over places spread evenly in the outline.
func TestPrincipalAgainstPlaces(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 42))
	for range 12 {
		l := moved(star(r, 5+r.IntN(9)), 6*r.Float64(), curve.Vec{X: 80, Y: 120})
		if r.IntN(2) == 0 {
			l = l.Reverse()
		}
		mid, along := principal(l)
		want, _ := polygon(l).Centroid().XY()
		if mid.Dist(curve.Vec{X: want.X, Y: want.Y}) > 1e-9 {
			t.Errorf("the middle is %v, want %v", mid, want)
		}
		var places []float64
		for x := 30.0; x < 130; x += 0.5 {
			for y := 70.0; y < 170; y += 0.5 {
				if holds(l, curve.Vec{X: x, Y: y}) {
					places = append(places, x, y)
				}
			}
		}
		var spread mat.SymDense
		stat.CovarianceMatrix(&spread, mat.NewDense(len(places)/2, 2, places), nil)
		var e mat.EigenSym
		e.Factorize(&spread, true)
		var vectors mat.Dense
		e.VectorsTo(&vectors)
		if values := e.Values(nil); values[1] < 1.3*values[0] {
			continue // nearly round: any direction does
		}
		if got := math.Abs(along.X*vectors.At(0, 1) + along.Y*vectors.At(1, 1)); got < 0.9995 {
			t.Errorf("along %v, %v from gonum's %v, %v", along, got, vectors.At(0, 1), vectors.At(1, 1))
		}
	}
}

// holds tells whether a place lies in a line, by a ray.
func holds(l curve.Line, v curve.Vec) (in bool) {
	for i, a := range l {
		b := l[(i+1)%len(l)]
		if (a.Y > v.Y) != (b.Y > v.Y) && v.X < a.X+(b.X-a.X)*(v.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// The narrow end is told by the depth over the outer eighths, wherever the outline begins along x; the middle does not matter.
func TestNarrowAtFar(t *testing.T) {
	wedge := curve.Line{{X: -20, Y: 0}, {X: 80, Y: 0}, {X: 80, Y: 8}, {X: -20, Y: 12}}
	if !narrowAtFar(wedge) {
		t.Error("a wedge from 12 to 8 is not narrower at its far end")
	}
	waist := curve.Line{{X: 0, Y: 0}, {X: 40, Y: 15}, {X: 41, Y: -30}, {X: 100, Y: 0}, {X: 100, Y: 20}, {X: 90, Y: 20}, {X: 40, Y: 60}, {X: 0, Y: 18}}
	if narrowAtFar(waist) {
		t.Error("it is narrower at its near end, though fat beyond")
	}
	for i, v := range wedge {
		wedge[i] = curve.Vec{X: -v.X, Y: v.Y}
	}
	if narrowAtFar(wedge) {
		t.Error("turned round it is narrower at its far end")
	}
}

// By hand: a straight side is not bent at all; a saw of ±0.5 is 0.5 off straight, root mean square; what lies in the outer twentieths does not count.
func TestBent(t *testing.T) {
	straight, saw, tipped := make([]float64, 1001), make([]float64, 1001), make([]float64, 1001)
	for i := range straight {
		straight[i] = 3 + 0.2*float64(i)
		saw[i] = straight[i] + float64(i%2) - 0.5
		if i < 45 || i > 955 {
			tipped[i] = 40
		}
	}
	for _, c := range []struct {
		name      string
		u         []float64
		end, want float64
	}{{"straight", straight, 100, 0}, {"saw", saw, 100, 0.5}, {"off at its ends", tipped, 100, 0}, {"half of the saw", saw, 50, 0.5}} {
		if got := bent(c.u, 0.1, c.end); math.Abs(got-c.want) > 2e-3 {
			t.Errorf("%s: bent by %v, want %v", c.name, got, c.want)
		}
	}
	arc := make([]float64, 1001) // a parabola of height h over its length is h·√(4/45) off its line, root mean square
	for i := range arc {
		x := float64(i)/1000 - 0.5
		arc[i] = 10 * 4 * x * x
	}
	if got, want := bent(arc, 0.1, 100), 10*0.81*math.Sqrt(4.0/45); math.Abs(got-want) > 0.02*want {
		t.Errorf("a parabola is bent by %v, want %v", got, want)
	}
}

// The blade ends at the first stroke, but not at one near the point; without strokes it is all of it.
func TestBlade(t *testing.T) {
	a := Axes{Along: curve.Vec{X: 1}, Down: curve.Vec{Y: 1}}
	s := sidesOf(curve.Line{{}, {X: 200}, {X: 200, Y: 30}, {Y: 30}})
	for _, c := range []struct {
		feet curve.Line
		want float64
	}{
		{nil, 200}, {curve.Line{{X: 110}, {X: 112, Y: 30}, {X: 118}}, 110}, {curve.Line{{X: 120}, {X: 31, Y: 30}}, 31},
		{curve.Line{{X: 10}, {X: 90}}, 90}, {curve.Line{{X: 29}}, 200},
	} {
		if got := blade(a, s, c.feet); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("with strokes at %v the blade ends at %v, want %v", c.feet, got, c.want)
		}
	}
}
