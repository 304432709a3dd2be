package bend

import (
	"errors"
	"math"

	"chape/calc/length"
)

// Strip is a strip wetted, pulled and dried: the distance between two marks on
// it each time, mm.
type Strip struct {
	Before float64 // dry, not pulled
	Pulled float64 // wet, while it is pulled about as hard as a sheath is formed
	Dried  float64 // dry again and let go; 0: not measured yet
}

// Stretch is how much longer a hide becomes, as shares, give or take Plus.
type Stretch struct {
	Wet  float64 // while it is wet and pulled
	Kept float64 // what of it stays; 0 where Dried was not measured
	Plus float64
}

// mostStretch is more than vegetable-tanned leather gives without tearing
// (common practice, no source).
const mostStretch = 1

// Stretch reads a strip. Plus takes both readings to be off by Reading, each by
// itself. The error says which reading will not do.
func (s Strip) Stretch() (Stretch, error) {
	switch {
	case !(s.Before > 0) || math.IsInf(s.Before, 0):
		return Stretch{}, errors.New("the marks must stand apart before: draw them 100 mm apart")
	case !(s.Pulled >= s.Before) || s.Pulled > (1+mostStretch)*s.Before:
		return Stretch{}, errors.New("the pulled strip must be as long as before or up to twice that: measure between the same marks")
	case !(s.Dried == 0 || s.Dried > 0 && s.Dried <= s.Pulled):
		return Stretch{}, errors.New("the dried strip can't be longer than it was pulled: measure between the same marks, or leave it out")
	}
	st := Stretch{Wet: s.Pulled/s.Before - 1, Plus: Reading * math.Sqrt2 / s.Before}
	if s.Dried > 0 {
		st.Kept = s.Dried/s.Before - 1
	}
	return st, nil
}

// Gives is how much a half of the pouch of the given half girth gives, mm, give or
// take plus: while it is formed wet, and what stays.
func (s Stretch) Gives(girth float64) (wet, kept, plus float64) {
	return girth * s.Wet, girth * s.Kept, girth * s.Plus
}

// Over is what the knife still needs more than there is room, mm a half, at a
// place where it needs need of half girth room: after forming wet, and once dry.
// Below 0 there is room to spare.
func (s Stretch) Over(need, room float64) (wet, dry float64) {
	return need - room*(1+s.Wet), need - room*(1+s.Kept)
}

// Apart is how far apart the marks of a strip that is pulled are drawn: a round figure of the unit.
func Apart(u length.Unit) length.Length {
	if u == length.Inches {
		return 4 * length.Inch
	}
	return 100
}

// HowToStretch says how the strip is measured, with lengths in round figures of the unit.
func HowToStretch(u length.Unit) string {
	wide := "20 mm"
	if u == length.Inches {
		wide = "3/4 in"
	}
	return "Cut a strip about " + wide + " wide, across the sheath's fold as it lies on the hide. Draw two marks " +
		Apart(u).Format(u, length.Ruler) + " apart. " + howToStretch
}

const howToStretch = "Soak it, pull it about as hard as you form a sheath, and measure between the marks while you pull. " +
	"Let it dry as it is, let go and measure again."
