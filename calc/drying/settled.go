package drying

import (
	"math"
	"time"
)

// The trade's own test of dry leather: it has stopped losing weight. Two
// weighings some hours apart agree within a share of the dry weight, or
// within a step of a coarser scale, which then needs longer to tell (common
// practice, no source).
const (
	Steady       = 0.003
	SteadyApart  = 3 * time.Hour
	SteadyCoarse = 6 * time.Hour // where the step of the scale is more than Steady
)

// soaked is how far above its weight before wetting a sheath is surely wet,
// though its weight stands still: it lies in a bag, or in air that takes up
// no water (common practice, no source).
const soaked = 0.10

// Settled is two weighings that agree: dry by weight.
type Settled struct {
	First, Second Weighing
}

// apart is how long before the second the first of two weighings has to be, and
// within how many grams of it.
func (s series) apart() (time.Duration, float64) {
	dry := s.last()
	if s.given() {
		dry = s.dry
	}
	if s.step > Steady*dry {
		return SteadyCoarse, s.step
	}
	return SteadyApart, Steady * dry
}

// Settled finds whether the last weighing agrees with the latest of those
// that are long enough before it.
func (r Record) Settled() (Settled, bool) {
	s, err := newSeries(r)
	if err != nil {
		return Settled{}, false
	}
	apart, within := s.apart()
	n := len(s.grams) - 1
	for i := n - 1; i >= 0; i-- {
		if s.at(s.hours[n])-s.at(s.hours[i]) < apart {
			continue
		}
		const hair = 1e-9 // grams typed in tenths are not quite tenths
		if math.Abs(s.grams[i]-s.grams[n]) >= within-hair || s.given() && s.grams[n] > s.dry*(1+soaked) {
			return Settled{}, false
		}
		return Settled{Weighing{s.at(s.hours[i]), s.grams[i]}, Weighing{s.at(s.hours[n]), s.grams[n]}}, true
	}
	return Settled{}, false
}

// How soon and how late the next weighing is of use.
const (
	soonest = time.Hour
	longest = 12 * time.Hour
)

// Next is when the next weighing tells the most: half way to the likely
// moment, and from where that is near, long enough after the last for the two
// to be compared. It is false where nothing was weighed yet, or the sheath is
// dry by weight. e is the record's own estimate, zero where there is none.
func (r Record) Next(e Estimate) (time.Duration, bool) {
	s, err := newSeries(r)
	if err != nil {
		return 0, false
	}
	if _, dry := r.Settled(); dry {
		return 0, false
	}
	last := s.at(s.hours[len(s.hours)-1])
	apart, _ := s.apart()
	switch {
	case e.Dry == 0: // no estimate yet
		return last + max(soonest, min(s.at(s.hours[len(s.hours)-1]/2)-s.start, longest)), true
	case e.Reached || e.Likely-last <= 2*apart:
		return last + apart, true
	}
	return last + min((e.Likely-last)/2, longest), true
}
