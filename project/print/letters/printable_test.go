package letters

import (
	"math/rand/v2"
	"strings"
	"testing"
	"unicode"
)

// Letters with their accents are one (Unicode Standard Annex 15, form C), ends of lines are
// spaces, and what nobody sees is left out without a trace: directions, joiners, variation
// selectors, soft hyphens, control characters.
func TestPrintableLeavesOutWhatIsNotSeen(t *testing.T) {
	for in, want := range map[string]string{
		"e\u0301": "é", "A\u030a": "Å", "a\u200db": "ab", "a\u202eb\u202c": "ab", "a\u00adb": "ab", "a\x00b\x1b[2J": "ab[2J", "a\nb": "a b", "a\u00a0b": "a b",
		"knife\ufe0f": "knife", "": "", "   ": "   ",
	} {
		if got := Printable(in); got != want {
			t.Errorf("Printable(%q) = %q, want %q", in, got, want)
		}
	}
}

// Letters that the font lacks are one ellipsis, however many, with a space before the words
// after them and none before a comma.
func TestPrintableShowsThatLettersAreLacking(t *testing.T) {
	for in, want := range map[string]string{
		"刀 木": "…", "刀a": "… a", "a刀": "a…", "刀, 木": "…, …", "a 刀 b": "a … b", "刀5": "… 5", "𝐀": "…", "a\u0301\u0301刀": "á…",
	} {
		if got := Printable(in); strings.ReplaceAll(got, "\u0301", "") != want {
			t.Errorf("Printable(%q) = %q, want %q", in, got, want)
		}
	}
}

// Whatever a maker types, what is printed is in the font, on one line, and printing it again
// changes nothing; Lacks says whether an ellipsis was put in.
func TestPrintableOfAnything(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 9))
	for range 3000 {
		s := random(r)
		got := Printable(s)
		for _, c := range got {
			if !weight(false).shows(c) || c > 0xffff || unicode.IsControl(c) {
				t.Fatalf("Printable(%q) = %q has %U", s, got, c)
			}
		}
		if again := Printable(got); again != got {
			t.Fatalf("Printable(%q) = %q, and of that %q", s, got, again)
		}
		if put := strings.Count(got, "…") > 0 && !strings.Contains(s, "…"); put != (Lacks(s) && !strings.Contains(s, "…")) {
			t.Fatalf("Printable(%q) = %q, letters are lacking: %v", s, got, Lacks(s))
		}
	}
}

// Of several words one that can't be shown is enough; marks that nobody sees are no letters.
func TestLacks(t *testing.T) {
	for _, c := range []struct {
		words []string
		want  bool
	}{{nil, false}, {[]string{"Zoé", "½″"}, false}, {[]string{"plain", "נ"}, true}, {[]string{"a\u200d\ufe0f\u202e\n"}, false}, {[]string{"𝐀"}, true}, {[]string{"e\u0301"}, false}} {
		if got := Lacks(c.words...); got != c.want {
			t.Errorf("Lacks(%q) = %v", c.words, got)
		}
	}
}

// Between words stands a mark, and none beside words that are not there.
func TestJoined(t *testing.T) {
	for want, words := range map[string][]string{"a · b": {"a", "", "b"}, "a": {"", "a", ""}, "": {"", ""}, "a · b · c": {"a", "b", "c"}} {
		if got := Joined(words...); got != want {
			t.Errorf("Joined(%q) = %q", words, got)
		}
	}
}
