package report

import (
	"math"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
)

// The page says the drain, the strap, the fold and what a correction seen in paper counts:
// 1 mm taken away, paper 0.1, leather 3, k 0.5: -1 + (π/2)·0.5·2.9 = 1.28 mm.
func TestExtras(t *testing.T) {
	p := bar()
	for i := range p.Knife.Stations {
		p.Knife.Stations[i].Top += 2
		p.Knife.Stations[i].Bottom += 2
	}
	st := p.Knife.Stations
	blade := st[0]
	blade.Kind, blade.Bevel = knife.Blade, 1
	end := blade
	end.At, st[0].At = 40, 40
	p.Knife.Stations = []knife.Station{blade, end, st[0], st[1]}
	p.Knife.Stations[3].At = 220
	p.Sheath.PointRoom, p.Sheath.Drain = 4.5, 4
	p.Strap = calc.Strap{Kind: calc.SnapStrap, Width: 18, Thickness: 2.4, Overlap: 30}
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 60, By: -1, Reach: 20}, With: "paper"}}
	plan := compute(t, p)
	got := lines(Extras(p, plan, length.Millimetres))
	for _, want := range []string{"fold below the rule, point", "2.00", "drain, across", "4.00", "3 mm beyond the point", "strap, long", "arm over the back",
		"fixing", "in paper: counts as +1.3 mm"} {
		if !strings.Contains(got, want) {
			t.Errorf("not said: %q in\n%s", want, got)
		}
	}
	if page := strings.Join(strings.Fields(Page(p, plan, length.Millimetres, 0)), " "); !strings.Contains(page, "in paper: counts as +1.3 mm") || !strings.Contains(page, "drain, across") {
		t.Errorf("the page does not say it:\n%s", page)
	}
	data := decode(t, p, plan)
	fold, strap := data["fold_line"].(map[string]any), data["strap"].(map[string]any)
	if math.Abs(fold["gap"].(float64)-2) > 1e-9 || math.Abs(strap["snap"].(float64)-15) > 1e-9 {
		t.Errorf("fold_line %v, strap %v", fold, strap)
	}
	if f := (calc.Fit{By: -3, Paper: true}); InPaper(f, p.Sheath, length.Millimetres) != "in paper: counts as -0.7 mm" {
		t.Errorf("3 taken away in paper: %s", InPaper(f, p.Sheath, length.Millimetres))
	}
	if rows := Extras(bar(), compute(t, bar()), length.Millimetres); len(rows) != 0 {
		t.Errorf("a plain bar has extras: %+v", rows)
	}
}

// What a section passes with: to spare, tight up to 1.5 mm, too tight beyond.
func TestRoomInWords(t *testing.T) {
	plan := compute(t, bar())
	for need, want := range map[float64]string{-0.1: "a side to spare", 0: "a side to spare", 1.4: "a side tight, " + plan.Held(), 1.6: "a side too tight"} {
		if got := Room(plan, calc.Across{Need: 30 + need, Room: 30}); got != want {
			t.Errorf("%v mm over: %q, want %q", need, got, want)
		}
	}
}
