package project

import (
	"math"

	"chape/calc"
	"chape/calc/length"
	"chape/project/value"
)

// BeginIn gives a new project its unit. What still is a default goes to round inches,
// so that a tail is 6 in long, not 5 29/32; a value of the maker's own stays. For a
// project that is worked on only the unit is to be changed.
func (p *Project) BeginIn(u length.Unit) {
	proposed := p.Sheath.Mouth == p.ProposedMouth()
	from := p.Units
	p.Units = u
	for _, c := range scalars {
		def, ok := c.Def.(length.Length)
		if !ok {
			continue
		}
		if v := c.Get(p); v == roundIn(def, from) || v == def {
			c.Set(p, roundIn(def, u))
		}
	}
	if p.Source == FromOutline {
		_ = p.FillMarks() // what will not do is refused where it is typed, and the marks stay
	}
	if proposed {
		p.Sheath.Mouth = p.ProposedMouth()
	}
}

// UsualReach is how far a correction runs out to either side before the maker says so,
// in round figures of the unit.
func UsualReach(u length.Unit) length.Length { return roundIn(20*length.Millimetre, u) }

// nearEnough is how far a round figure may be from the default in millimetres, as a
// share of it.
const nearEnough = 0.06

// roundIn is a default given in millimetres, in the roundest fraction of an inch that is
// near enough; in millimetres it is as it stands.
func roundIn(l length.Length, u length.Unit) length.Length {
	if u != length.Inches {
		return l
	}
	for parts := 1.0; ; parts *= 2 {
		round := value.Tidy(length.Length(math.Round(l.In()*parts)/parts) * length.Inch)
		if off := math.Abs(float64(round - l)); off <= nearEnough*math.Abs(float64(l)) || parts == 64 {
			return round
		}
	}
}

// ProposedMouth is ProposeMouth for the project's knife; in inches to an eighth below.
func (p Project) ProposedMouth() length.Length {
	const eighth = length.Inch / 8
	mouth := calc.ProposeMouth(p.Knife)
	if p.Units == length.Inches && mouth > eighth {
		mouth = value.Tidy(length.Length(math.Floor(float64(mouth/eighth))) * eighth)
	}
	return mouth
}
