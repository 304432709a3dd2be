package plain

import (
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
)

// A figure is not parted from its sign, fraction and unit at the end of a line, at no width that
// has room for it; nothing is lost, and no line is too wide.
func TestFiguresStayWhole(t *testing.T) {
	const s = "steps at 4 25/64 in, 4 29/32 in; deepest 1 1/4 in, ± 1/64 in a side; no heat above 40 °C, hold 12 h, 3.2 mm; 6 h 49 min in all"
	whole := []string{"4 25/64 in", "4 29/32 in", "1 1/4 in", "± 1/64 in", "40 °C", "12 h", "3.2 mm", "6 h 49 min"}
	for w := 12; w < 120; w++ {
		lines := Wrap(s, w)
		for _, f := range whole {
			if !slices.ContainsFunc(lines, func(l string) bool { return strings.Contains(l, f) }) {
				t.Errorf("%d columns: %q is torn: %q", w, f, lines)
			}
		}
		for _, l := range lines {
			if ansi.StringWidth(l) > w {
				t.Errorf("%d columns: %q", w, l)
			}
		}
		if got := strings.Join(strings.Fields(strings.Join(lines, " ")), " "); got != s {
			t.Errorf("%d columns: %q", w, got)
		}
	}
	if got := Wrap("at 4 25/64 in", 6); !slices.Equal(got, []string{"at 4", "25/64", "in"}) {
		t.Errorf("too narrow for the figure: %q", got)
	}
	if got := Wrap("2 words", 0); got != nil {
		t.Errorf("no room: %q", got)
	}
}
