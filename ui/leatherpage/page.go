package leatherpage

import (
	"github.com/charmbracelet/bubbles/key"

	"chape/ui/act"
)

// Name is what the page is called where another leads to it.
const Name = "Leather"

// AsPage is what the root has to know of it.
func AsPage(o Options) act.Page {
	return act.Page{
		Name: Name, Room: act.Whole, Root: act.Saving,
		Open: key.NewBinding(key.WithKeys("R"), key.WithHelp("R", "the rack: leather, how the parts lie on it, how a hide bends")),
		New:  func() act.Pane { return New(o) },
	}
}
