package length

import "math"

// nearEnough is how far a round figure may be from what it stands for, as a share of it.
const nearEnough = 0.06

// Roundest is, in inches, the roundest binary fraction of one that is within 6 % of l, the
// nearest 64th where none is; in millimetres l as it stands.
func (l Length) Roundest(u Unit) Length {
	if u != Inches {
		return l
	}
	for parts := 1.0; ; parts *= 2 {
		round := Length(math.Round(float64(Length(math.Round(l.In()*parts)/parts)*Inch)*1e9) / 1e9)
		if off := math.Abs(float64(round - l)); off <= nearEnough*math.Abs(float64(l)) || parts == 64 {
			return round
		}
	}
}
