package report

import (
	"math"
	"slices"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
)

// none stands where a line has no figure.
const none = "–"

// HalfWidths is the table a maker marks the leather from: distances from the fold to each
// line, at places along the fold. Rows stand every 10 mm or half inch, and every 2.5 mm or
// eighth where a line turns; one each where the cut line and the stitch line end at the
// fold, and one at the mouth.
func HalfWidths(plan *calc.Plan, u length.Unit) Table {
	t := Table{
		Name: "half-widths, " + u.String(),
		Note: "from the fold line, square to it; along the fold from the knife's point; " +
			"a line that ends runs on straight to the fold",
		Columns: []string{"along the fold", "stitch line", "glue line", "cut line", ""},
	}
	end, seam, mouth := ends(plan)
	for _, x := range places(plan, u) {
		row := []string{fig(x, u), none, none, fig(plan.Flat.Cut.Height(x), u), ""}
		if x >= seam-near {
			row[1], row[2] = fig(plan.Flat.Stitch.Height(x), u), fig(plan.Flat.Glue.Height(x), u)
		}
		switch {
		case x == end:
			row[4] = "end"
		case x == seam:
			row[4] = "seam"
		case math.Abs(x) < near:
			row[4] = "point"
		case x == mouth:
			row[4] = "mouth"
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// near is the distance below which two places are one, mm.
const near = 1e-9

// ends are where the cut line, the stitch line and both at the mouth end, along the fold.
func ends(plan *calc.Plan) (cut, seam, mouth float64) {
	return plan.Flat.Cut[0].X, plan.Flat.Stitch[0].X, plan.Input.Sheath.Mouth.MM()
}

// spacings are the distances of rows: where lines run fair, and where they turn.
func spacings(u length.Unit) (wide, fine float64) {
	if u == length.Inches {
		return length.Inch.MM() / 2, length.Inch.MM() / 8
	}
	return 10, 2.5
}

// places are the rows of the half-widths along the fold.
func places(plan *calc.Plan, u length.Unit) []float64 {
	end, seam, mouth := ends(plan)
	lines := []func(float64) float64{plan.Flat.Cut.Height, plan.Flat.Stitch.Height, plan.Flat.Glue.Height}
	return turning(u, end, mouth, []float64{seam}, func(x float64) []float64 {
		var ys []float64
		for i, at := range lines {
			if i == 0 || x >= seam {
				ys = append(ys, at(x))
			}
		}
		return ys
	})
}

// turn is how far a line may leave the straight one between two rows, mm: a fair curve
// through the rows is then true within the 0.5 mm of a ruler (common practice, no source).
const turn = 1

// apart is how near to an end of a line a row may still stand, mm (common practice, no
// source).
const apart = 1

// turning gives rows from lo to hi: both ends, the places between that have to be there,
// and so many in regular steps as the lines, whose heights are ys, need.
func turning(u length.Unit, lo, hi float64, fixed []float64, ys func(float64) []float64) []float64 {
	wide, fine := spacings(u)
	coarse := []float64{lo}
	for k := math.Floor(lo/wide) + 1; k*wide < hi-near; k++ {
		coarse = append(coarse, k*wide+0) // +0: no minus zero
	}
	coarse = append(coarse, hi)
	var out []float64
	for i := 1; i < len(coarse); i++ {
		a, b := coarse[i-1], coarse[i]
		out = append(out, a)
		if !turns(a, b, fine, ys) {
			continue
		}
		for k := math.Floor(a/fine) + 1; k*fine < b-near; k++ {
			out = append(out, k*fine)
		}
	}
	return thinned(append(out, hi), append([]float64{lo, hi}, fixed...), apart)
}

// turns tells whether any line leaves its chord from a to b by more than turn, or begins
// between the two.
func turns(a, b, step float64, ys func(float64) []float64) bool {
	from, to := ys(a), ys(b)
	if len(from) != len(to) {
		return true
	}
	for x := a + step/2; x < b; x += step / 2 {
		for i, y := range ys(x) {
			if math.Abs(y-from[i]-(to[i]-from[i])*(x-a)/(b-a)) > turn {
				return true
			}
		}
	}
	return false
}

// thinned puts the fixed places among the rows and drops rows, all but the point's, that
// stand nearer to one than least, mm.
func thinned(rows, fixed []float64, least float64) []float64 {
	out := slices.DeleteFunc(rows, func(x float64) bool {
		return x != 0 && slices.ContainsFunc(fixed, func(f float64) bool { return math.Abs(x-f) < least })
	})
	out = append(out, fixed...)
	slices.Sort(out)
	return slices.CompactFunc(out, func(a, b float64) bool { return math.Abs(a-b) < near })
}

// MouthCurve is the table to mark the mouth's curve from: how far along the fold from the
// knife's point it stands, at distances from the fold, with the corner rounded as on the
// front half. No rows: it is cut square.
func MouthCurve(plan *calc.Plan, u length.Unit) Table {
	t := Table{
		Name:    "mouth, " + u.String(),
		Note:    "along the fold from the knife's point, at distances from the fold, on both halves",
		Columns: []string{"from the fold", "along the fold", ""},
	}
	mouth, rounding := mouthEdge(plan)
	lo, hi := mouth.Bounds()
	if hi.X-lo.X < near {
		return t
	}
	upright := make(curve.Line, len(mouth)) // x over y, for Height
	for i, p := range mouth {
		upright[i] = curve.Vec{X: p.Y, Y: p.X}
	}
	last := mouth[len(mouth)-1].Y
	var fixed []float64
	if rounding < last-near {
		fixed = append(fixed, rounding)
	}
	for _, y := range turning(u, 0, last, fixed, func(y float64) []float64 { return []float64{upright.Height(y)} }) {
		row := []string{fig(y, u), fig(upright.Height(y), u), ""}
		switch y {
		case 0:
			row[2] = "fold"
		case last:
			row[2] = "meets the cut line"
			row[1] = fig(mouth[len(mouth)-1].X, u)
		case rounding:
			row[2] = "rounding begins"
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// mouthEdge is the mouth of the front half from the fold to the cut line with the corner's
// arc, as far as it moves away from the fold, and how far from the fold the arc begins.
func mouthEdge(plan *calc.Plan) (edge curve.Line, rounding float64) {
	f := plan.Flat
	edge = slices.Clone(f.Mouth)
	rounding = edge[len(edge)-1].Y
	i := 0 // where the front half leaves the cut line: there the arc begins
	for i < len(f.Cut) && f.Front[i] == f.Cut[i] {
		i++
	}
	arc := f.Front[i : len(f.Front)-len(f.Mouth)+1].Reverse()
	for _, p := range arc {
		if p.Y > edge[len(edge)-1].Y {
			edge = append(edge, p)
		}
	}
	return edge, rounding
}
