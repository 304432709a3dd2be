package report

import (
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/plantest"
)

// An added part stands in the plan's text with its size, how often and of what it is cut, and
// the figure of the leather used says that it is not in it; a strap is.
func TestAddedPartsInThePlan(t *testing.T) {
	p := project.Defaults()
	p.Strap = calc.Strap{Kind: calc.SnapStrap, Width: 18, Thickness: 2.4, Overlap: 30}
	p.Added = []project.Part{{Name: "strap keeper", Count: 2, Length: 60, Width: 30, Thickness: 2},
		{Name: "sleeve", Count: 1, Halves: "0 10; 40 20; 80 8"}}
	plan := plantest.Of(t, p)
	text := strings.Join(strings.Fields(Page(p, plan, length.Millimetres, 0)), " ")
	for _, want := range []string{"strap keeper: 60 × 30 mm, cut 2 of 2 mm leather", "sleeve: 80 × 40 mm, by its outline, cut 1 of 3.2 mm leather"} {
		if !strings.Contains(text, want) {
			t.Errorf("the plan lacks %q", want)
		}
	}
	for _, f := range Figures(p, plan, length.Millimetres, 0) {
		if want := "body, tab, welt and strap; not counted: strap keeper, sleeve"; f.Key == Used && f.Words() != want {
			t.Errorf("leather used: %q, want %q", f.Words(), want)
		}
	}
}
