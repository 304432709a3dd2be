package bend

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"chape/calc/length"
)

// A strip cut by the usual allowance for a half turn, π·(D/2 + k·t) (US Navy training manual 14119; from memory), gives its k back, whatever the
// bar, the leather and the legs.
func TestNeutralThereAndBack(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 61))
	for range 200 {
		k, bar, leather := r.Float64(), 12*r.Float64(), 1+4*r.Float64()
		a, b := 90*r.Float64(), 90*r.Float64()
		n, err := Fold{a + b + math.Pi*(bar/2+k*leather), a, b, bar, leather}.Neutral()
		if err != nil || math.Abs(n.K-k) > 1e-9 || n.Of != 1 || !n.Believable() {
			t.Errorf("bar %v, leather %v: %+v, %v; want k %v", bar, leather, n, err, k)
		}
		other, _ := Fold{a + b + math.Pi*(bar/2+k*leather), b, a, bar, leather}.Neutral()
		if math.Abs(other.K-n.K) > 1e-9 {
			t.Errorf("with its legs the other way round k is %v, was %v", other.K, n.K)
		}
		thick, _ := Fold{200, 80, 80, bar, 2 * leather}.Neutral()
		if !near(2*thick.Plus, n.Plus) {
			t.Errorf("twice as thick k is known to %v, was %v", thick.Plus, n.Plus)
		}
	}
}

// The fibre lies in the leather, as far as the readings can tell: by hand, at its faces, and past them by less and by more than the doubt.
func TestBelievableByHand(t *testing.T) {
	for _, c := range []struct {
		k, plus float64
		want    bool
	}{{0.5, 0.1, true}, {0, 0, true}, {1, 0, true}, {-0.09, 0.1, true}, {-0.11, 0.1, false}, {1.09, 0.1, true}, {1.11, 0.1, false}, {math.NaN(), 0.1, false}} {
		if got := (Neutral{K: c.k, Plus: c.plus}).Believable(); got != c.want {
			t.Errorf("%v ± %v is believed: %v", c.k, c.plus, got)
		}
	}
}

// A strip that grows by given shares says them; what it gives and what is over at a place are these shares of it, and over nothing there is room enough.
func TestStretchThereAndBack(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 61))
	for range 200 {
		before, wet := 50+100*r.Float64(), 0.5*r.Float64()
		kept := wet * (0.1 + 0.9*r.Float64())
		s, err := Strip{before, before * (1 + wet), before * (1 + kept)}.Stretch()
		if err != nil || math.Abs(s.Wet-wet) > 1e-9 || math.Abs(s.Kept-kept) > 1e-9 {
			t.Fatalf("%v of %v and %v: %+v, %v", before, wet, kept, s, err)
		}
		girth := 20 + 30*r.Float64()
		w, k, _ := s.Gives(girth)
		if over, dry := s.Over(girth+w, girth); math.Abs(over) > 1e-9 || math.Abs(dry-(w-k)) > 1e-9 {
			t.Errorf("a need of just what it gives is %v over wet and %v dry, want 0 and %v", over, dry, w-k)
		}
	}
	if s, err := (Strip{100, 200, 200}).Stretch(); err != nil || s.Wet != 1 || s.Kept != 1 {
		t.Errorf("twice as long: %+v, %v", s, err)
	}
}

// What to do is said in whole sentences, each error in one line.
func TestWords(t *testing.T) {
	for u, says := range map[length.Unit][2]string{
		length.Millimetres: {"about 20 mm wide and 150 mm long", "about 20 mm wide, across the sheath's fold as it lies on the hide. Draw two marks 100 mm apart."},
		length.Inches:      {"about 3/4 in wide and 6 in long", "about 3/4 in wide, across the sheath's fold as it lies on the hide. Draw two marks 4 in apart."},
	} {
		for i, s := range []string{HowToFold(u), HowToStretch(u)} {
			if strings.Contains(s, "\n") || !strings.HasSuffix(s, ".") || !strings.Contains(s, says[i]) || u == length.Inches && strings.Contains(s, "mm") {
				t.Errorf("%q", s)
			}
		}
	}
	_, err := Strip{100, 90, 0}.Stretch()
	if err == nil || strings.Contains(err.Error(), "\n") || !strings.Contains(err.Error(), "measure") {
		t.Errorf("refused with %v", err)
	}
}
