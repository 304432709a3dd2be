package bench

import (
	"time"

	"github.com/charmbracelet/bubbles/key"

	"chape/ui/act"
	"chape/ui/term/ink"
)

// AsPage is what the root has to know of it.
func AsPage(clock func() time.Time, wait Wait, styles ink.Styles) act.Page {
	return act.Page{
		Name: "Bench view", Room: act.Screen, Brief: "bench", Ticks: true,
		Open: key.NewBinding(key.WithKeys("b"), key.WithHelp("b", "the bench view: one step, one hold, seen from afar")),
		New:  func() act.Pane { return New(clock, wait, styles) },
	}
}
