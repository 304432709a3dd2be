package trialpage

import (
	"github.com/charmbracelet/bubbles/key"

	"chape/project/shelf"
	"chape/ui/act"
	"chape/ui/term/ink"
)

// Name is what the page is called where another leads to it.
const Name = "Trial fit"

// AsPage is what the root has to know of it. The shelf is where experience comes from; nil:
// there is none.
func AsPage(styles ink.Styles, s *shelf.Shelf) act.Page {
	return act.Page{
		Name: Name, Room: act.Whole, Root: act.AllKeys &^ act.Turn,
		Open: key.NewBinding(key.WithKeys("T"), key.WithHelp("T", "trial fit: where it was tight or loose, and what that changes")),
		New:  func() act.Pane { return New(styles, s) },
	}
}
