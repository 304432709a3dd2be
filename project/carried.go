package project

import (
	"chape/calc/length"
	"chape/project/value"
)

// Carried is a correction of another sheath that is offered for this one. It counts for
// nothing until it is kept. Its place and the marks are of the knife it was found on.
type Carried struct {
	Fit
	From    string        // where it comes from, in words
	Deepest length.Length // marks of that knife and its sheath, from the point
	Front   length.Length
	Mouth   length.Length
}

// Half is a half-width of an earlier sheath, measured on it or on its paper laid flat.
type Half struct {
	At   length.Length // along the fold, from the point
	Wide length.Length // from the fold to the line
	Line string        // "edge": the finished edge; "stitches": the stitch line
}

// MadeFor is the knife of another project that the earlier sheath was made for; the zero
// one: it was made for this one, or nobody has said. It is a copy, as it was then.
type MadeFor struct {
	Title  string
	Inputs string // that knife and its sheath, as a project file; package earlier reads it
}

var madeFor = []column[Project]{
	value.At(Spec{Key: "made_for.title", Group: "made for", Name: "made for", Kind: Text, Max: LongestLine,
		Hint: "the knife that the earlier sheath was made for"}, "", func(p *Project) *string { return &p.MadeFor.Title }).UnlessEmpty(),
	value.At(Spec{Key: "made_for.inputs", Group: "made for", Name: "its numbers", Kind: Lines, Max: longestInputs,
		Hint: "that knife and its sheath, as a project file"}, "", func(p *Project) *string { return &p.MadeFor.Inputs }).UnlessEmpty(),
}

func carriedLength(key, name, hint string, s Spec, def any, p func(*Carried) *length.Length) column[Carried] {
	s.Key, s.Group, s.Name, s.Hint = "carried."+key, "carried", name, hint
	return value.RowLength(s, def, p)
}

var carriedColumns = []column[Carried]{
	value.At(Spec{Key: "carried.from", Group: "carried", Name: "from", Kind: Text, Max: LongestLine, Hint: "where it comes from"},
		"", func(c *Carried) *string { return &c.From }),
	carriedLength("at", "at", "on the knife it was found on", Spec{Min: -200, Max: longestKnife}, nil,
		func(c *Carried) *length.Length { return &c.At }),
	carriedLength("by", "by", "added to each half; less than 0 takes away", Spec{Min: -50, Max: 50, Fine: length.Calliper}, nil,
		func(c *Carried) *length.Length { return &c.By }),
	carriedLength("reach", "reach", "how far it runs out to either side", Spec{Max: longestKnife, Above: true}, length.Length(20),
		func(c *Carried) *length.Length { return &c.Reach }),
	value.At(Spec{Key: "carried.with", Group: "carried", Name: "stock", Kind: Choice, Options: folded, Hint: "what the trial was folded from"},
		folded[1], func(c *Carried) *string { return &c.With }),
	value.At(Spec{Key: "carried.note", Group: "carried", Name: "note", Kind: Text, Max: LongestLine, Hint: "what was seen"},
		"", func(c *Carried) *string { return &c.Note }).UnlessEmpty(),
	carriedLength("deepest", "deepest place", "of that knife's blade", Spec{Max: longestKnife}, none,
		func(c *Carried) *length.Length { return &c.Deepest }),
	carriedLength("front", "front of the handle", "of that knife", Spec{Max: longestKnife}, nil,
		func(c *Carried) *length.Length { return &c.Front }),
	carriedLength("mouth", "mouth", "of that sheath", Spec{Max: longestKnife}, nil,
		func(c *Carried) *length.Length { return &c.Mouth }),
}

// edges are the lines that a half-width may be measured to.
var edges = []string{"edge", "stitches"}

func earlierLength(key, name, hint string, s Spec, p func(*Half) *length.Length) column[Half] {
	s.Key, s.Group, s.Name, s.Hint = "earlier."+key, "earlier", name, hint
	return value.RowLength(s, nil, p)
}

var earlierColumns = []column[Half]{
	earlierLength("at", "at", "along the fold, from the knife's point", Spec{Min: -200, Max: longestKnife}, func(h *Half) *length.Length { return &h.At }),
	earlierLength("wide", "half-width", "from the fold, square to it", Spec{Max: deepest, Above: true}, func(h *Half) *length.Length { return &h.Wide }),
	value.At(Spec{Key: "earlier.line", Group: "earlier", Name: "to the", Kind: Choice, Options: edges, Hint: "the finished edge, or the stitch line"},
		edges[0], func(h *Half) *string { return &h.Line }),
}

// EarlierFields are the columns of half-width i of an earlier sheath.
func EarlierFields(i int) []Field { return Lists[listOfEarlier].row(i) }
