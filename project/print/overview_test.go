package print

import (
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/project/print/letters"
	"chape/project/print/sheet"
)

// The list of pages keeps each page's number with its name.
func TestContents(t *testing.T) {
	var pages []sheet.Page
	for _, name := range []string{"Pattern, sheet 1 of 2: row 1, column 1", "Pattern, sheet 2 of 2: row 2, column 1", "Welt", "Setting out", "Work card", "Care card"} {
		pages = append(pages, sheet.Page{Name: name})
	}
	for width := 60.0; width < 200; width++ {
		lines := contents(pages, 2.7, width)
		for _, l := range lines {
			if letters.Width(l, false)*2.7 > width || !strings.ContainsRune("234567", rune(l[0])) {
				t.Errorf("%v mm: %q", width, l)
			}
		}
		if got := strings.Join(lines, " "); !strings.HasSuffix(got, "6 Work card; 7 Care card") {
			t.Errorf("%v mm: %q", width, got)
		}
	}
}

// The number of a sheet stands where the pattern does not run.
func TestRingAt(t *testing.T) {
	b := sheet.Box{Hi: curve.Vec{X: 60, Y: 80}}
	line := func(from, to curve.Vec) []sheet.Path { return []sheet.Path{{Pts: curve.Line{from, to}}} }
	first := ringAt(b, 5, 2, nil)
	for _, c := range []struct {
		lines       []sheet.Path
		right, foot bool
	}{
		{nil, false, false},
		{line(curve.Vec{X: 30}, curve.Vec{X: 30, Y: 80}), false, false},
		{line(curve.Vec{X: 5}, curve.Vec{X: 5, Y: 40}), true, false},
		{line(curve.Vec{Y: 9}, curve.Vec{X: 60, Y: 9}), false, true},
	} {
		at := ringAt(b, 5, 2, c.lines)
		if at.X > 30 != c.right || at.Y > 40 != c.foot {
			t.Errorf("%v: at %v", c.lines, at)
		}
	}
	all := append(line(curve.Vec{X: 5}, curve.Vec{X: 5, Y: 80}), line(curve.Vec{X: 55}, curve.Vec{X: 55, Y: 80})...)
	if at := ringAt(b, 5, 2, all); at != first {
		t.Errorf("no corner is free: at %v, want %v", at, first)
	}
}
