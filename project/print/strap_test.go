package print

import (
	"math"
	"strings"
	"testing"

	"chape/calc"
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
