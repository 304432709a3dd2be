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
		configured, want string
		env              map[string]string
	}{
		{"", "braille", map[string]string{"TERM": "xterm-256color", "LANG": "de_DE.UTF-8"}},
		{"", "braille", map[string]string{"TERM": "xterm", "LC_CTYPE": "C.utf8", "LANG": "C"}},
		{"", "ascii", map[string]string{"TERM": "xterm", "LC_ALL": "C", "LANG": "de_DE.UTF-8"}},
		{"", "ascii", map[string]string{"TERM": "xterm", "LANG": "de_DE.ISO-8859-1"}},
		{"", "ascii", map[string]string{"TERM": "linux", "LANG": "C.UTF-8"}},
		{"", "ascii", map[string]string{"TERM": "dumb", "LANG": "C.UTF-8"}},
		{"blocks", "blocks", map[string]string{"TERM": "xterm", "LANG": "C.UTF-8"}},
		{"Braille", "braille", map[string]string{"TERM": "xterm", "LANG": "C"}},
		{"braille", "ascii", map[string]string{"TERM": "linux"}}, // chosen in a window, shown on the console
		{"blocks", "ascii", map[string]string{"TERM": "dumb"}},
	} {
		g, err := Glyphs(c.configured, func(name string) string { return c.env[name] })
		if err != nil || g.String() != c.want {
			t.Errorf("Glyphs(%q, %v) = %v, %v; want %v", c.configured, c.env, g, err, c.want)
		}
	}
	if _, err := Glyphs("dots", func(string) string { return "linux" }); err == nil || !strings.Contains(err.Error(), `"dots"`) || !strings.Contains(err.Error(), "braille") {
		t.Errorf("Glyphs of an unknown word: %v", err)
	}
}
