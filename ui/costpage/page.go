package costpage

import (
	"github.com/charmbracelet/bubbles/key"

	"chape/ui/act"
)

// AsPage is what the root has to know of it.
func AsPage(o Options) act.Page {
	return act.Page{
		Name: "Cost", Title: "Cost and quotes", Room: act.Whole, Root: act.Changes | act.Saving | act.Openers, Ticks: true,
		Open: key.NewBinding(key.WithKeys("C"), key.WithHelp("C", "cost, quotes, when it can be ready")),
		New:  func() act.Pane { return New(o) },
	}
}
