package drying

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

func TestLawsShareOne(t *testing.T) {
	sum, seen := 0.0, map[law]bool{}
	for _, l := range laws {
		sum += l.share
		if l.share = 0; seen[l] {
			t.Errorf("law %+v is there twice", l)
		}
		seen[l] = true
	}
	if !approxEqual(sum, 1, 1e-12) {
		t.Errorf("the laws' shares sum to %v, want 1", sum)
	}
}

// A law's own time is the integral of its rate through the day, it passes as the
// clock does over a whole day, and hour is its inverse.
func TestLawClock(t *testing.T) {
	for _, l := range laws {
		if got := l.clock(31) - l.clock(7); !approxEqual(got, 24, 1e-9) {
			t.Errorf("%+v: a day is %v hours of its own, want 24", l, got)
		}
		rate := func(h float64) float64 { return 1 + l.night*math.Cos(2*math.Pi*(h-driest-l.lag)/24) }
		for _, h := range []float64{0.5, 5, 11.25, 23.9, 100} {
			if got, want := l.clock(h)-l.clock(0), quad.Fixed(rate, 0, h, 200, nil, 0); !approxEqual(got, want, 1e-6) {
				t.Errorf("%+v: clock(%v) − clock(0) = %v, want %v", l, h, got, want)
			}
			if got := l.hour(l.clock(h)); !approxEqual(got, h, 1e-3) {
				t.Errorf("%+v: hour(clock(%v)) = %v", l, h, got)
			}
		}
	}
}

// until finds when a node is near dry, with a slower part and without.
func TestUntil(t *testing.T) {
	for _, tt := range []struct {
		ratio, fast, slow float64
	}{{0, 60, 0}, {0.2, 45, 15}, {0.12, 10, 50}, {0.6, 60, 0}, {0.3, 0, 30}} {
		n := node{law: law{ratio: tt.ratio}}
		f := fit{dry: 120, fast: tt.fast, slow: tt.slow}
		fast, slow := n.law.left(n.until(f))
		if got := tt.fast*fast + tt.slow*slow; !approxEqual(got, NearDry*120, 1e-3) {
			t.Errorf("%+v: %v g of water left, want %v", tt, got, NearDry*120)
		}
	}
	if got := (node{}).until(fit{dry: 120, fast: 1}); got != 0 {
		t.Errorf("dry from the beginning: until = %v, want 0", got)
	}
}

func TestShortest(t *testing.T) {
	x, w := []float64{1, 2, 3, 5, 9, 10}, []float64{1, 4, 4, 4, 1, 1}
	for _, tt := range []struct{ share, low, high float64 }{{0.2, 2, 2}, {0.5, 2, 3}, {0.8, 2, 5}, {0.85, 1, 5}, {1, 1, 10}} {
		if low, high := shortest(x, w, tt.share); low != tt.low || high != tt.high {
			t.Errorf("shortest(%v) = %v to %v, want %v to %v", tt.share, low, high, tt.low, tt.high)
		}
	}
}
