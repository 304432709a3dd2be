package print

import (
	"math"
	"strings"
	"testing"

	"chape/project/print/sheet"
	"chape/project/print/tracing"
)

// The sheet has two pages on any paper; its pricks stand 100 mm apart as measured, the file stretched
// by what the printer takes away; all that the second page has to say is on it.
func TestTracingSheet(t *testing.T) {
	for _, c := range []struct {
		paper string
		corr  sheet.Correction
	}{{"a4", sheet.Correction{}}, {"148x180", sheet.Correction{}}, {"letter", sheet.Correction{X: 98.5, Y: 101.2}}, {"600x1200", sheet.Correction{}}, {"297x210", sheet.Correction{}}} {
		data, err := tracing.PDF(tracing.Options{Paper: paper(t, c.paper), Correction: c.corr})
		if err != nil {
			t.Fatalf("%s: %v", c.paper, err)
		}
		pages := readPDF(t, data)
		if len(pages) != 2 {
			t.Fatalf("%s: %d pages, want 2", c.paper, len(pages))
		}
		fx, fy := c.corr.Factors()
		pricks := pages[0].Circles(sheet.ScaleLayer)
		if len(pricks) != 4 {
			t.Fatalf("%s: %d pricks, want 4", c.paper, len(pricks))
		}
		if got := pricks[1].At.X - pricks[0].At.X; math.Abs(got-100*fx) > 0.02 {
			t.Errorf("%s: pricks %g mm apart across, want %g", c.paper, got, 100*fx)
		}
		if got := pricks[3].At.Y - pricks[2].At.Y; math.Abs(got-100*fy) > 0.02 {
			t.Errorf("%s: pricks %g mm apart along, want %g", c.paper, got, 100*fy)
		}
		first, second := oneLine(pages[0].Words()), oneLine(pages[1].Words())
		for _, want := range []string{"set your dividers here: 100 mm", "Print at 100 %"} {
			if !strings.Contains(first, want) {
				t.Errorf("%s: the sheet does not say %q", c.paper, want)
			}
		}
		for _, want := range []string{"Tape the knife's edge", "held upright and hard against the steel", "4 to 7 mm long", "Take the knife away", "without flash"} {
			if !strings.Contains(second, want) {
				t.Errorf("%s: the second page does not say %q", c.paper, want)
			}
		}
		if c.corr.Set() != strings.Contains(first, "Corrected: 98.5 × 101.2 mm") {
			t.Errorf("%s: whether it is corrected is not said: %q", c.paper, first)
		}
	}
}

func TestTracingRefused(t *testing.T) {
	for _, s := range []string{"601x1200", "600x1201"} {
		if _, err := tracing.PDF(tracing.Options{Paper: paper(t, s)}); err == nil || !strings.Contains(err.Error(), "at most 600 x 1200 mm") {
			t.Errorf("Tracing on %s: %v", s, err)
		}
	}
}
