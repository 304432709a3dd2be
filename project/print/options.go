// Package print draws a plan on paper, at true size: PDF sheets to cut
// leather by, and an SVG file for a cutter. The same input gives the same
// bytes.
package print

import (
	"fmt"
	"math"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
)

// What a sheet keeps, mm.
const (
	edge    = 8.0  // nothing is printed nearer to the paper's edge
	overlap = 10.0 // of neighbouring sheets
)

// Options say how to print. The zero value is A4, grain side up.
type Options struct {
	Paper      Paper
	Up         calc.Up
	Half       bool          // one half, to be marked and flipped
	Trial      length.Length // thickness of trial stock to size the pattern for; 0: for the leather
	Stock      length.Length // thickness of the paper; 0: 0.1 mm
	Correction Correction
	Date       time.Time // of the project file; also stands in the PDF
	Offcut     float64   // share of leather bought on top of what is cut, as in calc.Rates
	// Progress, unless nil, hears what is about to be drawn: "pattern, 2 sheets",
	// "welt", "work card", "svg". It is called from where the printing was.
	Progress func(what string)
}

// Check says which option will not do, whatever the project.
func (o Options) Check() error {
	o = o.defaults()
	if err := o.Paper.check(); err != nil {
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

// Correction is what the two distances of 100 mm on a printed sheet measured,
// across and along the paper, in mm. Zero: not measured.
type Correction struct{ X, Y float64 }

// Then is the correction of a printer whose sheet, printed with c, measured m: what
// it stretches is the product of the two. To 0.01 mm, which is finer than a
// calliper; the error says that no printer is that far out.
func (c Correction) Then(m Correction) (Correction, error) {
	fx, fy := c.factors()
	gx, gy := m.factors()
	out := Correction{X: hundredth(100 / (fx * gx)), Y: hundredth(100 / (fy * gy))}
	return out, out.Check()
}

func hundredth(mm float64) float64 { return math.Round(mm*100) / 100 }

// Set tells whether there is anything to correct.
func (c Correction) Set() bool {
	fx, fy := c.factors()
	return fx != 1 || fy != 1
}

// factors are what the file is stretched by, so that the printer's own
// stretch cancels out.
func (c Correction) factors() (x, y float64) {
	x, y = 1, 1
	if c.X != 0 {
		x = 100 / c.X
	}
	if c.Y != 0 {
		y = 100 / c.Y
	}
	return x, y
}

// Check refuses a correction that no printer needs: those are typing errors,
// or a print that was scaled to fit.
func (c Correction) Check() error {
	for _, v := range []float64{c.X, c.Y} {
		if v != 0 && !(math.Abs(v-100) <= 5) {
			return fmt.Errorf("%v mm between pricks 100 mm apart is no printer's error: print at 100 %%, without fitting to the page, and measure again", v)
		}
	}
	return nil
}

// defaults fills in what was left out.
func (o Options) defaults() Options {
	if o.Paper.Width == 0 {
		o.Paper = papers[0]
	}
	if o.Stock == 0 {
		o.Stock = 0.1
	}
	if o.Date.IsZero() {
		o.Date = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC) // a file must not carry the clock
	}
	return o
}

// job is one thing to print: the plan as drawn, with what every page says.
type job struct {
	p     project.Project
	plan  *calc.Plan
	o     Options
	dated bool // a date was given

	tracing bool // a tracing sheet, which is of no project
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
