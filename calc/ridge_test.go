package calc

import (
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/curve"
	"chape/calc/knife"
)

// TestRidge: the string over one section along its ridge is as long as that
// along the convex hull of its points, for sections flat, thin, square and
// round, standing at the fold or off it, higher or lower than the welt.
func TestRidge(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	pick := func(v ...float64) float64 { return v[rng.IntN(len(v))] }
	straight := 0
	for range 20000 {
		s := knife.Section{Kind: knife.Kinds[rng.IntN(len(knife.Kinds))], Top: pick(0, 0, 3*rng.Float64()), Thick: pick(0, 3, 20*rng.Float64()),
			Bevel: pick(0, 1, rng.Float64()), Round: pick(0, 1, 30, rng.Float64())}
		s.Bottom = s.Top + pick(0, 3, 30*rng.Float64())
		half := pick(0.25, 1.5, s.Thick/2, 10*rng.Float64())
		end := s.Bottom + pick(0, 0, 5*rng.Float64())

		var hull tautString
		want := hull.over(half, []knife.Section{s}, curve.Vec{X: end, Y: half})
		var r ridge
		r.set(s)
		got := r.string(half, s.Top, end)
		if math.Abs(got-want) > 1e-9 {
			t.Fatalf("%+v, half welt %v, down at %v: %v along the ridge, %v along the hull", s, half, end, got, want)
		}
		if got < half+end+1e-12 {
			straight++
		}
	}
	if straight < 1000 || straight > 15000 {
		t.Errorf("%d of the strings touch no section: the test has no teeth", straight)
	}
}
