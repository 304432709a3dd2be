package raster

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"chape/calc/curve"
)

func field(w, h int, f func(v curve.Vec) float64) *Grey {
	g := NewGrey(w, h)
	for i := range g.V {
		g.V[i] = float32(f(curve.Vec{X: float64(i % w), Y: float64(i / w)}))
	}
	return g
}

// The level line of a cone is a circle: its area is πr², wherever its middle lies between the dots.
func TestLevelsOfCone(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	for range 6 {
		mid := curve.Vec{X: 29 + r.Float64(), Y: 24 + r.Float64()}
		radius := 5 + 15*r.Float64()
		ls := field(60, 50, mid.Dist).Levels(float32(radius))
		if len(ls) != 1 {
			t.Fatalf("%d lines, want 1", len(ls))
		}
		if got, want := math.Abs(ls[0].Area()), math.Pi*radius*radius; math.Abs(got-want) > 0.02*2*math.Pi*radius {
			t.Errorf("area %v, want %v", got, want)
		}
		for _, v := range ls[0] {
			if d := v.Dist(mid); math.Abs(d-radius) > 0.03 {
				t.Errorf("%v is %v from the middle, want %v", v, d, radius)
			}
		}
	}
}

// A straight slope is crossed exactly: the field's own triangle and square, whose areas the shoelace has.
func TestLevelsOfSlopes(t *testing.T) {
	roof := func(corners curve.Line) func(curve.Vec) float64 { // how deep inside a convex shape, its corners clockwise as seen
		return func(v curve.Vec) float64 {
			least := math.Inf(1)
			for i, a := range corners {
				e := corners[(i+1)%len(corners)].Sub(a)
				d := v.Sub(a)
				least = min(least, (e.X*d.Y-e.Y*d.X)/e.Norm())
			}
			return least
		}
	}
	for _, c := range []curve.Line{
		{{X: 5.3, Y: 4.1}, {X: 35.2, Y: 9.7}, {X: 12.6, Y: 28.4}},
		{{X: 6.5, Y: 6.5}, {X: 30.5, Y: 6.5}, {X: 30.5, Y: 25.5}, {X: 6.5, Y: 25.5}},
	} {
		ls := field(40, 34, roof(c)).Levels(0)
		if len(ls) != 1 {
			t.Fatalf("%d lines, want 1", len(ls))
		}
		if got, want := math.Abs(ls[0].Area()), math.Abs(c.Area()); math.Abs(got-want) > 1.2 { // corners are cut, each by half a cell at most
			t.Errorf("area %v, want %v", got, want)
		}
	}
}

// above is how much of a cell lies over the level, with its edges crossed on straight lines: worked corner by corner.
func above(v [4]float64, level float64) float64 {
	at := [4]curve.Vec{{}, {X: 1}, {X: 1, Y: 1}, {Y: 1}}
	cut := func(a, b int) curve.Vec { return at[a].Add(at[b].Sub(at[a]).Mul((level - v[a]) / (v[b] - v[a]))) }
	var whole curve.Line
	corners, high := 0.0, 0
	for k := range 4 {
		n, p := (k+1)%4, (k+3)%4
		if v[k] > level {
			whole = append(whole, at[k])
			high++
		}
		if (v[k] > level) != (v[n] > level) {
			whole = append(whole, cut(k, n))
		}
		if v[k] > level && v[n] <= level && v[p] <= level {
			corners += math.Abs(curve.Line{at[k], cut(k, n), cut(k, p)}.Area())
		}
	}
	saddle := high == 2 && (v[0] > level) == (v[2] > level)
	if saddle && v[0]+v[1]+v[2]+v[3] <= 4*level {
		return corners
	}
	return math.Abs(whole.Area())
}

