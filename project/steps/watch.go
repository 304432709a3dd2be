package steps

import (
	"maps"
	"slices"
	"time"
)

// EventKind is what became of a hold.
type EventKind uint8

// The events.
const (
	FallsDue EventKind = iota // its 'not before' is reached
	GoesLate                  // its 'look by' is reached
)

// Event is a hold that has just reached one of its two times.
type Event struct {
	Hold      Hold
	Kind      EventKind
	At        time.Time // the time it reached, by the wall clock
	Meanwhile bool      // nobody was watching when it did: say at what time it was
}

// leap is the gap between two looks at the clock from which on the program was
// closed, the machine asleep, or the clock set. Looks come once a second.
const leap = time.Minute

// keepSeen is how long an event stays known after its hold is gone, so that a tick
// taken back does not announce it again.
const keepSeen = 24 * time.Hour

// Watch tells once about each hold that falls due, whatever the clock does.
// The zero value is ready; the first look reports everything that is due by then.
//
// A time is known by its project's key, the start of the hold and itself, so that a
// renamed project, a renamed or moved step is not announced again and an extended hold
// is. When the clock is set
// back over an announced time, it is announced again only if nobody saw
// the clock reach it (it was passed in a leap): then it was the leap that was wrong.
type Watch struct {
	seen  map[seenKey]seenMark
	last  time.Time
	began time.Time
}

// Began tells when the watch began, by the wall clock. What was reached before that is
// told as Meanwhile, however late its hold comes to be known: the files of a large
// shelf take more than one look.
func (w *Watch) Began(t time.Time) { w.began = t.Round(0) }

// Moved tells that the project known by one key is known by another from now on, as
// when it gets its first file: nothing of it is announced again for that.
func (w *Watch) Moved(from, to string) {
	for key, mark := range w.seen {
		if key.project == from {
			delete(w.seen, key)
			key.project = to
			w.seen[key] = mark
		}
	}
}

type seenKey struct {
	project     string
	started, at int64 // instants, whatever their zone
	kind        EventKind
	twin        int // from 1: several holds with the same times in one project
}

type seenMark struct {
	at    time.Time
	leapt bool // nobody saw the clock reach it
}

// Observe compares the holds with the clock and returns what happened, in
// the order of the times reached.
func (w *Watch) Observe(holds []Hold, now time.Time) []Event {
	now = now.Round(0)
	if w.seen == nil {
		w.seen = map[seenKey]seenMark{}
	}
	first := w.last.IsZero()
	leapt := first || now.Sub(w.last) >= leap
	if now.Before(w.began) { // the clock was set back: from here on it is watched again
		w.began = now
	}
	w.rearm(now)

	var events []Event
	twins := map[seenKey]int{}
	note := func(h Hold, kind EventKind, at time.Time) {
		key := seenKey{project: h.key(), started: h.Started.Unix(), at: at.Unix(), kind: kind}
		twins[key]++
		key.twin = twins[key]
		if _, known := w.seen[key]; known || at.IsZero() || now.Before(at) {
			return
		}
		unseen := leapt || at.Before(w.began)
		w.seen[key] = seenMark{at, unseen}
		events = append(events, Event{h, kind, at, unseen && now.Sub(at) >= time.Second})
	}
	for _, h := range holds {
		if h.Due.After(h.Started) { // else it has a 'look by' only
			note(h, FallsDue, h.Due)
		}
		note(h, GoesLate, h.LookBy)
	}
	maps.DeleteFunc(w.seen, func(k seenKey, m seenMark) bool {
		twin := k.twin
		k.twin = 0
		return twins[k] < twin && now.Sub(m.at) > keepSeen
	})
	w.last = now
	slices.SortStableFunc(events, func(a, b Event) int { return a.At.Compare(b.At) })
	return events
}

// rearm forgets what was announced in a leap and has not been reached after all.
func (w *Watch) rearm(now time.Time) {
	maps.DeleteFunc(w.seen, func(_ seenKey, m seenMark) bool {
		return m.leapt && now.Before(m.at)
	})
}
