package compare

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"

	"chape/calc"
)

// By hand: a mark counts to the region before it, what lies outside to the nearer.
func TestRegionOf(t *testing.T) {
	m := Marks{0, 60, 100, 140}
	for x, want := range map[float64]Region{-5: ToDeepest, 0: ToDeepest, 60: ToDeepest, 60.1: ToFront, 100: ToFront, 100.1: ToMouth, 140: ToMouth, 300: ToMouth} {
		if got := m.RegionOf(x); got != want {
			t.Errorf("%v lies %v, want %v", x, got, want)
		}
	}
	said := map[string]bool{}
	for _, r := range Regions {
		said[r.String()] = true
		if lo, hi := m.ends(r); hi <= lo || m.RegionOf((lo+hi)/2) != r {
			t.Errorf("%v is from %v to %v", r, lo, hi)
		}
	}
	if len(said) != 3 {
		t.Errorf("regions are called %v", said)
	}
}

// A share is of its region, kept within it; of one without room it is half.
func TestShare(t *testing.T) {
	m := Marks{0, 60, 100, 100}
	for _, c := range []struct {
		r       Region
		x, want float64
	}{{ToDeepest, 15, 0.25}, {ToDeepest, -9, 0}, {ToFront, 70, 0.25}, {ToFront, 130, 1}, {ToMouth, 100, 0.5}, {ToMouth, 180, 0.5}} {
		within(t, "share", m.share(c.r, c.x), c.want, 1e-12)
	}
}

// The median is gonum's empirical quantile where the number is odd, and half-way between the two middle ones where it is even; what is asked of is left in order.
func TestMedian(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 63))
	for n := 1; n < 12; n++ {
		var v []float64
		for range n {
			v = append(v, r.NormFloat64())
		}
		was := slices.Clone(v)
		s := slices.Sorted(slices.Values(v))
		want := stat.Quantile(0.5, stat.Empirical, s, nil)
		if n%2 == 0 {
			want = (want + s[n/2]) / 2
		}
		if within(t, "median", median(v), want, 1e-12); !slices.Equal(v, was) {
			t.Error("the median puts its figures in order")
		}
	}
	within(t, "of none", median(nil), 0, 0)
}

// In whatever order sheaths come, the habits are the same; each counts every sheath once.
func TestHabitsInAnyOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 63))
	var past []Tried
	for range 9 {
		m := somewhere(r)
		var fits []calc.Fit
		for range r.IntN(4) {
			fits = append(fits, fit(m.Mouth*r.Float64(), 3*r.Float64(), 5+10*r.Float64()))
		}
		past = append(past, Tried{m, fits})
	}
	want := Habits(past)
	for range 5 {
		r.Shuffle(len(past), func(i, j int) { past[i], past[j] = past[j], past[i] })
		if got := Habits(past); !slices.Equal(got, want) {
			t.Errorf("%v, want %v", got, want)
		}
	}
	for _, h := range want {
		if h.Of != 9 || h.With > 9 || h.With < 0 || h.Place < 0 || h.Place > 1 {
			t.Errorf("%+v", h)
		}
	}
}

// What is offered lies in its region of the other knife, at its share; a reach too short is made the least, and what is too small is not offered.
func TestOffer(t *testing.T) {
	m := Marks{0, 60, 100, 140}
	if f, ok := (Habit{ToFront, -1, 3, 4, 0.25, 2}).Offer(m); !ok || f != fit(70, -1, leastReach) {
		t.Errorf("offered %v, %v", f, ok)
	}
	for _, h := range []Habit{{ToFront, 0.01, 3, 4, 0.5, 20}, {ToFront, -0.01, 3, 4, 0.5, 20}, {ToFront, 2, 3, 4, 0.5, 0}} {
		if f, ok := h.Offer(m); ok {
			t.Errorf("%+v: offered %v", h, f)
		}
	}
	if f, ok := (Habit{ToMouth, 0.03, 3, 4, 1, 20}).Offer(m); !ok || math.Abs(f.At.MM()-140) > 1e-12 {
		t.Errorf("offered %v, %v", f, ok)
	}
}
