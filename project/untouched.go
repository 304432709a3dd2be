package project

import (
	"slices"
	"strings"
)

const outlineKey = "knife.outline."

// asNew are the figures of the outline that every maker has to give: those that are 0
// where there is nothing to say are not among them.
var asNew = "blade depth spine front_length front_depth front_thick handle handle_depth handle_thick swell"

// touch notes that a figure of the outline was given, be it the one that stood there.
func (p *Project) touch(key string) {
	left := strings.Fields(p.Untouched)
	name := strings.TrimPrefix(key, outlineKey)
	if slices.Contains(left, name) {
		left = slices.DeleteFunc(left, func(n string) bool { return n == name })
		p.Untouched = strings.Join(left, " ")
	}
}

// IsUntouched tells whether a figure still is the new project's: nobody has typed it or
// said that it is right. The thickness of a traced mark is one until it was measured.
func (f Field) IsUntouched(p Project) bool {
	if f.Key == "knife.station.thick" {
		return slices.Contains(p.Unmeasured(), f.Index)
	}
	name, outlined := strings.CutPrefix(f.Key, outlineKey)
	return outlined && slices.Contains(strings.Fields(p.Untouched), name) && f.Counts(p)
}

// untouched are the names of the figures that nobody has given yet. Marks that were
// measured ask for none.
func (p Project) untouched() []string {
	if p.Untouched == "" || p.Source != FromOutline {
		return nil
	}
	var names []string
	for _, f := range Fields {
		if f.IsUntouched(p) {
			names = append(names, f.NameIn(p))
		}
	}
	return names
}
