package project

import (
	"fmt"
	"math"

	"chape/calc"
	"chape/calc/compare"
	"chape/calc/length"
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

// Carry takes corrections of another knife along to be offered, with words on where they
// come from. The error is that of the other knife's marks.
func Carry(fits []Fit, from Project, words string) ([]Carried, error) {
	m, err := compare.MarksOf(from.Knife, from.Sheath.Mouth)
	if err != nil {
		return nil, err
	}
	var out []Carried
	for _, f := range fits {
		out = append(out, Carried{f, words, length.Length(m.Deepest), length.Length(m.Front), length.Length(m.Mouth)})
	}
	return out, nil
}

// Placed is the correction at its place on the knife of p, by the landmarks of both.
func (c Carried) Placed(p Project) (Fit, error) {
	to, err := compare.MarksOf(p.Knife, p.Sheath.Mouth)
	if err != nil {
		return Fit{}, err
	}
	from := compare.Marks{Deepest: c.Deepest.MM(), Front: c.Front.MM(), Mouth: c.Mouth.MM()}
	f := c.Fit
	f.Fit = compare.Carry(calc.Fit{At: f.At, By: f.By, Reach: f.Reach}, from, to)
	f.At, f.Reach = half(f.At), half(f.Reach)
	return f, nil
}

// half rounds to 0.5 mm, as a ruler shows it.
func half(l length.Length) length.Length { return length.Length(math.Round(2*l.MM()) / 2) }

func carriedLength(key, name, hint string, s Spec, def any, p func(*Carried) *length.Length) column[Carried] {
	s.Key, s.Group, s.Name, s.Hint, s.Needed = "carried."+key, "carried", name, hint, def == nil
	c := lengthAt(s, 0, p)
	c.def = def
	return c
}

var carriedColumns = []column[Carried]{
	at(Spec{Key: "carried.from", Group: "carried", Name: "from", Kind: Text, Max: longestLine, Hint: "where it comes from"},
		"", func(c *Carried) *string { return &c.From }),
	carriedLength("at", "at", "on the knife it was found on", Spec{Min: -200, Max: longestKnife}, nil,
		func(c *Carried) *length.Length { return &c.At }),
	carriedLength("by", "by", "added to each half; less than 0 takes away", Spec{Min: -50, Max: 50, Fine: length.Calliper}, nil,
		func(c *Carried) *length.Length { return &c.By }),
	carriedLength("reach", "reach", "how far it runs out to either side", Spec{Max: longestKnife, Above: true}, length.Length(20),
		func(c *Carried) *length.Length { return &c.Reach }),
	at(Spec{Key: "carried.with", Group: "carried", Name: "stock", Kind: Choice, Options: folded, Hint: "what the trial was folded from"},
		folded[1], func(c *Carried) *string { return &c.With }),
	at(Spec{Key: "carried.note", Group: "carried", Name: "note", Kind: Text, Max: longestLine, Hint: "what was seen"},
		"", func(c *Carried) *string { return &c.Note }).unlessEmpty(),
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
	s.Key, s.Group, s.Name, s.Hint, s.Needed = "earlier."+key, "earlier", name, hint, true
	c := lengthAt(s, 0, p)
	c.def = nil
	return c
}

var earlierColumns = []column[Half]{
	earlierLength("at", "at", "along the fold, from the knife's point", Spec{Min: -200, Max: longestKnife}, func(h *Half) *length.Length { return &h.At }),
	earlierLength("wide", "half-width", "from the fold, square to it", Spec{Max: deepest, Above: true}, func(h *Half) *length.Length { return &h.Wide }),
	at(Spec{Key: "earlier.line", Group: "earlier", Name: "to the", Kind: Choice, Options: edges, Hint: "the finished edge, or the stitch line"},
		edges[0], func(h *Half) *string { return &h.Line }),
}

// EarlierFields are the columns of half-width i of an earlier sheath.
func EarlierFields(i int) []Field { return Lists[listOfEarlier].row(i) }

// Experience is what finished sheaths tend to need, as corrections to be offered for p,
// region by region; none where they tend to need none. The error is that of p's marks.
func Experience(past []compare.Tried, p Project) ([]Carried, error) {
	m, err := compare.MarksOf(p.Knife, p.Sheath.Mouth)
	if err != nil {
		return nil, err
	}
	of := fmt.Sprintf("from %d finished sheaths", len(past))
	if len(past) == 1 {
		of = "from 1 finished sheath"
	}
	of += " of " + p.Sheath.Leather.Format(p.Units, length.Calliper)
	var out []Carried
	for _, h := range compare.Habits(past) {
		f, ok := h.Offer(m)
		if !ok {
			continue
		}
		note := fmt.Sprintf("median of %d, %d had one, %s", h.Of, h.With, h.Region)
		f.At, f.Reach = half(f.At), half(f.Reach)
		out = append(out, Carried{Fit{Fit: f, With: "leather", Note: note}, of, length.Length(m.Deepest), length.Length(m.Front), length.Length(m.Mouth)})
	}
	return out, nil
}
