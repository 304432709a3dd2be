package project

import (
	"slices"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project/value"
)

// scalars are the keys that stand once in a file, in the order in which they
// are written and shown.
var scalars = slices.Concat(head, customer, outline, tracing, sheath, strap, belt, stitches, room, hide, madeFor)

// Fields lists every value that stands once in a project, in the order of the
// screens. Marks, fits, steps and weighings have their own.
var Fields = bindScalars()

func bindScalars() []Field {
	var fs []Field
	for _, c := range scalars {
		fs = append(fs, field(c, func(p *Project, _ int) *Project { return p }, thenOf(c.Spec)))
	}
	return fs
}

// thenOf is what follows from a change: the marks follow the outline, and
// while the mouth stands where the program proposed it, it follows the knife. A new project
// of which nobody has given a figure yet begins anew in another unit.
func thenOf(s Spec) func(*Project) error {
	switch {
	case s.Key == "units":
		return func(p *Project) error {
			if p.Source == FromOutline && p.Untouched == asNew {
				p.begin(length.Millimetres+length.Inches-p.Units, p.Units) // there are two units: from the other one
			}
			return nil
		}
	case s.Key == "knife.outline.front":
		return func(p *Project) error {
			p.giveFront()
			return p.refill()
		}
	case s.Group == "outline":
		return func(p *Project) error {
			p.touch(s.Key)
			return p.refill()
		}
	}
	return nil
}

// FieldFor finds a field by its key.
func FieldFor(key string) (Field, bool) {
	i := slices.IndexFunc(Fields, func(f Field) bool { return f.Key == key })
	if i < 0 {
		return Field{}, false
	}
	return Fields[i], true
}

// LongestLine is how many letters a line of text may have.
const LongestLine = value.LongestLine

const (
	longestNotes = 20000
	longestKnife = 2000
	mostRevision = 100000
)

var head = []column[Project]{
	value.At(Spec{Key: "title", Group: "project", Name: "title", Kind: Text, Max: LongestLine,
		Hint: "what you call this knife"}, "", func(p *Project) *string { return &p.Title }),
	value.ChoiceAt(Spec{Key: "units", Group: "project", Name: "units", Hint: "what you measure in"},
		func(p *Project) *length.Unit { return &p.Units }, length.Millimetres, length.Inches),
	value.At(Spec{Key: "revision", Group: "project", Name: "pattern number", Kind: Count, Max: mostRevision,
		Hint: "raise it when you cut a new pattern"}, 1, func(p *Project) *int { return &p.Revision }),
	value.At(Spec{Key: "notes", Group: "project", Name: "notes", Kind: Lines, Max: longestNotes,
		Hint: "anything worth knowing next time"}, "", func(p *Project) *string { return &p.Notes }).UnlessEmpty(),
}

var customer = []column[Project]{
	value.At(Spec{Key: "customer.name", Group: "customer", Name: "for whom", Kind: Text, Max: LongestLine,
		Hint: "the customer's name"}, "", func(p *Project) *string { return &p.Customer.Name }).UnlessEmpty(),
	value.ChoiceAt(Spec{Key: "customer.hand", Group: "customer", Name: "drawn with the", Hint: "the hand that draws the knife"},
		func(p *Project) *calc.Hand { return &p.Customer.Hand }, calc.RightHand, calc.LeftHand),
	value.ChoiceAt(Spec{Key: "customer.edge", Group: "customer", Name: "edge to the", Hint: "where the edge points when it is worn"},
		func(p *Project) *calc.Edge { return &p.Customer.Edge }, calc.EdgeRear, calc.EdgeFront),
	dateAt(Spec{Key: "customer.due", Group: "customer", Name: "due", Hint: "the day it is promised for"}),
}

