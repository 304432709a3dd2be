// Package earlier sets the half-widths of an earlier sheath against a plan.
package earlier

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"chape/calc"
	"chape/calc/compare"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project"
	"chape/project/places"
	"chape/project/versions"
)

// Row is a measured half-width beside the plan's.
type Row struct {
	compare.Difference
	Line   string // what it was measured to
	Index  int    // of the project's list
	Inside bool   // the plan has that line there; else there is no difference
}

// Rows sets half-widths against the plan of the knife that they were made for, in the order
// of the fold.
func Rows(halves []project.Half, k Knife) []Row {
	stitch := versions.StitchLine(k.Plan)
	finished := curve.Dilate(stitch, stitch.X, k.Project.Sheath.Margin.MM()) // sanded flush
	var out []Row
	for i, h := range halves {
		line := finished
		if h.Line == "stitches" {
			line = stitch
		}
		r := Row{Line: h.Line, Index: i, Difference: compare.Difference{At: h.At.MM(), Measured: h.Wide.MM()}}
		measured := curve.Graph{X: []float64{h.At.MM()}, Y: []float64{h.Wide.MM()}}
		if ds := compare.At(measured, line, measured.X); len(ds) == 1 {
			r.Difference, r.Inside = ds[0], true
		}
		out = append(out, r)
	}
	slices.SortStableFunc(out, func(a, b Row) int { return cmp.Compare(a.At, b.At) })
	return out
}

// Curve is the difference over the fold, measured less plan, straight between the places
// that were measured; of several at one place the mean.
func Curve(rows []Row) curve.Graph {
	var g curve.Graph
	here := 0.0 // so many were measured at the last place
	for _, r := range rows {
		if !r.Inside {
			continue
		}
		if n := len(g.X); n > 0 && r.At-g.X[n-1] < 1e-6 {
			here++
			g.Y[n-1] += (r.By - g.Y[n-1]) / here
			continue
		}
		g.X, g.Y, here = append(g.X, r.At), append(g.Y, r.By), 1
	}
	return g
}

// Follow is how near corrections follow what is taken over, mm: as a ruler shows it.
const Follow = 0.5

// Corrections takes a part (a share) of what there is to take from lo to hi over; off is how
// far their sum is from it at worst. There are none where less than two places were measured.
func Corrections(toTake curve.Graph, part, lo, hi float64) (fits []project.Fit, off float64) {
	raw, off := compare.Corrections(toTake, part, lo, hi, Follow)
	for _, f := range raw {
		round := func(l length.Length) length.Length { return length.Length(math.Round(20*l.MM()) / 20) }
		fits = append(fits, project.Fit{Fit: calc.Fit{At: round(f.At), By: round(f.By), Reach: round(f.Reach)}, With: "finished", Note: "from an earlier sheath"})
	}
	return fits, off
}

// seen is the least that a ruler shows, mm.
const seen = 0.25

// RunsOut says what corrections still add outside the stretch from lo to hi that was taken
// over, within the fold from the point to the mouth (mm): they fade away there. It is ""
// where a ruler would not show it.
func RunsOut(fits []project.Fit, lo, hi, mouth float64, u length.Unit) string {
	all := project.Project{Fits: fits}.Input(calc.Limits{}).Fits
	var parts []string
	for _, end := range []struct{ from, step, last float64 }{{lo, -seen, 0}, {hi, seen, mouth}} {
		gone, most := end.from, 0.0
		for x := end.from; (x-end.last)*end.step <= 0; x += end.step {
			if by := compare.Sum(all, x); math.Abs(by) >= seen {
				gone = x + end.step
				if math.Abs(by) > math.Abs(most) {
					most = by
				}
			}
		}
		if most == 0 || end.from == end.last {
			continue
		}
		how := "wider"
		if most < 0 {
			how = "narrower"
		}
		side := "past"
		if end.step < 0 {
			side = "before"
		}
		text := fmt.Sprintf("%s %s: %s %s there", side, length.Length(end.from).Short(u), length.Length(math.Abs(most)).Format(u, length.Ruler), how)
		if gone = math.Ceil(gone); end.step < 0 {
			gone = math.Floor(gone)
		}
		if (gone-end.last)*end.step < 0 {
			text += ", nothing left by " + places.Figure(gone, u)
		}
		parts = append(parts, text)
	}
	if len(parts) == 0 {
		return ""
	}
	return "it runs out " + strings.Join(parts, ", and ")
}

// Words say where the plan is short of the earlier sheath and where it is over, at most:
// "the plan is 4 mm short over the bolster, at 117; 6 mm over at the mouth, at 150".
func Words(k Knife, rows []Row, u length.Unit) string {
	var ds []compare.Difference
	for _, r := range rows {
		if r.Inside {
			ds = append(ds, r.Difference)
		}
	}
	if len(ds) == 0 {
		return ""
	}
	all, plan := places.Of(k.Project), "the plan is "
	if k.Title != "" {
		plan = "the plan of " + k.Title + " is "
	}
	say := func(d compare.Difference, how string) string {
		return length.Length(math.Abs(d.By)).Format(u, length.Ruler) + " " + how + " " + places.On(all, d.At) + ", at " + places.Figure(d.At, u)
	}
	short, over, isShort, isOver := compare.Most(ds)
	isShort, isOver = isShort && short.By >= seen, isOver && over.By <= -seen
	switch {
	case isShort && isOver:
		return plan + say(short, "short") + "; " + say(over, "over")
	case isShort:
		return plan + say(short, "short")
	case isOver:
		return plan + say(over, "over")
	}
	return plan + "as wide as that sheath"
}
