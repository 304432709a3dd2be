package report

import (
	"math"
	"strings"
	"testing"
	"time"

	"chape/calc/bend"
	"chape/calc/length"
	"chape/project"
	bill "chape/project/money"
	"chape/project/steps"
)

// The bar: areas and thread are the plan's, a quarter more leather is bought.
func TestTakes(t *testing.T) {
	p := bar()
	p.Steps = []steps.Step{
		{Title: "Cut", Expect: 30 * time.Minute, Spent: 40 * time.Minute, Done: time.Unix(1, 0)},
		{Title: "Line it", Expect: time.Hour, Skipped: true}, {Title: "Sew", Expect: 2 * time.Hour}}
	plan := compute(t, p)
	u := Takes(p, plan, OffcutLoss(0.25))
	area := plan.Body.AreaWithTab + plan.Welt.Area*float64(max(1, plan.Welt.Plies))
	var boxes float64 // the tab makes the bar's smallest box long
	for _, part := range plan.Parts() {
		w, h := part.Outline.SmallestBox()
		boxes += w * h
	}
	if l := u.Leather[0]; math.Abs(float64(l.Cut)-area) > 1e-6 || math.Abs(float64(l.Bought)-boxes) > 1e-6 || l.From != "the parts side by side" {
		t.Errorf("leather %+v, want %v cut, %v bought", l, area, boxes)
	}
	if l := Takes(p, plan, OffcutLoss(1.5)).Leather[0]; math.Abs(float64(l.Bought)-2.5*area) > 1e-6 || l.From != "150 % for offcuts" {
		t.Errorf("leather with many offcuts %+v", l)
	}
	if got, want := u.Thread.MM(), plan.Thread.Length+plan.Loop.Thread; math.Abs(got-want) > 1e-9 {
		t.Errorf("thread %v, want %v", got, want)
	}
	if got, want := bill.Hours(u.Steps), (bill.Sum{Expected: 150 * time.Minute, Spent: 40 * time.Minute, Left: 2 * time.Hour}); got != want {
		t.Errorf("minutes %v, want %v", got, want)
	}
}

// What the project's own placing loses goes before a share for offcuts: half of what is cut
// lost is a yield of 67 %.
func TestPlacedInTheProject(t *testing.T) {
	p := bar()
	plan := compute(t, p)
	if l := LossOf(p, plan, 0.25); l != OffcutLoss(0.25) {
		t.Errorf("before placing %+v", l)
	}
	p.Hide = project.Hide{Name: "shoulder", Lost: 0.5, Placed: true}
	l := Takes(p, plan, LossOf(p, plan, 0.25)).Leather[0]
	if math.Abs(float64(l.Bought)-1.5*float64(l.Cut)) > 1e-6 || l.From != "placed, yield 67 %" {
		t.Errorf("leather %+v", l)
	}
	rows := Figures(p, plan, length.Millimetres, 0.25).Pick(ToBuy)
	if want := l.Bought.Format(length.Millimetres); len(rows) != 1 || rows[0].Value+" "+rows[0].Unit != want || !strings.Contains(rows[0].Note+rows[0].Why, "as placed, yield 67 %") {
		t.Errorf("rows %+v, want %s", rows, want)
	}
}

// The price of the leather that the sheath is cut from goes before that of the settings, and
// is said: 1 ft² is 929.0304 cm².
func TestThePriceOfTheLeatherItself(t *testing.T) {
	p := bar()
	p.Hide = project.Hide{Name: "shoulder", Price: bill.ByArea{Ft2: "9.50"}}
	plan := compute(t, p)
	u := Takes(p, plan, OffcutLoss(1.5))
	l := u.Leather[0]
	if l.Price.String() != "9.5" || l.By != length.SquareFoot || l.From != "150 % for offcuts, the price of shoulder" {
		t.Errorf("leather %+v", l)
	}
	other, _ := bill.Parse("100")
	line := bill.Cost(u, bill.Prices{Leather: other}).Lines[0]
	want := math.Round(float64(l.Bought)/92903.04*9.5*100) / 100
	if got, _ := line.Amount.Decimal().Float64(); math.Abs(got-want) > 0.006 || !strings.Contains(line.From, "at 9.50, 150 % for offcuts, the price of shoulder") {
		t.Errorf("line %+v, want %.2f", line, want)
	}
}

// A hide that gives 10 % wet, 4 % for good, by the plan's own room at its tightest place.
func TestEased(t *testing.T) {
	plan := compute(t, bar())
	_, at := plan.AfterStretch(0)
	room := plan.Across(at).Room
	say := func(mm float64) string { return length.Length(mm).Format(length.Millimetres, length.Calliper) }
	got := Eased(plan, bend.Stretch{Wet: 0.1, Kept: 0.04, Plus: 0.007}, length.Millimetres)
	for _, want := range []string{"gives " + say(0.1*room) + " ± " + say(0.007*room) + " a side while wet", "of which " + say(0.04*room) + " stays", "as cut", "once dry"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q has no %q", got, want)
		}
	}
	if got := Eased(plan, bend.Stretch{Wet: 0.1, Plus: 0.007}, length.Inches); strings.Contains(got, "stays") || !strings.Contains(got, "once formed") {
		t.Errorf("not dried yet: %q", got)
	}
}
