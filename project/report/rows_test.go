package report

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project"
	"chape/project/steps"
)

// told is a plan whose every figure is another, so that none can stand under the name of
// its neighbour unseen. The figures are made up; nobody sews so.
func told() (project.Project, *calc.Plan) {
	p := project.Project{Steps: []steps.Step{{Spent: 90 * time.Minute}}}
	p.Stitch.First, p.Stitch.Method = 7.5, calc.TwoNeedles
	p.Sheath.Leather, p.Belt.Tab = 3.2, 31
	plan := &calc.Plan{}
	plan.Stitch = calc.Stitching{Stitches: 41, Holes: 42, Walk: 3.871, Pitch: 4.123, Stack: 9.63, PlaneLine: 158.2, Line: 161.9,
		Drills: []calc.Drill{{Series: "mm", Name: "1.1 mm"}, {Series: "mm", Name: "1.2 mm", Choice: true}, {Series: "mm", Name: "1.3 mm"},
			{Series: "mm", Name: "1.4 mm"}, {Series: "in", Name: "1/16 in"}}}
	plan.Thread.Length, plan.Thread.Ratio = 1534, 7.84
	plan.Loop.Thread, plan.Loop.Offset = 462, 10.5
	plan.Body.Length, plan.Body.TabLength, plan.Body.Width, plan.Body.Bend = 171.9, 99.4, 117.2, 2.51
	plan.Body.AreaWithTab = 18000
	plan.Welt.Area, plan.Welt.Plies, plan.Welt.Thickness = 1000, 2, 6.4
	return p, plan
}

func lines(rs Rows) string {
	var b strings.Builder
	for _, r := range rs {
		fmt.Fprintf(&b, "%s: %s (%s)\n", r.Name, r.Said(), r.Words())
	}
	return b.String()
}

// Every figure under its own name, as closely as its tool shows it: 3.871 is 3.87 for the
// dividers, ten of it 38.7; 9.63 is 9.65 for a calliper, 161.9 is 162 for a ruler. To buy:
// (18000 + 2·1000)·1.2 mm² = 240 cm².
func TestFiguresSayWhatTheyAre(t *testing.T) {
	p, plan := told()
	want := `stitches: 41 (42 holes)
divider setting: 3.87 mm (straight from hole to hole)
ten steps of it: 38.7 mm (in a straight line along a ruler, to check the setting)
pitch along the line: 4.12 mm ()
mouth to first hole: 7.5 mm (along the line)
drill: 1.2 mm (or 1.1 mm, 1.3 mm to 1.4 mm, 1/16 in)
thickness to sew through: 9.65 mm (two of leather and the welt)
stitch line, sheath closed: 158.0 mm (measure yours before stepping off)
stitch line, in the flat: 162.0 mm ()
thread for the seam: 1.53 m (7.8 times the seam, waste and tails on top; a needle at each end)
thread for the loop: 0.46 m ()
leather to buy: 240 cm² (with 20 % for offcuts)
smallest piece, long: 271.5 mm ()
smallest piece, wide: 117.0 mm (both halves, fold in the middle)
tab, long: 99.5 mm (from the mouth)
tab, wide: 31.0 mm (near edge 10.5 mm from the fold)
leather used: 200 cm² (body, tab and welt)
leather, body: 3.20 mm (thickness)
welt, all plies: 6.40 mm (2 plies, 10 cm² each)
added for the bend, a half: 2.50 mm ()
`
	if got := lines(Figures(p, plan, length.Millimetres, 0.2)); got != want {
		t.Errorf("Figures say\n%s\nwant\n%s", got, want)
	}
}

// 3.871 mm is 0.1524 in, and ten steps 1.524 in: a 64th would be 5/32, 3.97 mm. 9.63 mm is
// 0.379 in, 24/64; 162 mm is 6 3/8 in; 1534 mm is 5.03 ft.
func TestFiguresInInches(t *testing.T) {
	p, plan := told()
	p.Stitch.Measured = 6.5 * length.Inch
	want := `stitches: 41 (42 holes)
divider setting: 0.152 in (3.87 mm; straight from hole to hole)
ten steps of it: 1.52 in (38.7 mm; in a straight line along a ruler, to check the setting)
thickness to sew through: 3/8 in (two of leather and the welt)
stitch line, sheath closed: 6 7/32 in (as computed; laid out on 6 1/2 in as measured)
thread for the seam: 5.0 ft (7.8 times the seam, waste and tails on top; a needle at each end)
`
	rows := Figures(p, plan, length.Inches, 0)
	if got := lines(rows.Pick(Stitches, Divider, TenSteps, Stack, ClosedLine, SeamThread)); got != want {
		t.Errorf("Figures say\n%s\nwant\n%s", got, want)
	}
	if rest := rows.Pick(Money); len(rest) > 0 {
		t.Errorf("without rates a cost is said: %v", rest)
	}
}

// What a sheath does not have is not said.
func TestFiguresWithoutLoop(t *testing.T) {
	p, plan := told()
	plan.Body.TabLength, plan.Loop.Thread = 0, 0
	rows := Figures(p, plan, length.Millimetres, 0)
	if got := rows.Pick(TabLong, TabWide, LoopThread); len(got) > 0 {
		t.Errorf("a sheath without a tab has %v", got)
	}
	if got := rows.Pick(Used)[0].Note; got != "body and welt" {
		t.Errorf("leather is used for %q", got)
	}
}

