package tracepage

import (
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/term/ink"
	"chape/ui/tracing"
)

// Name is what the page is called where another leads to it.
const Name = "Tracing"

// AsPage is what the root has to know of it; set gives the settings of the moment.
func AsPage(clock func() time.Time, set func() tracing.Settings, styles ink.Styles) act.Page {
	return act.Page{
		Name: Name, Room: act.Whole, Brief: "photo", Takes: dropped,
		Open: key.NewBinding(key.WithKeys("I"), key.WithHelp("I", "image of a tracing: its marks")),
		New:  func() act.Pane { return New(clock, set, styles) },
	}
}

// dropped tells whether a key is a picture's path that was dropped on the window, or begins
// one.
func dropped(k tea.KeyMsg) bool {
	switch {
	case k.Type != tea.KeyRunes || k.Alt || len(k.Runes) == 0:
		return false
	case k.Paste:
		return tracing.Names(string(k.Runes))
	}
	return tracing.Begins(k.Runes[0])
}
