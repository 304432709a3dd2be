package report

import (
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
)

// looped is a plan whose loop has every figure apart from the others; nobody makes such one.
func looped() *calc.Plan {
	plan := &calc.Plan{}
	plan.Input.Belt.Tab = 31
	plan.Body.TabLength = 120
	plan.Loop = calc.Loop{Rows: 2, Holes: 14, Stitches: 6, Thread: 500, Offset: 10.5, Start: 150, Bends: []float64{17, 68.5},
		Relief: []calc.Circle{{Centre: curve.Vec{X: 151.2, Y: 9}, Diameter: 3.21}, {Centre: curve.Vec{X: 149.1, Y: 43}, Diameter: 3.29}},
		Body:   []curve.Vec{{X: 137.5, Y: 14}, {X: 137.5, Y: 17.876}}, RowX: []float64{137.5, 125}, LapX: []float64{240, 252.6}}
	return plan
}

// Every figure of the loop under its own name: rows are counted below the mouth on the body,
// 150 − 137.5 = 12.5, and past it on the tab, 240 − 150 = 90; the far edge is the near one and
// the tab's width, 10.5 + 31.
func TestLoopFigures(t *testing.T) {
	want := `tab's near edge from the fold: 10.5 mm (on the back half)
tab's far edge from the fold: 41.5 mm ()
turn begins past the mouth: 17.0 mm ()
turn ends past the mouth: 68.5 mm ()
row 1 below the mouth: 12.5 mm (on the tab 90 mm past the mouth)
row 2 below the mouth: 25.0 mm (on the tab 102.5 mm past the mouth)
holes in the loop: 14 (6 stitches a row)
divider setting there: 3.88 mm ()
relief hole, across: 3.20 mm (151 mm along the fold, 9 mm from it)
relief hole, across: 3.30 mm (149 mm along the fold, 43 mm from it)
`
	if got := lines(LoopFigures(looped(), length.Millimetres)); got != want {
		t.Errorf("of the loop is said\n%s\nwant\n%s", got, want)
	}
	got := lines(LoopFigures(looped(), length.Inches)) // 10.5 mm is 13.2/32 in, 3.876 mm 0.1526 in, 3.21 mm 8.1/64 in
	for _, line := range []string{"tab's near edge from the fold: 13/32 in", "divider setting there: 0.153 in (3.88 mm)", "relief hole, across: 1/8 in"} {
		if !strings.Contains(got, line) {
			t.Errorf("in inches no %q in\n%s", line, got)
		}
	}
}

// Without a tab nothing is said of a loop; one too narrow to sew has neither rows nor holes.
func TestLoopFiguresLeaveOut(t *testing.T) {
	plan := looped()
	plan.Loop.Rows, plan.Loop.Body = 0, nil
	if got := lines(LoopFigures(plan, length.Millimetres)); strings.Contains(got, "row") || strings.Contains(got, "holes in") || strings.Contains(got, "divider") {
		t.Errorf("without rows:\n%s", got)
	}
	plan.Body.TabLength = 0
	if got := LoopFigures(plan, length.Millimetres); got != nil {
		t.Errorf("without a tab: %v", got)
	}
}

