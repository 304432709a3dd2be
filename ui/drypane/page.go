package drypane

import (
	"time"

	"github.com/charmbracelet/bubbles/key"

	"chape/ui/act"
	"chape/ui/term/ink"
)

// AsPage is what the root has to know of it.
func AsPage(clock func() time.Time, styles ink.Styles) act.Page {
	return act.Page{
		Name: "Drying", Room: act.Whole, Root: act.AllKeys &^ act.Turn,
		Open: key.NewBinding(key.WithKeys("w"), key.WithHelp("w", "weighings: when the sheath will be dry")),
		New:  func() act.Pane { return New(clock, styles) },
	}
}
