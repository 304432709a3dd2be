package project

import (
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/value"
)

// A part that has no outline is refused, with its key and row.
func TestAddedPartWithoutOutline(t *testing.T) {
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
