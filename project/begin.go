package project

import (
	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project/steps"
)

// BeginIn gives a new project its unit. What still is a default goes to round inches,
// so that a tail is 6 in long, not 5 29/32; a value of the maker's own stays. For a
// project that is worked on only the unit is to be changed.
func (p *Project) BeginIn(u length.Unit) { p.begin(p.Units, u) }

// begin takes the defaults from one unit to another.
func (p *Project) begin(from, u length.Unit) {
	p.Units = from
	proposed := p.Sheath.Mouth == p.ProposedMouth()
	p.Units = u
	for _, c := range scalars {
		def, ok := c.Def.(length.Length)
		if !ok {
			continue
		}
		if v := c.Get(p); v == def.Roundest(from) || v == def {
			c.Set(p, def.Roundest(u))
		}
	}
	if p.Source == FromOutline {
		_ = p.FillMarks() // what will not do is refused where it is typed, and the marks stay
	}
	if proposed {
		p.Sheath.Mouth = p.ProposedMouth()
	}
}

// UsualReach is how far a correction runs out to either side before the maker says so,
// in round figures of the unit.
func UsualReach(u length.Unit) length.Length { return (20 * length.Millimetre).Roundest(u) }

// ProposedMouth is where the mouth goes unless the maker knows better.
func (p Project) ProposedMouth() length.Length { return calc.ProposeMouth(p.Knife, p.Units) }

// Parts is what the sheath has that its checklist speaks of.
func (p Project) Parts() steps.Parts {
	has := steps.Parts{Loop: p.Belt.Loop == calc.FoldedLoop, Welt: p.Sheath.Welt > 0, Strap: p.Strap.Kind != calc.NoStrap}
	for _, s := range p.Knife.Stations {
		has.Front = has.Front || s.Kind != knife.Blade && s.At < p.Sheath.Mouth
	}
	return has
}

// Follow makes the checklist follow what the sheath has come to have since before.
func (p *Project) Follow(before Project) {
	p.Steps = steps.Refit(p.Steps, before.Parts(), p.Parts())
}
