package form

import (
	"math"
	"strings"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
)

// Place is a field of the form; Index is the row of its list, -1 for a field of its own.
type Place struct {
	Key   string
	Index int
}

// places are the fields at which the checks are mended, by their names: where more than
// one would do, the one that the check's own words speak of.
var places = map[string]string{
	"squeeze":       "sheath.ease",
	"gather":        "sheath.blend",
	"thread guard":  "sheath.gap",
	"edge":          "sheath.margin",
	"hollow":        "sheath.blend",
	"fold":          "sheath.leather",
	"thread length": "stitch.thread",
	"back":          "knife.back",
	"mouth":         "sheath.mouth",
	"strap":         "strap.kind",
	"mouth corners": "sheath.mouth_round",
	"first hole":    "stitch.first",
	"tab":           "belt.tab",
	"loop rub":      "belt.row",
	"drain":         "sheath.drain",
	"holes":         "stitch.pitch",
	"thickness":     "knife.station.thick",
	"untouched":     "knife.outline.blade",
}

// PlaceOf is the field at which a check of a plan is mended.
func PlaceOf(c calc.Check, p project.Project) Place {
	key, known := places[c.Name]
	f, there := project.FieldFor(key)
	switch {
	case c.Name == "untouched":
		return Place{firstUntouched(p), -1}
	case c.Name == "thickness" && p.Source == project.FromOutline:
		return Place{oddOutline(c, p), -1}
	case c.Name == "back" && p.Knife.Back != knife.Sharp:
		return backOff(c, p)
	case strings.HasPrefix(key, "knife.station."):
		return Place{key, nearestMark(c.At, p)}
	case known && there && f.Counts(p):
		return Place{key, -1}
	}
	return Place{"sheath.mouth", -1}
}

// backOff is where a back that lies off the fold is seen to: its gap, where that was measured
// and the fold is held off by nothing, else the mouth.
func backOff(c calc.Check, p project.Project) Place {
	if p.Source == project.FromOutline || strings.Contains(c.Text(length.Millimetres), "mouth") {
		return Place{"sheath.mouth", -1}
	}
	return Place{"knife.station.top", nearestMark(c.At, p)}
}

func firstUntouched(p project.Project) string {
	for _, f := range project.Fields {
		if f.IsUntouched(p) {
			return f.Key
		}
	}
	return "knife.outline.blade"
}

// nearestMark is the mark nearest to a place along the fold, mm.
func nearestMark(x float64, p project.Project) int {
	best, least := 0, math.Inf(1)
	for i, s := range p.Knife.Stations {
		if d := math.Abs(s.At.MM() - x); d < least {
			best, least = i, d
		}
	}
	return best
}

// oddOutline is the figure of the outline that a check names.
func oddOutline(c calc.Check, p project.Project) string {
	text := c.Text(length.Millimetres)
	key, longest := "knife.outline.blade", 0
	for _, f := range project.Fields {
		if n := len(f.Name); f.Group == "outline" && n > longest && strings.Contains(text, f.NameIn(p)) {
			key, longest = f.Key, n
		}
	}
	return key
}

// Concerns are the checks that warn and those that note, in that order.
func Concerns(plan *calc.Plan) (warn, note []calc.Check) {
	if plan == nil {
		return nil, nil
	}
	for _, c := range plan.Checks {
		switch c.Level {
		case calc.Warn:
			warn = append(warn, c)
		case calc.Note:
			note = append(note, c)
		}
	}
	return warn, note
}

// First is the check that is to be seen to first; ok is false where all is well.
func First(plan *calc.Plan) (calc.Check, bool) {
	warn, note := Concerns(plan)
	if all := append(warn, note...); len(all) > 0 {
		return all[0], true
	}
	return calc.Check{}, false
}

// New is the first check that warns in a plan and did not in the one before.
func New(plan, before *calc.Plan) (calc.Check, bool) {
	old, _ := Concerns(before)
	now, _ := Concerns(plan)
	for _, c := range now {
		known := false
		for _, o := range old {
			known = known || o.Name == c.Name
		}
		if !known {
			return c, true
		}
	}
	return calc.Check{}, false
}

// Count is how many checks of a page warn and note.
func Count(plan *calc.Plan, p project.Project, page Page) (warn, note int) {
	on := func(cs []calc.Check) (n int) {
		for _, c := range cs {
			if at, ok := OfKey(PlaceOf(c, p).Key); ok && at == page {
				n++
			}
		}
		return n
	}
	w, n := Concerns(plan)
	return on(w), on(n)
}
