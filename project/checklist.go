package project

import (
	"chape/calc"
	"chape/calc/knife"
	"chape/project/steps"
)

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
