package project

import (
	"fmt"
	"strings"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/nest"
)

// Hide is the leather that a sheath is cut from.
type Hide struct {
	Name   string  // as it is called in the list of leather; "": none chosen
	Lost   float64 // leather lost between the parts as they were placed, as a share of what is cut
	Placed bool    // Lost was found by placing
}

// Part is a part that the maker adds to those of the sheath.
type Part struct {
	Name      string
	Count     int
	Length    length.Length
	Width     length.Length
	Halves    string        // places along the middle and half-widths there, mm, as Pairs reads them; "": a rectangle
	Thickness length.Length // 0: the body's
}

var hide = []column[Project]{
	at(Spec{Key: "leather.name", Group: "leather", Name: "leather", Kind: Text, Max: longestLine,
		Hint: "the leather it is cut from, by its name in your list"}, "", func(p *Project) *string { return &p.Hide.Name }).unlessEmpty(),
	lost(),
}

// lost is what placing the parts loses.
func lost() column[Project] {
	c := optionalNumber(Spec{Key: "leather.lost", Group: "leather", Name: "lost between the parts", Max: 100, Auto: "not placed",
		Hint: "as a share of what is cut, found by placing the parts"},
		func(p *Project) *float64 { return &p.Hide.Lost }, func(p *Project) *bool { return &p.Hide.Placed })
	c.Kind = Share
	return c
}

const (
	longestPart = 3000
	mostCopies  = 50
)

func partLength(key, name, hint string, p func(*Part) *length.Length) column[Part] {
	return lengthAt(Spec{Key: "part." + key, Group: "parts", Name: name, Hint: hint, Max: longestPart}, none, p)
}

var added = []column[Part]{
	at(Spec{Key: "part.name", Group: "parts", Name: "name", Kind: Text, Max: 60, Hint: "what you call it: firesteel loop"},
		"part", func(p *Part) *string { return &p.Name }),
	at(Spec{Key: "part.count", Group: "parts", Name: "how many", Kind: Count, Min: 1, Max: mostCopies, Hint: "cut so many of it"},
		1, func(p *Part) *int { return &p.Count }),
	partLength("length", "length", "along the grain where that counts", func(p *Part) *length.Length { return &p.Length }),
	partLength("width", "width", "across", func(p *Part) *length.Length { return &p.Width }),
	at(Spec{Key: "part.halves", Group: "parts", Name: "half-widths", Kind: Text, Max: 2000,
		Hint: `in place of length and width: places along its middle and half-widths there, "0 10; 40 20; 80 8"`},
		"", func(p *Part) *string { return &p.Halves }).unlessEmpty(),
	addedThickness(),
}

func addedThickness() column[Part] {
	c := lengthAt(Spec{Key: "part.thickness", Group: "parts", Name: "thickness", Kind: Leather, Max: 20,
		Hint: "0: as thick as the body"}, none, func(p *Part) *length.Length { return &p.Thickness })
	return c
}

// Outline is the part's cut line, its length along x, mm. The error says what would do.
func (p Part) Outline() (curve.Line, error) {
	if p.Halves == "" {
		if !(p.Length > 0 && p.Width > 0) {
			return nil, fmt.Errorf("give its length and its width, or half-widths")
		}
		return nest.Rect(p.Length.MM(), p.Width.MM()), nil
	}
	at, err := Pairs(p.Halves, length.Millimetres)
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

// Pairs reads places: two lengths each, with ";" between one place and the next, as in
// "0 10; 40 20; 80 8". A bare number is in the unit. The error says what would do.
func Pairs(text string, u length.Unit) ([]curve.Vec, error) {
	var out []curve.Vec
	for _, place := range strings.Split(text, ";") {
		if strings.TrimSpace(place) == "" {
			continue
		}
		figures := strings.Fields(place)
		if len(figures) != 2 {
			return nil, fmt.Errorf("%.30q is no place: write two figures for each, with \";\" between places: 0 10; 40 20; 80 8", strings.TrimSpace(place))
		}
		var at [2]float64
		for i, f := range figures {
			l, err := length.Parse(f, u)
			if err != nil {
				return nil, err
			}
			at[i] = l.MM()
		}
		out = append(out, curve.Vec{X: at[0], Y: at[1]})
	}
	return out, nil
}

// SayPairs is the text that Pairs reads.
func SayPairs(at []curve.Vec, u length.Unit) string {
	var out []string
	for _, v := range at {
		say := func(mm float64) string { return strings.ReplaceAll(length.Length(mm).Short(u), " ", "-") }
		out = append(out, say(v.X)+" "+say(v.Y))
	}
	return strings.Join(out, "; ")
}
