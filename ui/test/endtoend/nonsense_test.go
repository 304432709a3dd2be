//go:build !windows

package endtoend

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/project/store/storetest"
	"chape/ui/test/ptytest"
)

const (
	pasteOn, pasteOff = "\x1b[200~", "\x1b[201~"
	much              = 100_000
)

// harmless is text without what would rightly end, suspend or print.
func harmless(s string) string {
	return strings.NewReplacer("q", "Q", "P", "p", "\x03", "", "\x1a", "").Replace(s)
}

// nonsense is what no hand would type.
func nonsense(r *rand.Rand) map[string]string {
	random := make([]byte, 6_000)
	for i := range random {
		random[i] = byte(r.Uint32())
	}
	var sequences, mouse strings.Builder
	for range 1000 {
		body := fmt.Sprint(r.IntN(1<<r.IntN(40)), ";", r.IntN(1<<r.IntN(40)))
		open := []string{"\x1b[", "\x1b[?", "\x1b[<", "\x1bO", "\x1b]", "\x1bP", "\x1b_", "\x9b", "\x1b\x1b["}[r.IntN(9)]
		sequences.WriteString(open + body + string(rune('@'+r.IntN(63))))
		fmt.Fprintf(&mouse, "\x1b[<%d;%d;%d%c", r.IntN(300), r.IntN(1<<r.IntN(40)), r.IntN(200), "Mm"[r.IntN(2)])
		mouse.WriteString("\x1b[M" + string([]byte{byte(32 + r.IntN(220)), byte(32 + r.IntN(220)), byte(32 + r.IntN(220))}))
	}
	return map[string]string{
		"random bytes":      string(random),
		"sequences":         sequences.String(),
		"mouse":             mouse.String(),
		"typed digits":      strings.Repeat("1234567890", much/10),
		"typed lines":       strings.Repeat("12.5\r\n", 300),
		"pasted letters":    pasteOn + strings.Repeat("leather ", much/8) + pasteOff,
		"pasted lines":      pasteOn + strings.Repeat("1\n", much/2) + pasteOff,
		"pasted sequences":  pasteOn + strings.Repeat("\x1b[2J\x1b]2;title\a", much/16) + pasteOff,
		"pasted wide marks": pasteOn + strings.Repeat("日e\u0301\u200d", much/9) + pasteOff,
		"paste never ended": pasteOn + strings.Repeat("x", 1000),
	}
}

// places are where it arrives.
var places = map[string]string{
	"a number":      home_ + down + down,
	"in an edit":    home_ + down + down + "14",
	"the steps":     backTab,
	"a new step":    backTab + "a",
	"the plan":      tab,
	"the bench":     "b",
	"the help":      "?",
	"another knife": "o",
}

// TestNonsense sends each kind of nonsense to a place. The program lives on,
// and gives the terminal back at its end.
func TestNonsense(t *testing.T) {
	r := rand.New(rand.NewPCG(*seed, 3))
	where, all := slices.Sorted(maps.Keys(places)), nonsense(r)
	for i, what := range slices.Sorted(maps.Keys(all)) {
		at, text := where[i%len(where)], all[what]
		t.Run(what+" at "+at, func(t *testing.T) {
			h := newHome(t, aKnife())
			s := h.open(100, 30)
			s.Type(places[at])
			s.Type(harmless(text))
			h.alive(t, s)
		})
	}
}

// TestNonsenseEverywhere is the long run: each kind at each place.
func TestNonsenseEverywhere(t *testing.T) {
	if *kills < 100 {
		t.Log("only with -kills 100 or more")
		return
	}
	for what, text := range nonsense(rand.New(rand.NewPCG(*seed, 3))) {
		for at, keys := range places {
			h := newHome(t, aKnife())
			s := h.open(100, 30)
			s.Type(keys)
			s.Type(harmless(text))
			h.alive(t, s)
			if t.Failed() {
				t.Fatalf("%s at %s", what, at)
			}
		}
	}
}

var windowTitle = regexp.MustCompile(`\x1b\]2;([^\x1b\a]*)`)

// alive checks that the program still answers, and ends it.
func (h *home) alive(t *testing.T, s *ptytest.Screen) {
	t.Helper()
	s.Type(pasteOff)
	s.Resize(24, 7)
	s.Until("that the screen is too small", func(screen string) bool { return strings.Contains(screen, "needs") })
	// Everything before these was read when they end it: an edit, an overlay, a
	// warning in the bench view, the program.
	s.Send(strings.Repeat("\x03", 6))
	s.Resize(100, 30)
	if code := s.Exit(); code != 0 || strings.Contains(s.Raw(), "has a fault") || strings.Contains(s.Raw(), "goroutine ") {
		t.Errorf("exit status %d:\n%s", code, s.Text())
	}
	givenBack(t, s)
	for _, m := range windowTitle.FindAllStringSubmatch(s.Raw(), -1) {
		if m[1] != ansi.Strip(m[1]) || len(m[1]) > 400 || strings.ContainsAny(m[1], "\n\r\t\b") {
			t.Errorf("window title %q", m[1])
		}
	}
	h.read()
}

// TestResizeStorm changes the size of the terminal faster than it can be drawn.
// In the end the screen is that of a program which has seen one size only.
func TestResizeStorm(t *testing.T) {
	h := newHome(t, aKnife())
	r := rand.New(rand.NewPCG(*seed, 4))
	s := h.open(160, 45)
	for range 200 {
		s.Resize(1+r.IntN(300), 1+r.IntN(100))
	}
	for _, size := range [][2]int{{1, 1}, {300, 100}, {1, 100}, {300, 1}, {160, 45}} {
		s.Resize(size[0], size[1])
	}
	fresh := h.second()
	fresh.Type(home_)
	s.Type(home_)
	fresh.Shows(ready)
	s.Until("the screen of a fresh start", func(screen string) bool { return screen == fresh.Text() })
	h.alive(t, s)
}

// TestNothingIsWiderThanTheScreen pastes and types without end at many sizes.
func TestNothingIsWiderThanTheScreen(t *testing.T) {
	t.Parallel()
	d := newDesk(t, storetest.New(), aKnife())
	paste := tea.KeyMsg{Type: tea.KeyRunes, Paste: true, Runes: []rune(strings.Repeat("日e\u0301 long\t\x1b[31m ", much/15))}
	fits := func(where string, w, h int) {
		t.Helper()
		all := strings.Split(d.m.View(), "\n")
		if len(all) > h {
			t.Fatalf("%s, %d×%d: %d lines", where, w, h, len(all))
		}
		for _, l := range all {
			if ansi.StringWidth(l) > w {
				t.Fatalf("%s, %d×%d: a line of %d cells: %q", where, w, h, ansi.StringWidth(l), l)
			}
		}
	}
	for _, where := range []string{"a", "i", "r"} { // texts of the steps
		d.key(tea.KeyEsc)
		d.key(tea.KeyEsc)
		d.key(tea.KeyShiftTab)
		d.letters(where)
		d.press(paste)
		for _, w := range []int{1, 2, 39, 40, 80, 119, 120, 300} {
			for _, h := range []int{1, 11, 12, 24, 100} {
				d.send(tea.WindowSizeMsg{Width: w, Height: h})
				fits("text "+where, w, h)
			}
		}
		d.key(tea.KeyEnter)
		fits("kept "+where, 300, 100)
	}
}
