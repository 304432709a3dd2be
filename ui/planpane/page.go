package planpane

import (
	"chape/ui/act"
	"chape/ui/term/ink"
)

// AsPage is what the root has to know of it.
func AsPage(styles ink.Styles) act.Page {
	return act.Page{Name: "Plan", Room: act.InPlan, Root: act.AllKeys, New: func() act.Pane { return New(styles) }}
}
