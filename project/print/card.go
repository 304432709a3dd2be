package print

import (
	"fmt"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/report"
)

// workCard is the paper that lies on the bench.
func (j *job) workCard() []page {
	f := newFlow(j, "Work card", 2)
	u := j.p.Units
	f.para(joined(j.title(), report.Worn(j.p), forWhom(j.p.Customer.Name)), 2.7, 0)
	f.heading("figures")
	f.figures(report.Figures(j.p, j.plan, u, j.o.Offcut))
	if warns := report.Checks(j.plan, calc.Note, u); len(warns) > 0 {
		f.heading("look at this before you cut")
		for _, s := range warns {
			f.item("–", s)
		}
	}
	if len(j.p.Steps) > 0 {
		f.heading("steps")
		for i, s := range report.Steps(j.p) {
			f.step(i+1, s)
		}
	}
	f.heading("cautions")
	for _, s := range report.Cautions() {
		f.item("–", s)
	}
	f.table(report.HalfWidths(j.plan, u), 1)
	f.table(report.TenthHoles(j.plan, u), 1)
	for _, s := range report.Dividers() {
		f.item("–", s)
	}
	if loop := report.LoopFigures(j.plan, u); len(loop) > 0 {
		f.heading("belt loop")
		f.figures(loop)
	}
	strips := 3
	if u == length.Inches { // fractions are wide
		strips = 2
	}
	f.table(report.FlatHoles(j.plan, u), strips)
	if j.p.Notes != "" {
		f.heading("notes")
		f.para(j.p.Notes, 2.7, 0)
	}
	return f.pages
}

func forWhom(name string) string {
	if name == "" {
		return ""
	}
	return "for " + name
}

// step writes a line of the checklist with a box to tick.
func (f *flow) step(n int, s report.StepLine) {
	const size, small, row, indent = 2.7, 2.4, 3.7, 10.0
	title := s.Title
	if s.Skipped {
		title += " (skipped)"
	}
	lines := wrap(printable(title), size, f.width-indent, false)
	holds := f.holdLines(s.Hold, size, indent)
	var caution []string
	if s.Caution != "" {
		caution = wrap(printable(s.Caution), small, f.width-indent, false)
	}
	f.need(row*float64(len(lines)+len(holds)) + 1 + small*1.35*float64(len(caution)))
	b := box{curve.Vec{X: f.x(), Y: f.y + 0.3}, curve.Vec{X: f.x() + 2.6, Y: f.y + 2.9}}
	f.page().path(path{layer: wordLayer, stroke: thin, pts: b.corners(), closed: true})
	if s.Done {
		f.page().line(wordLayer, thin, b.lo, b.hi)
		f.page().line(wordLayer, thin, curve.Vec{X: b.lo.X, Y: b.hi.Y}, curve.Vec{X: b.hi.X, Y: b.lo.Y})
	}
	f.put(indent-1.5, fmt.Sprint(n), size, false, end)
	for _, l := range lines {
		f.put(indent, l, size, false, start)
		f.y += row
	}
	for _, l := range holds {
		f.put(indent, l, size, true, start)
		f.y += row
	}
	for _, l := range caution {
		f.need(small * 1.35)
		f.put(indent, l, small, false, start)
		f.y += small * 1.35
	}
	f.gap(0.6)
}

// holdLines are the hold's times and blanks to write the clock times into.
func (f *flow) holdLines(hold string, size, indent float64) []string {
	const blanks = "from __________ to __________"
	switch one := hold + "   " + blanks; {
	case hold == "":
		return nil
	case textWidth(one, true)*size <= f.width-indent:
		return []string{one}
	}
	return []string{hold, blanks}
}

// careCard is for the person who gets the knife.
func (j *job) careCard() []page {
	f := newFlow(j, "Care card", 1)
	if f.width > 150 {
		f.width = 150 // a longer line is hard to read
	}
	f.gap(4)
	f.big(j.title(), 2)
	if j.p.Customer.Name != "" {
		f.para("for "+j.p.Customer.Name, 4, 0)
	}
	f.para("A sheath to be worn for the "+report.Worn(j.p)+".", 4, 0)
	f.gap(4)
	for _, s := range report.Care() {
		f.para(s, 4, 0)
		f.gap(2.5)
	}
	f.gap(8)
	f.para("Made by ______________________     Date ______________", 4, 0)
	return f.pages
}
