// Package drying says from a few weighings when a wet sheath will be dry.
//
// Leather in still air follows the Lewis law of thin-layer drying: the water
// left falls as exp(−k·t) (Sander 2007, thin-layer drying). A sheath is no thin
// layer: its welt dries more slowly than its body, damp nights slow both, and
// soaking washes out some of what it weighed. So an estimate comes from a
// family of such laws, weighed by how well each explains the weighings. All
// start when the surface no longer shines: before that a soaked sheath loses
// water at a constant rate, so weighings from the first hour or so after
// soaking make the estimate worse.
//
// The package knows no clock: times are offsets from any moment the caller
// likes, the same one for all weighings.
package drying

import (
	"time"

	"gonum.org/v1/gonum/stat"
)

// NearDry is how close to its dry weight a sheath counts as dry, as a share
// of the dry weight (common practice, no source).
const NearDry = 0.02

// Confidence is how often the window of an Estimate holds the true moment: in
// simulations of sheaths that dry by one exponential, by two, with solubles
// washed out, and by day and night, each as often (see cover_test.go). Where two
// of these come together it holds fewer, from two thirds down to one third for a
// slower welt with solubles washed out, and the sheath then dries later than it
// says: only the scale can tell (see Settled).
const Confidence = 0.90

// believed is how much belief a window holds for that. It is less than
// Confidence, for the laws are many: a sheath keeps to one of them, and the
// others widen its window.
const believed = 0.885

// How many weighings an estimate needs: one more than there are unknowns in
// the plainest law, so that they can disagree and show how far they are to
// be trusted. From FewestForSlow on the drawn curve may have a slower part.
const (
	FewestWithDry    = 3
	FewestWithoutDry = 4
	FewestForSlow    = 5
)

// Weighing is the sheath on the scale, the knife out.
type Weighing struct {
	At    time.Duration // since a moment common to all weighings
	Grams float64
}

// Record is what was weighed of one sheath since it was wetted.
type Record struct {
	Before    float64       // grams, just before wetting; 0: not weighed
	Step      float64       // grams, one step of the scale; 0: as the digits of the weighings tell
	Clock     time.Duration // the time of day, since midnight, at the offset 0
	Weighings []Weighing    // in any order
}

// Estimate is when a sheath will be within NearDry of its dry weight.
//
// The window from Earliest to Latest is the shortest that holds enough of the
// belief in all curves that the weighings allow. It is mostly lopsided,
// longer to the late side. It does not cover a change of the weather.
type Estimate struct {
	Earliest, Likely, Latest time.Duration

	// Reached: the last weighing is within NearDry of dry. The window then is
	// from the last weighing that was not to the first that was, or on to the
	// end of the window where the curve is in doubt.
	Reached bool

	Before  float64 // grams, as weighed before wetting; 0: not weighed
	Dry     float64 // grams: where the curve ends
	Rate    float64 // k of the Lewis law, of the faster part, per hour; 0 if there is no curve
	Slow    float64 // share of the water that is in a slower part; 0: there is none in the curve
	Scatter float64 // grams, standard deviation of a weighing from the curve
	R2      float64 // of the straight line through the logarithms of the water left

	curve node
	start time.Duration // of the curve
	clock float64       // hour of the day then
}

// Grams is the weight at a time on the curve that is dry about when it is most
// likely, the best of these. Without a curve (Rate 0) it is the dry weight.
func (e Estimate) Grams(at time.Duration) float64 {
	if e.Rate == 0 {
		return e.Dry
	}
	return e.curve.weight(e.clock, (at - e.start).Hours())
}

// Curve is n ≥ 2 points of that curve at equal steps of time, both ends
// among them, for drawing.
func (e Estimate) Curve(from, to time.Duration, n int) []Weighing {
	points := make([]Weighing, n)
	for i := range points {
		at := from + time.Duration(float64(to-from)*float64(i)/float64(n-1))
		points[i] = Weighing{at, e.Grams(at)}
	}
	return points
}

// Estimate weighs all laws by the weighings. The error is one line saying
// what is wrong with them, numbered in order of time from 1, or missing, and
// what would do.
func (r Record) Estimate() (Estimate, error) { return r.estimate(laws, believed) }

// estimate is Estimate from some laws, with a window that holds a share of
// the belief in them.
func (r Record) estimate(from []law, share float64) (Estimate, error) {
	s, err := newSeries(r)
	if err != nil {
		return Estimate{}, err
	}
	few := s.enough()
	if few == nil {
		var e Estimate
		if e, few = s.fitted(from, share); few == nil {
			return e, nil
		}
	}
	if s.given() && s.last() <= s.dry*(1+NearDry) { // the scale alone says dry
		return s.reached(Estimate{Before: s.dry, Dry: s.dry}), nil
	}
	return Estimate{}, few
}

// fitted is the estimate by curves.
func (s series) fitted(from []law, share float64) (Estimate, error) {
	nodes := s.posterior(from)
	if len(nodes) == 0 {
		return Estimate{}, s.tooEarly()
	}
	hours, weights := s.moments(nodes)
	early, late := shortest(hours, weights, share)
	likely := stat.Quantile(0.5, stat.Empirical, hours, weights)
	if late > widest*max(early, s.hours[len(s.hours)-1]) {
		return Estimate{}, s.tooEarly()
	}
	c := s.typical(nodes, likely, late-early)
	scatter := s.scatter(c)
	if err := s.fits(c, scatter); err != nil {
		return Estimate{}, err
	}
	e := Estimate{
		Before: s.dry, Dry: c.dry, Rate: c.rate, Slow: c.slow / (c.fast + c.slow),
		Scatter: scatter, R2: s.straightness(c.dry), curve: c, start: s.start, clock: s.clock,
	}
	if s.last() <= c.dry*(1+NearDry) {
		e.Likely, e.Latest = s.at(likely), s.at(late)
		return s.reached(e), nil
	}
	now := s.hours[len(s.hours)-1] // the scale has just said: not yet
	e.Earliest, e.Likely, e.Latest = s.at(max(early, now)), s.at(max(likely, now)), s.at(max(late, now))
	return e, nil
}

// widest is how many times as many hours after the first weighing the end of
// a window may be as its beginning: beyond, it is no answer.
const widest = 6

// reached puts the window of an estimate between the last weighing that was
// too heavy and the first that was not, or the window's own end if later.
func (s series) reached(e Estimate) Estimate {
	i := len(s.grams) - 1
	for i > 0 && s.grams[i-1] <= e.Dry*(1+NearDry) {
		i--
	}
	e.Reached = true
	e.Earliest, e.Latest = s.at(s.hours[max(i-1, 0)]), max(e.Latest, s.at(s.hours[i]))
	e.Likely = min(max(e.Likely, e.Earliest), e.Latest)
	return e
}
