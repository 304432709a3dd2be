package report

import (
	"math"
	"testing"
	"time"

	"chape/calc/curve"
	"chape/calc/nest"
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
	if l := u.Leather[0]; math.Abs(float64(l.Cut)-area) > 1e-6 || math.Abs(float64(l.Bought)-1.25*area) > 1e-6 || l.From != "25 % for offcuts" {
		t.Errorf("leather %+v, want %v cut", l, area)
	}
	if got, want := u.Thread.MM(), plan.Thread.Length+plan.Loop.Thread; math.Abs(got-want) > 1e-9 {
		t.Errorf("thread %v, want %v", got, want)
	}
	if got, want := bill.Hours(u.Steps), (bill.Sum{Expected: 150 * time.Minute, Spent: 40 * time.Minute, Left: 2 * time.Hour}); got != want {
		t.Errorf("minutes %v, want %v", got, want)
	}
}

// Parts of 600 mm² in a rectangle of 800: a third more is bought.
func TestPlacedLoss(t *testing.T) {
	r := nest.Result{Uses: []nest.Use{{Hi: curve.Vec{X: 40, Y: 20}, Parts: 600}}}
	if l := PlacedLoss(r); math.Abs(l.Share-1.0/3) > 1e-12 || l.From != "placed, yield 75 %" {
		t.Errorf("PlacedLoss = %+v", l)
	}
	if l := PlacedLoss(nest.Result{}); l != (Loss{}) {
		t.Errorf("of nothing placed %+v", l)
	}
}
