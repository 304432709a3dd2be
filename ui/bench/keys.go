package bench

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// KeyMap is every key the bench view knows; no other does anything.
type KeyMap struct {
	On, Feed, Back, End, Leave, Quit, Suspend key.Binding
}

// DefaultKeyMap returns the keys.
func DefaultKeyMap() KeyMap {
	return KeyMap{
		On:      key.NewBinding(key.WithKeys(" ", "enter"), key.WithHelp("space", "go on")),
		Feed:    key.NewBinding(key.WithKeys("ctrl+j")), // Enter of some terminals and tools
		Back:    key.NewBinding(key.WithKeys("backspace", "ctrl+h"), key.WithHelp("backspace", "back")),
		End:     key.NewBinding(key.WithKeys("h", "H"), key.WithHelp("h enter", "end hold")),
		Leave:   key.NewBinding(key.WithKeys("esc"), key.WithHelp("esc", "leave")),
		Quit:    key.NewBinding(key.WithKeys("ctrl+c"), key.WithHelp("ctrl+c twice", "quit")),
		Suspend: key.NewBinding(key.WithKeys("ctrl+z"), key.WithHelp("ctrl+z twice", "to the shell")),
	}
}

// ShortHelp implements help.KeyMap.
func (k KeyMap) ShortHelp() []key.Binding { return []key.Binding{k.On, k.Back, k.End, k.Leave} }

// FullHelp implements help.KeyMap.
func (k KeyMap) FullHelp() [][]key.Binding {
	return [][]key.Binding{{k.On, k.Back, k.End}, {k.Leave, k.Quit, k.Suspend}}
}

// stroke says which key it is.
func (k KeyMap) stroke(msg tea.KeyMsg) stroke {
	switch {
	case key.Matches(msg, k.On) && msg.Type == tea.KeyEnter:
		return returnKey
	case key.Matches(msg, k.On):
		return spaceKey
	case key.Matches(msg, k.Feed):
		return feedKey
	case key.Matches(msg, k.Back):
		return backKey
	case key.Matches(msg, k.End):
		return endKey
	case key.Matches(msg, k.Leave):
		return leaveKey
	case key.Matches(msg, k.Quit):
		return quitKey
	case key.Matches(msg, k.Suspend):
		return suspendKey
	case msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace:
		return charKey
	}
	return otherKey
}
