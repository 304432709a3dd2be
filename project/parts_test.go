package project

import (
	"math"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/value"
)

// By hand: 40 × 25 mm; half-widths 10, 20 and 8 at 0, 40 and 80 enclose
// 2·(600 + 560) = 2320 mm².
func TestOutlineOfAddedParts(t *testing.T) {
	for _, c := range []struct {
		part Part
		want float64
	}{
		{Part{Length: 40, Width: 25}, 1000},
		{Part{Halves: "0 10; 40 20; 80 8"}, 2320},
		{Part{Halves: "0 10;40 20 ; 80 8;", Length: 4}, 2320},
	} {
		l, err := c.part.Outline()
		if err != nil || math.Abs(math.Abs(l.Area())-c.want) > 1e-9 {
			t.Errorf("%+v: area %v, %v, want %v", c.part, l.Area(), err, c.want)
		}
	}
	for text, want := range map[string]string{"0 10; 40": "is no place", "0 10; 40 x": "", "0 10": "two half-widths", "40 10; 0 10": "further along", "0 -1; 2 3": "0 or more"} {
		if _, err := (Part{Halves: text}).Outline(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("half-widths %q: %v, want %q", text, err, want)
		}
	}
	p := Defaults()
	p.Added = []Part{{Name: "loop", Count: 1, Length: 40}}
	if err := p.Validate(); err == nil || !strings.Contains(err.Error(), "part.length of part 1: found 40 mm by 0 mm: give its length and its width") {
		t.Errorf("a part without width: %v", err)
	}
}

func TestPairsInInches(t *testing.T) {
	at, err := value.Pairs("0 1/2; 1-3/8 -1; 2 0.25", length.Inches)
	want := []curve.Vec{{X: 0, Y: 12.7}, {X: 34.925, Y: -25.4}, {X: 50.8, Y: 6.35}}
	if err != nil || len(at) != 3 {
		t.Fatalf("%v, %v", at, err)
	}
	for i := range at {
		if at[i].Dist(want[i]) > 1e-9 {
			t.Errorf("place %d: %v, want %v", i, at[i], want[i])
		}
	}
	again, err := value.Pairs(value.SayPairs(at, length.Inches), length.Inches)
	if err != nil || len(again) != 3 || again[1].Dist(at[1]) > 1e-9 {
		t.Errorf("said %q, read %v, %v", value.SayPairs(at, length.Inches), again, err)
	}
}