// Over random fields the lines enclose what lies above the level, cell by cell, saddles too: what is above is on the
// same side all along, so that holes count less.
func TestLevelsAgainstCells(t *testing.T) {
	const w, h, level = 19, 15, 0.45
	for seed := range uint64(25) {
		g := random(w, h, 100+seed)
		for i := range g.V { // nothing leaves the field
			if x, y := i%w, i/w; x == 0 || y == 0 || x == w-1 || y == h-1 {
				g.V[i] = 0
			}
		}
		want := 0.0
		for y := range h - 1 {
			for x := range w - 1 {
				i := y*w + x
				want += above([4]float64{float64(g.V[i]), float64(g.V[i+1]), float64(g.V[i+1+w]), float64(g.V[i+w])}, level)
			}
		}
		got := 0.0
		for _, l := range g.Levels(level) {
			got += l.Area()
			for _, v := range l {
				if d := float64(g.At(v)) - level; math.Abs(d) > 1e-5 {
					t.Fatalf("seed %d: at %v the field is %v off the level", seed, v, d)
				}
			}
		}
		if math.Abs(math.Abs(got)-want) > 1e-3 {
			t.Fatalf("seed %d: the lines enclose %v, want %v", seed, got, want)
		}
	}
}

// A hill's line and a pit's run opposite ways, and a hill's always the same way.
func TestLevelsWay(t *testing.T) {
	for k := range 5 {
		mid := curve.Vec{X: 10 + 0.3*float64(k), Y: 12 - 0.2*float64(k)}
		hill := field(24, 24, func(v curve.Vec) float64 { return 8 - v.Dist(mid) }).Levels(0)
		pit := field(24, 24, func(v curve.Vec) float64 { return v.Dist(mid) - 8 }).Levels(0)
		if len(hill) != 1 || len(pit) != 1 || hill[0].Area() > 0 || pit[0].Area() < 0 {
			t.Fatalf("the hill's area is %v, the pit's %v", hill[0].Area(), pit[0].Area())
		}
	}
}

// By hand: one dot alone is a lozenge of four points with half a dot's area when it is twice the level; two that touch by their corners are
// one line if the mean of the four is above the level, else two; a line that leaves the field is left out, as is what is level all over.
func TestLevelsByHand(t *testing.T) {
	put := func(at map[[2]int]float32, ground float32) *Grey {
		g := NewGrey(6, 5)
		for i := range g.V {
			g.V[i] = ground
		}
		for p, v := range at {
			g.V[p[1]*6+p[0]] = v
		}
		return g
	}
	one := put(map[[2]int]float32{{2, 2}: 1}, 0).Levels(0.5)
	if want := (curve.Line{{X: 1.5, Y: 2}, {X: 2, Y: 2.5}, {X: 2.5, Y: 2}, {X: 2, Y: 1.5}}); len(one) != 1 || len(one[0]) != 4 || math.Abs(one[0].Area()) != 0.5 {
		t.Errorf("one dot: %v, want the points of %v", one, want)
	}
	for _, c := range []struct {
		name string
		g    *Grey
		want int
	}{
		{"falling, joined", put(map[[2]int]float32{{2, 2}: 1, {3, 3}: 1}, 0.1), 1},
		{"falling, apart", put(map[[2]int]float32{{2, 2}: 0.8, {3, 3}: 0.8}, 0), 2},
		{"rising, joined", put(map[[2]int]float32{{3, 2}: 1, {2, 3}: 1}, 0.1), 1},
		{"rising, apart", put(map[[2]int]float32{{3, 2}: 0.8, {2, 3}: 0.8}, 0), 2},
		{"at the rim", put(map[[2]int]float32{{0, 2}: 1}, 0), 0},
		{"in the corner, and one inside", put(map[[2]int]float32{{5, 4}: 1, {2, 2}: 1}, 0), 1},
		{"in the last cells", put(map[[2]int]float32{{4, 3}: 1}, 0), 1},
		{"level", put(nil, 0.5), 0},
	} {
		if got := c.g.Levels(0.5); len(got) != c.want {
			t.Errorf("%s: %d lines, want %d: %v", c.name, len(got), c.want, got)
		}
	}
	if got := field(30, 30, curve.Vec{X: 3, Y: 15}.Dist).Levels(8); len(got) != 0 {
		t.Errorf("a circle that leaves the field has lines: %v", got)
	}
	if got := NewGrey(1, 1).Levels(0); got != nil {
		t.Errorf("one dot has lines: %v", got)
	}
}

// The same field gives the same lines, in the same order, from the same points on.
func TestLevelsAgain(t *testing.T) {
	g := random(30, 30, 3)
	if a, b := g.Levels(0.5), g.Levels(0.5); !reflect.DeepEqual(a, b) || len(a) < 5 {
		t.Errorf("%d lines and %d", len(a), len(b))
	}
}
