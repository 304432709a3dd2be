package svg

import (
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/project/print/sheet"
)

// No colour is one that cutter programs come with: pure red, green, blue and their
// mixtures, black, white and greys (common practice, no source), and no two are alike.
func TestColoursAreOurs(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range (Look{}).layers() {
		if l == sheet.TrialLayer { // grey words
			continue
		}
		c := Colours{}.of(l)
		if err := Check(c); err != nil || seen[c] {
			t.Errorf("%s: %q, %v, seen before: %v", l, c, err, seen[c])
		}
		seen[c] = true
		r, g, b := c[1:3], c[3:5], c[5:7]
		full := strings.NewReplacer("00", "", "ff", "", "80", "").Replace(r + g + b)
		if full == "" || r == g && g == b {
			t.Errorf("%s: %s is a palette's colour", l, c)
		}
	}
	for _, bad := range []string{"red", "#12345", "#12345g", "123456", "#1234567"} {
		if Check(bad) == nil {
			t.Errorf("%q is taken for a colour", bad)
		}
	}
	if got := (Colours{Cut: "#010203"}).of(sheet.CutLayer); got != "#010203" {
		t.Errorf("own colour: %s", got)
	}
}

// A file for a cutter has no dashes.
func TestDashes(t *testing.T) {
	var d sheet.Drawing
	d.Line(sheet.StitchLayer, sheet.Dashed, curve.Vec{}, curve.Vec{X: 40})
	d.Text(sheet.Text{Layer: sheet.WordLayer, Says: "a < b & c", Size: 3})
	plain := string(Write(&d, "t", "s", Look{}))
	if strings.Contains(plain, "dash") || !strings.Contains(plain, "a &lt; b &amp; c") {
		t.Errorf("for a cutter: %s", plain)
	}
	if bare := string(Write(&d, "t", "s", Look{Bare: true})); strings.Contains(bare, "<path") || strings.Contains(bare, "<text") {
		t.Errorf("only what is cut: %s", bare)
	}
}
