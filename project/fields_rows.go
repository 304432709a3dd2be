package project

import (
	"math"
	"time"

	"chape/calc/knife"
	"chape/calc/length"
	"chape/project/value"
)

func stationLength(key, name, hint string, fine length.Fineness, hi float64, def any, p func(*knife.Station) *length.Length) column[knife.Station] {
	return value.RowLength(Spec{Key: "knife.station." + key, Group: "marks", Name: name, Hint: hint, Fine: fine, Max: hi}, def, p)
}

var none = length.Length(0)

// deepest is how far from the rule an edge may lie, mm.
const deepest = 500

// marks are the columns of the table of marks. The file holds places from the
// rule; the screens show what the calliper reads.
var marks = []column[knife.Station]{
	stationLength("at", "at", "from the point, along the rule", length.Ruler, longestKnife, nil,
		func(s *knife.Station) *length.Length { return &s.At }),
	stationLength("top", "gap", "rule to spine with a small square; 0 where it touches", length.Ruler, 300, none,
		func(s *knife.Station) *length.Length { return &s.Top }).ShownAs(
		func(s *knife.Station) any { return s.Top }, setGap),
	stationLength("bottom", "depth", "spine to edge with the calliper, square across", length.Calliper, deepest, nil,
		func(s *knife.Station) *length.Length { return &s.Bottom }).ShownAs(
		func(s *knife.Station) any { return value.Tidy(s.Depth()) }, setDepth),
	stationLength("thick", "thickness", "across at the fattest, with the calliper", length.Calliper, 100, nil,
		func(s *knife.Station) *length.Length { return &s.Thick }),
	value.ChoiceAt(Spec{Key: "knife.station.kind", Group: "marks", Name: "section", Hint: "from here towards the handle"},
		func(s *knife.Station) *knife.Kind { return &s.Kind }, knife.Kinds...),
	grind(),
	stationLength("round", "corners", "slabs: radius of the outer corners", length.Calliper, 100, none,
		func(s *knife.Station) *length.Length { return &s.Round }).Only(
		func(s *knife.Station) bool { return s.Kind == knife.Slab || s.Round != 0 }),
}

// grind is the share of the depth that tapers, measured as the grind height.
func grind() column[knife.Station] {
	s := Spec{Key: "knife.station.bevel", Group: "marks", Name: "grind height", Kind: Share, Max: 1, Auto: "full", Fine: length.Calliper,
		Hint: "blades: edge to where the bevel begins; full where it goes up to the spine"}
	c := value.At(s, 1.0, func(s *knife.Station) *float64 { return &s.Bevel })
	c = c.Only(func(s *knife.Station) bool { return s.Kind == knife.Blade || s.Bevel != 1 })
	return c.ShownAs(func(s *knife.Station) any {
		if s.Bevel == 1 {
			return nil
		}
		return value.Tidy(length.Length(s.Bevel) * s.Depth())
	}, setGrind)
}

// setGap moves the mark away from the rule; its depth stays.
func setGap(s *knife.Station, v any, _ length.Unit) error {
	depth := s.Depth()
	s.Top = v.(length.Length)
	s.Bottom = value.Tidy(s.Top + depth)
	return nil
}

// setDepth keeps the gap and the grind height; a full grind stays full.
func setDepth(s *knife.Station, v any, u length.Unit) error {
	height, depth := length.Length(s.Bevel)*s.Depth(), v.(length.Length)
	if most := deepest - s.Top; depth < 0 || depth > most {
		return Problem{Key: "knife.station.bottom", Index: -1, Found: value.Measure(depth, u), Remedy: "give between 0 and " + value.Bound(most, u, math.Floor)}
	}
	s.Bottom = value.Tidy(s.Top + depth)
	if s.Bevel < 1 && depth > 0 {
		s.Bevel = min(1, float64(height/depth))
	}
	return nil
}

// setGrind sets the grind height; none given is a full grind.
func setGrind(s *knife.Station, v any, u length.Unit) error {
	h, given := v.(length.Length)
	depth := value.Tidy(s.Depth())
	switch {
	case !given:
		s.Bevel = 1
	case h < 0 || h > depth:
		return Problem{Key: "knife.station.bevel", Index: -1, Found: value.Measure(h, u),
			Remedy: "give 0 up to the depth there, " + value.Bound(depth, u, math.Floor)}
	case depth == 0:
		s.Bevel = 1
	default:
		s.Bevel = float64(h / depth)
	}
	return nil
}

var folded = []string{"paper", "same thickness", "leather", "finished"}

func fitLength(key, name, hint string, s Spec, def any, p func(*Fit) *length.Length) column[Fit] {
	s.Key, s.Group, s.Name, s.Hint = "fit."+key, "fits", name, hint
	return value.RowLength(s, def, p)
}

var fits = []column[Fit]{
	fitLength("at", "at", "where it was tight or loose, from the point", Spec{Min: -200, Max: longestKnife}, nil,
		func(f *Fit) *length.Length { return &f.At }),
	fitLength("by", "by", "added to each half; less than 0 takes away", Spec{Min: -50, Max: 50, Fine: length.Calliper}, nil,
		func(f *Fit) *length.Length { return &f.By }),
	fitLength("reach", "reach", "how far it runs out to either side", Spec{Max: longestKnife, Above: true}, length.Length(20),
		func(f *Fit) *length.Length { return &f.Reach }),
	value.At(Spec{Key: "fit.with", Group: "fits", Name: "stock", Kind: Choice, Options: folded, Hint: "what the trial was folded from"},
		folded[1], func(f *Fit) *string { return &f.With }),
	value.At(Spec{Key: "fit.note", Group: "fits", Name: "note", Kind: Text, Max: LongestLine, Hint: "what you saw"},
		"", func(f *Fit) *string { return &f.Note }).UnlessEmpty(),
}

// longestInputs is more than the longest table of marks takes, in letters.
const longestInputs = 200000

var patterns = []column[Pattern]{
	value.At(Spec{Key: "pattern.number", Group: "patterns", Name: "pattern number", Kind: Count, Max: mostRevision, Needed: true,
		Hint: "as it stands on its sheets"}, 0, func(p *Pattern) *int { return &p.Number }),
	value.At(Spec{Key: "pattern.printed", Group: "patterns", Name: "printed", Kind: Date, Needed: true,
		Hint: "the date on its sheets"}, time.Time{}, func(p *Pattern) *time.Time { return &p.Printed }),
	value.At(Spec{Key: "pattern.inputs", Group: "patterns", Name: "drawn from", Kind: Lines, Max: longestInputs,
		Hint: "the numbers it was drawn from, as a project file"}, "", func(p *Pattern) *string { return &p.Inputs }).UnlessEmpty(),
}
