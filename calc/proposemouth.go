package calc

import (
	"math"

	"chape/calc/knife"
	"chape/calc/length"
)

// leastHeld is the handle that must be left to hold, mm: common practice, no
// source.
const leastHeld = 50

// ProposeMouth is where the mouth goes unless the maker knows better: over the
// bolster, half the handle and its fattest part, with at least 50 mm left to hold,
// but never short of the blade; just before a guard that stands proud of the back,
// since that would hold the fold off. Whole millimetres, in inches an eighth below; 0
// without marks.
func ProposeMouth(k knife.Knife, u length.Unit) length.Length {
	const eighth = length.Inch / 8
	mouth := proposed(k)
	if u == length.Inches && mouth > eighth {
		mouth = length.Length(math.Floor(float64(mouth/eighth)*(1+1e-12))) * eighth
	}
	return length.Length(math.Round(float64(mouth)*1e9) / 1e9)
}

func proposed(k knife.Knife) length.Length {
	end := k.Length()
	s := k.Stations
	blade, handle := -1, 0 // the first marks of what follows the blade, and of the handle
	var fat knife.Station  // the first where that is thickest
	seen := false          // the blade: what lies before it is no handle
	for i := range s {
		if s[i].Kind == knife.Blade || !seen {
			seen = seen || s[i].Kind == knife.Blade
			continue
		}
		if blade < 0 {
			blade = i
		}
		if i > 0 && s[i].At == s[i-1].At {
			handle = i
		}
		if s[i].Thick > fat.Thick {
			fat = s[i]
		}
	}
	if blade < 0 {
		return downToWhole(end * 0.75)
	}
	if s[blade].At == s[blade-1].At && s[blade-1].Top-s[blade].Top > DefaultLimits().HeldOff {
		return downToWhole(s[blade].At - 1)
	}
	from := s[max(blade, handle)].At
	past := length.Length(math.Ceil(float64(max(from+(end-from)/2, fat.At))))
	if end-past >= leastHeld {
		return past
	}
	return max(downToWhole(min(past, end-leastHeld)), min(downToWhole(s[blade].At), downToWhole(end)))
}

// downToWhole rounds down to whole millimetres, but not to nothing.
func downToWhole(l length.Length) length.Length {
	if l < 1 {
		return l
	}
	return length.Length(math.Floor(float64(l)))
}
