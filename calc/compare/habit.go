package compare

import (
	"slices"

	"chape/calc"
	"chape/calc/length"
)

// Region is a stretch between two marks.
type Region uint8

// The regions, from the point on. What lies outside counts to the nearer.
const (
	ToDeepest Region = iota // point to the blade's deepest place
	ToFront                 // from there to the front of the handle
	ToMouth                 // from there to the mouth
)

// Regions lists them all.
var Regions = []Region{ToDeepest, ToFront, ToMouth}

// String says the region in words.
func (r Region) String() string {
	return [...]string{"from the point to the deepest place", "from the deepest place to the handle", "from the handle to the mouth"}[r]
}

// RegionOf is where a place lies; a mark counts to the region before it.
func (m Marks) RegionOf(x float64) Region {
	switch {
	case x <= m.Deepest:
		return ToDeepest
	case x <= m.Front:
		return ToFront
	}
	return ToMouth
}

// ends are the marks of a region.
func (m Marks) ends(r Region) (lo, hi float64) { l := m.list(); return l[r], l[r+1] }

// Tried is a finished sheath and the corrections that were found by trying it in
// leather or on the finished sheath; those found in paper are to be left out.
type Tried struct {
	Marks Marks
	Fits  []calc.Fit
}

// Habit is what corrections in one region tend to be.
type Habit struct {
	Region Region
	By     float64 // median over all sheaths of what was added there in all, mm; none counts as 0
	With   int     // sheaths that had a correction there
	Of     int     // sheaths in all
	Place  float64 // median place, as a share of the region; 0.5 with none
	Reach  float64 // median reach, mm; 0 with none
}

// Habits takes finished sheaths of the same leather together, by region.
func Habits(past []Tried) []Habit {
	var hs []Habit
	for _, r := range Regions {
		h := Habit{Region: r, Of: len(past), Place: 0.5}
		var by, place, reach []float64
		for _, t := range past {
			sum, any := 0.0, false
			for _, f := range t.Fits {
				if t.Marks.RegionOf(f.At.MM()) != r {
					continue
				}
				sum, any = sum+f.By.MM(), true
				place = append(place, t.Marks.share(r, f.At.MM()))
				reach = append(reach, f.Reach.MM())
			}
			if any {
				h.With++
			}
			by = append(by, sum)
		}
		h.By = median(by)
		if h.With > 0 {
			h.Place, h.Reach = median(place), median(reach)
		}
		hs = append(hs, h)
	}
	return hs
}

// share is where a place lies in a region, 0 to 1.
func (m Marks) share(r Region, x float64) float64 {
	lo, hi := m.ends(r)
	if hi <= lo {
		return 0.5
	}
	return min(1, max(0, (x-lo)/(hi-lo)))
}

// median is the middle value, or half way between the two middle ones; 0 of none.
func median(v []float64) float64 {
	if len(v) == 0 {
		return 0
	}
	s := slices.Sorted(slices.Values(v))
	n := len(s)
	return (s[(n-1)/2] + s[n/2]) / 2
}

// Offer is the habit as a correction for another knife. There is nothing to offer
// where half the sheaths or more had none.
func (h Habit) Offer(m Marks) (calc.Fit, bool) {
	if h.Reach <= 0 || h.By > -leastBy && h.By < leastBy {
		return calc.Fit{}, false
	}
	lo, hi := m.ends(h.Region)
	return calc.Fit{At: length.Length(lo + h.Place*(hi-lo)), By: length.Length(h.By), Reach: length.Length(max(leastReach, h.Reach))}, true
}
