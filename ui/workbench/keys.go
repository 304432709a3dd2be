package workbench

import (
	"github.com/charmbracelet/bubbles/key"
)

// KeyMap is every key that works in all panes, outside of an edit.
type KeyMap struct {
	Knife, Plan, Steps key.Binding
	Bench              key.Binding
	Undo, Redo         key.Binding
	Keep               key.Binding
	Help, Suspend      key.Binding
	Quit, Break        key.Binding
}

// DefaultKeys gives the keys in use. No digit is among them: a measuring tool
// types digits wherever the cursor is.
func DefaultKeys(suspends bool) KeyMap {
	bind := func(name, does string, keys ...string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, does))
	}
	k := KeyMap{
		Knife:   bind("k", "to the knife's numbers", "k"),
		Plan:    bind("p", "to the plan", "p"),
		Steps:   bind("s", "to the steps", "s"),
		Bench:   bind("b", "the bench view: one step, one hold, seen from afar", "b"),
		Undo:    bind("u", "undo", "u"),
		Redo:    bind("r, Ctrl+R", "redo", "r", "ctrl+r"),
		Keep:    bind("Ctrl+S", "keep this copy as a project; save again at once", "ctrl+s"),
		Help:    bind("?", "the keys", "?"),
		Suspend: bind("Ctrl+Z", "to the shell, fg comes back", "ctrl+z"),
		Quit:    bind("q", "quit", "q"),
		Break:   bind("Ctrl+C", "drop what is being typed, then quit", "ctrl+c"),
	}
	k.Suspend.SetEnabled(suspends)
	return k
}

// Bindings lists the keys in the order of the help.
func (k KeyMap) Bindings() []key.Binding {
	return []key.Binding{
		k.Knife, k.Plan, k.Steps, k.Bench, k.Undo, k.Redo, k.Keep, k.Help, k.Suspend, k.Quit, k.Break,
	}
}
