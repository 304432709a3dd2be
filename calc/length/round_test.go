package length

import (
	"math"
	"testing"
)

func TestRoundest(t *testing.T) {
	for mm, want := range map[Length]float64{ // in inches; a 64th where no rounder one is near
		150: 6, 38: 1.5, 12: 0.5, 3: 1.0 / 8, 1.5: 1.0 / 16, 0.8: 1.0 / 32, 4: 5.0 / 32, 1: 3.0 / 64, 0: 0,
	} {
		if got := mm.Roundest(Inches).In(); math.Abs(got-want) > 1e-9 {
			t.Errorf("%v mm is %v in, want %v", mm, got, want)
		}
		if got := mm.Roundest(Millimetres); got != mm {
			t.Errorf("%v mm became %v", mm, got)
		}
	}
}
