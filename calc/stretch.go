package calc

import "math"

// AfterStretch is how tight the sheath still is once its leather has given by a
// share of the half girth (calc/bend): what the knife needs over the room there
// is, mm a half, at the place where that is most. Below 0 there is room to
// spare; Limits say what is loose and what is tight. The place need not be that of
// the check squeeze: much room gives more than little.
func (p *Plan) AfterStretch(share float64) (over, at float64) {
	s := p.at
	over = math.Inf(-1)
	for i, need := range s.need.Y {
		if d := need - s.room.Y[i]*(1+share); d > over+tie {
			over, at = d, s.need.X[i]
		}
	}
	return over, at
}
