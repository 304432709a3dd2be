package project

import (
	"chape/calc/length"
)

// Blank is a project with every default and no knife.
func Blank() Project {
	var p Project
	for _, c := range scalars {
		c.Set(&p, c.Def)
	}
	return p
}

// Defaults is what a new project starts from: our own middling drop point
// with a bolster and an oval handle, to be typed over, and the defaults of
// every field. It is a project that can be planned.
func Defaults() Project {
	p := Blank()
	p.Source, p.Untouched = FromOutline, asNew
	if err := p.FillMarks(); err != nil {
		panic("the outline of a new project: " + err.Error())
	}
	p.Sheath.Mouth = p.ProposedMouth()
	return p
}

// New is a project that starts from defaults: Defaults, or what the user made
// of them, in round figures of the unit. It shares nothing with defaults.
func New(title string, units length.Unit, defaults Project) Project {
	p := defaults.Clone()
	p.Title, p.Revision = title, 1
	p.BeginIn(units)
	return p
}

// FillMarks puts the marks that the outline gives in place of those there are. The error
// is a Problem, and the marks stay.
func (p *Project) FillMarks() error {
	stations, err := p.Outline.Stations()
	if err != nil {
		return misfit(err, p.Units)
	}
	p.Knife.Stations = stations
	return nil
}

// refill makes the marks follow the outline, where they come from it. While
// the mouth stands where ProposeMouth put it, it follows too.
func (p *Project) refill() error {
	if p.Source != FromOutline {
		return nil
	}
	proposed := p.Sheath.Mouth == p.ProposedMouth()
	if err := p.FillMarks(); err != nil {
		return err
	}
	if proposed {
		p.Sheath.Mouth = p.ProposedMouth()
	}
	return nil
}
