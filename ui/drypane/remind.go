package drypane

import (
	"slices"
	"time"

	"chape/project/clock"
	"chape/project/steps"
)

// The step whose hold rings when the sheath is to be weighed again. Its short name
// is how it is known again.
const (
	againTitle = steps.WeighAgain
	againShort = "WEIGH"
)

// reminder is the place of that step while it is still to be done, or -1.
func reminder(list []steps.Step) int {
	return slices.IndexFunc(list, func(s steps.Step) bool {
		return s.Title == againTitle && s.Done.IsZero() && !s.Skipped
	})
}

// remind starts a hold that falls due at a time: that of the step that is there
// for it, or of a new one ahead of the step in hand.
func remind(list []steps.Step, due, now time.Time) ([]steps.Step, error) {
	hold := due.Sub(clock.Wall(now)).Round(time.Minute)
	if i := reminder(list); i >= 0 {
		list, err := steps.SetHold(list, i, hold, 0)
		if err != nil {
			return nil, err
		}
		return steps.StartHold(list, i, now)
	}
	before := steps.Current(list)
	if before < 0 {
		before = len(list)
	}
	return steps.Add(list, before-1, steps.Step{Title: againTitle, Short: againShort, Hold: hold, Started: clock.Wall(now)})
}

// reminded ticks that step, for it has been weighed; a hold that still runs is
// over with it.
func reminded(list []steps.Step, now time.Time) ([]steps.Step, error) {
	i := reminder(list)
	if i < 0 || list[i].Started.IsZero() {
		return list, nil
	}
	if list[i].HoldState(now) == steps.HoldRunning {
		var err error
		if list, err = steps.EndEarly(list, i, now); err != nil {
			return nil, err
		}
	}
	return steps.Tick(list, i, now)
}
