package knife

import (
	"testing"

	"chape/calc/length"
)

// A mark put in stands where the maker's own rule has a line, and has figures that the
// calliper shows: typed back as they are shown they are the same.
func TestBetweenAsToolsShow(t *testing.T) {
	marks := []Station{{At: 20, Top: 1, Bottom: 21, Thick: 3}, {At: 47, Top: 2.2, Bottom: 26.1, Thick: 3.4}}
	for _, c := range []struct {
		u                      length.Unit
		at, top, bottom, thick string
	}{
		{length.Millimetres, "34", "1.6", "23.65", "3.2"},
		// 33.5 mm lies half way, 42.2 of 32; 1.6, 23.6 and 3.2 mm are 4.0, 59.4 and 8.1 of 64.
		{length.Inches, "1 5/16", "1/16", "59/64", "1/8"},
	} {
		m := Between(marks, 0, c.u)
		if got := [4]string{m.At.Exact(c.u), m.Top.Exact(c.u), m.Bottom.Exact(c.u), m.Thick.Exact(c.u)}; got != [4]string{c.at, c.top, c.bottom, c.thick} {
			t.Errorf("between, %v: %q, want %q %q %q %q", c.u, got, c.at, c.top, c.bottom, c.thick)
		}
		if got := Between(marks, 1, c.u).At; got != marks[1].At+(10*length.Millimetre).Roundest(c.u) {
			t.Errorf("beyond, %v: %v", c.u, got)
		}
	}
	narrow := []Station{{At: 20}, {At: 20.4}}
	if got := Between(narrow, 0, length.Millimetres).At; got != 20.2 {
		t.Errorf("between marks 0.4 mm apart: %v", got)
	}
}
