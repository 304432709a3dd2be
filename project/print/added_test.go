package print

import (
	"math"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/project"
	"chape/project/print/sheet"
)

// Parts that the maker added are printed at 1:1 like the others: the small ones together, a
// long one over as many sheets as it takes, each with its name, how often it is cut, of what,
// and its size; and they stand in the cutter's file and on the work card.
func TestAddedPartsArePrinted(t *testing.T) {
	p := garden()
	p.Added = []project.Part{{Name: "strap keeper", Count: 2, Length: 60, Width: 30, Thickness: 2},
		{Name: "dangler", Count: 1, Length: 420, Width: 26},
		{Name: "sleeve", Count: 1, Halves: "0 10; 40 20; 80 8"}}
	plan := compute(t, p)
	o := Options{Paper: paper(t, "A4")}
	data, err := PDF(p, plan, o)
	if err != nil {
		t.Fatal(err)
	}
	d := readPDF(t, data)
	long := assemble(t, d, "dangler", o.Correction)
	trimmed, _ := long.drawn(sheet.AddedLayer)
	got := chain(t, trimmed)
	lo, hi := got.Bounds()
	if len(long.pages) < 2 || math.Abs(hi.Y-lo.Y-420) > 0.05 || math.Abs(hi.X-lo.X-26) > 0.05 {
		t.Errorf("on %d sheets the dangler is %.2f × %.2f mm", len(long.pages), hi.Y-lo.Y, hi.X-lo.X)
	}
	var words string
	for _, q := range assemble(t, d, "Added parts", o.Correction).pages {
		words += q.Words()
	}
	for _, want := range []string{"strap keeper", "60 × 30 mm", "cut 2 of 2 mm leather", "sleeve", "80 × 40 mm", "cut 1 of 3.2 mm leather"} {
		if !strings.Contains(words, want) {
			t.Errorf("the sheet of added parts lacks %q: %q", want, words)
		}
	}
	card := ""
	for _, q := range d {
		if strings.Contains(q.Words(), "Work card") {
			card += oneLine(q.Words())
		}
	}
	if !strings.Contains(card, "strap keeper: 60 × 30 mm, cut 2 of 2 mm leather") {
		t.Error("the work card lacks the strap keeper")
	}
	cut, err := SVG(p, plan, o)
	if err != nil {
		t.Fatal(err)
	}
	_, shapes := readSVG(t, cut)
	var areas []float64
	for _, s := range shapes {
		if s.group == "parts" && len(s.pts) > 0 {
			areas = append(areas, math.Abs(curve.Line(s.pts).Area()))
		}
	}
	// By hand: 60·30, 420·26, and half-widths 10, 20, 8 at 0, 40, 80: 2·(600 + 560).
	for i, want := range []float64{1800, 10920, 2320} {
		if len(areas) != 3 || math.Abs(areas[i]-want) > 0.5 {
			t.Fatalf("the cutter's file has parts of %v mm²", areas)
		}
	}
}
