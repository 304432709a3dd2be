package calendar

import (
	"math/rand/v2"
	"testing"
	"time"
)

// brute reckons minute by minute, by what Earliest says of itself: a second reading of it,
// for whole minutes in a zone without changes of the clock.
func brute(now time.Time, jobs []Job, shop Shop) []time.Time {
	open := func(t time.Time) bool {
		m := t.Hour()*60 + t.Minute()
		for _, h := range shop.Week[t.Weekday()] {
			if h.From <= m && m < h.To {
				return true
			}
		}
		return false
	}
	free := func(t time.Time) bool {
		for _, s := range shop.Taken {
			if !t.Before(s.From) && t.Before(s.To) {
				return false
			}
		}
		return open(t)
	}
	first := func(t time.Time, is func(time.Time) bool) time.Time {
		for !is(t) {
			t = t.Add(time.Minute)
		}
		return t
	}
	var ends []time.Time
	at := now
	for _, j := range jobs {
		start := at
		if j.Work > 0 {
			start = first(at, free)
		}
		end := start
		for left := j.Work; left > 0; left -= time.Minute {
			end = first(end, free).Add(time.Minute)
		}
		due := j.Until
		if due.IsZero() && j.Hold > 0 {
			due = start.Add(j.Hold)
			if j.After >= 0 {
				due = ends[j.After].Add(j.Hold)
			}
		}
		if due.After(end) {
			end = first(due, open)
		}
		ends, at = append(ends, end), end
	}
	return ends
}

// Random lists of jobs, one after another on the same bench, as minute by minute. None takes
// what another has, and each takes as much as its work.
func TestAsMinuteByMinute(t *testing.T) {
	r := rand.New(rand.NewPCG(20261126, 1))
	now := time.Date(2026, 11, 26, 10, 0, 0, 0, time.UTC)
	for range 60 {
		shop := Shop{Week: week(t, []string{"mon-fri 18-21, sat 9-13", "mon-sun 8-12 13-17", "tue 9:30-10, thu 18-24, fri 0-3"}[r.IntN(3)])}
		for range 3 {
			var jobs []Job
			var work time.Duration
			for i := range 1 + r.IntN(6) {
				j := Job{Work: time.Duration(r.IntN(120)) * minute, After: Own}
				if r.IntN(3) == 0 {
					j.Hold, j.After = time.Duration(r.IntN(30*60))*minute, r.IntN(i+1)-1
				}
				if r.IntN(8) == 0 {
					j.Until = now.Add(time.Duration(r.IntN(3000)) * minute)
				}
				jobs, work = append(jobs, j), work+j.Work
			}
			f, ok := Earliest(now, jobs, shop)
			if !ok {
				t.Fatal("no time at the bench")
			}
			for i, want := range brute(now, jobs, shop) {
				if !f.Ends[i].Equal(want) {
					t.Fatalf("%v after %v in %v: job %d ends %v, minute by minute %v", jobs, shop.Taken, shop.Week, i, f.Ends[i], want)
				}
			}
			both := shop.Taken.With(f.Uses)
			if sum(both) != sum(shop.Taken)+sum(f.Uses) || sum(f.Uses) != work {
				t.Fatalf("%v takes %v beside %v: %v of work", jobs, f.Uses, shop.Taken, work)
			}
			shop.Taken = both
		}
	}
}

func sum(t Taken) (d time.Duration) {
	for _, s := range t {
		d += s.To.Sub(s.From)
	}
	return d
}