// What lies on the bench: the belt as wide and thick as it was typed, the strand, what must go
// through the hole beside it, and the rows that tools are set by, in their order.
func TestBench(t *testing.T) {
	p, plan := told()
	p.Belt.Width, p.Belt.Thickness, p.Stitch.Thread = 38, 3.6, 0.8
	want := `belt, wide: 38.00 mm (and 3.6 mm thick)
thread, across: 0.80 mm ()
needle, across: 1.20 mm (taken as 1.5 threads)
divider setting: 3.87 mm (straight from hole to hole)
ten steps of it: 38.7 mm (in a straight line along a ruler, to check the setting)
drill: 1.2 mm (or 1.1 mm, 1.3 mm to 1.4 mm, 1/16 in)
thread for the seam: 1.53 m (7.8 times the seam, waste and tails on top; a needle at each end)
thread for the loop: 0.46 m ()
`
	if got := lines(Bench(p, plan, length.Millimetres)); got != want {
		t.Errorf("on the bench lies\n%s\nwant\n%s", got, want)
	}
	p.Stitch.Method, p.Stitch.Needle, p.Stitch.NeedleSet = calc.Hook, 1.75, true
	plan.Body.TabLength = 0
	got := lines(Bench(p, plan, length.Millimetres))
	if !strings.HasPrefix(got, "thread, across: 0.80 mm ()\nhook's shank, across: 1.75 mm ()\n") {
		t.Errorf("without a loop, with a hook of its own:\n%s", got)
	}
	bench := map[string]bool{}
	for _, r := range Bench(p, plan, length.Millimetres) {
		bench[r.Name] = true
	}
	for _, r := range Figures(p, plan, length.Millimetres, 0).WithoutBench() {
		if bench[r.Name] {
			t.Errorf("%s is on the bench and among the figures", r.Name)
		}
	}
}

// The knife's own dimensions as they were typed: the gap from the rule, the depth from spine to
// edge, the grind as a share of it. A handle has no grind.
func TestKnifeMarks(t *testing.T) {
	p := project.Project{}
	p.Knife.Stations = []knife.Station{
		{At: 0, Top: 7, Bottom: 7.4, Thick: 0.8, Kind: knife.Blade, Bevel: 1},
		{At: 60, Top: 2, Bottom: 29, Thick: 2.93, Kind: knife.Blade, Bevel: 0.5},
		{At: 112.25, Top: 1, Bottom: 30, Thick: 15, Kind: knife.Slab},
		{At: 150, Bottom: 31, Thick: 19, Kind: knife.Oval},
	}
	want := [][]string{{"0.0", "7.00", "0.40", "0.80", "0.40", "blade"}, {"60.0", "2.00", "27.00", "2.95", "13.50", "blade"},
		{"112.5", "1.00", "29.00", "15.00", none, knife.Slab.String()}, {"150.0", "0.00", "31.00", "19.00", none, knife.Oval.String()}}
	table := KnifeMarks(p, length.Millimetres)
	for i, row := range table.Rows {
		if strings.Join(row, "|") != strings.Join(want[i], "|") {
			t.Errorf("mark %d: %q, want %q", i+1, row, want[i])
		}
	}
	if len(table.Rows) != 4 || len(table.Columns) != 6 || table.Name != "the knife, mm" {
		t.Errorf("%q: %d marks, %q", table.Name, len(table.Rows), table.Columns)
	}
	if got := KnifeMarks(p, length.Inches).Rows[1]; strings.Join(got, "|") != "2 3/8|5/64|1 1/16|7/64|17/32|blade" { // 60 mm is 75.6/32 in, 2.93 mm 7.4/64
		t.Errorf("in inches: %q", got)
	}
}

// The words over the knife's table are true: marks that no calliper was on are told from
// those that were measured, and those of an outline were not measured at all.
func TestKnifeMarksSayWhatWasMeasured(t *testing.T) {
	p := project.Defaults()
	if got := KnifeMarks(p, length.Millimetres).Note; !strings.HasPrefix(got, "worked out from the outline's figures: gap") {
		t.Errorf("of an outline: %q", got)
	}
	p.Source = project.FromStations
	if got := KnifeMarks(p, length.Millimetres).Note; !strings.HasPrefix(got, "as measured: gap") {
		t.Errorf("measured: %q", got)
	}
	p.Tracing.Left = []length.Length{p.Knife.Stations[1].At}
	table := KnifeMarks(p, length.Millimetres)
	for i, row := range table.Rows {
		if strings.HasSuffix(row[3], "*") != (i == 1) {
			t.Errorf("mark %d: %q", i+1, row)
		}
	}
	if !strings.HasSuffix(table.Note, "* not measured: thickness, and grind height, as proposed") {
		t.Errorf("traced: %q", table.Note)
	}
}
