package drying

import (
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/mat"
)

// The weights by cofactors are those of gonum's least squares by QR over the same rows:
// the weighings, what is known of the dry weight, what is known of the slower part.
func TestSolveAgainstGonum(t *testing.T) {
	w := exact(120, 60, 0.1, 0, 3, 6, 10, 16, 24)
	for i := range w {
		w[i].Grams += 0.3 * math.Sin(float64(7*i)) // no curve goes through all
	}
	s, err := newSeries(Record{Before: 120.4, Step: 0.1, Clock: 9 * time.Hour, Weighings: w})
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range []law{{share: 1}, {share: 1, washed: true}, {share: 1, ratio: 0.3}, {share: 1, ratio: 0.3, night: 0.4, washed: true}} {
		const rate = 0.12
		own := make([]float64, len(s.hours))
		for i, h := range s.hours {
			own[i] = l.clock(s.clock+h) - l.clock(s.clock)
		}
		for _, c := range s.scales(l) {
			got, _, ok := s.solve(l, s.measured(l, rate, own), c)
			var rows, right []float64
			row := func(dev, y float64, x ...float64) {
				for _, v := range x {
					rows = append(rows, v/dev)
				}
				right = append(right, y/dev)
			}
			for i := range own {
				fast, slow := l.left(rate * own[i])
				row(c.sigma, s.grams[i], 1, fast, slow)
			}
			row(1/math.Sqrt(c.sure), s.ref+c.dry, 1, 0, 0)
			if l.ratio > 0 {
				row(slowDev/(1-slowMean)*s.water, 0, 0, -slowMean/(1-slowMean), 1)
			} else {
				row(1, 0, 0, 0, 1)
			}
			var want mat.Dense
			if err := want.Solve(mat.NewDense(len(right), 3, rows), mat.NewDense(len(right), 1, right)); err != nil {
				t.Fatal(err)
			}
			for i, v := range []float64{got.dry, got.fast, got.slow} {
				if !ok || !approxEqual(v, want.At(i, 0), 1e-6) {
					t.Errorf("%+v, sigma %v: weight %d = %v, %v, want %v", l, c.sigma, i, v, ok, want.At(i, 0))
				}
			}
		}
	}
}
