package plain

import (
	"strings"
	"testing"
)

func TestPrintableAndQuote(t *testing.T) {
	for s, want := range map[string]string{"heron.toml": "heron.toml", "": `""`, "a\x1b[2Jb": `"a\x1b[2Jb"`, "a\xff": `"a\xff"`, "Möwe": "Möwe"} {
		if got := Printable(s); got != want {
			t.Errorf("Printable(%q) = %s, want %s", s, got, want)
		}
	}
	for s, want := range map[string]string{"3..2": `"3..2"`, "": `""`, strings.Repeat("ä", 40): `"` + strings.Repeat("ä", 40) + `"`,
		strings.Repeat("ä", 41): `"` + strings.Repeat("ä", 40) + `…"`, "a\nb": `"a\nb"`} {
		if got := Quote(s); got != want {
			t.Errorf("Quote(%q) = %s, want %s", s, got, want)
		}
	}
}

// A decoder's error is cut to one line that nobody scrolls for.
func TestForeign(t *testing.T) {
	for s, want := range map[string]string{"expected\n  a  key": "expected a key", "bad \x1b[31m": `bad \x1b[31m`,
		strings.Repeat("x", 161): strings.Repeat("x", 160) + "…"} {
		if got := Foreign(s); got != want {
			t.Errorf("Foreign(%q) = %q, want %q", s, got, want)
		}
	}
}

// One letter too many, too few, another, or two that changed places are a slip; more are
// one in words of eight letters and up.
func TestNear(t *testing.T) {
	names := []string{"leather", "welt", "mouth_round", "gap"}
	for word, want := range map[string]string{"lether": "leather", "lleather": "leather", "leahter": "leather", "Leather": "leather",
		"mouthround": "mouth_round", "moth_rond": "mouth_round", "lthr": "", "wel": "welt", "gpa": "gap", "ga": "gap", "": "", "swede": "", "x": ""} {
		if got := Near(word, names); got != want {
			t.Errorf("Near(%q) = %q, want %q", word, got, want)
		}
	}
}
