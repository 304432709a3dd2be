package curve

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
)

// Dilations whose answer is known: a point becomes a circle, a level line a level line
// with a quarter circle at its end, a corner that stands out a quarter circle, a slope
// one that lies r·√(1 + steep²) higher.
func TestDilateOfKnownShapes(t *testing.T) {
	circle := func(x, r float64) float64 { return math.Sqrt(r*r - x*x) }
	step := Graph{X: []float64{-30, -Wall, 0, 30}, Y: []float64{2, 2, 10, 10}}
	for _, c := range []struct {
		what       string
		g          Graph
		x, r, want float64
	}{
		{"a point, above it", Graph{X: []float64{0}, Y: []float64{3}}, 0, 5, 8},
		{"a point, beside it", Graph{X: []float64{0}, Y: []float64{3}}, 3, 5, 7},
		{"a level line", Graph{X: []float64{0, 10}, Y: []float64{3, 3}}, 4, 5, 8},
		{"a level line, past its end", Graph{X: []float64{0, 10}, Y: []float64{3, 3}}, 14, 5, 6},
		{"a slope of 3 in 4", Graph{X: []float64{-40, 40}, Y: []float64{-30, 30}}, 8, 4, 6 + 4*1.25},
		{"a step, far below it", step, -25, 6, 8},
		{"a step, on it", step, 20, 6, 16},
		{"a step, a corner of a quarter circle", step, -3, 5, 10 + circle(3, 5)},
		{"a step, where it begins", step, -5, 5, 10},
		{"a step, just before", step, -5.001, 5, 7},
	} {
		if got := Dilate(c.g, []float64{c.x}, c.r).Y[0]; math.Abs(got-c.want) > 0.001 {
			t.Errorf("%s: dilated by %v at %v to %v, want %v", c.what, c.r, c.x, got, c.want)
		}
	}
	if got := Dilate(step, []float64{-36.5, 36.5}, 6).Y; !math.IsInf(got[0], -1) || !math.IsInf(got[1], -1) {
		t.Errorf("further than r from it: %v", got)
	}
	if got := Erode(step, []float64{-36.5, 36.5}, 6).Y; !math.IsInf(got[0], 1) || !math.IsInf(got[1], 1) {
		t.Errorf("eroded further than r from it: %v", got)
	}
	if got := Dilate(Graph{}, []float64{0}, 3).Y[0]; !math.IsInf(got, -1) {
		t.Errorf("nothing dilated is %v", got)
	}
}

// Each place of a dilated curve lies exactly r from the region below the curve it came
// from, by the geometry library's distance.
func TestDilateLiesAtR(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 7))
	for n := range 12 {
		g, _ := random(rng)
		r := 0.5 + 14*rng.Float64()
		last := len(g.X) - 1
		ring := append(Line{{g.X[0], -99}, {g.X[last], -99}}, g.Line().Reverse()...)
		region := polygon(ring)
		at := Grid(g.X[0], g.X[last], 1.3)
		for i, y := range Dilate(g, at, r).Y {
			d, ok := geom.Distance(region, geom.XY{X: at[i], Y: y}.AsPoint().AsGeometry())
			if !ok || math.Abs(d-r) > 0.003 {
				t.Fatalf("curve %d dilated by %v: at %v it lies %v from the region", n, r, at[i], d)
			}
		}
	}
}

// polygon is a closed line as the geometry library holds it.
func polygon(l Line) geom.Geometry {
	var xy []float64
	for _, p := range append(slices.Clone(l), l[0]) {
		xy = append(xy, p.X, p.Y)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))}).AsGeometry()
}

