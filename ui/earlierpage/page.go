package earlierpage

import (
	"github.com/charmbracelet/bubbles/key"

	"chape/project/shelf"
	"chape/ui/act"
	"chape/ui/term/ink"
	"chape/ui/tracing"
)

// AsPage is what the root has to know of it; set gives the settings for photographs, the
// shelf has the knives that an earlier sheath may have been made for; nil: there is none.
func AsPage(set func() tracing.Settings, styles ink.Styles, s *shelf.Shelf) act.Page {
	return act.Page{
		Name: "Earlier sheath", Room: act.Whole, Root: act.AllKeys &^ act.Turn,
		Open: key.NewBinding(key.WithKeys("E"), key.WithHelp("E", "an earlier sheath as the measure: its half-widths against the plan")),
		New: func() act.Pane {
			m := New(styles)
			m.settings, m.shelf = set, s
			return m
		},
	}
}
