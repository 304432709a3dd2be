package shelfpane

import (
	"github.com/charmbracelet/bubbles/key"
)

// KeyMap is every key of the shelf, for the screen itself and for the help. None is a
// digit or a sign: a calliper types those wherever the cursor is.
type KeyMap struct {
	Up, Down, PageUp, PageDown, First, Last key.Binding
	Open, Find, Again, Leave                key.Binding
	New, From, Rename, Away                 key.Binding
	Keep, Drop                              key.Binding // of a question, and of finding
	List, Units                             key.Binding // of the question how a project begins
}

// DefaultKeyMap returns the keys.
func DefaultKeyMap() KeyMap {
	bind := func(name, does string, keys ...string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, does))
	}
	return KeyMap{
		Up:       bind("up", "project above", "up"),
		Down:     bind("down", "project below", "down"),
		PageUp:   bind("pgup", "a page up", "pgup"),
		PageDown: bind("pgdn", "a page down", "pgdown"),
		First:    bind("home", "first project", "home"),
		Last:     bind("end", "last project", "end"),
		Open:     bind("enter", "open the project", "enter", "ctrl+j"),
		Find:     bind("/", "find by title or customer", "/"),
		Again:    bind("g", "look at the folder again", "g"),
		Leave:    bind("esc", "back; after finding, first show all again", "esc"),
		New:      bind("n", "new project", "n"),
		From:     bind("f", "new one from this one", "f"),
		Rename:   bind("r", "rename", "r"),
		Away:     bind("p", "put away, or take out again", "p"),
		Keep:     bind("enter", "in a question: keep what is typed", "enter", "ctrl+j"),
		Drop:     bind("esc", "in a question: leave all as it was", "esc"),
		List:     bind("s", "in a new project's question: other steps", "s"),
		Units:    bind("u", "in a new project's question: other units", "u"),
	}
}

// ShortHelp implements help.KeyMap.
func (k KeyMap) ShortHelp() []key.Binding {
	return []key.Binding{k.Open, k.Find, k.New, k.From, k.Away}
}

// FullHelp implements help.KeyMap.
func (k KeyMap) FullHelp() [][]key.Binding {
	return [][]key.Binding{
		{k.Up, k.Down, k.PageUp, k.PageDown, k.First, k.Last},
		{k.Open, k.Find, k.Again, k.Leave},
		{k.New, k.From, k.Rename, k.Away},
		{k.Keep, k.Drop, k.List, k.Units},
	}
}

// QuestionHelp is the help while something is being typed.
func (k KeyMap) QuestionHelp() []key.Binding {
	k.Keep.SetHelp(k.Keep.Help().Key, "keep it")
	k.Drop.SetHelp(k.Drop.Help().Key, "leave it as it was")
	return []key.Binding{k.Keep, k.Drop}
}
