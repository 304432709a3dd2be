package knifepane

import "github.com/charmbracelet/bubbles/key"

// KeyMap is every key of the pane, for the pane itself and for the help.
type KeyMap struct {
	Up, Down, Left, Right key.Binding
	PageUp, PageDown      key.Binding
	First, Last           key.Binding
	Next, Previous        key.Binding
	Cycle, Edit, Clear    key.Binding
	Source                key.Binding
	AddMark, AddStep      key.Binding
	AddFit, Remove        key.Binding

	// While a value is typed; every other key goes into it.
	KeepNext, KeepBack, KeepUp, KeepDown, Restore, NewLine key.Binding
}

// DefaultKeys gives the keys in use.
func DefaultKeys() KeyMap {
	bind := func(name, does string, keys ...string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, does))
	}
	return KeyMap{
		Up:       bind("↑", "row above", "up"),
		Down:     bind("↓", "row below", "down"),
		Left:     bind("←", "column to the left, choice before", "left"),
		Right:    bind("→", "column to the right, next choice", "right"),
		PageUp:   bind("PgUp", "a page up", "pgup"),
		PageDown: bind("PgDn", "a page down", "pgdown"),
		First:    bind("Home", "first row", "home"),
		Last:     bind("End", "last row", "end"),
		Next:     bind("Enter", "on to the next number; opens a text", "enter"),
		Previous: bind("Alt+Enter", "back to the number before", "alt+enter"),
		Cycle:    bind("Space", "next choice", " "),
		Edit:     bind("e", "change the value that stands", "e"),
		Clear:    bind("Backspace", "empty the value and type", "backspace", "ctrl+h"),
		Source:   bind("m", "marks from the outline, or as measured", "m"),
		AddMark:  bind("a", "add a mark behind this one", "a"),
		AddStep:  bind("j", "make this mark a pair: a step, as at a bolster", "j"),
		AddFit:   bind("f", "add a correction after a trial fit", "f"),
		Remove:   bind("x", "take this mark or correction out", "x"),

		KeepNext: bind("Enter, Tab", "keep it, on to the next number", "enter", "tab"),
		KeepBack: bind("Shift+Tab", "keep it, back to the number before", "shift+tab"),
		KeepUp:   bind("↑", "keep it, row above", "up"),
		KeepDown: bind("↓", "keep it, row below", "down"),
		Restore:  bind("Esc", "put the old value back", "esc"),
		NewLine:  bind("Alt+Enter", "a new line, in notes", "alt+enter"),
	}
}

// Bindings lists the keys while nothing is typed, in the order of the help.
func (k KeyMap) Bindings() []key.Binding {
	return []key.Binding{
		k.Next, k.Previous, k.Up, k.Down, k.Left, k.Right, k.PageUp, k.PageDown, k.First, k.Last,
		k.Cycle, k.Edit, k.Clear, k.Source, k.AddMark, k.AddStep, k.AddFit, k.Remove,
	}
}

// Typing lists the keys while a value is typed.
func (k KeyMap) Typing() []key.Binding {
	return []key.Binding{k.KeepNext, k.KeepBack, k.KeepUp, k.KeepDown, k.Restore, k.NewLine}
}
