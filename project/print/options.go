// Package print draws a plan on paper, at true size: PDF sheets to cut
// leather by, and an SVG file for a cutter. The same input gives the same
// bytes.
package print

import (
	"fmt"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/print/pdf"
	"chape/project/print/sheet"
	"chape/project/print/svg"
)

// Options say how to print. The zero value is A4, grain side up.
type Options struct {
	Paper      sheet.Paper
	Up         calc.Up
	Half       bool          // one half, to be marked and flipped
	Trial      length.Length // thickness of trial stock to size the pattern for; 0: for the leather
	Stock      length.Length // thickness of the paper; 0: 0.1 mm
	Correction sheet.Correction
	Date       time.Time // of the project file; also stands in the PDF
	Offcut     float64   // share of leather bought on top of what is cut
	Maker      []string  // who made it, a line each, for the care card; none: a line to write on
	Cutter     svg.Look  // how the SVG is to be
	// Progress, unless nil, hears what is about to be drawn: "pattern, 2 sheets",
	// "welt", "work card", "svg". It is called from where the printing was.
	Progress func(what string)
}

// Check says which option will not do, whatever the project.
func (o Options) Check() error {
	o = o.defaults()
	if err := o.Paper.Check(); err != nil {
		return err
	}
	if err := o.Correction.Check(); err != nil {
		return err
	}
	if o.Trial != 0 && !(o.Trial > 0 && o.Trial <= 10) {
		return fmt.Errorf("%v mm is no thickness for trial stock: try 0.1 for paper, 0.3 for card", o.Trial.MM())
	}
	return nil
}

// begin tells the listener what is drawn next.
func (o Options) begin(format string, args ...any) {
	if o.Progress != nil {
		o.Progress(fmt.Sprintf(format, args...))
	}
}

// defaults fills in what was left out.
func (o Options) defaults() Options {
	o.Paper = o.Paper.OrFirst()
	if o.Stock == 0 {
		o.Stock = 0.1
	}
	o.Date = pdf.DateOr(o.Date)
	return o
}

// job is one thing to print: the plan as drawn, with what every page says.
type job struct {
	p     project.Project
	plan  *calc.Plan
	o     Options
	dated bool // a date was given
}

// newJob checks the options and, for a trial, makes the plan for the trial
// stock's thickness.
func newJob(p project.Project, plan *calc.Plan, o Options) (*job, error) {
	if err := o.Check(); err != nil {
		return nil, err
	}
	j := &job{p: p, plan: plan, o: o.defaults(), dated: !o.Date.IsZero()}
	if o.Trial == 0 {
		return j, nil
	}
	in := plan.Input
	in.Sheath.Leather = o.Trial
	trial, err := calc.Compute(in)
	if err != nil {
		return nil, fmt.Errorf("no pattern for trial stock of %v mm: %w", o.Trial.MM(), err)
	}
	j.plan = trial
	return j, nil
}

// show gives a length as a ruler can show it, in the project's unit.
func (j *job) show(mm float64) string { return length.Length(mm).Format(j.p.Units, length.Ruler) }

// exact gives a length as a calliper can show it, in the project's unit.
func (j *job) exact(mm float64) string {
	return length.Length(mm).Format(j.p.Units, length.Calliper)
}

// trial tells whether the pattern is not for leather.
func (j *job) trial() bool { return j.o.Trial > 0 }

// flow starts a run of pages of one name, with up to so many columns.
func (j *job) flow(name string, cols int) *sheet.Flow {
	w, h := j.o.Paper.Area(j.o.Correction)
	return sheet.NewFlow(w, h, name, cols, j.heading)
}
