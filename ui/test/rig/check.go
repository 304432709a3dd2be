package rig

import (
	"strings"
	"testing"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/ui/act"
)

// Key gives a key by its name as Bubble Tea has it ("enter", "shift+up", " "), or what
// is typed.
func Key(name string) tea.KeyMsg {
	if name == " " {
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}
	}
	bare, alt := strings.CutPrefix(name, "alt+")
	for kind := tea.KeyType(-120); kind < 128; kind++ {
		if kind != tea.KeyRunes && kind != tea.KeySpace && kind.String() == bare {
			return tea.KeyMsg{Type: kind, Alt: alt}
		}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(bare), Alt: alt}
}

// Paste gives a text as a terminal pastes it.
func Paste(text string) tea.KeyMsg {
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true}
}

// Click gives a press of the left button.
func Click(x, y int) tea.MouseMsg {
	return tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft}
}

// Wheel gives a notch of the wheel.
func Wheel(down bool) tea.MouseMsg {
	if down {
		return tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown}
	}
	return tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonWheelUp}
}

// CheckKeys asks of every pane and panel that no key stands twice in one state, that each has a
// name and words, and that none is what a measuring tool types. Root are the keys that
// the root keeps for itself in that state.
func CheckKeys(t *testing.T, p act.Keyed, root ...act.Key) {
	t.Helper()
	for _, s := range p.Keys() {
		does := map[string]string{}
		keys := s.Keys
		if !s.Text {
			keys = append(append([]act.Key{}, root...), keys...)
		}
		for _, k := range keys {
			h := k.Help()
			if (h.Key == "" || h.Desc == "") && h.Key+h.Desc+k.Brief != "" || h.Key == "" && len(k.Binding.Keys()) == 0 {
				t.Errorf("%s: key %q does %q: name and words are needed", s.Title, h.Key, h.Desc)
			}
			for _, name := range k.Binding.Keys() {
				if other, twice := does[name]; twice {
					t.Errorf("%s: %q does both %q and %q", s.Title, name, other, h.Desc)
				}
				does[name] = h.Desc
				if r := []rune(name); len(r) == 1 && (unicode.IsDigit(r[0]) || strings.ContainsRune("+-.,", r[0])) {
					t.Errorf("%s: a measuring tool types %q, which %s", s.Title, name, h.Desc)
				}
			}
		}
	}
}

// CheckSizes asks that a pane is exactly its size, at every size up to that.
func CheckSizes(t *testing.T, p act.Pane, w, h int) {
	t.Helper()
	for x := 1; x <= w; x += 1 + x/8 {
		for y := 1; y <= h; y += 1 + y/8 {
			p.SetSize(x, y)
			lines := strings.Split(p.View(), "\n")
			if len(lines) != y {
				t.Fatalf("%d by %d: %d lines", x, y, len(lines))
			}
			for i, line := range lines {
				if got := ansi.StringWidth(line); got != x {
					t.Fatalf("%d by %d: line %d is %d wide:\n%s", x, y, i+1, got, ansi.Strip(p.View()))
				}
			}
		}
	}
}
