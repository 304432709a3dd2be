package comparepage

import (
	"github.com/charmbracelet/bubbles/key"

	"chape/ui/act"
	"chape/ui/term/ink"
)

// AsPage is what the root has to know of it.
func AsPage(styles ink.Styles) act.Page {
	return act.Page{
		Name: "Patterns", Room: act.Whole, Root: act.AllKeys &^ act.Turn,
		Open: key.NewBinding(key.WithKeys("N"), key.WithHelp("N", "pattern numbers: two of them laid over each other")),
		New:  func() act.Pane { return New(styles) },
	}
}
