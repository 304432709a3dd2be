package curve

import (
	"math"
	"slices"
	"testing"
)

// TestGridKeepsCriticalPlaces: even points that fall a hair beside a step
// must not push it out.
func TestGridKeepsCriticalPlaces(t *testing.T) {
	lo := -(7.3 + 6.1)
	for _, step := range []float64{0.25, 0.1, 1.0 / 3} {
		steps, round := []float64{0, 105, 150}, []float64{-7.3, 105 + 3e-10, 12.7}
		xs := Grid(lo, 157.3, step, steps, round)
		for _, c := range []float64{lo, 0, 105, 150, -7.3, 12.7, 157.3} {
			if !slices.Contains(xs, c) {
				t.Errorf("step %v: %v is missing", step, c)
			}
		}
		for i := 1; i < len(xs); i++ {
			if d := xs[i] - xs[i-1]; d <= same || d > step+1e-9 {
				t.Errorf("step %v: %v follows %v", step, xs[i], xs[i-1])
			}
		}
	}
}

func TestInsert(t *testing.T) {
	got := Insert([]float64{0, 1, 2}, 1.5, -1, 1+1e-10, 3, 0.5, 1.5)
	if want := []float64{0, 0.5, 1, 1.5, 2}; !slices.Equal(got, want) {
		t.Errorf("Insert = %v, want %v", got, want)
	}
}

func TestGraphAt(t *testing.T) {
	g := Graph{X: []float64{0, 2, 4}, Y: []float64{1, 5, 3}}
	for _, c := range []struct{ x, want float64 }{{-1, 1}, {0, 1}, {1, 3}, {2, 5}, {3, 4}, {4, 3}, {9, 3}} {
		if got := g.At(c.x); got != c.want {
			t.Errorf("At(%v) = %v, want %v", c.x, got, c.want)
		}
	}
	if got := (Graph{}).At(1); !math.IsNaN(got) {
		t.Errorf("the empty graph has the height %v", got)
	}
	if a := g.Area(); a != 14 {
		t.Errorf("Area = %v, want 14", a)
	}
	if p := g.Nearest(Vec{1, 9}); p.Dist(Vec{2, 5}) > 1e-9 {
		t.Errorf("Nearest = %v, want the peak", p)
	}
	if p := g.Nearest(Vec{3, 4}); p.Dist(Vec{3, 4}) > 1e-9 {
		t.Errorf("Nearest = %v, want the point itself", p)
	}
}

// TestWalk: on a straight line the chords are the pitch; round a square
// corner each hole lies a chord from the last and the last on the end; on a
// hairpin that no setting fits nothing falls past the end.
func TestWalk(t *testing.T) {
	straight := Line{{0, 0}, {3, 0}, {40, 0}}
	if chord, at := straight.Walk(4, 36, 8); math.Abs(chord-4) > 1e-9 || math.Abs(at[8].X-36) > 1e-9 {
		t.Errorf("straight: setting %v, last at %v, want 4 and 36", chord, at[8].X)
	}
	corner := Line{{0, 0}, {30, 0}, {30, 30}}
	chord, at := corner.Walk(2, 57, 11)
	for i := 1; i < len(at); i++ {
		if d := at[i].Dist(at[i-1].Vec); math.Abs(d-chord) > 1e-9 {
			t.Errorf("corner: chord %d is %v, want %v", i, d, chord)
		}
	}
	if math.Abs(at[11].S-57) > 1e-8 || chord >= 5 {
		t.Errorf("corner: setting %v, last at %v, want less than 5 and 57", chord, at[11].S)
	}
	hairpin := Line{{0, 0}, {30, 0}, {30, 0.1}, {0, 0.1}}
	for n := 1; n < 9; n++ {
		if _, at := hairpin.Walk(1, 55, n); at[n].S > 55+1e-6 {
			t.Errorf("hairpin in %d: the last lies at %v, past 55", n, at[n].S)
		}
	}
}

func TestDilateAtIsDilate(t *testing.T) {
	g := Graph{X: []float64{0, 1, 4, 9}, Y: []float64{2, 5, 1, 3}}
	at := []float64{-1, 0, 0.5, 2, 6, 9, 10.5, 12}
	for i, y := range Dilate(g, at, 2).Y {
		if got := DilateAt(g, at[i], 2); got != y && math.Abs(got-y) > 1e-12 {
			t.Errorf("DilateAt(%v) = %v, Dilate %v", at[i], got, y)
		}
	}
}
