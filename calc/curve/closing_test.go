package curve

import (
	"math"
	"math/rand/v2"
	"testing"
)

// wallAt is a slope of the given steepness up to x = 0, where a wall of the given height
// stands, drawn as curves are drawn here: over Wall; beyond it the top runs on level.
func wallAt(steep, high float64) Graph {
	g := Graph{X: Grid(-60, 40, 0.25, []float64{0})}
	for _, x := range g.X {
		y := steep * x
		if x >= 0 {
			y = high
		}
		g.Y = append(g.Y, y)
	}
	return g
}

// A disc of radius r against a wall and on a slope, by hand: it touches the wall at
// x = 0 where that is high enough, so its centre lies at (−r, −steep·r + r·√(1+steep²));
// of a lower wall it touches the top corner.
func TestCloseAgainstAWall(t *testing.T) {
	for _, c := range []struct{ steep, high, r float64 }{
		{0, 30, 10.875}, {0.5, 30, 10.875}, {1.2, 60, 20}, {0, 12, 12}, {-0.4, 40, 15}, {0, 5, 12}, {0.3, 8, 25},
	} {
		g := wallAt(c.steep, c.high)
		lift := c.r * math.Hypot(1, c.steep)
		cx := -c.r // the centre's place; it lies on steep·x + lift
		if top := c.steep*cx + lift; top > c.high {
			// (0, high) lies r from it: cx² + (steep·cx + lift − high)² = r².
			a, b, q := 1+c.steep*c.steep, c.steep*(lift-c.high), (lift-c.high)*(lift-c.high)-c.r*c.r
			cx = (-b - math.Sqrt(b*b-a*q)) / a
		}
		touch := cx + c.r*c.steep/math.Hypot(1, c.steep)
		got := Close(g, c.r, 0.25)
		for _, x := range []float64{-0.01, -0.5, -2, -5, -9, -12, -30} {
			want := c.steep * x
			if x > touch {
				want = c.steep*cx + lift - math.Sqrt(c.r*c.r-(x-cx)*(x-cx))
			}
			// The sum of what the drawing with straight pieces may stray, more where it is steep.
			if tol := 0.004 + 0.02*math.Abs(want-c.steep*x)/c.r; math.Abs(got.At(x)-want) > tol+3e-3/math.Sqrt(-x) {
				t.Errorf("slope %v, wall of %v, disc of %v: closed at %v to %.4f, want %.4f", c.steep, c.high, c.r, x, got.At(x), want)
			}
		}
	}
}

// Rounding on the samples stays rounding after the closing: 1e-9 mm on every one of
// them moves no height by more than 0.02 mm, walls higher than the disc included.
func TestCloseDoesNotAmplifyRounding(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 7))
	for n := range 60 {
		var g Graph
		r := 3 + 40*rng.Float64()
		switch n % 3 {
		case 0:
			g = wallAt(2*rng.Float64()-0.5, 3+2*r*rng.Float64())
		case 1: // a hollow of the disc's own radius up to a wall: it touches all along it
			g = wallAt(0, 3+2*r*rng.Float64())
			for i, x := range g.X {
				if x < 0 {
					g.Y[i] = -math.Sqrt(r*r - math.Pow(math.Max(-0.9*r, math.Min(x+1.2*r, 0.9*r)), 2))
				}
			}
		default:
			g, _ = random(rng)
		}
		plain := Close(g, r, 0.25)
		for range 4 {
			noisy := Graph{X: g.X, Y: make([]float64, len(g.Y))}
			for i, y := range g.Y {
				noisy.Y[i] = y + 1e-9*(2*rng.Float64()-1)
			}
			for i, y := range Close(noisy, r, 0.25).Y {
				if d := math.Abs(y - plain.Y[i]); d > 0.02 {
					t.Fatalf("curve %d, disc of %.2f: 1e-9 mm of rounding moves the height at %v by %.4f mm", n, r, g.X[i], d)
				}
			}
		}
	}
}