var outline = []column[Project]{
	value.ChoiceAt(Spec{Key: "knife.back", Group: "knife", Name: "back", Hint: "sharp where a swedge, a second edge or a hook would cut the fold"},
		func(p *Project) *knife.Back { return &p.Knife.Back }, knife.Blunt, knife.Sharp),
	value.At(Spec{Key: "knife.untouched", Group: "untouched", Name: "not given yet", Kind: Text, Max: LongestLine,
		Hint: "the outline's figures that still are a new project's"}, "", func(p *Project) *string { return &p.Untouched }).UnlessEmpty(),
	value.ChoiceAt(Spec{Key: "knife.source", Group: "outline", Name: "marks from", Hint: "outline: its figures; measured: mark by mark",
		Shown: []string{"measured", "outline"}},
		func(p *Project) *Source { return &p.Source }, FromStations, FromOutline),
	value.ChoiceAt(outlined("point", "point", "the shape of the blade's point"),
		func(p *Project) *knife.Point { return &p.Outline.Point }, knife.Points...),
	outlineLength("blade", "blade length", "point to the front of the bolster, guard or handle", length.Ruler, 20, 1500, 110,
		func(p *Project) *length.Length { return &p.Outline.Blade }),
	outlineLength("depth", "blade depth", "spine to edge where the blade is deepest", length.Calliper, 5, 200, 30,
		func(p *Project) *length.Length { return &p.Outline.Depth }),
	outlineLength("spine", "spine thickness", "at the back of the blade, near the handle", length.Calliper, 0.5, 15, 4,
		func(p *Project) *length.Length { return &p.Outline.Spine }),
	value.ChoiceAt(outlined("front", "front of the handle", "what stands between blade and handle"),
		func(p *Project) *knife.Front { return &p.Outline.Front }, knife.Fronts...),
	outlineLength("front_length", "front length", "along the knife", length.Calliper, 0, 100, 12,
		func(p *Project) *length.Length { return &p.Outline.FrontLength }),
	outlineLength("front_depth", "front depth", "back to belly of the bolster or guard", length.Calliper, 0, 200, 31,
		func(p *Project) *length.Length { return &p.Outline.FrontDepth }),
	value.Optional(outlinedLength("front_back", "front out at back", "how far the guard stands out at the blade's back", 100),
		func(p *Project) *length.Length { return &p.Outline.FrontBack }, func(p *Project) *bool { return &p.Outline.BackGiven }, true),
	value.Optional(outlinedLength("front_edge", "front out at edge", "how far the guard stands out at the edge", 150),
		func(p *Project) *length.Length { return &p.Outline.FrontEdge }, func(p *Project) *bool { return &p.Outline.EdgeGiven }, true),
	outlineLength("front_thick", "front thickness", "across the bolster or guard", length.Calliper, 0, 80, 17,
		func(p *Project) *length.Length { return &p.Outline.FrontThick }),
	outlineLength("handle", "handle length", "behind the bolster or guard, to the butt", length.Ruler, 20, 500, 110,
		func(p *Project) *length.Length { return &p.Outline.Handle }),
	outlineLength("handle_depth", "handle depth", "back to belly at its front", length.Calliper, 5, 150, 27,
		func(p *Project) *length.Length { return &p.Outline.HandleDepth }),
	outlineLength("handle_thick", "handle thickness", "across, at its front", length.Calliper, 2, 80, 17,
		func(p *Project) *length.Length { return &p.Outline.HandleThick }),
	outlineLength("swell", "swell", "how much deeper and thicker the handle is at its fattest", length.Calliper, 0, 50, 4,
		func(p *Project) *length.Length { return &p.Outline.Swell }),
	value.ZeroAs("the handle's", outlineLength("butt", "butt depth", "back to belly at the butt; the handle's where it is as at its front", length.Calliper, 0, 150, 0,
		func(p *Project) *length.Length { return &p.Outline.Butt })),
	value.ZeroAs("full", outlineLength("grind", "grind height", "edge to where the bevel begins; full where it goes up to the spine", length.Calliper, 0, 200, 0,
		func(p *Project) *length.Length { return &p.Outline.Grind })),
	value.ChoiceAt(outlined("section", "handle section", "slab: flat sides; oval: rounded all over"),
		func(p *Project) *knife.Kind { return &p.Outline.Section }, knife.Oval, knife.Slab),
}

func outlined(key, name, hint string) Spec {
	return Spec{Key: "knife.outline." + key, Group: "outline", Name: name, Hint: hint}
}

// outlinedLength is for a figure that need not be given: the depth says it.
func outlinedLength(key, name, hint string, hi float64) Spec {
	s := outlined(key, name, hint)
	s.Fine, s.Max, s.Auto = length.Calliper, hi, "by its depth"
	return s
}

func outlineLength(key, name, hint string, fine length.Fineness, lo, hi float64, def length.Length, p func(*Project) *length.Length) column[Project] {
	s := outlined(key, name, hint)
	s.Fine, s.Min, s.Max = fine, lo, hi
	return value.LengthAt(s, def, p)
}
