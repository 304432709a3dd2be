package workbench

import (
	"github.com/charmbracelet/bubbles/key"
)

// KeyMap are the root's own keys; those that open pages stand with the pages.
type KeyMap struct {
	NextPane, LastPane key.Binding
	Undo, Redo         key.Binding
	Keep, Print, New   key.Binding
	Raise              key.Binding
	Help, Suspend      key.Binding
	Concern            key.Binding
	Quit, Break        key.Binding
}

// DefaultKeys gives the keys in use. No digit is among them: a measuring tool
// types digits wherever the cursor is.
func DefaultKeys(suspends bool) KeyMap {
	bind := func(name, does string, keys ...string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, does))
	}
	k := KeyMap{
		NextPane: bind("Tab", "next pane: knife, plan, steps", "tab"),
		LastPane: bind("Shift+Tab", "pane before", "shift+tab"),
		Undo:     bind("u, Ctrl+U", "undo", "u", "ctrl+u"),
		Redo:     bind("U, Ctrl+R", "redo", "U", "ctrl+r"),
		Keep:     bind("Ctrl+S", "keep this copy as a project; save again at once", "ctrl+s"),
		New:      bind("n", "a new project: your own knife", "n"),
		Print:    bind("P", "print: the pattern at true size; asks how", "P"),
		Concern:  bind("!", "to where what warns is mended; again: the next", "!"),
		Raise:    bind("A", "the next pattern number, once this one was printed", "A"),
		Help:     bind("?", "what the row in hand means; again, or elsewhere: the keys", "?"),
		Suspend:  bind("Ctrl+Z", "to the shell; fg brings chape back", "ctrl+z"),
		Quit:     bind("q", "quit", "q"),
		Break:    bind("Ctrl+C", "drop what is being typed, then quit", "ctrl+c"),
	}
	k.Suspend.SetEnabled(suspends)
	return k
}