// What a dilation is (Serra, as above): more radius is more, more curve is more, twice
// by a and b is once by a + b, left and right are alike, eroding is dilating what lies
// above, and what is raised or moved along stays so.
func TestDilateIsADilation(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	for n := range 15 {
		g, _ := random(rng)
		last := len(g.X) - 1
		a, b := 0.5+5*rng.Float64(), 0.5+8*rng.Float64()
		at := Grid(g.X[0]+1, g.X[last]-1, 0.9)
		small, large := Dilate(g, at, a), Dilate(g, at, a+b)
		twice := Dilate(Dilate(g, Grid(g.X[0]-a, g.X[last]+a, 0.01), a), at, b)
		mirrored := Graph{X: make([]float64, last+1), Y: make([]float64, last+1)}
		moved := Graph{X: make([]float64, last+1), Y: make([]float64, last+1)}
		for i, x := range g.X {
			mirrored.X[last-i], mirrored.Y[last-i] = -x, g.Y[i]
			moved.X[i], moved.Y[i] = x+512, g.Y[i]-64
		}
		eroded := Erode(g.Neg(), at, a)
		for i, x := range at {
			switch {
			case small.Y[i] < g.At(x)+a-1e-9:
				t.Fatalf("%d: at %v it rises by %v, less than %v", n, x, small.Y[i]-g.At(x), a)
			case large.Y[i] < small.Y[i]+b-1e-9:
				t.Fatalf("%d: %v more of radius gives %v at %v", n, b, large.Y[i]-small.Y[i], x)
			case math.Abs(twice.Y[i]-large.Y[i]) > 0.01:
				t.Fatalf("%d: by %v, then by %v: %v at %v, at once %v", n, a, b, twice.Y[i], x, large.Y[i])
			case math.Abs(eroded.Y[i]+small.Y[i]) > 1e-12:
				t.Fatalf("%d: eroding is not dilating upside down at %v", n, x)
			}
			if got := Dilate(mirrored, []float64{-x}, a).Y[0]; math.Abs(got-small.Y[i]) > 1e-9 {
				t.Fatalf("%d: mirrored it is %v at %v, not %v", n, got, x, small.Y[i])
			}
			if got := Dilate(moved, []float64{x + 512}, a).Y[0]; math.Abs(got+64-small.Y[i]) > 1e-9 {
				t.Fatalf("%d: moved it is %v at %v, not %v", n, got+64, x, small.Y[i])
			}
		}
	}
}

// One disc may be used again and again, with room told or not: what it gave before
// stays as it was.
func TestDiscKeepsWhatItGave(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 7))
	a, _ := random(rng)
	b, _ := random(rng)
	for _, d := range []*Disc{{}, {Room: 2000}, {Room: 3}} {
		first := d.Close(a, 9, 0.25)
		kept := slices.Clone(first.Y)
		grown := d.Dilate(b, b.X, 4)
		keptGrown := slices.Clone(grown.Y)
		d.Close(b, 20, 0.25)
		d.Raise(Graph{X: b.X, Y: slices.Clone(b.Y)}, b, b.X, 2)
		if !slices.Equal(first.Y, kept) || !slices.Equal(grown.Y, keptGrown) {
			t.Errorf("room %d: what the disc gave has changed", d.Room)
		}
		if again := d.Close(a, 9, 0.25); !slices.Equal(again.Y, kept) {
			t.Errorf("room %d: the same closing comes out otherwise", d.Room)
		}
		if plain := Close(a, 9, 0.25); !slices.Equal(plain.Y, kept) {
			t.Errorf("room %d: a fresh disc closes otherwise", d.Room)
		}
	}
	high := Graph{X: b.X, Y: slices.Clone(b.Y)}
	high.Y[50] = 500
	new(Disc).Raise(high, b, b.X, 2)
	if high.Y[50] != 500 {
		t.Errorf("raising brings 500 down to %v", high.Y[50])
	}
	base := Graph{X: b.X, Y: make([]float64, len(b.X))}
	stretch := b.Between(b.X[40], b.X[90])
	new(Disc).Raise(base, b, stretch.X, 2)
	want := Dilate(b, stretch.X, 2)
	for i, y := range base.Y {
		w := 0.0
		if i >= 40 && i <= 90 {
			w = math.Max(0, want.Y[i-40])
		}
		if y != w {
			t.Fatalf("raised at %v to %v, want %v", b.X[i], y, w)
		}
	}
}
