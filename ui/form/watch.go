package form

import (
	"strconv"
	"strings"

	"chape/calc"
)

// Watch keeps in mind which warnings of a project have been said, and which was last led to.
type Watch struct {
	said *calc.Plan // of the last change: what warns in it has been said
	next int        // which of the checks that warn or note is led to next
}

// Begin takes what warns in a plan as said.
func (w *Watch) Begin(plan *calc.Plan) { w.said = plan }

// News is the first check that warns since the plan before; ok is false where none does.
func (w *Watch) News(plan *calc.Plan) (c calc.Check, ok bool) {
	if plan == w.said {
		return c, false
	}
	c, ok = New(plan, w.said)
	w.said, w.next = plan, 0
	return c, ok
}

// Next is one of the checks that warn or note, each time the next; ok is false where all
// is well.
func (w *Watch) Next(plan *calc.Plan) (c calc.Check, ok bool) {
	warn, note := Concerns(plan)
	all := append(warn, note...)
	if len(all) == 0 {
		return c, false
	}
	c = all[w.next%len(all)]
	w.next++
	return c, true
}

// Counts says how many checks of a plan warn and how many note: "! 1 * 2"; "": none.
func Counts(plan *calc.Plan) (text string, warns bool) {
	warn, note := Concerns(plan)
	var counts []string
	if len(warn) > 0 {
		counts = append(counts, "! "+strconv.Itoa(len(warn)))
	}
	if len(note) > 0 {
		counts = append(counts, "* "+strconv.Itoa(len(note)))
	}
	return strings.Join(counts, " "), len(warn) > 0
}
