package lookpage

import (
	"github.com/charmbracelet/bubbles/key"

	"chape/ui/act"
	"chape/ui/term/ink"
)

// AsPage is what the root has to know of it.
func AsPage(styles ink.Styles) act.Page {
	return act.Page{
		Name: "Look", Title: "How drawings look", Room: act.Whole,
		Open: key.NewBinding(key.WithKeys("D"), key.WithHelp("D", "how drawings look: of dots, blocks, plain characters")),
		New:  func() act.Pane { return New(styles) },
	}
}
