package print

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"chape/calc"
	"chape/project/print/printtest"
	"chape/project/print/sheet"
)

// The eight cases as the geometry has them: from the right hip, edge to the
// rear, grain side up, the back half lies right; each of the three mirrors it.
func TestEightSides(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		hand  calc.Hand
		edge  calc.Edge
		up    calc.Up
		right bool
	}{
		{calc.RightHand, calc.EdgeRear, calc.GrainUp, true},
		{calc.RightHand, calc.EdgeRear, calc.FleshUp, false},
		{calc.RightHand, calc.EdgeFront, calc.GrainUp, false},
		{calc.RightHand, calc.EdgeFront, calc.FleshUp, true},
		{calc.LeftHand, calc.EdgeRear, calc.GrainUp, false},
		{calc.LeftHand, calc.EdgeRear, calc.FleshUp, true},
		{calc.LeftHand, calc.EdgeFront, calc.GrainUp, true},
		{calc.LeftHand, calc.EdgeFront, calc.FleshUp, false},
	} {
		name := fmt.Sprint(c.hand, " ", c.edge, " ", c.up)
		p := garden()
		p.Customer.Hand, p.Customer.Edge = c.hand, c.edge
		plan := compute(t, p)
		data, err := PDF(p, plan, Options{Up: c.up, Paper: paper(t, "a3")}) // all on one sheet
		if err != nil {
			t.Fatal(err)
		}
		seen := false
		for _, q := range readPDF(t, data) {
			if !slices.ContainsFunc(q.Texts, func(w printtest.Text) bool { return w.Says == "back half" }) {
				continue
			}
			seen = true
			checkSide(t, name, q, plan, c.right)
			if want := map[calc.Up]string{calc.GrainUp: "Grain side up", calc.FleshUp: "Flesh side up"}[c.up]; !strings.Contains(oneLine(q.Words()), want) {
				t.Errorf("%s: the sheet does not say %q", name, want)
			}
		}
		if !seen {
			t.Errorf("%s: no sheet names the back half", name)
		}
	}
}

// checkSide finds the fold, the drain and the relief holes on the paper.
func checkSide(t *testing.T, name string, q readPage, plan *calc.Plan, right bool) {
	t.Helper()
	var fold, low, high float64
	for _, l := range q.Paths {
		if l.Layer == sheet.FoldLayer && len(l.Dashes) > 0 && math.Abs(l.Pts[0].X-l.Pts[1].X) < 0.01 {
			fold, low, high = l.Pts[0].X, l.Pts[0].Y, l.Pts[1].Y
		}
	}
	if !(high < low) {
		t.Fatalf("%s: the mouth is not up: fold from %.1f to %.1f", name, low, high)
	}
	side := -1.0
	if right {
		side = 1
	}
	zero := low + plan.Flat.Cut[0].X // paper's y of the knife's point
	want := []calc.Circle{*plan.Flat.Drain}
	want = append(want, plan.Loop.Relief...)
	for _, w := range want {
		ok := false
		for _, got := range q.Circles(sheet.ReliefLayer) {
			ok = ok || math.Abs(got.At.X-(fold+side*w.Centre.Y)) < 0.05 && math.Abs(got.At.Y-(zero-w.Centre.X)) < 0.05 &&
				math.Abs(got.Radius-w.Diameter/2) < 0.01
		}
		if !ok {
			t.Errorf("%s: no hole of %.2f mm at %+.2f from the fold, %.2f along it", name, w.Diameter, side*w.Centre.Y, w.Centre.X)
		}
	}
}
