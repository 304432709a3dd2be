package knifepane

import (
	"strings"
	"testing"

	"chape/calc/length"
	"chape/project"
	"chape/ui/form"
)

// The figure that stands there counts as given once it was typed, or Enter was pressed on
// it; a look at it does not.
func TestEnterSaysThatItIsRight(t *testing.T) {
	f := open(t, defaults())
	n := len(f.project().Input(f.doc.Plan().Input.Limits).Untouched)
	left := func() int { return len(f.project().Input(f.doc.Plan().Input.Limits).Untouched) }
	f.keys("down", "up", "home", "down", "down")
	if left() != n {
		t.Error("a look at it counts")
	}
	f.goTo("knife.outline.blade", -1)
	f.keys("enter")
	if left() != n-1 || f.project().Outline.Blade != 110 {
		t.Errorf("Enter on it: %d of %d left", left(), n)
	}
	f.keys("30", "enter") // as it stood
	if left() != n-2 {
		t.Errorf("typed as it stood: %d of %d left", left(), n)
	}
	f.read("4")
	if left() != n-3 {
		t.Errorf("read as it stood: %d of %d left", left(), n)
	}
}

// A traced knife whose thicknesses nobody measured: a * in the table and a note that leads
// there, until each was typed or Enter was pressed on it.
func TestUnmeasuredThicknessIsMarked(t *testing.T) {
	p := defaults()
	p.Source = project.FromStations
	p.Tracing.Left = []length.Length{p.Knife.Stations[1].At, p.Knife.Stations[2].At}
	f := open(t, p)
	stars := func() (n int) {
		for _, r := range f.pane.rows {
			if r.List == "mark" && !r.IsHeading() && strings.HasSuffix(r.Texts[3], "*") {
				n++
			}
		}
		return n
	}
	noted := func() bool {
		for _, c := range f.doc.Plan().Checks {
			if c.Name == "unmeasured" {
				return form.PlaceOf(c, f.project()) == form.Place{Key: "knife.station.thick", Index: c.Mark}
			}
		}
		return false
	}
	if stars() != 2 || !noted() {
		t.Fatalf("%d stars, noted %v", stars(), noted())
	}
	f.goTo("knife.station.thick", 1)
	was := f.project().Knife.Stations[1].Thick
	f.keys("enter")
	if stars() != 1 || !noted() || f.project().Knife.Stations[1].Thick != was {
		t.Errorf("Enter on one: %d stars, noted %v", stars(), noted())
	}
	f.goTo("knife.station.thick", 2)
	f.keys("3", "enter")
	if stars() != 0 || noted() {
		t.Errorf("typed: %d stars, noted %v", stars(), noted())
	}
}
