package drying

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"gonum.org/v1/gonum/stat"
)

// series is the weighings in order of time, ready for arithmetic.
type series struct {
	dry   float64 // grams before wetting, 0 if not given
	start time.Duration
	hours []float64 // since start
	grams []float64
	step  float64 // grams, of the scale
	clock float64 // hour of the day at start
	ref   float64 // grams, near the dry weight: arithmetic goes by what is above
	water float64 // grams at start, roughly
}

func (s series) given() bool   { return s.dry > 0 }
func (s series) last() float64 { return s.grams[len(s.grams)-1] }

// at turns hours since start into an offset of the caller's.
func (s series) at(hours float64) time.Duration {
	return s.start + time.Duration(hours*float64(time.Hour))
}

// newSeries sorts the weighings and refuses what no drying sheath can weigh.
func newSeries(r Record) (series, error) {
	if !(r.Before >= 0) || r.Before > heaviest {
		return series{}, fmt.Errorf("a dry weight of %v g can't be: leave it out or correct it", r.Before)
	}
	if len(r.Weighings) == 0 {
		return series{}, fmt.Errorf("no weighings yet: weigh the sheath, the knife out, now and then while it dries")
	}
	sorted := slices.Clone(r.Weighings)
	slices.SortStableFunc(sorted, func(a, b Weighing) int { return cmp.Compare(a.At, b.At) })
	s := series{dry: r.Before, start: sorted[0].At, step: r.Step}
	for i, w := range sorted {
		if !(w.Grams > 0) || w.Grams > heaviest {
			return series{}, fmt.Errorf("weighing %d, %v g, can't be: correct it or take it out", i+1, w.Grams)
		}
		s.hours = append(s.hours, (w.At - s.start).Hours())
		s.grams = append(s.grams, w.Grams)
	}
	if !(s.step > 0) {
		s.step = scaleStep(append(slices.Clone(s.grams), r.Before))
	}
	s.clock = math.Mod((r.Clock + s.start).Hours(), 24)
	s.ref = s.last()
	if s.given() {
		s.ref = s.dry
	}
	s.water = math.Max(s.grams[0]-s.ref, s.step)
	return s, s.contradiction()
}

// heaviest is more than any sheath weighs, in grams.
const heaviest = 1e5

// What no drying sheath does, as shares of its weight: a damp night gives back
// two or three in a hundred, soaking washes out no more than a few (common
// practice, no source).
const (
	mostRise = 0.03
	mostLost = 0.06
)

// contradiction refuses weights that rise by more than damp air can give
// back, or lie further below the weight before wetting than soaking can take
// out of leather.
func (s series) contradiction() error {
	slack := 2 * s.step
	for i := 1; i < len(s.grams); i++ {
		before, now := s.grams[i-1], s.grams[i]
		if now > before*(1+mostRise)+slack {
			return fmt.Errorf("weighing %d is heavier than the one before (%v g, then %v g): take out the wrong one, or all from before it was wetted again",
				i+1, before, now)
		}
	}
	for i, g := range s.grams {
		if s.given() && g < s.dry*(1-mostLost)-slack {
			return fmt.Errorf("weighing %d is below the dry weight (%v g against %v g): correct one of them, or leave the dry weight out",
				i+1, g, s.dry)
		}
	}
	return nil
}

// enough refuses too few weighings, and weights that do not fall.
func (s series) enough() error {
	fewest, hint := FewestWithDry, ""
	if !s.given() {
		fewest, hint = FewestWithoutDry, fmt.Sprintf(" (%d with the weight before wetting)", FewestWithDry)
	}
	n := len(s.grams)
	if n < fewest {
		return fmt.Errorf("%d of at least %d weighings%s: weigh again in an hour or more", n, fewest, hint)
	}
	if s.grams[0]-s.last() < 3*s.step || s.hours[n-1] == 0 {
		return fmt.Errorf("the weight has not fallen enough to tell (%v g, then %v g): weigh again in some hours", s.grams[0], s.last())
	}
	return nil
}

// tooEarly is the refusal when the weighings fit any end.
func (s series) tooEarly() error {
	more := math.Max(1, math.Round(s.hours[len(s.hours)-1]/2))
	if s.given() {
		return fmt.Errorf("too early to tell when it will be dry: weigh again in about %v h", more)
	}
	return fmt.Errorf("too early to tell where the weight will end: weigh again in about %v h, or give the weight before wetting", more)
}

// scatter is the standard deviation of a weighing from a curve, not less than
// the rounding of the scale: step/√12 (a uniform distribution).
func (s series) scatter(c node) float64 {
	ssr := 0.0
	for i, h := range s.hours {
		d := s.grams[i] - c.weight(s.clock, h)
		ssr += d * d
	}
	unknowns := 3
	if s.given() {
		unknowns--
	}
	free := math.Max(1, float64(len(s.grams)-unknowns))
	return math.Max(math.Sqrt(ssr/free), s.step/math.Sqrt(12))
}

// fits refuses weighings that no drying curve comes near: further than any
// scale, any night and any welt could put them.
func (s series) fits(c node, scatter float64) error {
	loss := s.grams[0] - s.last()
	if scatter <= max(0.08*loss, 0.01*s.last(), 3*s.step) {
		return nil
	}
	worst, off := 0, 0.0
	for i, h := range s.hours {
		if d := math.Abs(s.grams[i] - c.weight(s.clock, h)); d > off {
			worst, off = i, d
		}
	}
	return fmt.Errorf("the weighings do not lie on a drying curve (number %d is %.2g g off it): take out a wrong one, or those from while it was soaked",
		worst+1, off)
}

// logLine fits a straight line to the logarithm of the water left. It gives
// the rate per hour and R², both 0 if fewer than two weighings are above dry.
func (s series) logLine(dry float64) (rate, r2 float64) {
	var x, y []float64
	for i, h := range s.hours {
		if w := s.grams[i] - dry; w > 0 {
			x, y = append(x, h), append(y, math.Log(w))
		}
	}
	if len(x) < 2 || x[0] == x[len(x)-1] {
		return 0, 0
	}
	alpha, beta := stat.LinearRegression(x, y, nil, false)
	return -beta, stat.RSquared(x, y, nil, alpha, beta)
}

// straightness is R² of that line.
func (s series) straightness(dry float64) float64 {
	_, r2 := s.logLine(dry)
	return r2
}

// scaleStep is the finest digit among the weights: 1, 0.5, 0.1 or 0.01 g.
func scaleStep(grams []float64) float64 {
	for _, step := range []float64{1, 0.5, 0.1} {
		if !slices.ContainsFunc(grams, func(g float64) bool {
			return math.Abs(g/step-math.Round(g/step)) > 1e-6
		}) {
			return step
		}
	}
	return 0.01
}
