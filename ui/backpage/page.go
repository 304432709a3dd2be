package backpage

import (
	"github.com/charmbracelet/bubbles/key"

	"chape/ui/act"
)

// AsPage is what the root has to know of it; without a shelf there is no such page.
func AsPage(o Options) act.Page {
	if o.Shelf == nil {
		return act.Page{}
	}
	return act.Page{
		Name: "A look back", Room: act.Whole, Lasts: true,
		Open: key.NewBinding(key.WithKeys("B"), key.WithHelp("B", "a look back over the shelf: hours, leather, quotes")),
		New:  func() act.Pane { return New(o) },
	}
}
