// Package drying says from a few weighings when a wet sheath will be dry.
//
// Leather in still air follows the Lewis law of thin-layer drying: the water
// left falls as exp(−k·t) (Sander 2007, thin-layer drying). The law starts
// when the surface no longer shines: before that a soaked sheath loses
// water at a constant rate, so weighings from the first hour or so after
// soaking make the estimate worse.
//
// The package knows no clock: times are offsets from any moment the caller
// likes, the same one for all weighings.
package drying

import (
	"math"
	"time"
)

// NearDry is how close to its dry weight a sheath counts as dry, as a share
// of the dry weight (common practice, no source).
const NearDry = 0.02

// Confidence is how often the window of an Estimate holds the true moment,
// if the law does and the scale errs at random.
const Confidence = 0.90

// How many weighings an estimate needs: one more than there are unknowns,
// so that they can disagree and show how far they are to be trusted.
const (
	FewestWithDry    = 3
	FewestWithoutDry = 4
)

// Weighing is the sheath on the scale, the knife out.
type Weighing struct {
	At    time.Duration // since a moment common to all weighings
	Grams float64
}

// Estimate is when a sheath will be within NearDry of its dry weight.
//
// The window from Earliest to Latest comes from the profile of the squared
// residuals: it holds every moment for which the best drying curve through
// that moment is not worse than the best of all by more than Student's t
// allows at Confidence, with the residuals' degrees of freedom. The scatter
// is taken as no less than the rounding of the scale, judged by the digits
// of the weighings. So the window is lopsided, longer to the late side. It
// does not cover a change of the weather or a weight before wetting that is
// not the weight the sheath comes back to.
type Estimate struct {
	Earliest, Likely, Latest time.Duration

	// Reached: the last weighing is within NearDry of dry. With the dry
	// weight given, the window then is from the last weighing that was not
	// to the first that was.
	Reached bool

	Dry      float64 // grams: as given, or as fitted
	DryGiven bool
	Rate     float64 // k of the Lewis law, per hour; 0 if there is no curve
	Scatter  float64 // grams, standard deviation of a weighing from the curve
	R2       float64 // of the straight line through the logarithms of the water left

	start time.Duration // of the curve
	water float64       // grams at start
}

// Grams is the weight on the fitted curve at a time. Without a curve
// (Rate 0) it is the dry weight.
func (e Estimate) Grams(at time.Duration) float64 {
	if e.Rate == 0 {
		return e.Dry
	}
	return e.Dry + e.water*math.Exp(-e.Rate*(at-e.start).Hours())
}

// Curve is n ≥ 2 points of the fitted curve at equal steps of time, both
// ends among them, for drawing.
func (e Estimate) Curve(from, to time.Duration, n int) []Weighing {
	points := make([]Weighing, n)
	for i := range points {
		at := from + time.Duration(float64(to-from)*float64(i)/float64(n-1))
		points[i] = Weighing{at, e.Grams(at)}
	}
	return points
}

// Predict fits the Lewis law to the weighings of a drying sheath. dry is
// its weight in grams just before wetting, 0 if it was not weighed; the
// weight it dries to is then fitted as well. The order of the weighings
// does not matter.
//
// The fit is least squares in grams: for a given rate the other unknowns
// are linear and solved for, and the rate is found by a bracketed search.
// The error is one line saying what is wrong with the weighings, numbered
// in order of time from 1, and what would do.
func Predict(dry float64, weighings []Weighing) (Estimate, error) {
	s, err := newSeries(dry, weighings)
	if err != nil {
		return Estimate{}, err
	}
	if dry > 0 && s.last() <= dry*(1+NearDry) {
		return s.reached(), nil
	}
	if err := s.enough(); err != nil {
		return Estimate{}, err
	}
	return s.estimate()
}

// estimate fits the curve and turns it into a window.
func (s series) estimate() (Estimate, error) {
	best, err := s.fit()
	if err != nil {
		return Estimate{}, err
	}
	scatter := s.scatter(best.ssr)
	if err := s.fits(best, scatter); err != nil {
		return Estimate{}, err
	}
	early, late, err := s.window(best, scatter)
	if err != nil {
		return Estimate{}, err
	}
	likely := best.nearDry()
	e := Estimate{
		Reached:  s.last() <= best.dry*(1+NearDry),
		Dry:      best.dry,
		DryGiven: s.given(),
		Rate:     best.rate,
		Scatter:  scatter,
		R2:       s.straightness(best.dry),
		start:    s.start,
		water:    best.water,
	}
	if !e.Reached { // the scale has just said: not yet
		now := s.hours[len(s.hours)-1]
		early, likely, late = max(early, now), max(likely, now), max(late, now)
	}
	e.Earliest, e.Likely, e.Latest = s.at(early), s.at(likely), s.at(late)
	return e, nil
}

// reached is the estimate when the scale already says dry: between the last
// weighing that was too heavy and the first that was not.
func (s series) reached() Estimate {
	limit := s.dry * (1 + NearDry)
	i := 0
	for s.grams[i] > limit {
		i++
	}
	e := Estimate{Reached: true, Dry: s.dry, DryGiven: true}
	if s.enough() == nil {
		if fitted, err := s.estimate(); err == nil {
			e = fitted
		}
	}
	e.Earliest, e.Latest = s.at(s.hours[max(i-1, 0)]), s.at(s.hours[i])
	e.Likely = min(max(e.Likely, e.Earliest), e.Latest)
	return e
}