// A closing by hand: a notch 2·a wide and deep between level shoulders is bridged by an
// arc that sags r − √(r² − a²) below them; a deep one narrower than the disc has no
// corner of its own left.
func TestCloseBridgesANotch(t *testing.T) {
	for _, c := range []struct{ half, deep, r float64 }{{4, 10, 20}, {10, 30, 12}, {3, 2, 5}, {8, 3, 60}} {
		g := Graph{X: Grid(-50, 50, 0.25, []float64{-c.half, c.half})}
		for _, x := range g.X {
			y := 0.0
			if math.Abs(x) < c.half {
				y = -c.deep
			}
			g.Y = append(g.Y, y)
		}
		got := Close(g, c.r, 0.25)
		for _, x := range []float64{0, 0.3 * c.half, -0.7 * c.half, 0.95 * c.half, c.half + 5} {
			want := 0.0
			if math.Abs(x) < c.half {
				want = math.Max(-c.deep, math.Sqrt(c.r*c.r-c.half*c.half)-math.Sqrt(c.r*c.r-x*x))
			}
			if math.Abs(got.At(x)-want) > 0.004 {
				t.Errorf("a notch of %v by %v under a disc of %v: closed at %v to %.4f, want %.4f", 2*c.half, c.deep, c.r, x, got.At(x), want)
			}
		}
	}
}

// What a closing is (Serra, Image Analysis and Mathematical Morphology, from memory):
// it lies nowhere below the curve, a larger curve has a larger one, closing again
// changes nothing, raising the curve raises it by as much, and what is nowhere hollower
// than the disc stays.
func TestCloseIsAClosing(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 7))
	for n := range 20 {
		g, _ := random(rng)
		r := 3 + 30*rng.Float64()
		once := Close(g, r, 0.25)
		up := Graph{X: g.X, Y: make([]float64, len(g.Y))}
		more := Graph{X: g.X, Y: make([]float64, len(g.Y))}
		for i, y := range g.Y {
			up.Y[i], more.Y[i] = y+3.5, y+math.Abs(math.Sin(g.X[i]/5))
		}
		twice, lifted, larger := Close(once, r, 0.25), Close(up, r, 0.25), Close(more, r, 0.25)
		for i, y := range once.Y {
			// Beside a wall a hair in x is a lot in y.
			lo, hi := math.Min(once.At(g.X[i]-0.02), once.At(g.X[i]+0.02)), math.Max(once.At(g.X[i]-0.02), once.At(g.X[i]+0.02))
			switch {
			case y < g.Y[i]:
				t.Fatalf("%d: below the curve at %v", n, g.X[i])
			case twice.Y[i] < lo-0.03 || twice.Y[i] > hi+0.03:
				t.Fatalf("%d: closing again moves %v at %v to %v", n, y, g.X[i], twice.Y[i])
			case math.Abs(lifted.Y[i]-y-3.5) > 1e-6 && (lifted.Y[i]-3.5 < lo-0.01 || lifted.Y[i]-3.5 > hi+0.01):
				t.Fatalf("%d: raised by 3.5 it is %v higher at %v", n, lifted.Y[i]-y, g.X[i])
			case larger.Y[i] < lo-0.03:
				t.Fatalf("%d: of a larger curve the closing is less at %v: %v, %v", n, g.X[i], larger.Y[i], y)
			}
		}
	}
	bump := Graph{X: Grid(-30, 30, 0.25)}
	for _, x := range bump.X {
		bump.Y = append(bump.Y, 12*math.Exp(-x*x/200)-x/7)
	}
	for i, y := range Close(bump, 10, 0.25).Y { // its flanks bend with a radius of 16 and more
		if math.Abs(y-bump.Y[i]) > 0.002 {
			t.Fatalf("a gentle bump is closed at %v by %v", bump.X[i], y-bump.Y[i])
		}
	}
}
