package term

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
)

// TestShort holds the width, whatever is in the text; plain tests what is made safe.
func TestShort(t *testing.T) {
	for _, s := range []string{"knife", "\x1b[2J\x1b]52;c;eA==\a", "\u202e\u0301e\u0301\u0301", "漢字🔪👩\u200d🏭🇩🇪", "\xf0\x9f", "a\r\nb"} {
		for width := range 12 {
			got := Short(s, width)
			if w := ansi.StringWidth(got); w > width || got != Plain(got) {
				t.Errorf("Short(%q, %d) = %q, %d wide", s, width, got, w)
			}
		}
	}
}

func TestGlyphs(t *testing.T) {
	for _, c := range []struct {
		configured, term, want string
		ask                    bool
	}{
		{"", "xterm-256color", "braille", true},
		{"", "linux", "ascii", false},
		{"", "dumb", "ascii", false},
		{"blocks", "xterm", "blocks", false},
		{"Braille", "xterm", "braille", false},
		{"braille", "linux", "ascii", false}, // answered in a window, shown on the console
		{"blocks", "dumb", "ascii", false},
	} {
		g, ask, err := Glyphs(c.configured, c.term)
		if err != nil || g.String() != c.want || ask != c.ask {
			t.Errorf("Glyphs(%q, %q) = %v, %v, %v; want %v, %v", c.configured, c.term, g, ask, err, c.want, c.ask)
		}
	}
	if _, _, err := Glyphs("dots", "linux"); err == nil || !strings.Contains(err.Error(), `"dots"`) || !strings.Contains(err.Error(), "braille") {
		t.Errorf("Glyphs of an unknown word: %v", err)
	}
}
