package bend

import (
	"math"
	"strings"
	"testing"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-9 }

// The half turns of a bend of inside radius R and thickness T at k 0.5: US Navy
// training manual 14119, U-bolt and flange layout (R 1, T 0.5: 3.926991, printed
// 3.925; a quarter turn with R 3 of 5.105088, twice as long over a half turn).
// The legs are as one likes: they are cut off again.
func TestNeutralOfPublishedBends(t *testing.T) {
	for _, c := range []struct{ arc, radius, thick float64 }{
		{3.926991, 1, 0.5}, {2 * 5.105088, 3, 0.5},
	} {
		n, err := Fold{Strip: 40 + 35 + c.arc, LegA: 40, LegB: 35, Bar: 2 * c.radius, Leather: c.thick}.Neutral()
		if err != nil || math.Abs(n.K-0.5) > 1e-6 {
			t.Errorf("R %v, T %v: k = %v (%v), want 0.5", c.radius, c.thick, n.K, err)
		}
	}
	n, _ := Fold{Strip: 78.925, LegA: 40, LegB: 35, Bar: 2, Leather: 0.5}.Neutral() // as printed
	if math.Abs(n.K-0.4987) > 1e-4 {
		t.Errorf("k of the printed value = %v, want 0.4987", n.K)
	}
}

// By hand: S 150, a and b 67.5, D 6, t 3.2: 15/π = 4.774648, less 3, over 3.2.
// Three readings of ±0.5: 0.5·√3/(π·3.2) = 0.08615.
func TestNeutralByHand(t *testing.T) {
	f := Fold{150, 67.5, 67.5, 6, 3.2}
	n, err := f.Neutral()
	if err != nil || math.Abs(n.K-0.554578) > 1e-6 || math.Abs(n.Plus-0.086145) > 1e-6 || !n.Believable() {
		t.Errorf("Neutral = %+v, %v", n, err)
	}
}

// The stated doubt holds what three readings, each off by half of it, do in all
// eight ways in the mean square.
func TestNeutralPlusFollowsReadings(t *testing.T) {
	f := Fold{150, 67, 66, 6, 3.2}
	n, _ := f.Neutral()
	var squares float64
	for i := range 8 {
		off := func(bit int) float64 { return Reading * float64(2*(i>>bit&1)-1) }
		g, _ := Fold{f.Strip + off(0), f.LegA + off(1), f.LegB + off(2), f.Bar, f.Leather}.Neutral()
		squares += (g.K - n.K) * (g.K - n.K)
	}
	if rms := math.Sqrt(squares / 8); !near(rms, n.Plus) {
		t.Errorf("readings off by %v move k by %v, said to be %v", Reading, rms, n.Plus)
	}
}

func TestNotBelievable(t *testing.T) {
	n, err := Fold{150, 60, 60, 6, 3.2}.Neutral() // legs measured short
	if err != nil || n.Believable() {
		t.Errorf("k %v ± %v is believed", n.K, n.Plus)
	}
}

func TestFoldRefused(t *testing.T) {
	for _, c := range []struct {
		fold Fold
		want string
	}{
		{Fold{}, "thickness"},
		{Fold{100, 50, 50, 6, 3}, "as long as the strip"},
		{Fold{100, -5, 50, 6, 3}, "below 0"},
		{Fold{math.NaN(), 50, 50, 6, 3}, "no number"},
		{Fold{100, 40, 40, 6, math.Inf(1)}, "no number"},
	} {
		if _, err := c.fold.Neutral(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%+v: error %v, want %q", c.fold, err, c.want)
		}
	}
}

// By hand: marks 100, pulled 112, dried 107; a half girth of 35 gives 4.2 wet and
// 2.45 for good, each ± 35·0.00707. A need of 36.5 is over by 1.5 before, and has
// 2.7 to spare while wet, 0.95 when dry.
func TestStretchByHand(t *testing.T) {
	s, err := Strip{100, 112, 107}.Stretch()
	if err != nil || !near(s.Wet, 0.12) || !near(s.Kept, 0.07) || math.Abs(s.Plus-0.0070711) > 1e-6 {
		t.Fatalf("Stretch = %+v, %v", s, err)
	}
	wet, kept, plus := s.Gives(35)
	if !near(wet, 4.2) || !near(kept, 2.45) || math.Abs(plus-0.24749) > 1e-5 {
		t.Errorf("Gives = %v, %v ± %v", wet, kept, plus)
	}
	if w, d := s.Over(36.5, 35); !near(w, -2.7) || !near(d, -0.95) {
		t.Errorf("Over = %v, %v", w, d)
	}
	if s, err := (Strip{Before: 100, Pulled: 100}).Stretch(); err != nil || s.Wet != 0 || s.Kept != 0 {
		t.Errorf("a strip that gives nothing: %+v, %v", s, err)
	}
}

func TestStretchRefused(t *testing.T) {
	for _, s := range []Strip{{}, {100, 90, 0}, {100, 201, 0}, {100, 110, 111}, {100, math.NaN(), 0}, {100, 110, -1}, {math.NaN(), 1, 1}, {math.Inf(1), math.Inf(1), 1}} {
		if _, err := s.Stretch(); err == nil {
			t.Errorf("%+v is taken", s)
		}
	}
}

// Whether a fold is believed turns where the doubt just reaches the leather's faces: k of
// −0.1 ± 0.1 is, −0.11 ± 0.1 is not, and so at the other face.
func TestBelievableAtItsBounds(t *testing.T) {
	for _, c := range []struct {
		k    float64
		want bool
	}{{-0.1, true}, {-0.11, false}, {0.5, true}, {1.1, true}, {1.11, false}} {
		if got := (Neutral{K: c.k, Plus: 0.1}).Believable(); got != c.want {
			t.Errorf("k %v ± 0.1 believed: %v, want %v", c.k, got, c.want)
		}
	}
}

// A strip that gives twice its length is the most that is taken, and one that went all
// the way back keeps nothing.
func TestStretchAtItsBounds(t *testing.T) {
	for _, c := range []struct {
		s          Strip
		wet, kept  float64
		overBefore float64 // of a need of 40 in a room of 20, once dry
	}{{Strip{100, 200, 100}, 1, 0, 20}, {Strip{100, 200, 200}, 1, 1, 0}, {Strip{50, 55, 52.5}, 0.1, 0.05, 19}} {
		st, err := c.s.Stretch()
		if err != nil || !near(st.Wet, c.wet) || !near(st.Kept, c.kept) {
			t.Errorf("%+v: %+v, %v", c.s, st, err)
		}
		if _, dry := st.Over(40, 20); !near(dry, c.overBefore) {
			t.Errorf("%+v: over by %v, want %v", c.s, dry, c.overBefore)
		}
	}
}

// The first reading that is not there is named, in the order they are taken.
func TestMissing(t *testing.T) {
	f := Fold{}
	for _, c := range []struct {
		name string
		at   *float64
	}{{"whole strip", &f.Strip}, {"one leg", &f.LegA}, {"other leg", &f.LegB}, {"bar", &f.Bar}, {"leather", &f.Leather}} {
		if got := f.Missing(); got != c.name {
			t.Errorf("%q is missing, want %q", got, c.name)
		}
		*c.at = 1
	}
	if got := f.Missing(); got != "" {
		t.Errorf("%q is missing of none", got)
	}
}
