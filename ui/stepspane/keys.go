package stepspane

import (
	"github.com/charmbracelet/bubbles/key"
)

// KeyMap is every key of the pane, for the pane itself and for the help. None is
// a digit or a sign: a calliper types those wherever the cursor is.
type KeyMap struct {
	Up, Down, PageUp, PageDown, First, Last key.Binding
	Tick, Skip                              key.Binding
	Start, End, Later, Times                key.Binding
	Add, Rename, Remove, MoveUp, MoveDown   key.Binding
	Note, Caution, Minutes                  key.Binding
	Keep, Drop                              key.Binding // of a question
}

// DefaultKeyMap returns the keys.
func DefaultKeyMap() KeyMap {
	bind := func(name, does string, keys ...string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, does))
	}
	return KeyMap{
		Up:       bind("up", "step above", "up"),
		Down:     bind("down", "step below", "down"),
		PageUp:   bind("pgup", "a page up", "pgup"),
		PageDown: bind("pgdn", "a page down", "pgdown"),
		First:    bind("home", "first step", "home"),
		Last:     bind("end", "last step", "end"),
		Tick:     bind("space", "tick, or take the tick back", " "),
		Skip:     bind("s", "skip, or take in again", "s"),
		Start:    bind("t", "start the hold's time", "t"),
		End:      bind("e", "end the hold early", "e"),
		Later:    bind("l", "put the hold off", "l"),
		Times:    bind("d", "how long the hold is", "d"),
		Add:      bind("a", "add a step after this one", "a"),
		Rename:   bind("r", "rename", "r"),
		Remove:   bind("x", "take the step out", "x"),
		MoveUp:   bind("K", "move up", "K", "shift+up", "alt+up"),
		MoveDown: bind("J", "move down", "J", "shift+down", "alt+down"),
		Note:     bind("n", "note", "n"),
		Caution:  bind("c", "caution: what can hurt here", "c"),
		Minutes:  bind("m", "minutes spent", "m"),
		Keep:     bind("enter", "keep it", "enter", "ctrl+j"),
		Drop:     bind("esc", "leave it as it was", "esc"),
	}
}

// ShortHelp implements help.KeyMap.
func (k KeyMap) ShortHelp() []key.Binding {
	return []key.Binding{k.Tick, k.Start, k.Skip, k.Note, k.Add}
}

// FullHelp implements help.KeyMap.
func (k KeyMap) FullHelp() [][]key.Binding {
	return [][]key.Binding{
		{k.Up, k.Down, k.PageUp, k.PageDown, k.First, k.Last},
		{k.Tick, k.Skip, k.Start, k.End, k.Later, k.Times},
		{k.Add, k.Rename, k.Remove, k.MoveUp, k.MoveDown, k.Note, k.Caution, k.Minutes},
		{k.Keep, k.Drop},
	}
}

// QuestionHelp is the help while something is being typed or asked.
func (k KeyMap) QuestionHelp() []key.Binding { return []key.Binding{k.Keep, k.Drop} }
