// Package card writes what is read, not cut by: the work card and the care card.
package card

import (
	"fmt"
	"strings"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project"
	"chape/project/print/letters"
	"chape/project/print/sheet"
	"chape/project/report"
)

// Work is the paper that lies on the bench.
func Work(f *sheet.Flow, p project.Project, plan *calc.Plan, title string, offcut float64) []sheet.Page {
	u := p.Units
	f.Para(letters.Joined(title, report.Worn(p), forWhom(p.Customer.Name)), 2.7, 0)
	look(f, plan, u)
	f.Gap(1.5)
	bench(f, p, report.Bench(p, plan, u))
	under(f, "figures", report.Figures(p, plan, u, offcut).WithoutBench())
	if parts := report.AddedParts(p, u); len(parts) > 0 {
		f.Heading("added parts")
		for _, s := range parts {
			f.Item("–", s)
		}
	}
	for i, s := range report.Steps(p) {
		if i == 0 {
			f.Need(sheet.HeadingHigh + newStep(f, s).high())
			f.Heading("steps")
		}
		newStep(f, s).write(f, i+1)
	}
	f.Need(sheet.HeadingHigh + 3*figureRow)
	f.Heading("cautions")
	for _, s := range report.Cautions() {
		f.Item("–", s)
	}
	table(f, report.KnifeMarks(p, u), 1)
	table(f, report.HalfWidths(plan, u), 1)
	if mouth := report.MouthCurve(plan, u); len(mouth.Rows) > 0 {
		table(f, mouth, 1)
	}
	table(f, report.TenthHoles(plan, u), 1)
	for _, s := range report.Dividers() {
		f.Item("–", s)
	}
	if loop := report.LoopFigures(plan, u); len(loop) > 0 {
		under(f, "belt loop", loop)
	}
	if extra := report.Extras(p, plan, u); len(extra) > 0 {
		under(f, "fold, drain, strap, corrections", extra)
	}
	strips := 3
	if u == length.Inches { // fractions are wide
		strips = 2
	}
	table(f, report.FlatHoles(plan, u), strips)
	if p.Notes != "" {
		f.Heading("notes")
		for _, line := range strings.Split(strings.TrimRight(p.Notes, "\n"), "\n") {
			f.Para(line, 2.7, 0)
		}
	}
	return f.Pages
}

// look is what to look at before cutting: warnings in bold, then notes.
func look(f *sheet.Flow, plan *calc.Plan, u length.Unit) {
	notes := report.Checks(plan, calc.Note, u)
	if len(notes) == 0 {
		return
	}
	f.Heading("look at this before you cut")
	for _, s := range report.Warnings(plan, u) {
		f.Bold(s, 2.7)
	}
	for _, c := range plan.Checks {
		if c.Level == calc.Note {
			f.Item("–", c.Text(u))
		}
	}
}

func forWhom(name string) string {
	if name == "" {
		return ""
	}
	return "for " + name
}

// stepSize and cautionSize are the sizes of a step's words, stepRow and cautionRow what
// their lines take, stepIndent is the column of the box and the number.
const (
	stepSize, stepRow       = 2.7, 3.7
	cautionSize, cautionRow = 2.5, 2.5 * 1.35
	stepIndent              = 10.0
)

// step is a line of the checklist, in lines as wide as the column.
type step struct {
	done                  bool
	title, hold, cautions []string
}

func newStep(f *sheet.Flow, s report.StepLine) step {
	title := s.Title
	if s.Skipped {
		title += " (skipped)"
	}
	out := step{done: s.Done, hold: holdLines(f, s.Hold, stepSize, stepIndent)}
	out.title = letters.Wrap(letters.Printable(title), stepSize, f.Width-stepIndent, false)
	if s.Caution != "" {
		out.cautions = letters.Wrap(letters.Printable(s.Caution), cautionSize, f.Width-stepIndent, false)
	}
	return out
}

func (s step) high() float64 {
	return stepRow*float64(len(s.title)+len(s.hold)) + 1 + cautionRow*float64(len(s.cautions))
}

// write writes it with a box to tick.
func (s step) write(f *sheet.Flow, n int) {
	f.Need(s.high())
	b := sheet.Box{Lo: curve.Vec{X: f.X() + 0.3, Y: f.Y + 0.3}, Hi: curve.Vec{X: f.X() + 2.9, Y: f.Y + 2.9}}
	f.Page().Path(sheet.Path{Layer: sheet.WordLayer, Stroke: sheet.Thin, Pts: b.Corners(), Closed: true})
	if s.done {
		f.Page().Line(sheet.WordLayer, sheet.Thin, b.Lo, b.Hi)
		f.Page().Line(sheet.WordLayer, sheet.Thin, curve.Vec{X: b.Lo.X, Y: b.Hi.Y}, curve.Vec{X: b.Hi.X, Y: b.Lo.Y})
	}
	f.Put(stepIndent-1.5, fmt.Sprint(n), stepSize, false, sheet.End)
	put := func(lines []string, size, row float64, bold bool) {
		for _, l := range lines {
			f.Need(row)
			f.Put(stepIndent, l, size, bold, sheet.Start)
			f.Y += row
		}
	}
	put(s.title, stepSize, stepRow, false)
	put(s.hold, stepSize, stepRow, true)
	put(s.cautions, cautionSize, cautionRow, false)
	f.Gap(0.6)
}

// holdLines are the hold's times and blanks to write the clock times into.
func holdLines(f *sheet.Flow, hold string, size, indent float64) []string {
	const blanks = "from __________ to __________"
	switch one := hold + "   " + blanks; {
	case hold == "":
		return nil
	case letters.Width(one, true)*size <= f.Width-indent:
		return []string{one}
	}
	return []string{hold, blanks}
}

// Care is for the person who gets the knife; maker is who made the sheath, a line each.
func Care(f *sheet.Flow, p project.Project, title string, maker []string) []sheet.Page {
	if f.Width > 150 {
		f.Width = 150 // a longer line is hard to read
	}
	f.Gap(4)
	f.Big(title, 2)
	if p.Customer.Name != "" {
		f.Para("for "+p.Customer.Name, 4, 0)
	}
	f.Para("A sheath to be worn for the "+report.Worn(p)+".", 4, 0)
	f.Gap(4)
	for _, s := range report.Care() {
		f.Para(s, 4, 0)
		f.Gap(2.5)
	}
	f.Gap(8)
	if len(maker) == 0 {
		f.Para("Made by ______________________     Date ______________", 4, 0)
		return f.Pages
	}
	f.Para("Made by "+strings.Join(maker, ", "), 4, 0)
	f.Para("Date ______________", 4, 0)
	return f.Pages
}
