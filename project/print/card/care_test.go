package card

import (
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/print/letters"
	"chape/project/print/sheet"
	"chape/project/report"
)

// The care card says who made the sheath, or has a line to write it on.
func TestCareSaysWhoMadeIt(t *testing.T) {
	care := func(maker ...string) string {
		f := sheet.NewFlow(190, 277, "Care card", 1, func(float64, float64) string { return "" })
		var words []string
		for _, p := range Care(f, project.Defaults(), "Orchard", maker) {
			for _, text := range p.Drawing.Texts {
				words = append(words, text.Says)
			}
		}
		return strings.Join(words, " ")
	}
	if got := care("A. Maker", "Mill Lane 3"); !strings.Contains(got, "Made by A. Maker, Mill Lane 3") || strings.Contains(got, "Made by ___") {
		t.Errorf("with a maker: %s", got)
	}
	if got := care(); !strings.Contains(got, "Made by ___") {
		t.Errorf("without one: %s", got)
	}
}

// caredFor is the pages of a care card.
func caredFor(p project.Project, title string) []sheet.Page {
	return Care(sheet.NewFlow(pageWide, pageHigh, "Care card", 1, func(float64, float64) string { return "" }), p, title, nil)
}

// The care card is one page: what it is for, then all that there is to say of care, each
// whole and in its order, in letters to be read without glasses and lines of 150 mm at most;
// the cautions of wearing a blade are among it.
func TestCareSaysAll(t *testing.T) {
	p := full(length.Millimetres)
	p.Customer.Name, p.Customer.Hand, p.Customer.Edge = "R. Example", calc.LeftHand, calc.EdgeFront
	pages := caredFor(p, title)
	if len(pages) != 1 {
		t.Fatalf("%d pages", len(pages))
	}
	allStays(t, "care card", pages, pageWide, pageHigh)
	var says []string
	for _, w := range pages[0].Drawing.Texts[2:] {
		says = append(says, w.Says)
		if wide := letters.Width(w.Says, w.Bold) * w.Size; wide > 150.01 || w.Size < 4 {
			t.Errorf("%q is %.1f mm long, in letters of %v mm", w.Says, wide, w.Size)
		}
	}
	want := title + " for R. Example A sheath to be worn for the left hand, edge to the front. " + strings.Join(report.Care(), " ") + " Made by ______________________ Date ______________"
	if got := strings.Join(strings.Fields(strings.Join(says, " ")), " "); got != letters.Printable(want) {
		t.Errorf("the care card says\n%s\nwant\n%s", got, want)
	}
	for _, must := range []string{"not for storage", "edge away from you", "local rules", "from children", "upside down", "no stove"} {
		if !strings.Contains(strings.Join(says, " "), must) {
			t.Errorf("no word of %q", must)
		}
	}
	p.Customer.Name = ""
	if got := caredFor(p, strings.Repeat("a long title ", 30)); len(got) != 1 || strings.HasPrefix(got[0].Drawing.Texts[4].Says, "for ") || !strings.HasSuffix(got[0].Drawing.Texts[3].Says, "…") {
		t.Errorf("of a long title, for nobody: %q", got[0].Drawing.Texts[3].Says)
	}
}
