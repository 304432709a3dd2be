package command

import (
	"fmt"
	"strings"

	"chape/calc"
	"chape/calc/length"
	"chape/project/print"
	"chape/project/print/sheet"
	"chape/ui/command/call"
	"chape/ui/command/settings"
	"chape/ui/term"
)

var printVerb = call.Verb{
	Name: "print", Args: "FILE | --tracing", Does: "print the pattern at true size: PDF, SVG",
	Values: map[string][]string{"as": {"pdf", "svg", "pdf,svg"}, "paper": {"a4", "a3", "letter", "legal"}, "measured": {"none"}},
	More: `  --out DIR        the folder to write to; if it is not given, that of FILE, or
                   the one that P prints into where you gave a title
  --as KINDS       pdf, svg (for a cutter) or pdf,svg (the default)
  --paper PAPER    a4, a3, letter, legal, or such as 210x297 or 8.5x11in
  --half           one half only, to be marked and flipped
  --flesh          as it lies flesh side up; grain side up, if it is not given
  --raise          under the next pattern number, if something that changes the
                   cut was altered after it was printed: the file keeps both
  --trial T        a pattern for trial stock of that thickness, not for leather
  --measured X,Y   what the two 100 mm on a sheet measured, in mm; or none
  --bare           leave out of the SVG what is not cut
  --force          replace files that chape did not write
  --order          the quote for the customer, or the order once it is accepted,
                   instead of the pattern
  --tracing        no FILE: the sheet to trace a knife on, for "chape trace"

Print at 100 %, and check with your dividers before you cut.

In the SVG each group of lines has a colour of its own, by which a cutter tells
what to do: yours to set under [cutter] in the settings. Those it comes with are
of no known cutter program's palette. Nothing is dashed.

What --measured says is kept in your settings and corrects all that is printed
from then on. A corrected sheet says so in its words. If its 100 mm are off
still, say what they measure on it: the corrections multiply, the new one is the
old times X/100 and Y/100. "--measured none" takes the correction back.`,
	Run: runPrint,
}

func runPrint(w call.World, v call.Verb, args []string) error {
	fs := call.Flags(v.Name)
	out := fs.String("out", "", "")
	kinds := fs.String("as", "pdf,svg", "")
	paper := fs.String("paper", "", "")
	half := fs.Bool("half", false, "")
	flesh := fs.Bool("flesh", false, "")
	trial := fs.String("trial", "", "")
	measured := fs.String("measured", "", "")
	force := fs.Bool("force", false, "")
	order := fs.Bool("order", false, "")
	bare := fs.Bool("bare", false, "")
	raise := fs.Bool("raise", false, "")
	tracing := fs.Bool("tracing", false, "")
	path, done, err := call.FileUnless(tracing, "a tracing sheet belongs to no project", w, v, fs, args)
	if done || err != nil {
		return err
	}
	set := settings.For(w)
	o := print.Options{Half: *half, Paper: set.Sheet(), Correction: set.Printer, Cutter: set.Cutter, Offcut: set.Shop().Offcut, Maker: set.Shop().Maker(), Progress: w.Progress}
	o.Cutter.Bare = o.Cutter.Bare || *bare
	if *flesh {
		o.Up = calc.FleshUp
	}
	if err := (printWords{*paper, *measured, *trial}).put(&o); err != nil {
		return err
	}
	if *tracing {
		if err := tracingAlone(fs); err != nil {
			return err
		}
		if *out == "" {
			*out = "."
		}
		err := printTracing(w, *out, o, *force)
		if err != nil || *measured == "" {
			return err
		}
		return keepMeasured(w, set, o.Correction)
	}
	if *order {
		return printOrder(w, set, path, *out, o, *force)
	}
	as := split(*kinds)
	for _, err := range []error{o.Check(), print.CheckKinds(as)} {
		if err != nil {
			return call.Misuse("%v", err)
		}
	}
	if err := printFile(w, set, path, *out, as, o, printHow{*force, *raise}); err != nil || *measured == "" {
		return err
	}
	return keepMeasured(w, set, o.Correction)
}

// printWords are options of print as they are typed; "": not given.
type printWords struct{ paper, measured, trial string }

// put reads the words into o, whose correction is the one that holds so far.
func (p printWords) put(o *print.Options) (err error) {
	if p.paper != "" {
		if o.Paper, err = sheet.ParsePaper(p.paper); err != nil {
			return call.Misuse("%v", err)
		}
	}
	if p.measured != "" {
		if o.Correction, err = print.Measured(p.measured, o.Correction); err != nil {
			return call.Misuse("--measured: %v", err)
		}
	}
	if p.trial != "" {
		if o.Trial, err = length.Parse(p.trial, length.Millimetres); err != nil {
			return call.Misuse("--trial: %v", err)
		}
		if o.Trial == 0 {
			return call.Misuse("trial stock of 0 mm is none: leave --trial off, or try 0.1 for paper, 0.3 for card")
		}
	}
	return nil
}

// keepMeasured keeps what a sheet measured, and says so.
func keepMeasured(w call.World, set settings.Chosen, c sheet.Correction) error {
	if err := set.KeepPrinter(c); err != nil {
		return err
	}
	_, err := fmt.Fprintln(w.Out, kept(set, c))
	return err
}

// kept says what was done with what a sheet measured.
func kept(set settings.Chosen, c sheet.Correction) string {
	where := term.Plain(set.Path)
	if !c.Set() {
		return "from now on printed without a correction: kept in " + where
	}
	with := ""
	if set.Printer.Set() && c != set.Printer {
		with = fmt.Sprintf(", with the correction that the sheet had, %v mm", set.Printer)
	}
	return fmt.Sprintf("from now on corrected for a printer that gives %v mm for 100 × 100 mm%s: kept in %s", c, with, where)
}

func split(kinds string) []string {
	list := strings.Split(strings.ToLower(kinds), ",")
	for i := range list {
		list[i] = strings.TrimSpace(list[i])
	}
	return list
}
