package project

import (
	"fmt"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/nest"
	"chape/project/money"
	"chape/project/value"
)

// Hide is the leather that a sheath is cut from.
type Hide struct {
	Name   string  // as it is called in the list of leather; "": none chosen
	Lost   float64 // leather lost between the parts as they were placed, as a share of what is cut
	Placed bool    // Lost was found by placing
	Cut    float64 // mm² that the parts took when they were placed; 0: not known
	Price  money.ByArea
}

// Part is a part that the maker adds to those of the sheath.
type Part struct {
	Name      string
	Count     int
	Length    length.Length
	Width     length.Length
	Halves    string        // places along the middle and half-widths there, mm, as value.Pairs reads them; "": a rectangle
	Thickness length.Length // 0: the body's
}

var hide = []column[Project]{
	value.At(Spec{Key: "leather.name", Group: "leather", Name: "leather", Kind: Text, Max: LongestLine,
		Hint: "the leather it is cut from, by its name in your list"}, "", func(p *Project) *string { return &p.Hide.Name }).UnlessEmpty(),
	lost(),
	value.At(Spec{Key: "leather.cut", Group: "leather", Name: "taken when placed", Kind: Number, Max: 1e9,
		Hint: "mm²: what the parts took when they were placed; it counts while they take as much"},
		0.0, func(p *Project) *float64 { return &p.Hide.Cut }).Only(func(p *Project) bool { return p.Hide.Cut > 0 }),
	hidePrice("leather.price_m2", "price, a square metre", func(p *Project) *string { return &p.Hide.Price.M2 }),
	hidePrice("leather.price_ft2", "price, a square foot", func(p *Project) *string { return &p.Hide.Price.Ft2 }),
}

// hidePrice is what the chosen leather itself costs.
func hidePrice(key, name string, p func(*Project) *string) column[Project] {
	return value.At(Spec{Key: key, Group: "leather", Name: name, Kind: Text, Max: 20,
		Hint: `of this leather, as in "92.50"; empty: the one of the settings`}, "", p).UnlessEmpty()
}

// lost is what placing the parts loses.
func lost() column[Project] {
	c := value.OptionalNumber(Spec{Key: "leather.lost", Group: "leather", Name: "lost between the parts", Max: 100, Auto: "not placed",
		Hint: "as a share of what is cut, found by placing the parts"},
		func(p *Project) *float64 { return &p.Hide.Lost }, func(p *Project) *bool { return &p.Hide.Placed })
	c.Kind = Share
	return c
}

// hide checks the price of the leather chosen.
func (c *checker) hide(p money.ByArea) {
	if _, by, err := p.Amount(); err != nil {
		key := "leather.price_ft2"
		if by == money.SquareMetre && p.Ft2 == "" {
			key = "leather.price_m2"
		}
		c.add(key, -1, fmt.Sprintf("%q", p.M2+p.Ft2), err.Error())
	}
}

const (
	longestPart = 3000
	mostCopies  = 50
)

func partLength(key, name, hint string, p func(*Part) *length.Length) column[Part] {
	return value.LengthAt(Spec{Key: "part." + key, Group: "parts", Name: name, Hint: hint, Max: longestPart}, none, p)
}

var added = []column[Part]{
	value.At(Spec{Key: "part.name", Group: "parts", Name: "name", Kind: Text, Max: 60, Hint: "what you call it: firesteel loop"},
		"part", func(p *Part) *string { return &p.Name }),
	value.At(Spec{Key: "part.count", Group: "parts", Name: "how many", Kind: Count, Min: 1, Max: mostCopies, Hint: "cut so many of it"},
		1, func(p *Part) *int { return &p.Count }),
	partLength("length", "length", "along the grain where that counts", func(p *Part) *length.Length { return &p.Length }),
	partLength("width", "width", "across", func(p *Part) *length.Length { return &p.Width }),
	value.At(Spec{Key: "part.halves", Group: "parts", Name: "half-widths", Kind: Text, Max: 2000,
		Hint: `in place of length and width: places along its middle and half-widths there, "0 10; 40 20; 80 8"`},
		"", func(p *Part) *string { return &p.Halves }).UnlessEmpty(),
	value.LengthAt(Spec{Key: "part.thickness", Group: "parts", Name: "thickness", Kind: Leather, Max: 20,
		Hint: "0: as thick as the body"}, none, func(p *Part) *length.Length { return &p.Thickness }),
}

// Outline is the part's cut line, its length along x, mm. The error says what would do.
func (p Part) Outline() (curve.Line, error) {
	if p.Halves == "" {
		if !(p.Length > 0 && p.Width > 0) {
			return nil, fmt.Errorf("give its length and its width, or half-widths")
		}
		return nest.Rect(p.Length.MM(), p.Width.MM()), nil
	}
	at, err := value.Pairs(p.Halves, length.Millimetres)
	if err != nil {
		return nil, err
	}
	return nest.Halves(at)
}

// part checks that an added part has an outline.
func (c *checker) part(i int, p Part) {
	_, err := p.Outline()
	switch {
	case err != nil && p.Halves != "":
		c.add("part.halves", i, fmt.Sprintf("%.40q", p.Halves), err.Error())
	case err != nil:
		c.add("part.length", i, c.say(p.Length)+" by "+c.say(p.Width), err.Error())
	}
}
