package steps

import (
	"time"

	"chape/calc/calendar"
)

// Open is what of a checklist is still to be done, as the calendar has it.
type Open struct {
	Steps []int          // their places in the list
	Jobs  []calendar.Job // of each of them
	Unset int            // waits that nobody has set yet; they count as none
	Bare  int            // steps without expected minutes; they count as none
}

// Ready is when a checklist can be done at the earliest.
type Ready struct {
	calendar.Finish
	Open // the Finish's Ends belong to its Steps
}

// StillOpen gives the steps still to be done, one after another. One that has taken
// longer than expected counts no more minutes.
func StillOpen(list []Step) Open {
	var o Open
	place := map[int]int{} // from the list to the jobs
	for i, s := range list {
		if !s.open() {
			continue
		}
		place[i] = len(o.Jobs)
		o.Steps = append(o.Steps, i)
		if !s.HasHold() && s.Sheet {
			o.Unset++
		}
		if s.Expect <= 0 && !s.HasHold() && !s.Sheet {
			o.Bare++
		}
		o.Jobs = append(o.Jobs, s.job(list, place))
	}
	return o
}

// Earliest reckons when all is done, from now on in the shop's hours. ok is false where
// there is no time at the bench.
func (o Open) Earliest(now time.Time, shop calendar.Shop) (r Ready, ok bool) {
	r.Open = o
	r.Finish, ok = calendar.Earliest(now, o.Jobs, shop)
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
