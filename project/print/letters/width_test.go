package letters

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
)

// measured is the width of words as another reader of the font file has it, as a share of the
// size: an unhinted face of 1000 dots to the em.
func measured(t *testing.T, s string, bold bool) float64 {
	t.Helper()
	ttf := goregular.TTF
	if bold {
		ttf = gobold.TTF
	}
	f, err := opentype.Parse(ttf)
	if err != nil {
		t.Fatal(err)
	}
	face, err := opentype.NewFace(f, &opentype.FaceOptions{Size: 1000, DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		t.Fatal(err)
	}
	sum := fixed.Int26_6(0)
	for _, r := range s { // letter by letter: the sheets don't kern
		a, ok := face.GlyphAdvance(r)
		if !ok {
			t.Fatalf("the font has no %q", r)
		}
		sum += a
	}
	return float64(sum) / 64 / 1000
}

// Widths are the font's own, in both weights.
func TestWidthIsTheFonts(t *testing.T) {
	for _, s := range []string{"", "i", "W", "Divider setting 3.87 mm", "12 1/2″ × 4.05°, ½", "Zoé, à bientôt – 40 °C"} {
		for _, bold := range []bool{false, true} {
			if got, want := Width(s, bold), measured(t, s, bold); math.Abs(got-want) > 1e-3*float64(1+len(s)) {
				t.Errorf("Width(%q, %v) = %.4f, the font says %.4f", s, bold, got, want)
			}
		}
	}
	if a, b := Width("setting", false), Width("setting", true); a >= b {
		t.Errorf("bold words are no wider: %.3f, %.3f", a, b)
	}
	if got := Width("a🔪b", false); got != Width("ab", false) {
		t.Errorf("a letter that the font lacks is %.3f wide", got-Width("ab", false))
	}
}

// What the sheets may have to say can be said in both weights: figures, fractions, units,
// and the letters of western and central Europe, Greek and Russian. And whatever Printable
// lets through for the one weight the other has as well.
func TestBothWeightsHaveTheLetters(t *testing.T) {
	const must = "0123456789 ½¼¾⅛⅜⅝⅞ ″×°±²–…·% áàâäãåæçéèêëíïñóöøßúüÿ ąćęłńśźż čďěňřšťůž őű ğış ăâîșț ΑΩαω Жя"
	for _, bold := range []bool{false, true} {
		for _, r := range must {
			if _, ok := weight(bold).width(r); !ok {
				t.Errorf("bold %v lacks %q", bold, r)
			}
		}
	}
	for r := rune(0x20); r <= 0xffff; r++ {
		_, regular := weight(false).width(r)
		if _, ok := weight(true).width(r); regular && !ok {
			t.Errorf("%q (%U) is there, but not in bold", r, r)
		}
	}
}

// random is words of a kind that titles can be of.
func random(r *rand.Rand) string {
	letters := []rune("aWi é½ \t\nłЖ🔪נ字\u200d\ufe0f\u202e\u0301…,.")
	var b strings.Builder
	for range r.IntN(40) {
		b.WriteRune(letters[r.IntN(len(letters))])
	}
	return b.String()
}

// Fitted words are no wider than there is room; they are whole, or a beginning with an
// ellipsis right behind it, and one letter more would have been too many.
func TestFit(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 7))
	const size = 3.0
	for range 2000 {
		s, room, bold := Printable(random(r)), 40*r.Float64(), r.IntN(2) == 0
		got := Fit(s, size, room, bold)
		if Width(got, bold)*size > room+1e-9 {
			t.Fatalf("Fit(%q, %.2f) = %q, %.2f wide", s, room, got, Width(got, bold)*size)
		}
		if Width(s, bold)*size <= room {
			if got != s {
				t.Fatalf("Fit(%q, %.2f) = %q: there was room for all", s, room, got)
			}
			continue
		}
		if got == "" {
			if first := []rune(s)[:1]; len(first) > 0 && Width(string(first)+"…", bold)*size <= room && len([]rune(s)) > 1 {
				t.Fatalf("Fit(%q, %.2f) is nothing: there was room for %q", s, room, string(first))
			}
			continue
		}
		kept, cut := strings.CutSuffix(got, "…")
		if !cut || !strings.HasPrefix(s, kept) || strings.HasSuffix(kept, " ") {
			t.Fatalf("Fit(%q, %.2f) = %q", s, room, got)
		}
		rest := strings.TrimLeft(s[len(kept):], " ")
		gap := s[len(kept) : len(s)-len(rest)]
		more := kept + gap + string([]rune(rest)[:1])
		if len(more) < len(s) && Width(more+"…", bold)*size <= room {
			t.Fatalf("Fit(%q, %.2f) = %q: %q… had room", s, room, got, more)
		}
	}
}

// Lines are filled: no line has room for the first word of the next, a word that fits a line
// is not broken, and no words at all are one empty line.
func TestLinesAreFilled(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 11))
	const size, room = 3.0, 30.0
	for range 500 {
		s, bold := Printable(random(r)), r.IntN(2) == 0
		lines := Wrap(s, size, room, bold)
		var words []string
		for i, l := range lines {
			words = append(words, strings.Fields(l)...)
			if Width(l, bold)*size > room+1e-9 || strings.TrimSpace(l) != l {
				t.Fatalf("Wrap(%q): line %q", s, l)
			}
			if i > 0 {
				next := strings.Fields(l)
				if len(next) > 0 && Width(lines[i-1]+" "+next[0], bold)*size <= room && strings.Contains(s, lines[i-1]+" "+next[0]) {
					t.Fatalf("Wrap(%q) = %q: %q had room on the line before", s, lines, next[0])
				}
			}
		}
		if got, want := strings.Join(words, ""), strings.Join(strings.Fields(s), ""); got != want {
			t.Fatalf("Wrap(%q) says %q", s, got)
		}
		for _, w := range strings.Fields(s) {
			if Width(w, bold)*size <= room && !strings.Contains(" "+strings.Join(lines, " ")+" ", " "+w+" ") {
				t.Fatalf("Wrap(%q) = %q breaks %q", s, lines, w)
			}
		}
	}
	if got := Wrap("", size, room, false); len(got) != 1 || got[0] != "" {
		t.Errorf("no words are %q", got)
	}
	if got := Wrap("Wé🔪", size, 0.1, false); len(got) != 3 { // no room for one letter: a letter a line
		t.Errorf("in no room: %q", got)
	}
}
