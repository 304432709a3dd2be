package added

import (
	"math"
	"strings"
	"testing"
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
}
