package project

import (
	"slices"
	"time"

	"chape/calc/length"
	"chape/project/value"
)

// Tracing says where the marks were read from. The picture itself is not kept.
type Tracing struct {
	Picture  string        // its name, without folder; "": the marks were not traced
	Residual length.Length // how true the sheet was read, root mean square
	Read     time.Time     // a local date
	// Left are the places of the marks whose thickness was never measured, ascending; a place of two marks
	// stands twice, or once where the one on the handle's side is left.
	Left []length.Length
}

var tracing = []column[Project]{
	value.At(Spec{Key: "knife.tracing.picture", Group: "tracing", Name: "traced from", Kind: Text, Max: LongestLine,
		Hint: "the picture's name; the picture is not kept"}, "", func(p *Project) *string { return &p.Tracing.Picture }).UnlessEmpty(),
	value.LengthAt(Spec{Key: "knife.tracing.residual", Group: "tracing", Name: "read to", Fine: length.Calliper, Max: 10,
		Hint: "how true the sheet was read"}, 0, func(p *Project) *length.Length { return &p.Tracing.Residual }).Only(
		func(p *Project) bool { return p.Tracing.Picture != "" }),
	value.At(Spec{Key: "knife.tracing.read", Group: "tracing", Name: "traced on", Kind: Date,
		Hint: "the day it was read"}, time.Time{}, func(p *Project) *time.Time { return &p.Tracing.Read }).UnlessEmpty(),
	column[Project]{
		Spec: Spec{Key: "knife.tracing.left", Group: "tracing", Name: "still to measure", Kind: Text, Max: longestLeft,
			Hint: "places of the marks whose thickness was not measured, mm"},
		Def: "",
		Get: func(p *Project) any { return value.SayPlaces(p.Tracing.Left) },
		Set: func(p *Project, v any) { p.Tracing.Left = value.Places(v.(string), longestKnife) },
	}.UnlessEmpty(),
}

// longestLeft is more than the most marks of a tracing take, in letters.
const longestLeft = 2000

// Unmeasured are the marks, ascending, whose thickness stands as the program proposed it: the calliper was never there.
func (p Project) Unmeasured() []int {
	if p.Source == FromOutline {
		return nil
	}
	var out []int
	marks := p.Knife.Stations
	for i, m := range marks {
		after := 0 // marks at the same place, towards the handle
		for _, n := range marks[i+1:] {
			if n.At == m.At {
				after++
			}
		}
		n := 0
		for _, l := range p.Tracing.Left {
			if l == m.At {
				n++
			}
		}
		if n > after {
			out = append(out, i)
		}
	}
	return out
}

// Measured notes that the thickness of mark i was measured; of two marks at one place the one on the point's side is
// taken for the first.
func (p *Project) Measured(i int) {
	if i < 0 || i >= len(p.Knife.Stations) {
		return
	}
	if j := slices.Index(p.Tracing.Left, p.Knife.Stations[i].At); j >= 0 {
		p.Tracing.Left = slices.Delete(slices.Clone(p.Tracing.Left), j, j+1)
	}
}

// moving is a setting of a mark's place that takes along that its thickness was not measured.
func moving(set func(p *Project, i int, v any) error) func(p *Project, i int, v any) error {
	return func(p *Project, i int, v any) error {
		was, left := p.Knife.Stations[i].At, slices.Contains(p.Unmeasured(), i)
		if err := set(p, i, v); err != nil || !left {
			return err
		}
		j := slices.Index(p.Tracing.Left, was)
		p.Tracing.Left = slices.Clone(p.Tracing.Left)
		p.Tracing.Left[j] = p.Knife.Stations[i].At
		slices.Sort(p.Tracing.Left)
		return nil
	}
}
