package find

import (
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/raster"
)

func markAt(x, y float64, dotted bool) Mark {
	return Mark{Mid: curve.Vec{X: x, Y: y}, Dotted: dotted, square: raster.Piece{Area: 400}}
}

// The four are taken in their order whatever the turn; a fifth inside them does not count; a missing one is named.
func TestChoose(t *testing.T) {
	four := []Mark{markAt(100, 700, false), markAt(120, 110, false), markAt(500, 100, true), markAt(520, 690, false)}
	c, err := Choose(append(four, markAt(300, 300, false)), 600, 800)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []curve.Vec{{X: 500, Y: 100}, {X: 520, Y: 690}, {X: 100, Y: 700}, {X: 120, Y: 110}} {
		if c[i].Mid != want {
			t.Errorf("corner %d at %v, want %v", i, c[i].Mid, want)
		}
	}
	if m := c.Mirrored(); m[1].Mid != c[3].Mid || m[0].Mid != c[0].Mid {
		t.Errorf("mirrored: %v", m)
	}
	for _, q := range []struct {
		marks []Mark
		want  string
	}{
		{nil, "no tracing sheet is to be seen"},
		{four[:3], "a corner mark is missing, at the lower right"},
		{[]Mark{four[0], four[1], four[3]}, "the corner mark with the dot is missing, at the upper right"},
		{[]Mark{four[0], four[1], four[2], markAt(520, 690, true)}, "2 marks with a dot"},
	} {
		if _, err := Choose(q.marks, 600, 800); err == nil || !strings.Contains(err.Error(), q.want) {
			t.Errorf("%v; want %q", err, q.want)
		}
	}
}

// An odd number of squares ends a step and a half before the mark, an even one two steps.
func TestEndOf(t *testing.T) {
	if got := endOf(15, 1.48); got != 175 {
		t.Errorf("15 squares, 1.48 steps left: %v, want 175", got)
	}
	if got := endOf(14, 2.05); got != 170 {
		t.Errorf("14 squares, 2.05 steps left: %v, want 170", got)
	}
}
