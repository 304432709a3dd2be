package report

import (
	"math"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project/example"
)

// reading reads a figure of a table as it is read off it, in mm.
func reading(t *testing.T, cell string, u length.Unit) float64 {
	t.Helper()
	sign := 1.0
	if strings.HasPrefix(cell, "-") {
		sign, cell = -1, cell[1:]
	}
	l, err := length.Parse(cell, u)
	if err != nil {
		t.Fatalf("%q: %v", cell, err)
	}
	return sign * l.MM()
}

// Straight lines between the rows leave the cut line by a turn and what a ruler rounds, in
// both units and right down to where it ends.
func TestRowsFollowTheLine(t *testing.T) {
	p := example.Load(time.Unix(1e9, 0))
	plan := compute(t, p)
	for _, u := range []length.Unit{length.Millimetres, length.Inches} {
		rows := HalfWidths(plan, u).Rows
		wide := 0
		for i := 1; i < len(rows); i++ {
			x0, x1 := reading(t, rows[i-1][0], u), reading(t, rows[i][0], u)
			y0, y1 := reading(t, rows[i-1][3], u), reading(t, rows[i][3], u)
			if x1-x0 > 9 {
				wide++
			}
			slope := math.Abs(y1-y0) / (x1 - x0)
			for x := x0 + 0.5; x < x1; x += 0.5 {
				off := y0 + (y1-y0)*(x-x0)/(x1-x0) - plan.Flat.Cut.Height(x)
				if math.Abs(off) > turn+0.45*(1+slope) {
					t.Errorf("%v: between %s and %s the rows miss the cut line by %.2f mm at %.1f", u, rows[i-1][0], rows[i][0], off, x)
				}
			}
		}
		if wide < 10 {
			t.Errorf("%v: %d rows far apart: the fair run of the line needs no more", u, wide)
		}
		if rows[0][4] != "end" || rows[len(rows)-1][4] != "mouth" {
			t.Errorf("%v: from %q to %q", u, rows[0][4], rows[len(rows)-1][4])
		}
	}
}

// The bar ends at −(gap + margin) = −10, its seam at −gap = −5; there rows stand 2.5 mm
// apart, for the cut line turns its corner. JSON keeps its 10 mm.
func TestPointEnd(t *testing.T) {
	plan := compute(t, bar())
	rows := HalfWidths(plan, length.Millimetres).Rows
	for i, want := range []struct{ at, word string }{{"-10.0", "end"}, {"-7.5", ""}, {"-5.0", "seam"}, {"-2.5", ""}, {"0.0", "point"}, {"10.0", ""}} {
		if rows[i][0] != want.at || rows[i][4] != want.word {
			t.Errorf("row %d stands at %s %q, want %s %q", i, rows[i][0], rows[i][4], want.at, want.word)
		}
	}
	// The cut line is the region under the stitch line dilated by the margin, read out point
	// by point.
	for _, r := range rows[:5] {
		x, want := reading(t, r[0], length.Millimetres), 0.0
		for _, q := range plan.Flat.Stitch {
			if d := x - q.X; math.Abs(d) <= 5 {
				want = max(want, q.Y+math.Sqrt(25-d*d))
			}
		}
		if got := reading(t, r[3], length.Millimetres); math.Abs(got-want) > 0.3 {
			t.Errorf("cut line at %s is %v, the dilated stitch line %.2f", r[0], got, want)
		}
	}
	for i, o := range plan.Body.Offsets[:len(plan.Body.Offsets)-1] {
		if math.Abs(math.Remainder(o.At, 10)) > 1e-9 {
			t.Errorf("offset %d of the JSON stands at %v", i, o.At)
		}
	}
}

// With a rise alone the mouth is M + rise·(1 + cos(πy/C))/2, as the definitions have it;
// with a rounded corner alone, on a straight bar, a square end and a quarter circle.
func TestMouthCurve(t *testing.T) {
	if rows := MouthCurve(compute(t, bar()), length.Millimetres).Rows; len(rows) != 0 {
		t.Errorf("a mouth cut square has rows: %v", rows)
	}
	shape := func(change func(*calc.Sheath)) (*calc.Plan, [][]string) {
		p := bar()
		change(&p.Sheath)
		plan := compute(t, p)
		return plan, MouthCurve(plan, length.Millimetres).Rows
	}
	plan, rows := shape(func(s *calc.Sheath) { s.MouthRise = 12 })
	wide := plan.Body.MouthCut
	for _, r := range rows {
		y := min(reading(t, r[0], length.Millimetres), wide)
		want := 120 + 12*(1+math.Cos(math.Pi*y/wide))/2
		if got := reading(t, r[1], length.Millimetres); math.Abs(got-want) > 0.3 {
			t.Errorf("risen, %s from the fold: %v, want %.2f", r[0], got, want)
		}
	}
	if n := len(rows); rows[0][2] != "fold" || rows[n-1][2] != "meets the cut line" {
		t.Errorf("risen: %v", rows)
	}
	plan, rows = shape(func(s *calc.Sheath) { s.MouthRound = 10 })
	wide = plan.Body.MouthCut
	seen := false
	for _, r := range rows[:len(rows)-1] {
		y, want := reading(t, r[0], length.Millimetres), 120.0
		if up := y - (wide - 10); up > 0 {
			want = 110 + math.Sqrt(100-up*up)
		}
		if got := reading(t, r[1], length.Millimetres); math.Abs(got-want) > 0.6 {
			t.Errorf("rounded, %s from the fold: %v, want %.2f", r[0], got, want)
		}
		seen = seen || r[2] == "rounding begins" && math.Abs(y-(wide-10)) <= 0.5
	}
	if last := rows[len(rows)-1]; !seen || last[1] != "110.0" {
		t.Errorf("rounded: %v", rows)
	}
	p := bar()
	p.Sheath.MouthRise = 12
	if !strings.Contains(Page(p, compute(t, p), length.Millimetres, offcuts), "meets the cut line") {
		t.Error("the page lacks the mouth's curve")
	}
}
