package command

import (
	"context"
	"errors"
	"fmt"
	"math"
	"os"
	"os/signal"
	"path/filepath"
	"slices"
	"time"

	"chape/calc/length"
	"chape/calc/trace"
	"chape/project/config"
	"chape/project/file"
	"chape/project/picture"
	"chape/project/print"
	"chape/project/print/sheet"
	"chape/project/report"
	"chape/project/store"
	"chape/project/traced"
	"chape/ui/command/call"
	"chape/ui/command/settings"
	"chape/ui/term"
)

var traceVerb = call.Verb{
	Name: "trace", Args: "PHOTO [FILE]", Does: "read a knife's marks from a photographed tracing",
	More: `  --of WHAT        knife (a drawn line, if it is not given), pattern or leather
                   (a piece laid on the sheet)
  --json           for other programs, all lengths in mm
  --rule WIDTH     the tracing is of a steel rule so wide: it gives the
                   stand-off of your pencil, which is kept in your settings
  --measured X,Y   what the two 100 mm on this very sheet measured, in mm

PHOTO is a JPEG or PNG of a whole tracing sheet, which "chape print --tracing"
prints; its second page says how to trace. With FILE the marks are put into that
project in one saved change, and the former version is kept; thicknesses are
left for the calliper. In the workbench, I shows what was read before it is
taken.`,
	Run: runTrace,
}

// traceCall is what a call of trace asks for.
type traceCall struct {
	photo, file string
	json        bool
	options     trace.Options
}

func runTrace(w call.World, v call.Verb, args []string) error {
	fs := call.Flags(v.Name)
	of := fs.String("of", "knife", "")
	asJSON := fs.Bool("json", false, "")
	rule := fs.String("rule", "", "")
	measured := fs.String("measured", "", "")
	if done, err := call.Parsed(w, v, fs, args); done || err != nil {
		return err
	}
	switch {
	case fs.NArg() == 0:
		return call.Misuse("which photograph? chape %s %s", v.Name, v.Args)
	case fs.NArg() > 2:
		return call.Misuse("one photograph and one project at a time: %q is one too many", fs.Arg(2))
	}
	c := traceCall{photo: fs.Arg(0), file: fs.Arg(1), json: *asJSON}
	if err := c.set(*of, *rule, *measured); err != nil {
		return err
	}
	return c.run(w)
}

// set takes the words of the options.
func (c *traceCall) set(of, rule, measured string) error {
	i := slices.IndexFunc(trace.Ofs, func(o trace.Of) bool { return o.String() == of })
	switch {
	case i < 0:
		return call.Misuse("--of %.40q is nothing to read: try knife, pattern or leather", of)
	case c.file != "" && trace.Ofs[i] != trace.Knife:
		return call.Misuse("marks are read from a knife alone: leave --of or %q off", c.file)
	case rule != "" && (trace.Ofs[i] != trace.Knife || c.file != ""):
		return call.Misuse("a rule is traced as a knife is, and goes into no project: leave --of and FILE off")
	}
	c.options.Of = trace.Ofs[i]
	if rule != "" {
		l, err := length.Parse(rule, length.Millimetres)
		if err != nil {
			return call.Misuse("--rule: %v", err)
		}
		if l < 5 || l > 150 {
			return call.Misuse("--rule: a rule is 5 to 150 mm wide: measure it with the calliper")
		}
		c.options.Rule = l.MM()
	}
	if measured != "" {
		m, err := print.Measured(measured, sheet.Correction{})
		if err != nil {
			return call.Misuse("--measured: %v", err)
		}
		c.options.MeasuredX, c.options.MeasuredY = m.X, m.Y
	}
	return nil
}

func (c *traceCall) run(w call.World) error {
	set := settings.For(w)
	c.options.Standoff = set.Standoff
	var f planned
	if c.file != "" { // what can't be saved need not be read
		var err error
		if f, err = projectOf(c.file); err != nil {
			return err
		}
	}
	c.options.Progress = func(s trace.Stage) {
		if w.Progress != nil {
			w.Progress("reading the picture: " + s.String())
		}
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	p, err := picture.Read(ctx, c.photo)
	if err != nil {
		return err
	}
	r, err := trace.Read(ctx, p, c.options)
	var no *trace.Refused
	if errors.As(err, &no) {
		return fmt.Errorf("%q: %w", c.photo, no)
	}
	if err != nil {
		return err
	}
	if c.file != "" {
		if err := c.take(w, f, r); err != nil {
			return err
		}
	}
	if err := c.say(w, r, set.Units, f); err != nil || r.Calibrated == 0 {
		return err
	}
	return keepStandoff(w, set, r.Calibrated)
}

// say prints what was read, in the project's unit, or the usual one u where there is none.
func (c *traceCall) say(w call.World, r trace.Reading, u length.Unit, f planned) error {
	if !c.json {
		if c.file != "" {
			u = f.project.Units
		}
		_, err := fmt.Fprint(w.Out, report.TracingPage(r, u))
		if err == nil && c.file != "" {
			_, err = fmt.Fprintf(w.Out, "\n%s has these marks now; measure the thicknesses: chape %s\n", term.Plain(c.file), call.Typable(c.file))
		}
		return err
	}
	data, err := report.TracingJSON(r)
	if err == nil {
		_, err = w.Out.Write(data)
	}
	return err
}

// projectOf reads a project that need not be planned.
func projectOf(path string) (f planned, err error) {
	f.path = path
	if f.data, f.stamp, err = store.Read(store.OS(), path); err != nil {
		return planned{}, call.Missing(path, err)
	}
	f.project, f.notices, err = file.Decode(path, f.data)
	return f, err
}

// take puts the marks into the project's file.
func (c *traceCall) take(w call.World, f planned, r trace.Reading) error {
	now := time.Now
	if w.Now != nil {
		now = w.Now
	}
	p, err := traced.Take(f.project, r, filepath.Base(c.photo), now())
	if err != nil {
		return fmt.Errorf("%q is left as it is: with the traced marks, %w", c.file, err)
	}
	fsys, label := store.OS(), ""
	switch {
	case f.notices.OldFormat:
		label = "older format"
	case f.notices.Comments:
		label = "with comments"
	}
	if label != "" {
		if _, err := store.SaveBeside(fsys, f.path, f.data, label, fsys.Now()); err != nil {
			return err
		}
	}
	_, err = store.Save(fsys, f.path, file.Encode(p), f.stamp)
	return err
}

// keepStandoff keeps what a traced rule said of the pencil.
func keepStandoff(w call.World, set settings.Chosen, mm float64) error {
	mm = max(math.Round(mm*100)/100, 0.01)
	err := set.Broken
	if set.Path != "" {
		err = config.Keep(store.OS(), set.Path, config.Change{Key: "tracing.standoff", Value: mm})
	}
	if err != nil {
		return fmt.Errorf("the pencil's stand-off, %.2f mm, can't be kept: %w", mm, err)
	}
	_, err = fmt.Fprintf(w.Err, "chape: the stand-off of your pencil is %.2f mm from the middle of the line: kept in %s\n", mm, term.Plain(set.Path))
	return err
}
