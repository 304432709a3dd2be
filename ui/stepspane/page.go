package stepspane

import (
	"time"

	"chape/ui/act"
	"chape/ui/term/ink"
)

// AsPage is what the root has to know of it.
func AsPage(clock func() time.Time, styles ink.Styles) act.Page {
	return act.Page{Name: "Steps", Room: act.InSteps, Root: act.AllKeys, Ticks: true, New: func() act.Pane { return New(clock, styles) }}
}
