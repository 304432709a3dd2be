package length

import (
	"math"
	"testing"
)

func TestRoundest(t *testing.T) {
	for mm, want := range map[Length]float64{ // in inches; a 64th where no rounder one is near
		150: 6, 38: 1.5, 12: 0.5, 3: 1.0 / 8, 1.5: 1.0 / 16, 0.8: 1.0 / 32, 4: 5.0 / 32, 1: 3.0 / 64, 0: 0, 27.3: 9.0 / 8, // an inch is 7 % off
	} {
		if got := mm.Roundest(Inches).In(); math.Abs(got-want) > 1e-9 {
			t.Errorf("%v mm is %v in, want %v", mm, got, want)
		}
		if got := mm.Roundest(Millimetres); got != mm {
			t.Errorf("%v mm became %v", mm, got)
		}
	}
}

// What is given as "at least" is no less than meant, and less than a step of the tool
// more; "at most" the other way; what stands on a step stays.
func TestUpAndDown(t *testing.T) {
	for _, c := range []struct {
		l        Length
		u        Unit
		f        Fineness
		up, down string
	}{
		{2.81, Millimetres, Calliper, "2.85 mm", "2.8 mm"},
		{2.8, Millimetres, Calliper, "2.8 mm", "2.8 mm"},
		{tenths(1) + tenths(2), Millimetres, Calliper, "0.3 mm", "0.3 mm"}, // 0.30000000000000004
		{17.1, Millimetres, Ruler, "17.5 mm", "17 mm"},
		{Inch / 8, Inches, Calliper, "1/8 in", "1/8 in"},
		{3.2, Inches, Calliper, "9/64 in", "1/8 in"}, // 8.06/64
		{30, Inches, Ruler, "1 3/16 in", "1 5/32 in"},
		{-0.01, Millimetres, Calliper, "0 mm", "-0.05 mm"},
	} {
		if up, down := c.l.Up(c.u, c.f).Format(c.u, c.f), c.l.Down(c.u, c.f).Format(c.u, c.f); up != c.up || down != c.down {
			t.Errorf("%v at least %q, at most %q, want %q, %q", c.l, up, down, c.up, c.down)
		}
	}
	for l := Length(0.003); l < 90; l += 0.137 {
		for _, u := range []Unit{Millimetres, Inches} {
			for _, f := range []Fineness{Ruler, Calliper} {
				up, down := l.Up(u, f), l.Down(u, f)
				if up < l-1e-6 || up >= l+f.step(u) || down > l+1e-6 || down <= l-f.step(u) {
					t.Fatalf("%v by %v: at least %v, at most %v", l, f.step(u), up, down)
				}
			}
		}
	}
}

// tenths are added as a program adds them, not as the compiler does.
func tenths(n float64) Length { return Length(n / 10) }
