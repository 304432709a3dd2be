package bench

import (
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/steps"
	"chape/ui/part"
)

// reader is what workbench rules make of events, written a second time: it keeps what happened and,
// for each new event, looks back at it, where the bench view carries a state on.
type reader struct {
	keys   part.Reading // which has its own table
	past   []past
	did    past    // the last press that did something
	later  pending // the one that waits for what follows it
	steps  []steps.Step
	aim    steps.Begun // the hold that stood large when h was pressed
	passed time.Duration
	waited int
}

type past struct {
	at    time.Time
	name  string
	press string // "on", "back" or "any" when it counted as one
}

// pending is a press that is done when the timers come to a time, and none before.
type pending struct {
	past
	do  func(time.Time)
	due time.Duration
}

// wait has time pass by the timers' clock, as many as it is by the wall's, where that is not set back.
func (r *reader) wait(now time.Time, d time.Duration) {
	if p := r.later; d > 0 && p.do != nil && p.due <= r.passed+d {
		r.later = pending{}
		if rings := now.Add(p.due - r.passed); rings.Sub(p.at) >= 600*time.Millisecond {
			p.do(p.at)
			r.did, r.waited = past{at: rings, name: p.name}, r.waited+1
		}
	}
	r.passed += max(d, 0)
}

// sames are the names of one key.
func sames(a, b string) bool {
	enter := func(s string) string { return strings.Replace(s, "LF", "CR", 1) }
	return a == "silence" || enter(a) == enter(b)
}

// press does what a key is for, now or, where the same did something less than three seconds ago,
// when nothing has followed.
func (r *reader) press(note *past, kind string, do func(time.Time)) {
	note.press = kind
	if r.did.name != "" && sames(r.did.name, note.name) && !note.at.Before(r.did.at) && note.at.Sub(r.did.at) <= 3*time.Second {
		r.later = pending{*note, do, r.passed + 600*time.Millisecond}
		return
	}
	do(note.at)
	r.did = *note
}

// key is the key of an event; none where it is no key.
func (e event) key() tea.KeyMsg {
	k, ok := e.msg.(tea.KeyMsg)
	if !ok {
		return tea.KeyMsg{Type: tea.KeyF20}
	}
	return k
}

// apart gives the time between, endless where the clock ran backwards.
func apart(from, to time.Time) time.Duration {
	if to.Before(from) {
		return 1 << 60
	}
	return to.Sub(from)
}

// pressed gives the last press that counted in the run of keys up to now that no pause of a second
// has broken.
func (r *reader) pressed(now time.Time) string {
	for i := len(r.past) - 1; i >= 0; i-- {
		if apart(r.past[i].at, now) >= time.Second {
			return ""
		}
		if r.past[i].press != "" {
			return r.past[i].press
		}
		now = r.past[i].at
	}
	return ""
}

func (r *reader) read(e event) {
	if e.name == "elsewhere" {
		return
	}
	hand := r.keys.Take(e.key(), e.at)
	if hand.Echo {
		return
	}
	note := past{at: e.at, name: e.name}
	busy := r.pressed(e.at)
	waiting := r.later.do != nil
	r.later = pending{}
	reading := hand.Near
	switch e.name {
	case "silence":
		note.press = "any"
		r.did = note
	case "back":
		switch {
		case busy == "back" || busy == "any":
		case waiting:
			note.press = "back"
			r.did = note
		default:
			r.press(&note, "back", func(time.Time) { r.takeBack() })
		}
	case "h":
		if reading || !hand.Command() {
			note.name = "character" // of a reading
			break
		}
		r.aim = steps.Begun{}
		if s := r.large(e.at); s != nil {
			r.aim = s.Begun()
		}
	case "CR", "LF":
		n := len(r.past)
		afterH := n > 0 && r.past[n-1].name == "h"
		switch {
		case busy != "":
		case afterH && apart(r.past[n-1].at, e.at) <= 3*time.Second:
			r.press(&note, "on", r.end)
		case afterH && !reading:
			r.press(&note, "on", func(time.Time) {}) // too late
		case !reading:
			r.press(&note, "on", r.goOn)
		}
	case "space", "touch":
		if busy == "" && (e.name == "touch" || !reading) {
			r.press(&note, "on", r.goOn)
		}
	}
	r.past = append(r.past, note)
	if len(r.past) > 4000 {
		r.past = append([]past(nil), r.past[2000:]...)
	}
}

// inHand is the first step not done.
func (r *reader) inHand() *steps.Step {
	for i := range r.steps {
		if r.steps[i].Done.IsZero() {
			return &r.steps[i]
		}
	}
	return nil
}

func seconds(t time.Time) time.Time { return time.Unix(t.Unix(), 0).In(t.Location()) }

func running(s *steps.Step, now time.Time) bool {
	return s.Hold > 0 && !s.Started.IsZero() && s.Ended.IsZero() && now.Sub(s.Started) < s.Hold
}

// tickOf is when the step was ticked that the hold of s counts from; zero: none.
func (r *reader) tickOf(s *steps.Step) (at time.Time) {
	for _, other := range r.steps {
		if s.From != "" && other.Short == s.From {
			at = other.Done
		}
	}
	return at
}

func (r *reader) goOn(now time.Time) {
	switch s := r.inHand(); {
	case s == nil:
	case s.Sheet && s.Hold == 0: // its time is not set
	case s.Hold > 0 && s.Started.IsZero():
		if s.Started = r.tickOf(s); s.Started.IsZero() {
			s.Started = seconds(now)
		}
	case !running(s, now):
		s.Done = seconds(now)
		for i := range r.steps {
			if f := &r.steps[i]; f.From == s.Short && f.Started.IsZero() && f.Done.IsZero() {
				f.Started = s.Done
			}
		}
	}
}

// large is the step whose hold runs and stands large; nil: none.
func (r *reader) large(now time.Time) (found *steps.Step) {
	over := func(s *steps.Step) time.Time { return s.Started.Add(s.Hold) }
	if s := r.inHand(); s != nil && !s.Started.IsZero() && s.Ended.IsZero() && (s.Hold > 0 || s.Latest > 0) {
		if running(s, now) {
			return s
		}
		return nil
	}
	for i := range r.steps {
		if s := &r.steps[i]; s.Done.IsZero() && running(s, now) && (found == nil || over(s).Before(over(found))) {
			found = s
		}
	}
	return found
}

func (r *reader) end(now time.Time) {
	if s := r.large(now); s != nil && s.Begun() == r.aim {
		s.Ended = seconds(now)
	}
}

func (r *reader) takeBack() {
	if s := r.inHand(); s != nil && !s.Started.IsZero() && (!s.First.IsZero() || !s.Started.Equal(r.tickOf(s))) {
		s.Started, s.First, s.Ended = s.First, time.Time{}, time.Time{}
		return
	}
	var latest *steps.Step
	for i := range r.steps {
		s := &r.steps[i]
		if !s.Done.IsZero() && (latest == nil || !s.Done.Before(latest.Done)) {
			latest = s
		}
	}
	if latest == nil {
		return
	}
	for i := range r.steps {
		if s := &r.steps[i]; s.From == latest.Short && s.Done.IsZero() && s.Started.Equal(latest.Done) {
			s.Started, s.Ended = time.Time{}, time.Time{}
		}
	}
	latest.Done = time.Time{}
}
