package planpane

import "github.com/charmbracelet/bubbles/key"

// KeyMap is every key of the pane, for the pane itself and for the help. No
// character that a measuring tool types is among them.
type KeyMap struct {
	NextPage, PreviousPage key.Binding
	NextMark, PreviousMark key.Binding
	Up, Down               key.Binding
	PageUp, PageDown       key.Binding
	First, Last            key.Binding
	Closer, Further, All   key.Binding
	Shape                  key.Binding
	PanLeft, PanRight      key.Binding
	PanUp, PanDown         key.Binding
}

// DefaultKeys gives the keys in use.
func DefaultKeys() KeyMap {
	bind := func(name, does string, keys ...string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, does))
	}
	return KeyMap{
		NextPage:     bind("→", "next page: drawing, half-widths, holes, section", "right"),
		PreviousPage: bind("←", "page before", "left"),
		NextMark:     bind("]", "next mark, towards the handle", "]"),
		PreviousMark: bind("[", "mark before, towards the point", "["),
		Up:           bind("↑", "mark before; in a table a row up", "up"),
		Down:         bind("↓", "next mark; in a table a row down", "down"),
		PageUp:       bind("PgUp", "text up", "pgup"),
		PageDown:     bind("PgDn", "text down", "pgdown"),
		First:        bind("Home", "top of the text", "home"),
		Last:         bind("End", "end of the text", "end"),
		Closer:       bind("z", "closer, at the chosen mark", "z"),
		Further:      bind("Z", "further away", "Z"),
		All:          bind("f", "the whole drawing again", "f"),
		Shape:        bind("v", "draw the whole, the half, the closed sheath", "v"),
		PanLeft:      bind("Shift+←, H", "look further left", "shift+left", "H"),
		PanRight:     bind("Shift+→, L", "look further right", "shift+right", "L"),
		PanUp:        bind("Shift+↑, K", "look further up", "shift+up", "K"),
		PanDown:      bind("Shift+↓, J", "look further down", "shift+down", "J"),
	}
}

// Bindings lists the keys in the order of the help.
func (k KeyMap) Bindings() []key.Binding {
	return []key.Binding{
		k.NextPage, k.PreviousPage, k.Up, k.Down, k.NextMark, k.PreviousMark, k.PageUp, k.PageDown, k.First, k.Last,
		k.Closer, k.Further, k.All, k.Shape, k.PanLeft, k.PanRight, k.PanUp, k.PanDown,
	}
}
