package project

import (
	"errors"
	"slices"
	"strings"

	"chape/calc"
	"chape/calc/knife"
)

// frontKey is where the fields of the bolster or guard begin.
const frontKey = "knife.outline.front_"

// NameIn is the field's name in a project: a bolster's length is named after
// the bolster, a guard's after the guard.
func (f Field) NameIn(p Project) string {
	if strings.HasPrefix(f.Key, frontKey) && p.Outline.Front != knife.NoFront {
		return p.Outline.Front.String() + strings.TrimPrefix(f.Name, "front")
	}
	return f.Name
}

// Counts tells whether the field has a say in a project: the figures of a bolster
// have none where there is neither bolster nor guard, nor the outline's where
// the marks are as measured, nor those of a section that a mark does not have, nor a
// strap's without a strap.
func (f Field) Counts(p Project) bool {
	switch {
	case f.Key == frontKey+"back" || f.Key == frontKey+"edge":
		return p.Source == FromOutline && p.Outline.Front == knife.Guard
	case f.Key == frontKey+"depth" && p.Outline.Front == knife.Guard && p.Outline.EdgeGiven:
		return false // it follows
	case strings.HasPrefix(f.Key, frontKey):
		return p.Source == FromOutline && p.Outline.Front != knife.NoFront
	case f.Group == "strap":
		return p.Strap.Kind != calc.NoStrap || f.Key == "strap.kind"
	case f.Group == "outline":
		return p.Source == FromOutline || f.Key == "knife.source"
	case f.Group != "marks" || f.Index >= len(p.Knife.Stations):
		return true
	case f.Key == "knife.station.bevel":
		return p.Knife.Stations[f.Index].Kind == knife.Blade
	case f.Key == "knife.station.round":
		return p.Knife.Stations[f.Index].Kind == knife.Slab
	}
	return true
}

// giveFront gives a bolster or guard that has just been chosen the dimensions it
// lacks: its fields were not on the screen before.
func (p *Project) giveFront() {
	usual := Blank().Outline
	var m *knife.Misfit
	for errors.As(p.Outline.Validate(), &m) {
		switch m.Key {
		case "front_length":
			p.Outline.FrontLength = usual.FrontLength
		case "front_depth":
			p.Outline.FrontDepth = usual.FrontDepth
		case "front_thick":
			p.Outline.FrontThick = usual.FrontThick
		default:
			return // said where the marks are filled
		}
	}
}

// MarksDiffer tells whether the marks are others than the outline gives, so that
// going over to the outline puts them away.
func (p Project) MarksDiffer() bool {
	filled, err := p.Outline.Stations()
	return err == nil && !slices.Equal(filled, p.Knife.Stations)
}