// The tightest place is where the check found it, with the room that is left there: 0.5 mm
// over the need is to spare, as much under it held by the moulding while it is snug.
func TestTightest(t *testing.T) {
	p := bar()
	for _, c := range []struct {
		ease length.Length
		want string
	}{{0, "a side to spare"}, {-1, "a side tight, room to form"}, {-4, "a side too tight"}} {
		p.Sheath.Ease = c.ease
		plan := compute(t, p)
		row := Figures(p, plan, length.Millimetres, 0).Pick(Tightest)
		if len(row) != 1 || !strings.HasPrefix(row[0].Note, c.want+", at ") {
			t.Errorf("ease %v: %v, want %s", c.ease, row, c.want)
		}
		for _, check := range plan.Checks {
			if a := plan.Across(check.At); check.Name == "squeeze" {
				by := length.Length(math.Abs(a.Need-a.Room)).Figure(length.Millimetres, length.Calliper)
				at := length.Length(check.At).Format(length.Millimetres, length.Ruler)
				if row[0].Value != by || !strings.HasSuffix(row[0].Note, ", at "+at) {
					t.Errorf("ease %v: %v, want %s at %s", c.ease, row, by, at)
				}
			}
		}
	}
}

// Pick keeps the order asked for.
func TestPick(t *testing.T) {
	rows := Rows{{Key: Stitches, Name: "a"}, {Key: Divider, Name: "b"}, {Key: Drill, Name: "c"}}
	if got := lines(rows.Pick(Drill, Money, Stitches)); got != "c:  ()\na:  ()\n" {
		t.Errorf("Pick = %q", got)
	}
}

// The numbered holes, the table of all and what the setting-out sheet says are one figure.
func TestHolesAreSaidAlike(t *testing.T) {
	plan := compute(t, bar())
	plan.Stitch.Along[9] = 40.74 // a ruler shows 40.5: halves of a millimetre
	for _, u := range []length.Unit{length.Millimetres, length.Inches} {
		want := map[length.Unit]string{length.Millimetres: "40.5", length.Inches: "1 19/32"}[u]
		tenth, all := TenthHoles(plan, u).Rows[1], Holes(plan, u).Rows[9]
		if tenth[0] != "10" || tenth[1] != want || all[0] != "10" || all[1] != want || AlongAt(plan, 9, u) != want {
			t.Errorf("hole 10 in %s: %v, %v, %s, want %s along the line", u, tenth, all, AlongAt(plan, 9, u), want)
		}
	}
}

func TestHoldsOfTheSteps(t *testing.T) {
	for _, c := range []struct {
		hold, latest time.Duration
		want         string
	}{
		{0, 0, ""}, {15 * time.Minute, 0, "wait 15 min"}, {2 * time.Hour, 0, "wait 2 h"}, {0, time.Hour, "look by 1 h"},
		{24 * time.Hour, 48 * time.Hour, "wait 24 h, look by 48 h"}, {90 * time.Minute, 0, "wait 1 h 30 min"},
	} {
		if got := hold(steps.Step{Hold: c.hold, Latest: c.latest}); got != c.want {
			t.Errorf("hold of %v, %v: %q, want %q", c.hold, c.latest, got, c.want)
		}
	}
}

// Each table of holes has along the fold before from the fold: that of the tenths on the closed
// sheath, the other two in the flat, counted from the mouth.
func TestTablesOfHoles(t *testing.T) {
	plan := &calc.Plan{}
	for i := range 12 {
		x := float64(10 * (12 - i))
		plan.Stitch.Positions = append(plan.Stitch.Positions, curve.Vec{X: x, Y: 30 + float64(i)})
		plan.Stitch.Flat = append(plan.Stitch.Flat, curve.Vec{X: x, Y: 50 + float64(i)})
		plan.Stitch.Along = append(plan.Stitch.Along, 4+10.25*float64(i))
	}
	for _, c := range []struct {
		table Table
		rows  int
		first string
		tenth string
		i     int
	}{
		{TenthHoles(plan, length.Millimetres), 3, "1 4.0 120.0 30.0", "10 96.5 30.0 39.0", 1},
		{Holes(plan, length.Millimetres), 12, "1 4.0 120.0 50.0", "10 96.5 30.0 59.0", 9},
		{FlatHoles(plan, length.Millimetres), 12, "1 120.0 50.0", "10 30.0 59.0", 9},
	} {
		if got := c.table.Rows; len(got) != c.rows || strings.Join(got[0], " ") != c.first || strings.Join(got[c.i], " ") != c.tenth || len(got[0]) != len(c.table.Columns) {
			t.Errorf("%s: %d rows, %q, %q", c.table.Name, len(got), got[0], got[c.i])
		}
		flat := strings.Contains(strings.Join(c.table.Columns, " ")+c.table.Name, "flat")
		if closed := strings.Contains(c.table.Name, "closed"); flat == closed {
			t.Errorf("the heads of %q, %q do not say whether the sheath is closed", c.table.Name, c.table.Columns)
		}
	}
}

// The half-widths stand in their columns: the stitch line outside the glue line, inside the
// cut line, each as the plan has it at that place.
func TestHalfWidthsInTheirColumns(t *testing.T) {
	plan := compute(t, bar())
	table := HalfWidths(plan, length.Millimetres)
	if got := strings.Join(table.Columns, ", "); got != "along the fold, stitch line, glue line, cut line, " {
		t.Errorf("columns %q", got)
	}
	for _, o := range plan.Body.Offsets {
		for _, r := range table.Rows {
			if !o.Sewn || r[0] != fig(o.At, length.Millimetres) {
				continue
			}
			if r[1] != fig(o.Stitch, length.Millimetres) || r[2] != fig(o.Glue, length.Millimetres) || r[3] != fig(o.Cut, length.Millimetres) {
				t.Errorf("at %s: %q, want %v", r[0], r, o)
			}
		}
	}
}
