package workbench

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"chape/project/clock"
	"chape/project/steps"
	"chape/ui/layout"
	"chape/ui/term"
)

// patience is how long what fell due before the start waits for the files of the
// shelf, so that all of it is told in one go.
const patience = 5 * time.Second

// tellMissed tells what fell due before the program was started, in one go: when
// every file of the shelf has been read, and the font is known. The user's own command
// is not called for it: it is for people who are not at the screen.
func (m *Model) tellMissed(now time.Time) {
	waited := now.Sub(m.began)
	waits := m.o.Shelf != nil && !m.read && 0 <= waited && waited < patience
	if len(m.missed) == 0 || m.asking() || waits {
		return
	}
	events := m.missed
	m.missed = nil
	// A hold that is late was due before: once is enough.
	events = slices.DeleteFunc(events, func(e steps.Event) bool {
		return e.Kind == steps.FallsDue && slices.ContainsFunc(events, func(other steps.Event) bool {
			return other.Kind == steps.GoesLate && other.Hold == e.Hold
		})
	})
	own := m.pathKey()
	if len(events) == 1 {
		m.ring(alarm{text: eventText(events[0], own, now)}, now)
		return
	}
	slices.SortStableFunc(events, func(a, b steps.Event) int { return b.At.Compare(a.At) })
	var said, list []string
	for _, e := range events {
		at := clock.Time(e.At, now)
		said = append(said, eventName(e, own)+" "+at)
		what := "due since " + at
		if e.Kind == steps.GoesLate {
			what = "look at it, it was due by " + at
		}
		list = append(list, fmt.Sprintf("%s: %s", term.Plain(e.Hold.Project+" "+e.Hold.Short), what))
	}
	m.ring(alarm{text: "fell due meanwhile: " + strings.Join(said, ", "), list: list}, now)
}

// missedView is the small box that lists what fell due before the start, over the
// first lines of what stands there.
func (m *Model) missedView(lines []string) []string {
	list := m.alarm.list
	room := len(lines) - 2 // for the frame
	if room < 1 {
		return lines
	}
	if more := len(list) - room; more > 0 {
		list = append(slices.Clone(list[:room-1]), fmt.Sprintf("and %d more", more+1))
	}
	box := layout.Frame(m.width, len(list)+2, "Fell due meanwhile: any key closes this", true, list, m.edges())
	return append(box, lines[len(box):]...)
}
