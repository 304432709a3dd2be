package svg

import (
	"fmt"
	"regexp"

	"chape/project/print/sheet"
)

// Colours are the strokes of the groups, "#rrggbb": cutters tell by the colour what to do
// with a line.
type Colours struct {
	Cut, Welt, Strap, Parts, Relief, Holes string // what is cut
	Stitch, Fold, Glue, Marks, Words       string // what is not
}

// Look is how a file for a cutter is to be. The zero value has the default colours, and
// everything.
type Look struct {
	Colours Colours
	Bare    bool // stitch line, fold, glue line, marks and words are left out
}

// DefaultColours are our own, dull ones of leather, thread and dye. They are of no known
// cutter program's palette, whose entries come with work attached: a cutter that has not
// been told what a colour means has to ask, and must not burn what was to be cut.
var DefaultColours = Colours{
	Cut: "#7a2e21", Welt: "#275d4c", Strap: "#6a3572", Parts: "#2f4f2a", Relief: "#8c6510", Holes: "#24456e",
	Stitch: "#a1526d", Fold: "#5c6b2f", Glue: "#3b7f8c", Marks: "#87705a", Words: "#4d4640",
}

var colourRE = regexp.MustCompile(`^#[0-9a-fA-F]{6}$`)

// Check refuses what is no colour; an empty one stands for the default.
func Check(colour string) error {
	if colour != "" && !colourRE.MatchString(colour) {
		return fmt.Errorf("%.40q is no colour: give it as \"#7a2e21\", two digits each for red, green and blue", colour)
	}
	return nil
}

// of is the colour of a group.
func (c Colours) of(l sheet.Layer) string {
	pick := func(own, otherwise string) string {
		if own == "" {
			return otherwise
		}
		return own
	}
	d := DefaultColours
	switch l {
	case sheet.CutLayer:
		return pick(c.Cut, d.Cut)
	case sheet.WeltLayer:
		return pick(c.Welt, d.Welt)
	case sheet.StrapLayer:
		return pick(c.Strap, d.Strap)
	case sheet.AddedLayer:
		return pick(c.Parts, d.Parts)
	case sheet.ReliefLayer:
		return pick(c.Relief, d.Relief)
	case sheet.HoleLayer:
		return pick(c.Holes, d.Holes)
	case sheet.StitchLayer:
		return pick(c.Stitch, d.Stitch)
	case sheet.FoldLayer:
		return pick(c.Fold, d.Fold)
	case sheet.GlueLayer:
		return pick(c.Glue, d.Glue)
	case sheet.MarkLayer:
		return pick(c.Marks, d.Marks)
	}
	return pick(c.Words, d.Words)
}

// cut are the groups of what is cut, rest those of what is not.
var (
	cut  = []sheet.Layer{sheet.CutLayer, sheet.WeltLayer, sheet.StrapLayer, sheet.AddedLayer, sheet.ReliefLayer, sheet.HoleLayer}
	rest = []sheet.Layer{sheet.StitchLayer, sheet.FoldLayer, sheet.GlueLayer, sheet.MarkLayer, sheet.TrialLayer, sheet.WordLayer}
)

// layers are the groups of a file.
func (l Look) layers() []sheet.Layer {
	if l.Bare {
		return cut
	}
	return append(append([]sheet.Layer{}, cut...), rest...)
}
