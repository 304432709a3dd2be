package length

import "math"

// nearEnough is how far a round figure may be from what it stands for, as a share of it.
const nearEnough = 0.06

// hair is the share of a step by which a length may miss it and still stand on it.
const hair = 1e-6

// Up is the smallest length that the tool shows exactly and that is not below l: what
// is given as "at least". Down is the largest not above it.
func (l Length) Up(u Unit, f Fineness) Length {
	step := f.step(u)
	return Length(math.Ceil(float64(l/step)-hair)) * step
}

// Down is the largest length that the tool shows exactly and that is not above l.
func (l Length) Down(u Unit, f Fineness) Length {
	step := f.step(u)
	return Length(math.Floor(float64(l/step)+hair)) * step
}

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
