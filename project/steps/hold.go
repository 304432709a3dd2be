package steps

import (
	"cmp"
	"errors"
	"slices"
	"time"

	"chape/project/clock"
)

// HoldState is where a step's hold stands.
type HoldState uint8

// The states. A step that is done or skipped holds nothing any more.
const (
	NoHold      HoldState = iota
	HoldWaiting           // it has one that has not been started
	HoldRunning           // not to be touched yet
	HoldDue               // the wait is over, by the clock or ended early
	HoldLate              // it should have been looked at by now
	HoldUnset             // the data sheet says how long, and nobody has set it yet
)

// HasHold tells whether the step has a hold at all.
func (s Step) HasHold() bool { return s.Hold > 0 || s.Latest > 0 }

// NotBefore is the wall clock's time at which the hold is over: when it was
// ended early, that time; zero when it has not been started.
func (s Step) NotBefore() time.Time {
	if s.Started.IsZero() || !s.HasHold() {
		return time.Time{}
	}
	if !s.Ended.IsZero() {
		return s.Ended.Round(0)
	}
	return s.Started.Round(0).Add(s.Hold)
}

// LookBy is the time by which the step should be looked at; zero when there is
// none, or when the hold was ended early.
func (s Step) LookBy() time.Time {
	if s.Started.IsZero() || s.Latest <= 0 || !s.Ended.IsZero() {
		return time.Time{}
	}
	return s.Started.Round(0).Add(s.Latest)
}

// HoldState returns where the hold stands at now, by the wall clock alone: a
// clock set forward makes it due, one set back makes it run again.
func (s Step) HoldState(now time.Time) HoldState {
	now = now.Round(0)
	switch {
	case !s.open():
		return NoHold
	case !s.HasHold() && s.Sheet:
		return HoldUnset
	case !s.HasHold():
		return NoHold
	case s.Started.IsZero():
		return HoldWaiting
	case !s.Ended.IsZero():
		return HoldDue
	}
	return stateAt(now, s.NotBefore(), s.LookBy())
}

// stateAt is the one rule for a hold that was started and not ended early; lookBy is
// zero for none.
func stateAt(now, due, lookBy time.Time) HoldState {
	switch {
	case now.Before(due):
		return HoldRunning
	case !lookBy.IsZero() && !now.Before(lookBy):
		return HoldLate
	}
	return HoldDue
}

// Begun is a hold by what stays the same whatever becomes of it: a copy of the project
// tells of the same ones. Which project it is of is the Key of Hold.
type Begun struct {
	Title string // of its step
	At    int64  // when it was started, Unix seconds
}

// Begun tells which hold of the step it is.
func (s Step) Begun() Begun { return Begun{s.Title, s.Started.Unix()} }

// Begun tells which hold it is.
func (h Hold) Begun() Begun { return Begun{h.Title, h.Started.Unix()} }

// StartHold starts the hold of step i: at now, or with the tick of the step it counts
// from. One that was started already starts anew at now, and First keeps when it was
// first.
func StartHold(steps []Step, i int, now time.Time) ([]Step, error) {
	return changed(steps, i, func(s *Step) error {
		switch {
		case s.HoldState(now) == HoldUnset:
			return ErrNoTime
		case !s.HasHold():
			return errors.New("this step has no hold: give it one first")
		case !s.open():
			return errors.New("this step is done or skipped: take that back before starting its hold")
		}
		start := clock.Wall(now)
		if s.Started.IsZero() {
			start = cmp.Or(doneAt(steps, *s), start)
		} else if s.First.IsZero() {
			s.First = s.Started
		}
		s.Started, s.Ended = start, time.Time{}
		return nil
	})
}

// doneAt is when the step was ticked that the hold of s counts from; zero: it was not.
func doneAt(steps []Step, s Step) time.Time {
	for _, other := range steps {
		if s.countsFrom(other) {
			return other.Done
		}
	}
	return time.Time{}
}

// DropStart takes the start of the hold of step i back: to the first one where it was
// started anew, else it has not begun. It is refused for a hold that does not run by
// its own start.
func DropStart(steps []Step, i int) ([]Step, error) {
	return changed(steps, i, func(s *Step) error {
		if !s.StartedByHand(steps) {
			return errors.New("no hold was started here: there is nothing to take back")
		}
		s.Started, s.First, s.Ended = s.First, time.Time{}, time.Time{}
		return nil
	})
}

// StartedByHand tells whether the step is still to be done and its hold was started at
// it, not by the tick of another step of the list.
func (s Step) StartedByHand(steps []Step) bool {
	return s.open() && !s.Started.IsZero() && (!s.First.IsZero() || !s.Started.Equal(doneAt(steps, s)))
}

