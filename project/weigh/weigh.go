// Package weigh is what the sheath on the kitchen scale tells while it dries, and what the
// air of the room does. The time is passed in.
package weigh

import (
	"cmp"
	"errors"
	"slices"
	"time"

	"chape/calc/drying"
	"chape/project/clock"
)

// Before is the state of a weighing just before wetting.
const Before = "before"

// Weighing is the sheath on the scale.
type Weighing struct {
	When  time.Time
	Grams float64
	State string // "before" (just before wetting) or "drying"
}

// Room is the air that the sheath dries in, as the maker reads it off.
type Room struct {
	Temperature    float64 // °C
	Humidity       float64 // relative, %
	HasTemperature bool    // it was given
	HasHumidity    bool
}

// Drying is what the weighings since the last wetting say. Weighings are
// given by their places in the project's list, in order of time.
type Drying struct {
	Before  int   // the one just before wetting; -1: none
	Rows    []int // those since
	Earlier []int // those of an earlier wetting, which count no more

	Start    time.Time // the estimate's times count from here
	Estimate drying.Estimate
	Err      error // why there is no estimate, one line with a remedy

	Steady bool      // dry by weight: the last weighing agrees with one long enough before
	Since  time.Time // that one
	Next   time.Time // when the next weighing tells the most; zero where none does
}

// DryingOf fits drying laws to the weighings that follow the last one before
// wetting. step is that of the scale in grams, 0 where the digits tell. It
// takes some three milliseconds: call it when weighings change.
func DryingOf(list []Weighing, step float64) Drying {
	order := make([]int, len(list))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(list[a].When.Compare(list[b].When), cmp.Compare(rank(list[a]), rank(list[b])))
	})
	d := Drying{Before: -1, Rows: order}
	for k, i := range order {
		if list[i].State == Before {
			d.Before, d.Earlier, d.Rows = i, order[:k], order[k+1:]
		}
	}
	if len(d.Rows) == 0 {
		d.Err = errors.New("not weighed yet since it was wetted: weigh it, the knife out, once the surface no longer shines")
		return d
	}
	d.Start = list[d.Rows[0]].When
	h, m, s := d.Start.Clock()
	r := drying.Record{Step: step, Clock: time.Duration(h)*time.Hour + time.Duration(m)*time.Minute + time.Duration(s)*time.Second}
	if d.Before >= 0 {
		r.Before = list[d.Before].Grams
	}
	for _, i := range d.Rows {
		r.Weighings = append(r.Weighings, drying.Weighing{At: list[i].When.Sub(d.Start), Grams: list[i].Grams})
	}
	d.Estimate, d.Err = r.Estimate()
	if pair, ok := r.Settled(); ok {
		d.Steady, d.Since = true, d.Start.Add(pair.First.At)
	}
	if next, ok := r.Next(d.Estimate); ok {
		d.Next = d.Start.Add(next).Round(nextGrain)
	}
	return d
}

// nextGrain is to what the next weighing's time is rounded: nobody weighs to
// the minute.
const nextGrain = 10 * time.Minute

// rank puts a weighing before wetting ahead of one in the same second.
func rank(w Weighing) int {
	if w.State == Before {
		return 0
	}
	return 1
}

// Window is when the sheath will be dry, rounded as its width allows: the
// early end down, the late end up.
func (d Drying) Window() (earliest, likely, latest time.Time) {
	e := d.Estimate
	grain := grainOf(e.Latest - e.Earliest)
	latest = d.Start.Add(e.Latest)
	if down := latest.Truncate(grain); down.Before(latest) {
		latest = down.Add(grain)
	}
	return d.Start.Add(e.Earliest).Truncate(grain), d.Start.Add(e.Likely).Round(grain), latest
}

func grainOf(width time.Duration) time.Duration {
	switch {
	case width >= 4*time.Hour:
		return 30 * time.Minute
	case width >= time.Hour:
		return 10 * time.Minute
	}
	return time.Minute
}

// Guess is when the sheath may be dry by the air of the room alone, counted
// from the wetting; false where the room or the wetting is not known or the
// room dries nothing.
func (d Drying) Guess(r Room, list []Weighing) (earliest, latest time.Time, ok bool) {
	if !r.HasTemperature || !r.HasHumidity {
		return
	}
	g, err := drying.FirstGuess(r.Temperature, r.Humidity)
	if err != nil {
		return
	}
	from := d.Start
	if d.Before >= 0 {
		from = list[d.Before].When
	}
	if from.IsZero() {
		return
	}
	return from.Add(g.Earliest).Round(time.Hour), from.Add(g.Latest).Round(time.Hour), true
}

// ByWeight says beside a hold what the scale says of it: "dry by weight", or
// "not dry by weight: about Thu 14:14", or when to weigh it; nothing where it
// was not weighed since it was wetted.
func (d Drying) ByWeight(now time.Time) string {
	if len(d.Rows) == 0 {
		return ""
	}
	again := "weigh it"
	if d.Next.After(now) {
		again = "weigh it about " + clock.Time(d.Next, now)
	}
	switch likely := d.Start.Add(d.Estimate.Likely); {
	case d.Steady:
		return "dry by weight"
	case d.Err != nil:
		return "not dry by weight yet: " + again
	case d.Estimate.Reached:
		return "near dry by weight: " + again
	case likely.After(now):
		return "not dry by weight: about " + clock.Time(likely, now)
	}
	return "not dry by weight when last weighed: " + again
}

// By says in a few words when the sheath will be dry, for the line of the
// drying step; false where neither weighings nor the room tell.
func (d Drying) By(r Room, list []Weighing, now time.Time) (text string, ok bool) {
	if d.Steady {
		return "dry by weight, " + clock.Time(list[d.Rows[len(d.Rows)-1]].When, now), true
	}
	if d.Err == nil {
		_, likely, _ := d.Window()
		switch {
		case d.Estimate.Reached:
			return "near dry by weight, " + clock.Time(list[d.Rows[len(d.Rows)-1]].When, now), true
		case likely.After(now):
			return "dry about " + clock.Time(likely, now), true
		}
		return "dry by now: weigh it", true
	}
	from, to, ok := d.Guess(r, list)
	if !ok || to.Before(now) {
		return "", false
	}
	return "a guess: dry " + clock.Time(from, now) + " to " + clock.Time(to, now), true
}
