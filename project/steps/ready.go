package steps

import (
	"time"

	"chape/calc/calendar"
)

// Ready is when a checklist can be done at the earliest.
type Ready struct {
	calendar.Finish
	Steps []int // the places in the list that the Finish's Ends belong to: those still to be done
	Unset int   // waits that nobody has set yet; they count as none
	Bare  int   // steps without expected minutes; they count as none
}

// EarliestReady reckons the steps still to be done, one after another, from now on
// in the shop's hours. A step that has taken longer than expected counts no more
// minutes. ok is false where there is no time at the bench.
func EarliestReady(list []Step, now time.Time, shop calendar.Shop) (r Ready, ok bool) {
	var jobs []calendar.Job
	place := map[int]int{} // from the list to the jobs
	for i, s := range list {
		if !s.open() {
			continue
		}
		place[i] = len(jobs)
		r.Steps = append(r.Steps, i)
		if s.HoldState(now) == HoldUnset {
			r.Unset++
		}
		if s.Expect <= 0 && !s.HasHold() && !s.Sheet {
			r.Bare++
		}
		jobs = append(jobs, s.job(list, place))
	}
	r.Finish, ok = calendar.Earliest(now, jobs, shop)
	return r, ok
}

// job is the step as the calendar has it.
func (s Step) job(list []Step, place map[int]int) calendar.Job {
	j := calendar.Job{Work: max(0, s.Expect-s.Spent), Hold: s.Hold, After: calendar.Own, Until: s.NotBefore()}
	if !j.Until.IsZero() {
		return j
	}
	for i, other := range list {
		if !s.countsFrom(other) {
			continue
		}
		if at, open := place[i]; open {
			j.After = at
		} else if !other.Done.IsZero() {
			j.Until = other.Done.Round(0).Add(s.Hold)
		}
	}
	return j
}
