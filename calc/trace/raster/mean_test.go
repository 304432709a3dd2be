package raster

import (
	"math"
	"math/rand/v2"
	"testing"
)

func random(w, h int, seed uint64) *Grey {
	r := rand.New(rand.NewPCG(seed, 1))
	g := NewGrey(w, h)
	for i := range g.V {
		g.V[i] = r.Float32()
	}
	return g
}

// same says where two fields differ by more than a tolerance.
func same(t *testing.T, call string, got *Grey, want func(x, y int) float64, tolerance float64) {
	t.Helper()
	for i, v := range got.V {
		x, y := i%got.Width, i/got.Width
		if w := want(x, y); !(math.Abs(float64(v)-w) <= tolerance) {
			t.Fatalf("%s at %d,%d is %v, want %v", call, x, y, v, w)
		}
	}
}

// over is a field's value that pick likes best over the places about x, y, as far as they lie in the field.
func over(g *Grey, x, y, r int, step [2]int, pick func(a, b float64) float64) float64 {
	best := float64(g.V[y*g.Width+x])
	for k := -r; k <= r; k++ {
		u, v := x+k*step[0], y+k*step[1]
		if u >= 0 && v >= 0 && u < g.Width && v < g.Height {
			best = pick(best, float64(g.V[v*g.Width+u]))
		}
	}
	return best
}

// The running sums give what adding up each square gives, also where the square is larger than the field.
func TestMean(t *testing.T) {
	for _, size := range [][2]int{{13, 9}, {1, 1}, {1, 7}, {6, 1}, {2, 40}} {
		g := random(size[0], size[1], 1)
		for _, r := range []int{0, 1, 3, 5, 20} {
			same(t, "Mean", g.Mean(r), func(x, y int) float64 {
				sum, n := 0.0, 0.0
				for v := max(0, y-r); v <= min(g.Height-1, y+r); v++ {
					for u := max(0, x-r); u <= min(g.Width-1, x+r); u++ {
						sum, n = sum+float64(g.V[v*g.Width+u]), n+1
					}
				}
				return sum / n
			}, 1e-5)
		}
	}
	if g := NewGrey(0, 0).Mean(3); len(g.V) != 0 {
		t.Errorf("the mean of nothing has %d dots", len(g.V))
	}
}

// filtered is the greatest or the least along one way after another, each looked for dot by dot.
func filtered(g *Grey, r int, pick func(a, b float64) float64, ways ...[2]int) *Grey {
	for _, way := range ways {
		out := NewGrey(g.Width, g.Height)
		for i := range out.V {
			out.V[i] = float32(over(g, i%g.Width, i/g.Width, r, way, pick))
		}
		g = out
	}
	return g
}

// The closing is greatest then least over the square and over the one on its corner, as its definition says; the fast
// way along the lines gives the same as looking at every dot.
func TestClosingAgainstEveryDot(t *testing.T) {
	upright, cornered := [][2]int{{1, 0}, {0, 1}}, [][2]int{{1, 1}, {-1, 1}}
	for _, size := range [][2]int{{17, 12}, {5, 19}, {1, 1}, {1, 6}, {8, 1}} {
		g := random(size[0], size[1], 7)
		for i := range g.V { // above and below 0: no value is a floor of its own
			g.V[i] -= 0.5
		}
		for _, r := range []int{0, 1, 2, 4, 9} {
			slant := int(math.Round(float64(r) / math.Sqrt2))
			a := filtered(filtered(g, r, math.Max, upright...), r, math.Min, upright...)
			b := filtered(filtered(g, slant, math.Max, cornered...), slant, math.Min, cornered...)
			same(t, "Closing", g.Closing(r), func(x, y int) float64 {
				return float64(max(a.V[y*g.Width+x], b.V[y*g.Width+x]))
			}, 0)
		}
	}
}

// A closing fills a thin line, keeps an edge, and never takes light away.
func TestClosing(t *testing.T) {
	g := NewGrey(80, 60)
	for i := range g.V {
		x, y := i%80, i/80
		g.V[i] = 1
		if x+y/2 > 70 {
			g.V[i] = 0.5 // a slanting shadow
		}
	}
	clean := g.copy()
	for x := range 80 {
		g.V[20*80+x] *= 0.4
		g.V[21*80+x] *= 0.4
	}
	got := g.Closing(8)
	for i := range g.V {
		if got.V[i] < g.V[i] {
			t.Fatalf("dot %d: %v of %v", i, got.V[i], g.V[i])
		}
		x, y := i%80, i/80
		if edge := x + y/2 - 70; y > 12 && y < 48 && (edge < -1 || edge > 2) && math.Abs(float64(got.V[i]-clean.V[i])) > 1e-6 {
			t.Errorf("at %d,%d the background is %v, want %v", x, y, got.V[i], clean.V[i])
		}
	}
}

// A dark line is filled at any angle up to the width of the square, and one of twice that stays: by hand, the square of 2r+1 dots
// spans a line of 2r, and the one on its corner at most 2.83 r.
func TestClosingFillsByWidth(t *testing.T) {
	const r, size = 5, 61
	for _, turn := range []float64{0, 0.3, math.Pi / 4, 1, math.Pi / 2, 2, 3 * math.Pi / 4} {
		for _, c := range []struct {
			width  float64
			filled bool
		}{{1, true}, {4, true}, {8, true}, {20, false}} {
			g := NewGrey(size, size)
			sin, cos := math.Sincos(turn)
			for i := range g.V {
				x, y := float64(i%size-size/2), float64(i/size-size/2)
				g.V[i] = 1
				if math.Abs(x*sin-y*cos) < c.width/2 {
					g.V[i] = 0.2
				}
			}
			if got := g.Closing(r).V[size*size/2] == 1; got != c.filled {
				t.Errorf("a line %v wide, turned by %.2f: filled %v", c.width, turn, got)
			}
		}
	}
}
