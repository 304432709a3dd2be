package layout

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"
)

// pieces of lines that are hard to measure.
var pieces = []string{"a", "stitch line", "é", "e\u0301", "漢字", "🔪", "👩\u200d🏭", "🇩🇪", "🇩", "\x1b[31m", "\x1b[0m", "\x1b[1;4m",
	"\t", "\n", "\r\n", "\u200b", "\u0301", "क\u094dष", "❤\ufe0f", "½", " ", "…", "🏽", "ᄀ", "ᅡ"}

func hardLine(r *rand.Rand) string {
	var b strings.Builder
	for range r.IntN(14) {
		b.WriteString(pieces[r.IntN(len(pieces))])
	}
	return b.String()
}

func TestFrameIsExactWithAnyContent(t *testing.T) {
	renderer := lipgloss.NewRenderer(nil)
	renderer.SetColorProfile(termenv.TrueColor)
	coloured := renderer.NewStyle().Foreground(lipgloss.Color("#804000")).Bold(true)
	r := rand.New(rand.NewPCG(5, 6))
	for range 4000 {
		w, h := r.IntN(40), r.IntN(8)
		content := make([]string, r.IntN(9))
		for i := range content {
			content[i] = hardLine(r)
		}
		s := Edges{ASCII: r.IntN(2) == 0}
		if r.IntN(2) == 0 {
			s.InHand, s.Plain, s.Title = coloured, coloured, coloured
		}
		checkSize(t, Frame(w, h, hardLine(r), r.IntN(2) == 0, content, s), w, h)
		checkSize(t, Fit(content, w, h), w, h)
		checkSize(t, []string{Ends(hardLine(r), hardLine(r), w)}, w, 1)
		checkSize(t, Message(hardLine(r), w, h), w, h)
	}
}

func TestStylesDoNotLeakIntoTheEdge(t *testing.T) {
	rows := Frame(8, 3, "", false, []string{"\x1b[7mabcdefghij"}, Edges{})
	if want := "│\x1b[7mabcde…\x1b[0m│"; rows[1] != want {
		t.Errorf("got %q, want %q", rows[1], want)
	}
}

func TestEdges(t *testing.T) {
	for _, c := range []struct {
		inHand, ascii bool
		want          string
	}{
		{true, false, "╭╶ Plan ╶─╴╮\n╷          ╷\n╵          ╵\n╰╶─╴╶─╴╶─╴╶╯"},
		{false, false, "┌─ Plan ───┐\n│          │\n│          │\n└──────────┘"},
		{true, true, "+- Plan -- +\n|          |\n            \n+-- -- -- -+"},
		{false, true, ".. Plan ....\n:          :\n:          :\n'..........'"},
	} {
		got := strings.Join(Frame(12, 4, "Plan", c.inHand, nil, Edges{ASCII: c.ascii}), "\n")
		if got = ansi.Strip(got); got != c.want {
			t.Errorf("in hand %v, ascii %v: got\n%s\nwant\n%s", c.inHand, c.ascii, got, c.want)
		}
	}
}

func TestEnds(t *testing.T) {
	for _, c := range []struct {
		left, right string
		w           int
		want        string
	}{
		{"title", "saved", 14, "title    saved"},
		{"a long title", "saved", 12, "a lon… saved"},
		{"title", "saved", 5, "saved"},
		{"title", "saved", 3, "sa…"},
		{"title", "", 7, "title  "},
	} {
		if got := Ends(c.left, c.right, c.w); got != c.want {
			t.Errorf("Ends(%q, %q, %d) = %q, want %q", c.left, c.right, c.w, got, c.want)
		}
	}
}

func TestWrap(t *testing.T) {
	got := strings.Join(Wrap("needs 40×12, has 12×3", 12), "|")
	if want := "needs 40×12,|has 12×3"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// What stands beside the title is cut between words, and says so.
func TestAsideIsCutBetweenWords(t *testing.T) {
	const text = "! 1 * 2: tightest place, 41 mm from the point"
	for w, want := range map[int]string{
		80: text, 46: text, 45: "! 1 * 2: tightest place, 41 mm from the …", 26: "! 1 * 2: tightest place …", 25: "! 1 * 2: tightest …",
		18: "! 1 * 2", 8: "! 1 * 2", 7: "! 1 …", 4: "! …",
	} {
		if got := asideIn(text, w); got != want+" " {
			t.Errorf("in %d cells %q, want %q", w, got, want)
		}
	}
}
