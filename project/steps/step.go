// Package steps is the checklist at the bench: its steps, the holds that may not be cut
// short, and the watch that tells when one falls due. Holds are times by the wall clock;
// nothing here reads it: the time is passed in.
package steps

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"chape/project/clock"
)

// MaxShort is how many letters a step's short name may have: what the bench
// view draws large in a window of 60 columns.
const MaxShort = 9

// LongestTitle is how many letters a step's title may have.
const LongestTitle = 200

// Most is how many steps a checklist may have.
const Most = 200

// Drying is the short name of the step in which the sheath dries.
const Drying = "DRY"

// WeighAgain is the title of the step whose hold rings when the sheath is to be weighed
// again; it is of one drying, and of no other knife.
const WeighAgain = "Weigh the sheath again, the knife out"

// Step is one line of the checklist. A hold is kept as due times by the wall
// clock: Started plus Hold, Started plus Latest.
type Step struct {
	Title   string
	Short   string        // at most 9 letters, for the bench view
	Caution string        // shown with the step that needs it
	Note    string        // the maker's own
	Hold    time.Duration // not before; 0: none
	Latest  time.Duration // look at it by then; 0: none
	From    string        // short name of the step whose tick starts the hold; "": it is started by hand
	Sheet   bool          // how long is for the product's data sheet to say: no tick before it is set
	Started time.Time     // when the hold was started; zero: not yet
	First   time.Time     // when it was started first, where it was started anew; zero: once only
	Ended   time.Time     // when the hold was ended early; zero: it was not
	Done    time.Time     // when it was ticked; zero: not yet
	Skipped bool
	Expect  time.Duration // work at the bench, as expected
	Spent   time.Duration // and as it was
}

// The functions on steps take the list and return a new one. The list given is
// never changed, nor shared with the one returned: earlier states are kept for
// undo. An index that is not in the list is refused with an error, so that a
// key pressed while the list was being changed does no harm.

// Current returns the index of the step in hand: the first that is neither
// done nor skipped. It returns -1 when there is none.
func Current(steps []Step) int {
	return slices.IndexFunc(steps, Step.open)
}

// Next returns the index of the step after the one in hand, or -1.
func Next(steps []Step) int {
	at := Current(steps)
	if at < 0 {
		return -1
	}
	after := slices.IndexFunc(steps[at+1:], Step.open)
	if after < 0 {
		return -1
	}
	return at + 1 + after
}

// open tells whether the step is still to be done.
func (s Step) open() bool { return s.Done.IsZero() && !s.Skipped }

// Tick marks step i as done at now, and starts the holds that count from it. It is
// refused while the step's hold runs, and with ErrNoTime while the data sheet's time is
// not set. A step that was skipped and is ticked after all is no longer skipped; one
// that is done already keeps its time.
func Tick(steps []Step, i int, now time.Time) ([]Step, error) {
	out, err := changed(steps, i, func(s *Step) error {
		switch s.HoldState(now) {
		case HoldRunning:
			return NotYetError{s.NotBefore(), now}
		case HoldUnset:
			return ErrNoTime
		}
		if s.Done.IsZero() {
			s.Done = clock.Wall(now)
		}
		s.Skipped = false
		return nil
	})
	if err == nil {
		startFrom(out, out[i])
	}
	return out, err
}

// startFrom starts the holds that count from the tick of a step, where they were not
// started already.
func startFrom(steps []Step, ticked Step) {
	for i := range steps {
		if s := &steps[i]; s.countsFrom(ticked) && s.Started.IsZero() && s.HasHold() && s.open() {
			s.Started = ticked.Done
		}
	}
}

// countsFrom tells whether the hold of s counts from the tick of another step.
func (s Step) countsFrom(other Step) bool { return s.From != "" && s.From == other.Short }

// ErrNoTime says that a hold's length is for the data sheet to say, and not set yet.
var ErrNoTime = errors.New("the data sheet says how long this has to wait: set the time in Steps (d), 0 for none")

// NotYetError says that a hold still runs.
type NotYetError struct {
	Until time.Time
	Now   time.Time // its location is the one the time is said in
}

func (e NotYetError) Error() string { return "not before " + clock.Time(e.Until, e.Now) }

