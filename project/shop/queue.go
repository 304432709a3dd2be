package shop

import (
	"reflect"
	"slices"
	"time"

	"chape/calc/calendar"
	"chape/project/steps"
)

// Promise is what another sheath still takes, and the day that it is promised for (UTC
// midnight).
type Promise struct {
	Open steps.Open
	Due  time.Time
}

// mostQueued is how many promised sheaths are reckoned with, the first of them: no shop has
// more in hand that it can still tell apart.
const mostQueued = 60

// Queue is the bench with the sheaths that are promised on it: those promised earlier take
// it first, and in their waits it is free for the next. The zero one has none.
type Queue struct {
	shop  Shop
	begun time.Time
	days  []queued
}

// queued is what those promised up to a day have of the bench, that day's included.
type queued struct {
	due   time.Time
	n     int
	taken calendar.Taken
}

// Queue reckons the promised sheaths one after another, by their days; those without work
// left or a day take no part.
func (s Shop) Queue(all []Promise, now time.Time) Queue {
	q := Queue{shop: s, begun: now}
	if !s.Week.Any() {
		return q
	}
	list := slices.DeleteFunc(slices.Clone(all), func(p Promise) bool { return p.Due.IsZero() || len(p.Open.Jobs) == 0 })
	slices.SortStableFunc(list, func(a, b Promise) int { return a.Due.Compare(b.Due) })
	var taken calendar.Taken
	for i, p := range list[:min(len(list), mostQueued)] {
		if r, ok := p.Open.Earliest(now, calendar.Shop{Week: s.Week, Taken: taken}); ok {
			taken = taken.With(r.Uses)
		}
		if n := len(q.days); n > 0 && q.days[n-1].due.Equal(p.Due) {
			q.days[n-1] = queued{p.Due, i + 1, taken}
			continue
		}
		q.days = append(q.days, queued{p.Due, i + 1, taken})
	}
	return q
}

// Fits tells whether the queue still holds in a shop at a moment: with the same hours, and
// for a minute.
func (q Queue) Fits(s Shop, now time.Time) bool {
	return !q.begun.IsZero() && !now.Before(q.begun) && now.Sub(q.begun) < time.Minute && reflect.DeepEqual(q.shop.Week, s.Week)
}

// Ready is Shop.Ready after those that are promised earlier; after all of them where it is
// promised for no day.
func (q Queue) Ready(o steps.Open, promised, now time.Time) Ready {
	return q.shop.ready(o, promised, now, q.before(promised))
}

// Earliest is when that is, and after how many; ok is false where there is too little time
// at the bench.
func (q Queue) Earliest(o steps.Open, promised, now time.Time) (f calendar.Finish, after int, ok bool) {
	before := q.before(promised)
	r, ok := o.Earliest(now, calendar.Shop{Week: q.shop.Week, Taken: before.taken})
	return r.Finish, before.n, ok
}

// before are those promised earlier than a day; all of them where it is none.
func (q Queue) before(promised time.Time) (out queued) {
	for _, d := range q.days {
		if promised.IsZero() || d.due.Before(promised) {
			out = d
		}
	}
	return out
}
