package calendar

import "time"

// Job is a step that is still to be done.
type Job struct {
	Work time.Duration // at the bench, what is left of it
	Hold time.Duration // not finished before this long after After; 0: no wait
	// After is the job at whose end the wait begins, by its place in the list, which
	// is before this one; Own: it begins when this one does.
	After int
	// Until is when the wait is over where it runs already or began at a step that
	// is done; zero: Hold counts.
	Until time.Time
}

// Own is the After of a wait that begins with its own step.
const Own = -1

// Shop is when somebody stands at the bench.
type Shop struct {
	Week   Week
	Closed map[Day]bool // days off
	Taken  Taken        // what of that time other work has
}

// Finish is when a list of jobs can be done.
type Finish struct {
	At   time.Time
	Ends []time.Time // of each job
	Work time.Duration
	Uses Taken // the time at the bench that it takes
}

// Spare is how many days lie between the day of finishing and a promised day;
// below 0 it is late by as many.
func (f Finish) Spare(promised Day) int { return DayOf(f.At).Until(promised) }

// tooFar is where a search for time at the bench ends.
const tooFar = 5 * 366

// Earliest reckons the jobs one after another from now: each begins when the one
// before it ends. Work goes on only in the shop's hours, as far as no other work has
// them; it is put down for that and taken up again. A wait runs day and night,
// through changes of the clock as well; a job whose wait ends while nobody is there
// ends when somebody is, at whatever work. ok is false where there is too little time at the bench in
// five years, as in a week without hours.
func Earliest(now time.Time, jobs []Job, shop Shop) (f Finish, ok bool) {
	now = now.Round(0)
	f = Finish{At: now, Ends: make([]time.Time, len(jobs))}
	starts := make([]time.Time, len(jobs))
	for i, j := range jobs {
		starts[i] = f.At
		if j.Work > 0 {
			if starts[i], ok = shop.idle(f.At); !ok {
				return f, false
			}
		}
		end, uses, ok := shop.work(starts[i], j.Work)
		if !ok {
			return f, false
		}
		f.Uses = f.Uses.With(uses)
		if due := j.due(i, starts, f.Ends); due.After(end) {
			if end, ok = shop.open(due); !ok {
				return f, false
			}
		}
		f.Ends[i], f.At = end, end
		f.Work += max(0, j.Work)
	}
	return f, true
}

// due is when a job's wait is over.
func (j Job) due(i int, starts, ends []time.Time) time.Time {
	switch {
	case !j.Until.IsZero():
		return j.Until.Round(0)
	case j.Hold <= 0:
		return time.Time{}
	case j.After >= 0 && j.After < i:
		return ends[j.After].Add(j.Hold)
	}
	return starts[i].Add(j.Hold)
}

// stretch is Hours on one day, as times.
type stretch struct{ from, to time.Time }

// on lists the stretches of a day; the day's place in the month may lie outside
// it. By the clock on the wall: on the day summer time begins, hours that hold
// the change are shorter.
func (s Shop) on(y int, m time.Month, d int, zone *time.Location) []stretch {
	noon := time.Date(y, m, d, 12, 0, 0, 0, zone)
	if s.Closed[DayOf(noon)] {
		return nil
	}
	var l []stretch
	for _, h := range s.Week[noon.Weekday()] {
		l = append(l, stretch{time.Date(y, m, d, 0, h.From, 0, 0, zone), time.Date(y, m, d, 0, h.To, 0, 0, zone)})
	}
	return l
}

// open is the first time from t on at which somebody stands at the bench.
func (s Shop) open(t time.Time) (time.Time, bool) {
	at, ok := t, false
	s.each(t, func(h stretch) bool {
		at, ok = h.from, true
		return false
	})
	return at, ok
}

// idle is the first time from t on at which no other work has whoever stands there.
func (s Shop) idle(t time.Time) (time.Time, bool) {
	at, ok := t, false
	s.free(t, func(h stretch) bool {
		at, ok = h.from, true
		return false
	})
	return at, ok
}

// work is when that much work begun at t is done, and the stretches it takes. Work that
// fills a stretch ends with it, not when the next begins.
func (s Shop) work(t time.Time, left time.Duration) (end time.Time, uses Taken, ok bool) {
	if left <= 0 {
		return t, nil, true
	}
	s.free(t, func(h stretch) bool {
		if has := h.to.Sub(h.from); has < left {
			left -= has
			uses = append(uses, Span{h.from, h.to})
			return true
		}
		end, ok = h.from.Add(left), true
		uses = append(uses, Span{h.from, end})
		return false
	})
	return end, uses, ok
}

// each visits what is left of every stretch from t on, until visit says no.
func (s Shop) each(t time.Time, visit func(stretch) bool) {
	y, m, d := t.Date()
	for i := range tooFar {
		for _, h := range s.on(y, m, d+i, t.Location()) {
			if h.from.Before(t) {
				h.from = t
			}
			if h.to.After(h.from) && !visit(h) {
				return
			}
		}
	}
}
