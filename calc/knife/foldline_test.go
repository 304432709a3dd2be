package knife

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"

	"chape/calc/length"
)

// restingByProgramme solves the supporting line as a linear programme: the
// greatest gap + slope·mid with gap + slope·x <= top at every corner of a back
// of straight pieces. gap and slope are each the difference of two variables
// that are not negative; every corner has a slack.
func restingByProgramme(t *testing.T, corners [][2]float64, mid float64) float64 {
	t.Helper()
	n := len(corners)
	a, b := mat.NewDense(n, 4+n, nil), make([]float64, n)
	c := make([]float64, 4+n)
	c[0], c[1], c[2], c[3] = -1, 1, -mid, mid
	for i, p := range corners {
		a.SetRow(i, make([]float64, 4+n))
		a.Set(i, 0, 1)
		a.Set(i, 1, -1)
		a.Set(i, 2, p[0])
		a.Set(i, 3, -p[0])
		a.Set(i, 4+i, 1)
		b[i] = p[1]
	}
	least, _, err := lp.Simplex(c, a, b, 1e-12, nil)
	if err != nil {
		t.Fatal(err)
	}
	return -least
}

// TestRestingIsALinearProgramme: on backs of straight pieces, steps included,
// the line is as high at the middle as the linear programme's (gonum's simplex)
// and lies nowhere past the back.
func TestRestingIsALinearProgramme(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 41))
	for n := range 60 {
		var st []Station
		var corners [][2]float64
		x := 0.0
		for range 1 + rng.IntN(5) {
			for k := range 2 {
				if k > 0 {
					x += 3 + 50*rng.Float64()
				}
				top := 9 * rng.Float64()
				corners = append(corners, [2]float64{x, top})
				st = append(st, Station{At: length.Length(x), Top: length.Length(top), Bottom: 30, Thick: 3, Bevel: 1})
			}
		}
		p := profile(t, st...)
		line := p.Resting(x)
		if got, want := line.At(x/2), restingByProgramme(t, corners, x/2); math.Abs(got-want) > 1e-9 {
			t.Errorf("knife %d: the line lies %.12f below the rule at the middle, the programme's %.12f", n, got, want)
		}
		for _, c := range corners {
			if over := line.At(c[0]) - c[1]; over > 1e-9 {
				t.Errorf("knife %d: the line lies %g past the back at %v", n, over, c[0])
			}
		}
	}
}

// TestResting works lines by hand: a straight back, a proud guard beyond the
// mouth and inside it, a corner of the hull over the middle, a curved back.
func TestResting(t *testing.T) {
	guarded := []Station{mark(0, 4, 4, 1), mark(90, 4, 28, 4), mark(90, 0, 34, 10), mark(96, 0, 34, 10), mark(96, 3, 28, 16), mark(200, 3, 28, 18)}
	for _, c := range []struct {
		name       string
		st         []Station
		mouth      float64
		gap, slope float64
	}{
		{"straight", []Station{mark(0, 0, 9, 1), mark(100, 0, 30, 3)}, 80, 0, 0},
		{"off the rule", []Station{mark(0, 2, 9, 1), mark(100, 6, 30, 3)}, 80, 2, 0.04},
		{"mouth before the guard", guarded, 80, 4, 0},
		{"mouth against the guard's face", guarded, 90, 4, 0},
		{"the guard inside", guarded, 120, 4, -4.0 / 90},
		{"the guard in the point's half", guarded, 196, 0 - 96*3.0/100, 3.0 / 100},
		{"corner over the middle", []Station{mark(0, 5, 9, 1), mark(50, 0, 30, 1), mark(50, 0, 30, 1), mark(100, 3, 30, 3)}, 100, -3, 0.06},
	} {
		p := profile(t, c.st...)
		got := p.Resting(c.mouth)
		// The mouth of the guarded knife at 196 lies where the top is 3.
		if math.Abs(got.Gap-c.gap) > 1e-9 || math.Abs(got.Slope-c.slope) > 1e-9 {
			t.Errorf("%s: %v, want %v + %v x", c.name, got, c.gap, c.slope)
		}
	}
	// A back curved at the middle: the tangent of the cubic there, its slope by
	// differences.
	st := []Station{mark(0, 8, 9, 1), mark(30, 3, 25, 2), mark(60, 1, 28, 3), mark(100, 0.5, 28, 3), mark(130, 2, 28, 3)}
	p := profile(t, st...)
	const mid, h = 40.0, 1e-4
	top := func(x float64) float64 { return p.Sections(nil, x)[0].Top }
	line := p.Resting(2 * mid)
	if got := line.At(mid); math.Abs(got-top(mid)) > 1e-9 {
		t.Errorf("the tangent lies at %v over the middle, the back at %v", got, top(mid))
	}
	if want := (top(mid+h) - top(mid-h)) / (2 * h); math.Abs(line.Slope-want) > 1e-5 {
		t.Errorf("the tangent's slope is %v, want %v", line.Slope, want)
	}
}

// TestHeld: the largest gap over a stretch and where the back touches.
func TestHeld(t *testing.T) {
	st := []Station{mark(0, 6, 6, 1), mark(40, 4, 25, 3), mark(90, 4, 28, 4), mark(90, 0, 34, 10), mark(96, 0, 34, 10), mark(96, 0, 28, 16), mark(200, 0, 28, 18)}
	p := profile(t, st...)
	line := p.Resting(190)
	laid := p.Laid(line)
	if line != (FoldLine{}) {
		t.Fatalf("the line is %v, want the rule", line)
	}
	if gap, at := laid.Held(190.0/4, 190); math.Abs(gap-4) > 1e-9 || math.Abs(at-47.5) > 1e-9 {
		t.Errorf("held off by %v at %v, want 4 at 47.5, the smallest place", gap, at)
	}
	if at := laid.Touching(190); len(at) == 0 || at[0] != 90 {
		t.Errorf("touches at %v, want 90 first", at)
	}
	for _, s := range profile(t, st...).Laid(FoldLine{1, 0.01}).Sections(nil, 100) {
		if math.Abs(s.Top-(0-2)) > 1e-12 || math.Abs(s.Depth()-28) > 1e-12 {
			t.Errorf("laid on a line 2 below, the section is %+v", s)
		}
	}
}
