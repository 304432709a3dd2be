package letters

import (
	"strings"
	"testing"
)

func TestPrintable(t *testing.T) {
	for in, want := range map[string]string{"עa🔪": "… a…", "🔪 knife": "… knife", "knife 🔪🇬🇧, big": "knife …, big", "סכין גן": "…", "é½″": "é½″", "a\tb": "a b"} {
		if got := Printable(in); got != want {
			t.Errorf("printable(%q) = %q, want %q", in, got, want)
		}
	}
}

// Lines are no wider than asked, lose nothing but spaces, and a word that is too long
// for one is broken.
func TestWrap(t *testing.T) {
	for _, s := range []string{"", "one", "a few short words in a row", strings.Repeat("W", 70), "à bientôt " + strings.Repeat("é", 40)} {
		lines := Wrap(s, 3, 30, false)
		for _, l := range lines {
			if w := Width(l, false) * 3; w > 30 {
				t.Errorf("%q is %.1f mm wide, want 30 at most", l, w)
			}
		}
		if got, want := strings.ReplaceAll(strings.Join(lines, ""), " ", ""), strings.ReplaceAll(s, " ", ""); got != want {
			t.Errorf("Wrap(%q) = %q", s, lines)
		}
	}
	if got := Fit("a long title of a knife", 3, 20, true); Width(got, true)*3 > 20 || !strings.HasSuffix(got, "…") {
		t.Errorf("Fit = %q", got)
	}
}

// A figure is not parted from its fraction and unit at the end of a line.
func TestFiguresStayWhole(t *testing.T) {
	const s = "relief hole, 6 31/32 in along the fold, 1 19/32 in from it; no heat above 40 °C, hold 12 h; 3 of 4"
	for width := 14.0; width < 70; width += 0.5 {
		for _, l := range Wrap(s, 3, width, false) {
			for _, torn := range []string{" 6", " 31/32", " 1", " 19/32", " 40", " 12"} {
				if strings.HasSuffix(" "+l, torn) {
					t.Errorf("%v mm: a line ends with %q: %q", width, torn, l)
				}
			}
		}
	}
	if got := figuresWhole([]string{"in", "3", "of", "4", "in."}); len(got) != 4 || got[3] != "4 in." {
		t.Errorf("%q", got)
	}
}
