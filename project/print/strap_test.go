package print

import (
	"math"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/curve"
	"chape/project/print/sheet"
)

// The strap's places are written beside them: the piece stands upright, the end over the
// back below, so each word stands as high as its place is far along the strap.
func TestStrapPlaces(t *testing.T) {
	p := garden()
	p.Strap = calc.Strap{Kind: calc.SnapStrap, Width: 18, Thickness: 2.4, Overlap: 30}
	plan := compute(t, p)
	j, err := newJob(p, plan, Options{})
	if err != nil {
		t.Fatal(err)
	}
	s, d := plan.Strap, j.strap()
	for start, at := range map[string]float64{"snap, over the back": s.Snap, "fixing": s.Fixing, "snap, under the belly": s.Fixing + s.ArmBelly} {
		found := false
		for _, w := range d.Texts {
			if strings.HasPrefix(w.Says, start) {
				found = true
				if high := -(w.At.Y - 0.33*sheet.WordSize); math.Abs(high-at) > 0.01 {
					t.Errorf("%q stands at %.2f mm, its place is at %.2f", w.Says, high, at)
				}
			}
		}
		if !found {
			t.Errorf("no %q beside the strap", start)
		}
	}
}

// A strap longer than the paper goes over several sheets: put together by their marks it is as
// long, as wide and as large as the plan has it, and so is the welt beside it.
func TestStrapLongerThanThePage(t *testing.T) {
	p := large(1.6, 1.5)
	for i := range p.Knife.Stations {
		p.Knife.Stations[i].Thick *= 1.8
	}
	p.Strap = calc.Strap{Kind: calc.SnapStrap, Width: 18, Thickness: 2.4, Overlap: 30}
	plan := compute(t, p)
	o := Options{Paper: paper(t, "150x200")}
	if _, h := o.Paper.Area(o.Correction); plan.Strap.Length < h {
		t.Fatalf("the strap is %.0f mm long, the paper %.0f: this test shows nothing", plan.Strap.Length, h)
	}
	data, err := PDF(p, plan, o)
	if err != nil {
		t.Fatal(err)
	}
	a := assemble(t, readPDF(t, data), "Welt and strap", o.Correction)
	for layer, outline := range map[sheet.Layer]curve.Line{sheet.StrapLayer: plan.Strap.Outline, sheet.WeltLayer: plan.Welt.Outline} {
		trimmed, _ := a.drawn(layer)
		got := chain(t, trimmed)
		if gap := got[0].Dist(got[len(got)-1]); gap > 0.1 || math.Abs(math.Abs(got.Area())-math.Abs(outline.Area())) > 0.025*outline.Length() {
			t.Errorf("%s: open by %.3f mm, %.1f mm², want %.1f", layer, gap, math.Abs(got.Area()), math.Abs(outline.Area()))
		}
		if lo, hi := got.Bounds(); layer == sheet.StrapLayer && (math.Abs(hi.Y-lo.Y-plan.Strap.Length) > 0.05 || math.Abs(hi.X-lo.X-plan.Strap.Width) > 0.05) {
			t.Errorf("the strap is %.2f × %.2f, want %.2f × %.2f", hi.X-lo.X, hi.Y-lo.Y, plan.Strap.Width, plan.Strap.Length)
		}
	}
	named := 0
	for _, q := range a.pages {
		if strings.Contains(q.Words(), "strap") && strings.Contains(q.Words(), "leather 2.4 mm") {
			named++
		}
	}
	if named == 0 {
		t.Error("no sheet says what the strap is cut from")
	}
}
