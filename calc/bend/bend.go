// Package bend reads a hide's own figures from strips of it: where its neutral
// fibre lies, from a strip folded over a bar, and how far it stretches, from a
// strip wetted and pulled. Figures are mm, shares fractions.
package bend

import (
	"errors"
	"math"

	"chape/calc/length"
)

// Reading is how far a reading with a rule may be off, mm.
const Reading = 0.5

// Fold is a strip folded once over a bar and pressed close, both legs
// running on straight and side by side. The legs are measured from where the
// strip leaves the bar, the tangent, to their ends.
type Fold struct {
	Strip      float64 // its length, measured flat
	LegA, LegB float64
	Bar        float64 // thickness (diameter) of the bar, rounded
	Leather    float64 // thickness
}

// Neutral is where the neutral fibre lies, as a share of the thickness from the
// inside face, give or take Plus.
type Neutral struct {
	K    float64
	Plus float64
	Of   int // strips
}

// Neutral reads one fold: k = ((S − a − b)/π − D/2)/t, the half turn of the
// fibre being what of the strip is not in the legs. Plus takes the three
// readings of length to be off by Reading, each by itself (root of the sum of
// squares); bar and thickness, measured with a calliper, count as exact. The
// error says which reading will not do.
func (f Fold) Neutral() (Neutral, error) {
	for _, v := range [5]float64{f.Strip, f.LegA, f.LegB, f.Bar, f.Leather} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return Neutral{}, errors.New("a reading is no number: measure again")
		}
	}
	switch {
	case !(f.Leather > 0):
		return Neutral{}, errors.New("leather thickness must be above 0: measure it with a calliper")
	case !(f.Bar >= 0) || !(f.LegA >= 0) || !(f.LegB >= 0):
		return Neutral{}, errors.New("bar and legs can't be below 0: measure again")
	case f.Strip <= f.LegA+f.LegB:
		return Neutral{}, errors.New("the legs together are as long as the strip: measure them from where it leaves the bar, not from the end of the bend")
	}
	k := ((f.Strip-f.LegA-f.LegB)/math.Pi - f.Bar/2) / f.Leather
	return Neutral{k, Reading * math.Sqrt(3) / (math.Pi * f.Leather), 1}, nil
}

// Believable tells whether the fibre lies inside the leather, as far as the
// readings can tell: 0 to 1. Where it does not, a leg was not measured from the
// tangent, or the strip stood off the bar.
func (n Neutral) Believable() bool { return n.K+n.Plus >= 0 && n.K-n.Plus <= 1 }

// Missing names the first reading that is not given: without it the others would tell
// nonsense; "": none.
func (f Fold) Missing() string {
	for _, r := range []struct {
		name string
		is   float64
	}{{"whole strip", f.Strip}, {"one leg", f.LegA}, {"other leg", f.LegB}, {"bar", f.Bar}, {"leather", f.Leather}} {
		if !(r.is > 0) {
			return r.name
		}
	}
	return ""
}

// HowToFold says how the fold is made and measured, with lengths in round figures of the unit.
func HowToFold(u length.Unit) string {
	wide, long := "20 mm", "150 mm"
	if u == length.Inches {
		wide, long = "3/4 in", "6 in"
	}
	return "Cut a strip about " + wide + " wide and " + long + " long, the same way of the hide as the sheath. " + howToFold
}

const howToFold = "Measure it flat. Dampen it, fold it grain side out over a round bar as thick as a spine with its welt, press both legs together below the bar and let it dry. " +
	"Measure both legs from the tangent, where the leather leaves the bar, to their ends; the bar and the leather with a calliper."
