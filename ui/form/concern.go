package form

import (
	"strings"

	"chape/calc"
	"chape/project"
)

// Place is a field of the form; Index is the row of its list, -1 for a field of its own.
type Place struct {
	Key   string
	Index int
}

// PlaceOf is the field at which a check of a plan is mended: the one that its remedy names.
func PlaceOf(c calc.Check, p project.Project) Place {
	f, there := project.FieldFor(c.Mend)
	switch {
	case c.Name == "untouched":
		return Place{firstUntouched(p), -1}
	case strings.HasPrefix(c.Mend, "knife.station."):
		return Place{c.Mend, c.Mark}
	case there && f.Counts(p):
		return Place{c.Mend, -1}
	}
	return Place{"sheath.mouth", -1}
}

func firstUntouched(p project.Project) string {
	for _, f := range project.Fields {
		if f.IsUntouched(p) {
			return f.Key
		}
	}
	return "knife.outline.blade"
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
