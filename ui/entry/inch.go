package entry

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"chape/calc/length"
	"chape/project"
	"chape/project/value"
)

// A whole inch too much is under double, and no other check finds it: 1 7/8 typed for 7/8.
// Common practice of those who typed it, no source for the bounds.
const (
	fits      = length.Inch / 8     // as near as this the fraction is the one that was expected
	leastJump = length.Inch * 7 / 8 // what is no inch too much
	steep     = 0.5                 // how fast a depth grows at most, away from the point

	// How deep a blade is for its length: a new project's, what hardly any is of less than
	// two inches, and what no cleaver is.
	usualDepth, deepKnife, deepCleaver = 0.27, 0.42, 0.65
)

// wholeInches is by how many whole inches what was typed looks too much, below 0 too
// little; 0 where it does not, or is not in inches.
func (e *Entry) wholeInches() int {
	is, err := length.ParseLeather(e.Line.Text(), e.Base.Units)
	was, ok := e.Field.Get(e.Base).(length.Length)
	switch {
	case err != nil || !ok || e.Base.Units != length.Inches || e.Field.Group == "fits":
		return 0
	case e.Field.Group == "marks":
		return e.besideNeighbours(is)
	case e.Field.Key == depthKey && e.Field.IsUntouched(e.Base):
		return e.besideLength(is)
	case e.Field.IsUntouched(e.Base) || was <= 0 || was >= length.Inch && e.Field.Group != "outline":
		return 0 // the new project's own figure says nothing of this knife
	}
	k := inches(is - was)
	if k < 1 || was > 2*length.Length(k)*length.Inch {
		return 0
	}
	return k
}

const depthKey, lengthKey = "knife.outline.depth", "knife.outline.blade"

// besideLength looks at the depth of a new knife's blade beside its length, once that is
// given: no blade 3 7/8 long is 1 7/8 deep, while one of 7/8 is a usual one.
func (e *Entry) besideLength(is length.Length) int {
	long := slices.ContainsFunc(project.Fields, func(f project.Field) bool { return f.Key == lengthKey && !f.IsUntouched(e.Base) })
	blade := e.Base.Outline.Blade
	k := math.Floor(is.In())
	rest := is - length.Length(k)*length.Inch
	deepest := deepKnife
	if k > 1 {
		deepest = deepCleaver
	}
	off := func(depth length.Length) float64 { return math.Abs(math.Log(float64(depth/blade) / usualDepth)) }
	if !long || blade <= 0 || k < 1 || rest <= 0 || float64(is/blade) <= deepest || off(rest) >= off(is) {
		return 0
	}
	return int(k)
}

// ReadAs says that a fraction without a unit was read as inches in a project in millimetres;
// "": there is nothing to say.
func (e *Entry) ReadAs() string {
	text := e.Line.Text()
	fraction, unit := strings.ContainsAny(text, "/⁄½⅓⅔¼¾⅛⅜⅝⅞"), strings.ContainsAny(text, "\"″'") || strings.ContainsFunc(text, unicode.IsLetter)
	if e.Err != nil || e.Base.Units == length.Inches || !fraction || unit {
		return ""
	}
	switch v := e.value.(type) {
	case length.Length:
		return "read as inches: " + v.Short(length.Millimetres) + " mm"
	case length.Sold:
		return "read as inches: " + v.Thick.Short(length.Millimetres) + " mm"
	}
	return ""
}

// inches is a difference as whole inches, if it is that but for an eighth; else 0.
func inches(d length.Length) int {
	k := math.Round(d.In())
	if math.Abs(float64(d-length.Length(k)*length.Inch)) > float64(fits) {
		return 0
	}
	return int(k)
}

// besideNeighbours looks at a figure of a mark beside those of the same stretch: it juts out
// over the one before by an inch or more, faster than a knife grows, and the one behind does
// not bear it out; or it juts out over both, or falls short of both. Close to the point a
// knife grows as fast as it likes.
func (e *Entry) besideNeighbours(is length.Length) int {
	before, d, known := e.neighbour(-1)
	if !known || e.Field.Key == "knife.station.at" {
		return 0
	}
	behind, _, both := e.neighbour(1)
	k := inches(is - before)
	at := e.Base.Knife.Stations[e.Field.Index-1]
	switch atPoint := at.At < at.Depth() || at.At == 0; {
	case both && before-is >= leastJump && behind-is >= leastJump:
		return k
	case is-before < leastJump || atPoint || both && behind > is-2*fits:
		return 0
	case both && is-behind >= leastJump:
		return max(1, int(math.Round((is - max(before, behind)).In())))
	case float64(is-before) < steep*float64(d):
		return 0
	}
	return k
}

// neighbour is what a mark beside the one in hand has, and how far it stands off; known is
// false beyond a step.
func (e *Entry) neighbour(by int) (has, away length.Length, known bool) {
	marks, i := e.Base.Knife.Stations, e.Field.Index
	j := i + by
	if i >= len(marks) || j < 0 || j >= len(marks) || marks[i].At == marks[j].At {
		return 0, 0, false
	}
	for _, f := range project.MarkFields(j) {
		if f.Key == e.Field.Key {
			has, known = f.Get(e.Base).(length.Length)
		}
	}
	return has, length.Length(math.Abs(float64(marks[i].At - marks[j].At))), known
}

// inchSlip asks about so many whole inches.
func (e *Entry) inchSlip(k int) string {
	whole, _, _ := strings.Cut(strings.NewReplacer("-", " ", ".", " ", ",", " ").Replace(strings.TrimSpace(e.Line.Text())), " ")
	if k > 0 && whole == fmt.Sprint(k) {
		return "is the " + whole + " too much?"
	}
	is, _ := length.ParseLeather(e.Line.Text(), e.Base.Units)
	return "is it " + value.Tidy(is-length.Length(k)*length.Inch).Short(length.Inches) + "?"
}
