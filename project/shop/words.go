package shop

import (
	"strings"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/report"
)

// What says a sheath as a customer may be told of it, a sentence a line: nothing of the
// shop's own figures.
func What(p project.Project) string {
	u := p.Units
	leather := p.Sold.Body
	if leather == "" {
		leather = p.Sheath.Leather.Format(u, length.Calliper)
	}
	lines := []string{"A sheath of " + leather + " leather, formed to the knife."}
	if p.Title != "" {
		lines[0] = "A sheath of " + leather + " leather, formed to this knife: " + p.Title + "."
	}
	lines = append(lines, "Drawn with the "+report.Worn(p)+".")
	if p.Belt.Loop == calc.FoldedLoop {
		lines = append(lines, "With a loop for a belt "+p.Belt.Width.Format(u, length.Ruler)+" wide.")
	}
	if p.Strap.Kind != calc.NoStrap {
		lines = append(lines, "With a strap and a snap over the handle.")
	}
	return strings.Join(lines, "\n")
}
