package planpane

import tea "github.com/charmbracelet/bubbletea"

// keyOf is the message of a key by its name.
func keyOf(name string) tea.KeyMsg {
	named := map[string]tea.KeyType{"left": tea.KeyLeft, "right": tea.KeyRight, "up": tea.KeyUp, "down": tea.KeyDown,
		"pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "home": tea.KeyHome, "end": tea.KeyEnd, "enter": tea.KeyEnter}
	if k, ok := named[name]; ok {
		return tea.KeyMsg{Type: k}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}
