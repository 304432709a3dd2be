package shop

import (
	"fmt"
	"strings"
	"time"

	"chape/calc/calendar"
	"chape/project/plain"
	"chape/project/steps"
)

// Ready is when a sheath can be ready, in words.
type Ready struct {
	Text  string // "" where there is nothing left to do
	Lacks string // what was not counted, so that it is later: waits not set, minutes not known
	Short bool   // later than the day promised
}

// Ready says when what is open can be done, if nothing else comes first, and how that
// lies to the day promised (UTC midnight; zero: none).
func (s Shop) Ready(o steps.Open, promised, now time.Time) Ready {
	return s.ready(o, promised, now, queued{})
}

// ready is Ready after what others have of the bench.
func (s Shop) ready(o steps.Open, promised, now time.Time, before queued) Ready {
	if len(o.Jobs) == 0 {
		return Ready{}
	}
	switch {
	case s.Broken != "":
		return Ready{Text: "when it can be ready is not known: " + s.Broken}
	case !s.Week.Any():
		return Ready{Text: "when it can be ready: give the hours at the bench in your settings, [shop] hours"}
	}
	r, ok := o.Earliest(now, calendar.Shop{Week: s.Week, Taken: before.taken})
	if !ok {
		return Ready{Text: "not ready within five years of these hours at the bench"}
	}
	out := Ready{Text: "at the earliest " + clockDay(r.At, now), Lacks: lacks(o)}
	if before.n > 0 {
		out.Text += fmt.Sprintf(", after %d promised earlier", before.n)
	}
	if promised.IsZero() {
		return out
	}
	spare := r.Spare(calendar.DayOf(promised))
	out.Short = spare < 0
	out.Text += fmt.Sprintf("; promised %s: %s", day(promised, now), spareText(spare))
	return out
}

func spareText(days int) string {
	switch {
	case days == 0:
		return "no day to spare"
	case days < 0:
		return plain.Many(-days, "day") + " short"
	}
	return plain.Many(days, "day") + " to spare"
}

// lacks says what the reckoning could not count.
func lacks(o steps.Open) string {
	var l []string
	if o.Unset > 0 {
		l = append(l, plain.Many(o.Unset, "wait")+" by data sheet not set")
	}
	if o.Bare > 0 {
		l = append(l, plain.Many(o.Bare, "step")+" without minutes")
	}
	if len(l) == 0 {
		return ""
	}
	return "not counted, so later: " + strings.Join(l, ", ")
}

// clockDay is "Thu 3 Dec 17:00".
func clockDay(t, now time.Time) string {
	if t.Year() != now.Year() {
		return t.Format("Mon 2 Jan 2006 15:04")
	}
	return t.Format("Mon 2 Jan 15:04")
}

// day is "18 Dec".
func day(t, now time.Time) string {
	if t.Year() != now.Year() {
		return t.Format("2 Jan 2006")
	}
	return t.Format("2 Jan")
}
