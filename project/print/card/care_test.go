package card

import (
	"strings"
	"testing"

	"chape/project"
	"chape/project/print/sheet"
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
