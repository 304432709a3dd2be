package planpane

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
)

// keyOf is the message of a key by its name.
func keyOf(name string) tea.KeyMsg {
	named := map[string]tea.KeyType{"left": tea.KeyLeft, "right": tea.KeyRight, "up": tea.KeyUp, "down": tea.KeyDown,
		"pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "home": tea.KeyHome, "end": tea.KeyEnd, "enter": tea.KeyEnter,
		"shift+left": tea.KeyShiftLeft, "shift+right": tea.KeyShiftRight, "shift+up": tea.KeyShiftUp, "shift+down": tea.KeyShiftDown}
	if k, ok := named[name]; ok {
		return tea.KeyMsg{Type: k}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

func TestKeyTable(t *testing.T) {
	seen := map[string]bool{}
	for _, b := range DefaultKeys().Bindings() {
		if b.Help().Key == "" || b.Help().Desc == "" {
			t.Errorf("%v has no help", b.Keys())
		}
		for _, k := range b.Keys() {
			if seen[k] {
				t.Errorf("%q is bound twice", k)
			}
			seen[k] = true
			if strings.ContainsAny(k, "0123456789.,-") || k == "+" || k == "enter" || k == " " {
				t.Errorf("%q is a command, and a measuring tool may type it", k)
			}
		}
	}
}

// What a measuring tool types must change nothing.
func TestReadingDoesNothing(t *testing.T) {
	m := shown(t, 78, 24, nil)
	before := m.View()
	for _, k := range strings.Split("+ 0 0 3 . 2 0 , - m m / \" enter", " ") {
		var cmd tea.Cmd
		if m, cmd = m.Update(keyOf(k)); cmd != nil {
			t.Errorf("%q makes a command", k)
		}
	}
	if m.View() != before {
		t.Error("a reading changes what is shown")
	}
}
