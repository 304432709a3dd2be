package command

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"chape/calc"
	"chape/calc/length"
	"chape/project/print"
	"chape/ui/term"
)

var printVerb = verb{
	name: "print", args: "FILE", does: "print the pattern at true size: PDF sheets and an SVG for a cutter",
	more: `  --out DIR        the folder to write to; that of FILE, if it is not given
  --as KINDS       pdf, svg or pdf,svg (the default)
  --paper PAPER    a4, a3, letter, legal, or such as 210x297 or 8.5x11in
  --half           one half only, to be marked and flipped
  --flesh          as it lies flesh side up; grain side up, if it is not given
  --trial T        a pattern for trial stock of that thickness, not for leather
  --measured X,Y   what the two 100 mm measured on a sheet of the last print, in mm; kept
                   in your settings, as [printer], on top of what was measured before
  --force          replace files that chape did not write

Print at 100 %, and check with your dividers before you cut.`,
	run: runPrint,
}

func runPrint(w World, v verb, args []string) error {
	fs := flags(v.name)
	out := fs.String("out", "", "")
	kinds := fs.String("as", "pdf,svg", "")
	paper := fs.String("paper", "", "")
	half := fs.Bool("half", false, "")
	flesh := fs.Bool("flesh", false, "")
	trial := fs.String("trial", "", "")
	measured := fs.String("measured", "", "")
	force := fs.Bool("force", false, "")
	path, done, err := oneFile(w, v, fs, args)
	if done || err != nil {
		return err
	}
	set := settingsFor(w)
	o := print.Options{Half: *half, Paper: set.Sheet(), Correction: set.Printer}
	if *flesh {
		o.Up = calc.FleshUp
	}
	if *paper != "" {
		if o.Paper, err = print.ParsePaper(*paper); err != nil {
			return misuse("%v", err)
		}
	}
	if *measured != "" {
		if o.Correction, err = correction(set.Printer, *measured); err != nil {
			return misuse("%v", err)
		}
	}
	if *trial != "" {
		if o.Trial, err = length.Parse(*trial, length.Millimetres); err != nil {
			return misuse("%v", err)
		}
	}
	if *out == "" {
		*out = filepath.Dir(path)
	}
	if err := printFile(w.Out, set, path, *out, split(*kinds), o, *force); err != nil || *measured == "" {
		return err
	}
	if err := set.keepPrinter(o.Correction); err != nil {
		return err
	}
	_, err = fmt.Fprintf(w.Out, "from now on corrected for a printer that gives %v mm for 100 × 100 mm: kept in %s\n", o.Correction, term.Plain(set.path))
	return err
}

func split(kinds string) []string {
	list := strings.Split(strings.ToLower(kinds), ",")
	for i := range list {
		list[i] = strings.TrimSpace(list[i])
	}
	return list
}

// correction reads what the two distances of 100 mm measured on a sheet that was
// printed with the correction before.
func correction(before print.Correction, text string) (print.Correction, error) {
	x, y, ok := strings.Cut(text, ",")
	across, err1 := length.Parse(x, length.Millimetres)
	along, err2 := length.Parse(y, length.Millimetres)
	if !ok || err1 != nil || err2 != nil {
		return print.Correction{}, fmt.Errorf("%q is not two measurements: try --measured 99.5,100.2", text)
	}
	c := print.Correction{X: across.MM(), Y: along.MM()}
	if err := c.Check(); err != nil {
		return print.Correction{}, err
	}
	return before.Then(c)
}

func printFile(w io.Writer, set settings, path, dir string, kinds []string, o print.Options, force bool) error {
	p, plan, err := planOf(set, path)
	if err != nil {
		return err
	}
	if info, err := os.Stat(path); err == nil {
		o.Date = info.ModTime()
	}
	base := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	files, err := print.Files(p, plan, o, base, kinds)
	if err != nil {
		return err
	}
	paths, err := print.Write(dir, files, force, nil)
	for _, name := range paths {
		if _, e := fmt.Fprintln(w, term.Plain(name)); e != nil {
			return errors.Join(err, e)
		}
	}
	return err
}
