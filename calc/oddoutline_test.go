package calc

import (
	"strings"
	"testing"

	"chape/calc/knife"
	"chape/calc/length"
)

// Of the sections that one figure of the outline makes the one that is furthest out is
// named, be it too thin or too thick.
func TestTheWorstSectionIsNamed(t *testing.T) {
	o := knife.Usual()
	marks, err := o.Stations()
	if err != nil {
		t.Fatal(err)
	}
	for i := range marks {
		marks[i].Bottom, marks[i].Thick = 30, 4
	}
	marks[1].Thick, marks[3].Thick = 4*0.3, 4*0.1
	in := Input{Knife: knife.Knife{Stations: marks}, Outline: &o, Limits: DefaultLimits()}
	for _, c := range in.oddOutline() {
		if c.Mend == "knife.outline.spine" && c.At == marks[3].At.MM() && strings.Contains(c.Text(length.Millimetres), "is 0.4 mm") {
			return
		}
	}
	t.Errorf("not named: %+v", in.oddOutline())
}
