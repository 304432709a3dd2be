package plain

import (
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

// nasty is a random text of what files and keys may hold: letters, controls, bytes that are no
// UTF-8, marks that turn the line round, signs outside of the first plane.
func nasty(r *rand.Rand) string {
	pieces := []string{"knife", " ", "\n", "\t", "\x1b[31m", "\x1b]2;x\a", "\x00", "\x7f", "\u0085", "\u2028", "\u202e", "\u200b", "é", "e\u0301", "漢", "🔪", "\xff", "\xc3", `"`, `\`, "'", "=", "\ue000"}
	var b strings.Builder
	for range r.IntN(60) {
		b.WriteString(pieces[r.IntN(len(pieces))])
	}
	return b.String()
}

// Whatever stands in a text, what is made of it is one short line that a terminal shows and
// does not act on.
func TestNothingRawReachesTheScreen(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	for range 3000 {
		s := nasty(r)
		for name, got := range map[string]string{"Printable": Printable(s), "Quote": Quote(s), "Foreign": Foreign(s), "Safe": Safe(s)} {
			if !utf8.ValidString(got) || strings.ContainsFunc(got, func(c rune) bool { return unicode.IsControl(c) || unicode.In(c, unicode.Cf, unicode.Zl, unicode.Zp) }) {
				t.Fatalf("%s(%q) = %q", name, s, got)
			}
		}
		if n := utf8.RuneCountInString(Foreign(s)); n > 161 {
			t.Fatalf("Foreign(%q) has %d letters", s, n)
		}
	}
}

// What is quoted is the text, or its beginning: read back it is what it was.
func TestQuoteIsTheText(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	for range 2000 {
		s := nasty(r)
		back, err := strconv.Unquote(Quote(s))
		head, cut := strings.CutSuffix(back, "…")
		switch {
		case err != nil, cut != (utf8.RuneCountInString(s) > 40), cut && utf8.RuneCountInString(head) != 40:
			t.Fatalf("Quote(%q) = %s, %v", s, Quote(s), err)
		case !cut && back != s, cut && utf8.ValidString(s) && !strings.HasPrefix(s, head):
			t.Fatalf("Quote(%q) = %s", s, Quote(s))
		}
		if p := Printable(s); p != s {
			if back, err := strconv.Unquote(p); err != nil || back != s {
				t.Fatalf("Printable(%q) = %s, %v", s, p, err)
			}
		}
	}
}

// A decoder quotes what it found: the quotes at the ends of its words stay.
func TestForeignKeepsQuotes(t *testing.T) {
	for s, want := range map[string]string{
		`"gap" is no key`:          `"gap" is no key`,
		`found "3 mm"`:             `found "3 mm"`,
		"\"gap\x1b\" is no key":    `\"gap\x1b\" is no key`,
		"  a \t b\r\n\r\nc  ":      "a b c",
		"":                         "",
		strings.Repeat("é", 160):   strings.Repeat("é", 160),
		strings.Repeat("é ", 90):   strings.Repeat("é ", 80) + "…",
		"\u202egnp.txt\u202c ends": `\u202egnp.txt\u202c ends`,
	} {
		if got := Foreign(s); got != want {
			t.Errorf("Foreign(%q) = %q, want %q", s, got, want)
		}
	}
}

// By hand: the letters to add, drop, change or swap; and over random words it is as far there
// as back, nothing from itself, and no more than the longer word.
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"", "abc", 3}, {"welt", "welt", 0}, {"welt", "wet", 1}, {"welt", "wellt", 1}, {"welt", "walt", 1}, {"welt", "wetl", 1}, {"ab", "ba", 1}, {"abc", "cab", 2}, {"naht", "näht", 1}, {"kitten", "sitting", 3}} {
		if got := distance(c.a, c.b); got != c.want || distance(c.b, c.a) != c.want {
			t.Errorf("from %q to %q it is %d, and back %d, want %d", c.a, c.b, got, distance(c.b, c.a), c.want)
		}
	}
	r := rand.New(rand.NewPCG(10, 10))
	word := func() string {
		var b strings.Builder
		for range r.IntN(9) {
			b.WriteByte("abc"[r.IntN(3)])
		}
		return b.String()
	}
	for range 1000 {
		a, b := word(), word()
		d := distance(a, b)
		if d != distance(b, a) || (d == 0) != (a == b) || d > max(len(a), len(b)) || d < max(len(a), len(b))-min(len(a), len(b)) {
			t.Fatalf("from %q to %q it is %d", a, b, d)
		}
	}
}

// Of several that are as near the first counts; a word past all measure is near nothing, and
// costs no time.
func TestNearOfMany(t *testing.T) {
	for _, c := range []struct {
		word  string
		names []string
		want  string
	}{
		{"gab", []string{"gap", "gas"}, "gap"}, {"gas", []string{"gap", "gas"}, "gas"}, {"welt", nil, ""}, {"welt", []string{""}, ""}, {"a", []string{"b"}, ""},
		{"handle_clearence", []string{"handle_clearance", "clearance"}, "handle_clearance"}, {"handleclaerence", []string{"handle_clearance"}, "handle_clearance"},
		{"hndleclrnce", []string{"handle_clearance"}, ""}, {strings.Repeat("a", 61), []string{strings.Repeat("a", 60)}, ""}, {strings.Repeat("a", 60), []string{strings.Repeat("a", 59)}, strings.Repeat("a", 59)},
	} {
		if got := Near(c.word, c.names); got != c.want {
			t.Errorf("near %q of %q is %q, want %q", c.word, c.names, got, c.want)
		}
	}
}