// EndEarly ends the running hold of step i at now and keeps that on record in
// Ended.
func EndEarly(steps []Step, i int, now time.Time) ([]Step, error) {
	return changed(steps, i, func(s *Step) error {
		if s.HoldState(now) != HoldRunning {
			return errors.New("no hold runs here: there is nothing to end")
		}
		s.Ended = clock.Wall(now)
		return nil
	})
}

// Extend puts the hold of step i off by d. While it runs, d is added to it; once it
// is due or was ended, it runs again until d from now. The window up to 'look by'
// moves along.
func Extend(steps []Step, i int, now time.Time, d time.Duration) ([]Step, error) {
	return changed(steps, i, func(s *Step) error {
		if d <= 0 {
			return errors.New("a hold is put off by more than nothing: try 15 min")
		}
		hold := s.Hold + d
		switch s.HoldState(now) {
		case NoHold, HoldWaiting:
			return errors.New("no hold runs here: start it first")
		case HoldDue, HoldLate:
			hold = clock.Wall(now).Sub(s.Started) + d
			s.Ended = time.Time{}
		}
		latest := s.Latest
		if latest > 0 {
			latest += hold - s.Hold
		}
		if err := clock.CheckWindow(hold, latest); err != nil {
			return err
		}
		s.Hold, s.Latest = hold, latest
		return nil
	})
}

// SetHold gives step i other hold times: not before hold, look at it by latest,
// both from the start; 0 for none, also where the data sheet was to say.
func SetHold(steps []Step, i int, hold, latest time.Duration) ([]Step, error) {
	return changed(steps, i, func(s *Step) error {
		if err := clock.CheckWindow(hold, latest); err != nil {
			return err
		}
		s.Hold, s.Latest = hold.Round(time.Second), latest.Round(time.Second)
		if !s.HasHold() {
			s.Started, s.First, s.Ended, s.Sheet = time.Time{}, time.Time{}, time.Time{}, false
		}
		return nil
	})
}

// Hold is one that has been started and not ticked yet, of any project.
type Hold struct {
	Project string // its name, as the caller shows it
	Key     string // what the caller knows it by whatever its name, such as its file's path; "": the name
	PutAway bool   // it is off the shelf: its holds come last
	Step    int    // its place in the project's list
	Title   string
	Short   string
	Started time.Time
	Due     time.Time // not before
	LookBy  time.Time // zero: none
}

// Holds lists the holds of a project's steps that run or are waiting to be looked at. Those
// ended early are over and not among them.
func Holds(list []Step, name string) []Hold {
	var out []Hold
	for i, s := range list {
		if !s.open() || s.Started.IsZero() || !s.Ended.IsZero() || !s.HasHold() {
			continue
		}
		out = append(out, Hold{
			Project: name, Step: i, Title: s.Title, Short: s.ShortName(),
			Started: s.Started.Round(0), Due: s.NotBefore(), LookBy: s.LookBy(),
		})
	}
	return out
}

// key is what tells the hold's project from others.
func (h Hold) key() string { return cmp.Or(h.Key, h.Project) }

// State returns where the hold stands at now.
func (h Hold) State(now time.Time) HoldState { return stateAt(now.Round(0), h.Due, h.LookBy) }

// attention orders holds by what needs it: the one due first comes first, so those due
// already lead; those put away come last.
func attention(a, b Hold) int {
	if a.PutAway != b.PutAway {
		if b.PutAway {
			return -1
		}
		return 1
	}
	return cmp.Or(a.Due.Compare(b.Due), cmp.Compare(a.Project, b.Project), cmp.Compare(a.Step, b.Step))
}

// SortHolds sorts in place by what needs attention: the one due first comes
// first, so those due already lead; those of projects put away come last.
func SortHolds(holds []Hold) { slices.SortStableFunc(holds, attention) }

// Nearest returns the hold that falls due next after now. Where none runs any more it
// returns the one that has been due the longest. Those put away count only where there
// is no other. Ok is false for no holds.
func Nearest(holds []Hold, now time.Time) (h Hold, ok bool) {
	after := func(a, b Hold) bool { // whether b is nearer than a
		if a.PutAway == b.PutAway {
			if runs := b.State(now) == HoldRunning; runs != (a.State(now) == HoldRunning) {
				return runs
			}
		}
		return attention(b, a) < 0
	}
	for i, other := range holds {
		if i == 0 || after(h, other) {
			h, ok = other, true
		}
	}
	return h, ok
}
