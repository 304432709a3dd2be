package alarm

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"chape/project/clock"
	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/term"
)

// patience is how long what fell due before the start waits for the files of the
// shelf, so that all of it is told in one go.
const patience = 5 * time.Second

// tellMissed tells what fell due before the program was started: of the project in hand
// at once, the rest in one go when every file of the shelf has been read. The user's own
// command is not called for it: it is for people who are not at the screen.
func (a *Alarm) tellMissed(now time.Time) []act.Msg {
	waited := now.Sub(a.began)
	reading := a.o.Shelf != nil && !a.read && 0 <= waited && waited < patience
	if len(a.missed) == 0 {
		return nil
	}
	if reading {
		isOwn := func(e steps.Event) bool { return e.Hold.Key == a.key }
		for _, e := range a.missed {
			if isOwn(e) {
				a.told = append(a.told, e)
			}
		}
		if a.missed = slices.DeleteFunc(a.missed, isOwn); len(a.told) == 0 || a.Ringing() {
			return nil
		}
		return a.tell(a.told, now)
	}
	events := a.missed
	if a.Ringing() { // what was said at once has not been read yet
		events = slices.Concat(a.told, events)
	}
	a.missed, a.told = nil, nil
	return a.tell(events, now)
}

// tell says what fell due before the start.
func (a *Alarm) tell(events []steps.Event, now time.Time) []act.Msg {
	late := slices.ContainsFunc(events, func(e steps.Event) bool { return e.Kind == steps.GoesLate })
	// A hold that is late was due before: once is enough.
	events = slices.DeleteFunc(slices.Clone(events), func(e steps.Event) bool {
		return e.Kind == steps.FallsDue && slices.ContainsFunc(events, func(other steps.Event) bool {
			return other.Kind == steps.GoesLate && other.Hold == e.Hold
		})
	})
	if len(events) == 1 {
		return a.ring(eventText(events[0], a.key, now), nil, late, now)
	}
	slices.SortStableFunc(events, func(a, b steps.Event) int { return b.At.Compare(a.At) })
	var said, list []string
	for _, e := range events {
		at := clock.Time(e.At, now)
		said = append(said, name(e.Hold, a.key)+" "+at)
		what := "due since " + at
		if e.Kind == steps.GoesLate {
			what = "look at it, it was due by " + at
		}
		project := e.Hold.Project
		if e.Hold.Key == a.key {
			project = a.own.Title
		}
		list = append(list, fmt.Sprintf("%s: %s", term.Plain(project+" "+e.Hold.Short), what))
	}
	return a.ring("fell due meanwhile: "+strings.Join(said, ", "), list, late, now)
}

// eventText says what has fallen due, and when if nobody was watching. The own
// project is not named.
func eventText(e steps.Event, own string, now time.Time) string {
	what := name(e.Hold, own)
	switch {
	case e.Kind == steps.GoesLate:
		return fmt.Sprintf("%s: look at it, it was due by %s", what, clock.Time(e.At, now))
	case e.Meanwhile:
		return fmt.Sprintf("%s fell due meanwhile, at %s", what, clock.Time(e.At, now))
	}
	return fmt.Sprintf("%s is due, %s", what, clock.Time(e.At, now))
}

// name is the hold's step and, of another project, that one's title before it.
func name(h steps.Hold, own string) string {
	what := h.Short
	if h.Key != own {
		what = h.Project + " " + what
	}
	return term.Plain(what)
}

// Over is lines with the small box over the first of them that lists what fell due before
// the start, where that is more than one and not silenced yet.
func (a *Alarm) Over(lines []string, w int, edges layout.Edges) []string {
	list, room := a.list, len(lines)-2 // for the frame
	if len(list) == 0 || room < 1 {
		return lines
	}
	if more := len(list) - room; more > 0 {
		list = append(slices.Clone(list[:room-1]), fmt.Sprintf("and %d more", more+1))
	}
	box := layout.Frame(w, len(list)+2, "Fell due meanwhile: any key closes this", true, list, edges)
	return append(box, lines[len(box):]...)
}
