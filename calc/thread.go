package calc

import (
	"fmt"
	"math"

	"chape/calc/length"
)

// seamThread is the thread for the seam: each stitch has a strand on either
// side and each hole is passed by both, back stitches twice; waste and tails
// come on top. Both ways of sewing use the same length.
func seamThread(q Stitching, st Stitch) Thread {
	one := strand(q.Stitches, q.Holes, st.Back, q.Pitch, q.Stack)
	return Thread{
		Length: (1+st.Waste)*2*one + 2*st.Tail.MM(),
		Ratio:  2 * one / (float64(q.Stitches) * q.Pitch),
	}
}

// strand is the way of one of the two strands, back stitches at each end
// included.
func strand(stitches, holes, back int, pitch, stack float64) float64 {
	return float64(stitches+2*back)*pitch + float64(holes+2*back)*stack
}

// numberDrills are the diameters of the number series #30 to #80 in inches.
// Source: ASME B94.11M sizes, from memory; #30, #43, #52, #60, #70 and #80
// are checked in the tests.
var numberDrills = [...]float64{
	.1285, .1200, .1160, .1130, .1110, .1100, .1065, .1040, .1015, .0995,
	.0980, .0960, .0935, .0890, .0860, .0820, .0810, .0785, .0760, .0730,
	.0700, .0670, .0635, .0595, .0550, .0520, .0465, .0430, .0420, .0410,
	.0400, .0390, .0380, .0370, .0360, .0350, .0330, .0320, .0310, .0292,
	.0280, .0260, .0250, .0240, .0225, .0210, .0200, .0180, .0160, .0145,
	.0135,
}

const firstNumberDrill = 30

// NumberDrill is the diameter of drill #n in mm; n is 30 to 80.
func NumberDrill(n int) float64 { return 25.4 * numberDrills[n-firstNumberDrill] }

// strandThrough is how wide a waxed strand of diameter 1 lies in its hole: it
// flattens (common practice, no source).
const strandThrough = 0.75

// drillRange is how much larger than the smallest hole a drill may be, mm.
const drillRange = 0.4

// Hole is the smallest hole that the seam can be sewn through, mm. On the
// second pass the hook or needle comes through beside the strand that is
// there; with two needles both strands lie in it in the end, and two circles
// in a circle take twice their diameter.
func (s Stitch) Hole() float64 {
	d := s.Thread.MM()
	least := s.Shank().MM() + strandThrough*d
	if s.Method == TwoNeedles {
		least = math.Max(least, 2*d)
	}
	return least
}

// Drills offers the drills from the smallest hole to 0.4 mm above, from the
// metric 0.1 mm, the inch 1/64 and the number series, each from the smallest
// up. The smallest of all is the choice.
func (s Stitch) Drills() []Drill {
	const hair = 1e-9
	lo := s.Hole() - hair
	hi := s.Hole() + drillRange + hair
	all := append(append(metricDrills(lo, hi), inchDrills(lo, hi)...), numberedDrills(lo, hi)...)
	choice := 0
	for i, dr := range all {
		if dr.Diameter < all[choice].Diameter {
			choice = i
		}
	}
	all[choice].Choice = true
	return all
}

// metricDrills lists the sizes from lo to hi: always some, the range being
// wider than their steps.
func metricDrills(lo, hi float64) []Drill {
	var out []Drill
	for n := math.Ceil(lo * 10); n/10 <= hi; n++ {
		out = append(out, Drill{Series: "metric", Name: fmt.Sprintf("%.1f mm", n/10), Diameter: n / 10})
	}
	return out
}

func inchDrills(lo, hi float64) []Drill {
	const unit = 25.4 / 64
	var out []Drill
	for n := math.Ceil(lo / unit); n*unit <= hi; n++ {
		name := length.Length(n*unit).Figure(length.Inches, length.Calliper) + " in"
		out = append(out, Drill{Series: "inch", Name: name, Diameter: n * unit})
	}
	return out
}

func numberedDrills(lo, hi float64) []Drill {
	var out []Drill
	for i := len(numberDrills) - 1; i >= 0; i-- {
		if d := NumberDrill(i + firstNumberDrill); d >= lo && d <= hi {
			out = append(out, Drill{Series: "number", Name: fmt.Sprintf("#%d", i+firstNumberDrill), Diameter: d})
		}
	}
	return out
}
