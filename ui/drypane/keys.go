package drypane

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
)

// KeyMap is every key of the page, for the page itself and for the help. None
// is a digit or a sign: those begin a weighing.
type KeyMap struct {
	Up, Down, PageUp, PageDown, First, Last key.Binding
	Before                                  key.Binding
	Grams, Time, State, Remove              key.Binding
	Temperature, Humidity                   key.Binding
	Curve                                   key.Binding
	Leave                                   key.Binding // for whoever shows the page
	Keep, Drop                              key.Binding // of what is being typed
}

// DefaultKeyMap returns the keys.
func DefaultKeyMap() KeyMap {
	bind := func(name, does string, keys ...string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, does))
	}
	return KeyMap{
		Up:          bind("↑", "weighing above", "up"),
		Down:        bind("↓", "weighing below", "down"),
		PageUp:      bind("PgUp", "a page up", "pgup"),
		PageDown:    bind("PgDn", "a page down", "pgdown"),
		First:       bind("Home", "first weighing", "home"),
		Last:        bind("End", "last weighing", "end"),
		Before:      bind("w", "weigh it just before wetting", "w"),
		Grams:       bind("g", "correct the grams", "g"),
		Time:        bind("t", "correct the time", "t"),
		State:       bind("s", "it was before wetting, or drying", "s"),
		Remove:      bind("x", "take the weighing out", "x"),
		Temperature: bind("r", "the room's temperature", "r"),
		Humidity:    bind("h", "the room's humidity", "h"),
		Curve:       bind("v", "curve or table, where one fits", "v"),
		Leave:       bind("Esc", "back to the steps", "esc"),
		Keep:        bind("Enter", "keep it", "enter", "ctrl+j"),
		Drop:        bind("Esc", "leave it as it was", "esc"),
	}
}

// ShortHelp implements help.KeyMap. With the key of the help behind it, it fits into 80
// columns; the room's keys stand beside the room.
func (k KeyMap) ShortHelp() []key.Binding {
	digits := key.NewBinding(key.WithKeys(strings.Split("0123456789", "")...), key.WithHelp("digits", "weigh it now"))
	brief := func(b key.Binding, does string) key.Binding {
		b.SetHelp(b.Help().Key, does)
		return b
	}
	return []key.Binding{digits, brief(k.Leave, "back"), brief(k.Before, "before wetting"), brief(k.Grams, "grams"), brief(k.Time, "time")}
}

// FullHelp implements help.KeyMap: the keys while nothing is being typed.
func (k KeyMap) FullHelp() [][]key.Binding {
	return [][]key.Binding{
		{k.Up, k.Down, k.PageUp, k.PageDown, k.First, k.Last},
		{k.Before, k.Grams, k.Time, k.State, k.Remove},
		{k.Temperature, k.Humidity, k.Curve, k.Leave},
	}
}

// QuestionHelp is the help while something is being typed or asked.
func (k KeyMap) QuestionHelp() []key.Binding { return []key.Binding{k.Keep, k.Drop} }
