// Package added is the parts that a maker adds to those of the sheath, to be cut with them.
package added

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/nest"
	"chape/project/value"
)

// Part is a part that the maker adds to those of the sheath.
type Part struct {
	Name      string
	Count     int
	Length    length.Length
	Width     length.Length
	Halves    string        // places along the middle and half-widths there, mm, as value.Pairs reads them; "": a rectangle
	Thickness length.Length // 0: the body's
}

const (
	longestPart = 3000
	mostCopies  = 50
)

func partLength(key, name, hint string, p func(*Part) *length.Length) value.Column[Part] {
	return value.LengthAt(value.Spec{Key: "part." + key, Group: "parts", Name: name, Hint: hint, Max: longestPart}, length.Length(0), p)
}

// Columns are the keys of a part in a file.
var Columns = []value.Column[Part]{
	value.At(value.Spec{Key: "part.name", Group: "parts", Name: "name", Kind: value.Text, Max: 60, Hint: "what you call it: firesteel loop"},
		"part", func(p *Part) *string { return &p.Name }),
	value.At(value.Spec{Key: "part.count", Group: "parts", Name: "how many", Kind: value.Count, Min: 1, Max: mostCopies, Hint: "cut so many of it"},
		1, func(p *Part) *int { return &p.Count }),
	partLength("length", "length", "along the grain where that counts", func(p *Part) *length.Length { return &p.Length }),
	partLength("width", "width", "across", func(p *Part) *length.Length { return &p.Width }),
	value.At(value.Spec{Key: "part.halves", Group: "parts", Name: "half-widths", Kind: value.Text, Max: 2000,
		Hint: `in place of length and width: places along its middle and half-widths there, "0 10; 40 20; 80 8"`},
		"", func(p *Part) *string { return &p.Halves }).UnlessEmpty(),
	value.LengthAt(value.Spec{Key: "part.thickness", Group: "parts", Name: "thickness", Kind: value.Leather, Max: 20,
		Hint: "0: as thick as the body"}, length.Length(0), func(p *Part) *length.Length { return &p.Thickness }),
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
	for _, v := range at {
		if max(math.Abs(v.X), v.Y) > longestPart {
			return nil, fmt.Errorf("give places and half-widths of up to %d mm", longestPart)
		}
	}
	return nest.Halves(at)
}

// Check tells whether a part has an outline, and names the key that will not do; lengths
// are said in unit u.
func (p Part) Check(u length.Unit, add func(key, found, remedy string)) {
	_, err := p.Outline()
	switch {
	case err != nil && p.Halves != "":
		add("part.halves", fmt.Sprintf("%.40q", p.Halves), err.Error())
	case err != nil:
		add("part.length", value.Measure(p.Length, u)+" by "+value.Measure(p.Width, u), err.Error())
	}
}

// Size says how large a part is: "60 × 30 mm", "2 3/8 × 1 3/16 in"; one of half-widths by the
// rectangle round it, with the word that it has an outline.
func (p Part) Size(u length.Unit) string {
	long, wide, shape := p.Length, p.Width, ""
	if p.Halves != "" {
		outline, err := p.Outline()
		if err != nil {
			return ""
		}
		lo, hi := outline.Bounds()
		long, wide, shape = length.Length(hi.X-lo.X), length.Length(hi.Y-lo.Y), ", by its outline"
	}
	first := strings.TrimSuffix(long.Format(u, length.Ruler), " "+u.String())
	return first + " × " + wide.Format(u, length.Ruler) + shape
}

// Cut says how often a part is cut, and of what: "cut 2 of 2 mm leather". body is the
// thickness of the body's.
func (p Part) Cut(body length.Length, u length.Unit) string {
	return fmt.Sprintf("cut %d of %s leather", max(1, p.Count), cmp.Or(p.Thickness, body).Format(u, length.Calliper))
}

// Say is the part in a line: "strap keeper: 60 × 30 mm, cut 2 of 2 mm leather".
func (p Part) Say(body length.Length, u length.Unit) string {
	return p.Name + ": " + p.Size(u) + ", " + p.Cut(body, u)
}
