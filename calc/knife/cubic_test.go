package knife

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/interp"

	"chape/calc/length"
)

// A Hermite piece by hand: over 2 from 1 with slope 0 to 5 with slope 0 it is
// 1 + 3t² − t³, 3 half way.
func TestCubicByHand(t *testing.T) {
	q := newCubic(2, 1, 5, 0, 0)
	if (q != cubic{1, 0, 3, -1}) {
		t.Errorf("the cubic is %+v, want 1 + 3t² − t³", q)
	}
	for x, want := range map[float64]float64{0: 1, 1: 3, 2: 5, 0.5: 1.625} {
		if got := q.at(x); math.Abs(got-want) > 1e-12 {
			t.Errorf("at %v it is %v, want %v", x, got, want)
		}
	}
	if line := newCubic(4, 1, 9, 2, 2); line != (cubic{1, 2, 0, 0}) {
		t.Errorf("a straight piece is %+v", line)
	}
}

// The least of t³ − 3t over a stretch by hand: −2 at 1; at an end where 1 lies outside.
// Of several places the first counts, and what is level is least where it begins.
func TestLeastByHand(t *testing.T) {
	for _, c := range []struct {
		q             cubic
		slope, lo, hi float64
		value, at     float64
	}{
		{cubic{0, -3, 0, 1}, 0, 0, 3, -2, 1},
		{cubic{0, -3, 0, 1}, 0, 1.5, 3, 1.5*1.5*1.5 - 4.5, 1.5},
		{cubic{0, -3, 0, 1}, 0, -3, 0.5, -18, -3},
		{cubic{0, -3, 0, 1}, 9, 0, 3, 8 - 24, 2}, // t³ − 12t
		{cubic{7, 0, 0, 0}, 0, 2, 5, 7, 2},
		{cubic{0, -2, 1, 0}, 0, 0, 4, -1, 1}, // a parabola
		{cubic{0, -1, 0, 0}, 0, 0, 4, -4, 4}, // a line
		{cubic{0, 0, 0, 1}, 0, -1, 1, -1, -1},
		{cubic{0, 1, -2, 1}, 0, 0, 1, 0, 0}, // t(t − 1)²: 0 at both ends
	} {
		if value, at := c.q.least(c.slope, c.lo, c.hi); math.Abs(value-c.value) > 1e-12 || math.Abs(at-c.at) > 1e-12 {
			t.Errorf("%+v less %v·t over %v to %v: %v at %v, want %v at %v", c.q, c.slope, c.lo, c.hi, value, at, c.value, c.at)
		}
	}
}

// The least of any cubic is what looking at very many places finds.
func TestLeastAgainstLooking(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 21))
	for range 400 {
		q := cubic{rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64() * float64(rng.IntN(2))}
		slope, lo := rng.NormFloat64(), rng.Float64()
		hi := lo + 3*rng.Float64()
		value, at := q.least(slope, lo, hi)
		least := math.Inf(1)
		for i := range 2001 {
			x := lo + (hi-lo)*float64(i)/2000
			least = math.Min(least, q.at(x)-slope*x)
		}
		if at < lo || at > hi || math.Abs(q.at(at)-slope*at-value) > 1e-12 || value > least+1e-12 || value < least-1e-4 {
			t.Errorf("%+v less %v·t over %v to %v: %v at %v, looking finds %v", q, slope, lo, hi, value, at, least)
		}
	}
}

// some makes marks of a knife in one stretch, its places and measures at random.
func some(rng *rand.Rand) []Station {
	var st []Station
	x := 0.0
	for range 2 + rng.IntN(7) {
		top := 6 * rng.Float64()
		st = append(st, mark(length.Length(x), length.Length(top), length.Length(top+30*rng.Float64()), length.Length(8*rng.Float64())))
		x += 1 + 40*rng.Float64()
	}
	return st
}

// Between the marks the curves are those of Fritsch and Butland (1984) as gonum has
// them; and as Fritsch and Carlson (SIAM Journal on Numerical Analysis 17, 1980) proved
// for slopes within three times the secants, they run between two marks one way only.
func TestProfileAgainstGonum(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 21))
	for n := range 60 {
		st := some(rng)
		p := profile(t, st...)
		xs, ys := make([]float64, len(st)), make([]float64, len(st))
		for i, s := range st {
			xs[i], ys[i] = s.At.MM(), s.Thick.MM()
		}
		var want interp.FritschButland
		if err := want.Fit(xs, ys); err != nil {
			t.Fatal(err)
		}
		for i := 1; i < len(st); i++ {
			was := ys[i-1]
			for k := 1; k <= 40; k++ {
				x := math.Min(xs[i-1]+(xs[i]-xs[i-1])*float64(k)/40, xs[i])
				got := p.Sections(nil, x)[0].Thick
				if math.Abs(got-want.Predict(x)) > 1e-9 {
					t.Fatalf("knife %d at %v: %v, gonum %v", n, x, got, want.Predict(x))
				}
				if (got-was)*(ys[i]-ys[i-1]) < -1e-9 || (got-ys[i])*(got-ys[i-1]) > 1e-9 {
					t.Fatalf("knife %d at %v: %v after %v, between marks of %v and %v", n, x, got, was, ys[i-1], ys[i])
				}
				was = got
			}
		}
	}
}

// The same marks told from the butt give the same curves the other way round, marks
// twice as far apart and as large curves twice as large, and a mark more on a straight
// stretch changes nothing.
func TestProfileSymmetries(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 21))
	for n := range 40 {
		st := some(rng)
		end := st[len(st)-1].At
		var back, twice []Station
		for i := range st {
			s := st[len(st)-1-i]
			s.At = end - s.At
			back = append(back, s)
			d := st[i]
			d.At, d.Top, d.Bottom, d.Thick = 2*d.At, 2*d.Top, 2*d.Bottom, 2*d.Thick
			twice = append(twice, d)
		}
		p, q, r := profile(t, st...), profile(t, back...), profile(t, twice...)
		for k := range 50 {
			x := end.MM() * (float64(k) + 0.3) / 50
			a, b, c := p.Sections(nil, x)[0], q.Sections(nil, end.MM()-x)[0], r.Sections(nil, 2*x)[0]
			if math.Abs(a.Bottom-b.Bottom)+math.Abs(a.Top-b.Top)+math.Abs(a.Thick-b.Thick) > 1e-9 {
				t.Fatalf("knife %d at %v: from the butt it is %+v, from the point %+v", n, x, b, a)
			}
			if math.Abs(c.Bottom-2*a.Bottom)+math.Abs(c.Top-2*a.Top)+math.Abs(c.Thick-2*a.Thick) > 1e-9 {
				t.Fatalf("knife %d at %v: twice as large it is %+v, not twice %+v", n, x, c, a)
			}
		}
	}
	// (Only the slope at the very point looks past its neighbour.)
	few := profile(t, mark(0, 4, 10, 1), mark(20, 3, 24, 2), mark(40, 2, 30, 3), mark(100, 2, 30, 3))
	more := profile(t, mark(0, 4, 10, 1), mark(20, 3, 24, 2), mark(40, 2, 30, 3), mark(55, 2, 30, 3), mark(90, 2, 30, 3), mark(100, 2, 30, 3))
	for x := 0.0; x <= 100; x += 0.7 {
		if a, b := few.Sections(nil, x)[0], more.Sections(nil, x)[0]; math.Abs(a.Bottom-b.Bottom)+math.Abs(a.Top-b.Top)+math.Abs(a.Thick-b.Thick) > 1e-9 {
			t.Fatalf("marks more on the level stretch change %+v at %v to %+v", a, x, b)
		}
	}
}
