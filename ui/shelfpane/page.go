package shelfpane

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
		Name: "Shelf", Title: "Shelf: " + o.Shelf.Dir(), Room: act.Whole, Brief: "shelf", Lasts: true,
		Open: key.NewBinding(key.WithKeys("o"), key.WithHelp("o", "the shelf: open another project, begin one")),
		New:  func() act.Pane { return New(o) },
	}
}
