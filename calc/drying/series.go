package drying

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"
)

// series is the weighings in order of time, ready for arithmetic.
type series struct {
	dry   float64 // grams, 0 if not given
	start time.Duration
	hours []float64 // since start
	grams []float64
	step  float64 // grams, the finest digit of the scale
}

func (s series) given() bool   { return s.dry > 0 }
func (s series) last() float64 { return s.grams[len(s.grams)-1] }

// at turns hours since start into an offset of the caller's.
func (s series) at(hours float64) time.Duration {
	return s.start + time.Duration(hours*float64(time.Hour))
}

// unknowns is how many figures the fit has to find.
func (s series) unknowns() int {
	if s.given() {
		return FewestWithDry - 1
	}
	return FewestWithoutDry - 1
}

// newSeries sorts the weighings and refuses what no drying sheath can weigh.
func newSeries(dry float64, weighings []Weighing) (series, error) {
	if !(dry >= 0) || dry > heaviest {
		return series{}, fmt.Errorf("a dry weight of %v g can't be: leave it out or correct it", dry)
	}
	if len(weighings) == 0 {
		return series{}, fmt.Errorf("no weighings yet: weigh the sheath, the knife out, now and then while it dries")
	}
	sorted := slices.Clone(weighings)
	slices.SortStableFunc(sorted, func(a, b Weighing) int { return cmp.Compare(a.At, b.At) })
	s := series{dry: dry, start: sorted[0].At}
	for i, w := range sorted {
		if !(w.Grams > 0) || w.Grams > heaviest {
			return series{}, fmt.Errorf("weighing %d, %v g, can't be: correct it or take it out", i+1, w.Grams)
		}
		s.hours = append(s.hours, (w.At - s.start).Hours())
		s.grams = append(s.grams, w.Grams)
	}
	s.step = scaleStep(append(slices.Clone(s.grams), dry))
	return s, s.contradiction()
}

// heaviest is more than any sheath weighs, in grams.
const heaviest = 1e5

// contradiction refuses weights that rise, or lie below the dry weight by
// more than what soaking takes out of the leather.
func (s series) contradiction() error {
	slack := 2 * s.step
	for i := 1; i < len(s.grams); i++ {
		before, now := s.grams[i-1], s.grams[i]
		if now > before+slack+0.02*max(0, s.grams[0]-s.last()) {
			return fmt.Errorf("weighing %d is heavier than the one before (%v g, then %v g): take out the wrong one, or all from before it was wetted again",
				i+1, before, now)
		}
	}
	for i, g := range s.grams {
		if s.given() && g < s.dry*(1-NearDry)-slack {
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

// fits refuses weighings that no drying curve comes near.
func (s series) fits(c curve, scatter float64) error {
	loss := s.grams[0] - s.last()
	if scatter <= max(0.06*loss, 2*s.step) {
		return nil
	}
	worst, off := 0, 0.0
	for i, h := range s.hours {
		if d := math.Abs(s.grams[i] - c.grams(h)); d > off {
			worst, off = i, d
		}
	}
	return fmt.Errorf("the weighings do not lie on a drying curve (number %d is %.2g g off it): take out a wrong one, or those from while it was soaked",
		worst+1, off)
}

// scaleStep is the finest digit among the weights: 1, 0.1 or 0.01 g.
func scaleStep(grams []float64) float64 {
	for _, step := range []float64{1, 0.1} {
		if !slices.ContainsFunc(grams, func(g float64) bool {
			return math.Abs(g/step-math.Round(g/step)) > 1e-6
		}) {
			return step
		}
	}
	return 0.01
}
