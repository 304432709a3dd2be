package term

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

func TestPlain(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"", ""},
		{"paring knife, 1/8\" spine", "paring knife, 1/8\" spine"},
		{"Jäger ½ × 40°", "Jäger ½ × 40°"},
		{"one\r\ntwo\nthree\tfour", "one two three four"},
		{"red \x1b[31m", "red ␛[31m"},
		{"\x1b]2;title\a", "␛]2;title␇"},
		{"c1 \u009b31m", "c1 �31m"},
		{"no utf-8 \xff", "no utf-8 �"},
		{"del \x7f", "del ␡"},
		{"\u202eknife\u202c\u2066", "knife"},
		{"ze\u200bro\u200d\ufeff\u00ad", "zero"},
		{"filler \u3164\uffa0\u2800.", "filler ."},
		{"e\u0301 ก้ํ", "e\u0301 ก้ํ"},
		{"z\u0301\u0301\u0301\u0301", "z\u0301\u0301"},
		{"\u0301lone", "lone"},
		{"❤\ufe0f", "❤"},
		{"\U000e0041tag", "tag"},
		{"\ue000private", "private"},
	} {
		if got := Plain(c.in); got != c.want {
			t.Errorf("Plain(%q) = %q, want %q", c.in, got, c.want)
		}
	}
}

// FuzzPlain holds what callers rely on: nothing that a terminal acts on, one
// line, a width that is the sum of what is shown, and no change the second time.
func FuzzPlain(f *testing.F) {
	for _, s := range []string{"knife", "\x1b[2J\x1b]52;c;eA==\a", "\u202e\u0301e\u0301\u0301", "漢字🔪👩\u200d🏭🇩🇪", "\xf0\x9f", "a\r\nb"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := Plain(s)
		if !utf8.ValidString(got) {
			t.Fatalf("Plain(%q) = %q is not UTF-8", s, got)
		}
		for _, r := range got {
			if unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Co, unicode.Zl, unicode.Zp) {
				t.Fatalf("Plain(%q) = %q holds %U", s, got, r)
			}
		}
		if again := Plain(got); again != got {
			t.Fatalf("Plain(%q) = %q, and again %q", s, got, again)
		}
		if a, b := ansi.StringWidth(got), ansi.StringWidth(ansi.Strip(got)); a != b {
			t.Fatalf("Plain(%q) is %d wide, without escapes %d", s, a, b)
		}
		if w := ansi.StringWidth(Short(s, 7)); w > 7 {
			t.Fatalf("Short(%q, 7) is %d wide", s, w)
		}
	})
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
