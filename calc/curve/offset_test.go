package curve

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Erode and Close are what a fresh Disc makes of a single graph.
func Erode(g Graph, at []float64, r float64) Graph { return new(Disc).erodeNeg(g.Neg(), at, r) }

func Close(g Graph, r, step float64) Graph { return new(Disc).Close(g, r, step) }

// brute is the twin of Dilate on a finely sampled graph: the definition read
// out, n·w.
func brute(g Graph, x, r, h float64) float64 {
	top := math.Inf(-1)
	lo, hi := math.Max(x-r, g.X[0]), math.Min(x+r, g.X[len(g.X)-1])
	n := int((hi-lo)/h) + 1
	for i := 0; i <= n; i++ {
		p := lo + (hi-lo)*float64(i)/float64(n)
		top = math.Max(top, g.At(p)+math.Sqrt(math.Max(0, r*r-(p-x)*(p-x))))
	}
	for i, p := range g.X { // a jump is seen from the very point it stands at
		if math.Abs(p-x) <= r {
			top = math.Max(top, g.Y[i]+math.Sqrt(r*r-(p-x)*(p-x)))
		}
	}
	return top
}

func bruteErode(g Graph, x, r, h float64) float64 {
	neg := Graph{g.X, make([]float64, len(g.Y))}
	for i := range g.Y {
		neg.Y[i] = -g.Y[i]
	}
	return -brute(neg, x, r, h)
}

// random makes a curve with a few steps, its jumps on the grid.
func random(rng *rand.Rand) (g Graph, steps []float64) {
	end := 60 + 80*rng.Float64()
	n := 1 + rng.IntN(4)
	level, slope := []float64{20 * rng.Float64()}, []float64{rng.NormFloat64() / 3}
	for range n {
		steps = append(steps, end*rng.Float64())
		level = append(level, 25*rng.Float64())
		slope = append(slope, rng.NormFloat64()/3)
	}
	xs := Grid(0, end, 0.25, steps)
	ys := make([]float64, len(xs))
	for i, x := range xs {
		ys[i] = level[0] + slope[0]*x + 3*math.Sin(x/9)
		for k, s := range steps {
			if x >= s {
				ys[i] = math.Max(ys[i], level[k+1]+slope[k+1]*(x-s))
			}
		}
	}
	return Graph{xs, ys}, steps
}

func TestDilateAgainstBruteTwin(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 30 {
		g, _ := random(rng)
		r := 0.1 + 15*rng.Float64()
		at := Grid(g.X[0]-r, g.X[len(g.X)-1]+r, 1.7)
		got := Dilate(g, at, r)
		for i, x := range at {
			if want := brute(g, x, r, 0.002); math.Abs(got.Y[i]-want) > 0.005 {
				t.Fatalf("Dilate at %v, r %v = %v, brute twin %v", x, r, got.Y[i], want)
			}
		}
	}
}

func TestCloseAgainstBruteTwin(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for n := range 6 {
		g, _ := random(rng)
		r := 3 + 60*rng.Float64()
		got := Close(g, r, 0.25)
		lo, hi := g.X[0]-r, g.X[len(g.X)-1]+r
		const fine = 0.02
		grown := Graph{}
		for x := lo; x <= hi; x += fine {
			grown.X = append(grown.X, x)
			grown.Y = append(grown.Y, brute(g, x, r, 0.05))
		}
		for i := n; i < len(g.X); i += 37 {
			x := g.X[i]
			want := math.Max(bruteErode(grown, x, r, 0.02), g.Y[i])
			// Beside a wall a hair in x is a lot in y: 0.02 mm in either direction will do.
			lo, hi := got.At(x), got.At(x)
			for _, dx := range []float64{-0.02, -0.01, 0.01, 0.02} {
				lo, hi = math.Min(lo, got.At(x+dx)), math.Max(hi, got.At(x+dx))
			}
			if want < lo-0.02 || want > hi+0.02 {
				t.Errorf("%d: Close at %v, r %v = %v, brute twin %v (curve %v)", n, x, r, got.Y[i], want, g.Y[i])
			}
		}
	}
}