// LastTick returns the index of the step ticked last, by the time it was
// ticked and, in the same second, by its place; -1 when none is done.
func LastTick(steps []Step) int {
	last := -1
	for i, s := range steps {
		if !s.Done.IsZero() && (last < 0 || !s.Done.Before(steps[last].Done)) {
			last = i
		}
	}
	return last
}

// Untick takes the tick of step i back. Its hold stays as it was: unticking
// loses no time that has passed. Holds that the tick had started have not begun.
func Untick(steps []Step, i int) ([]Step, error) {
	var ticked Step
	out, err := changed(steps, i, func(s *Step) error {
		ticked = *s
		s.Done = time.Time{}
		return nil
	})
	if err != nil {
		return nil, err
	}
	for i := range out {
		if s := &out[i]; s.countsFrom(ticked) && s.open() && s.Started.Equal(ticked.Done) {
			s.Started, s.Ended = time.Time{}, time.Time{}
		}
	}
	return out, nil
}

// Skip leaves step i out, or takes it in again. A step that is done is not
// skipped: its tick has to be taken back first.
func Skip(steps []Step, i int, skip bool) ([]Step, error) {
	return changed(steps, i, func(s *Step) error {
		if skip && !s.Done.IsZero() {
			return errors.New("this step is done: take its tick back before skipping it")
		}
		s.Skipped = skip
		return nil
	})
}

// AddSpent adds d to the minutes spent on step i; they stop at 0 and at MaxSpent, more than
// which no file takes.
func AddSpent(steps []Step, i int, d time.Duration) ([]Step, error) {
	return changed(steps, i, func(s *Step) error {
		s.Spent = min(MaxSpent, max(0, s.Spent+d)).Round(time.Second)
		return nil
	})
}

// LeastSpent is the shortest work on a step that counts as such: less is a look at the bench,
// or a tick made up for (common practice, no source).
const LeastSpent = 30 * time.Second

// AddWorked is AddSpent for work that the bench has counted: where step i is done by now and
// all of it comes to less than LeastSpent it leaves nothing.
func AddWorked(steps []Step, i int, d time.Duration) ([]Step, error) {
	if i >= 0 && i < len(steps) && !steps[i].Done.IsZero() && steps[i].Spent+d < LeastSpent {
		d = -steps[i].Spent
	}
	return AddSpent(steps, i, d)
}

// SetSpent corrects the minutes spent on step i.
func SetSpent(steps []Step, i int, d time.Duration) ([]Step, error) {
	return changed(steps, i, func(s *Step) error {
		if d < 0 || d > MaxSpent {
			return fmt.Errorf("%v spent will not do: give 0 to %d h", d, int(MaxSpent.Hours()))
		}
		s.Spent = d.Round(time.Second)
		return nil
	})
}

// MaxSpent bounds the minutes of one step; more is a slip of the keys.
const MaxSpent = 1000 * time.Hour

// SetExpected says how long step i is expected to take at the bench.
func SetExpected(steps []Step, i int, d time.Duration) ([]Step, error) {
	return changed(steps, i, func(s *Step) error {
		if d < 0 || d > MaxSpent {
			return fmt.Errorf("%v expected will not do: give 0 to %d h", d, int(MaxSpent.Hours()))
		}
		s.Expect = d.Round(time.Second)
		return nil
	})
}

// TotalSpent sums the minutes of all steps, what the price needs.
func TotalSpent(steps []Step) time.Duration {
	var sum time.Duration
	for _, s := range steps {
		sum += s.Spent
	}
	return sum
}

// TotalExpected sums the minutes that the steps are expected to take, those left out
// not counted.
func TotalExpected(steps []Step) time.Duration {
	var sum time.Duration
	for _, s := range steps {
		if !s.Skipped {
			sum += s.Expect
		}
	}
	return sum
}

// changed copies the list and lets do change step i of the copy.
func changed(steps []Step, i int, do func(*Step) error) ([]Step, error) {
	if i < 0 || i >= len(steps) {
		return nil, errNoStep
	}
	out := slices.Clone(steps)
	if err := do(&out[i]); err != nil {
		return nil, err
	}
	return out, nil
}

var errNoStep = errors.New("there is no such step any more: choose one from the list")
