package plain

import (
	"encoding/json"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

func TestSafe(t *testing.T) {
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
		if got := Safe(c.in); got != c.want {
			t.Errorf("Safe(%q) = %q, want %q", c.in, got, c.want)
		}
	}
}

// FuzzSafe holds what callers rely on: nothing that a terminal acts on, one
// line, a width that is the sum of what is shown, and no change the second time.
func FuzzSafe(f *testing.F) {
	for _, s := range []string{"knife", "\x1b[2J\x1b]52;c;eA==\a", "\u202e\u0301e\u0301\u0301", "漢字🔪👩\u200d🏭🇩🇪", "\xf0\x9f", "a\r\nb"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := Safe(s)
		if !utf8.ValidString(got) {
			t.Fatalf("Safe(%q) = %q is not UTF-8", s, got)
		}
		for _, r := range got {
			if unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Co, unicode.Zl, unicode.Zp) {
				t.Fatalf("Safe(%q) = %q holds %U", s, got, r)
			}
		}
		if again := Safe(got); again != got {
			t.Fatalf("Safe(%q) = %q, and again %q", s, got, again)
		}
		if a, b := ansi.StringWidth(got), ansi.StringWidth(ansi.Strip(got)); a != b {
			t.Fatalf("Safe(%q) is %d wide, without escapes %d", s, a, b)
		}
	})
}

// Escaped is the same to a program, and holds nothing that Safe would change.
func TestEscaped(t *testing.T) {
	for _, s := range []string{"knife", "Jäger ½", "a\x7fb\u009b31m", "\u202eknife\u200b", "\U000e0041tag 🔪", "\ue000\ufeff\u2800\u3164", "\x1b[2J\u2028\n", "\u0301e\u0301"} {
		in, err := json.MarshalIndent(map[string]string{"title": s}, "", "  ")
		if err != nil {
			t.Fatal(err)
		}
		out := Escaped(in)
		for _, r := range string(out) {
			if r != '\n' && (unicode.IsControl(r) || unseen(r)) {
				t.Errorf("%q: %q holds %U", s, out, r)
			}
		}
		var back map[string]string
		if err := json.Unmarshal(out, &back); err != nil || back["title"] != s {
			t.Errorf("%q comes back as %q, %v", s, back["title"], err)
		}
	}
	if got := Escaped([]byte(`"a\u007f🔪\U"`)); string(got) != `"a\u007f🔪\U"` {
		t.Errorf("what is escaped is escaped again: %s", got)
	}
}
