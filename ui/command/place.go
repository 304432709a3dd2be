package command

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"strings"

	"chape/calc/length"
	"chape/calc/nest"
	"chape/project/leather"
	"chape/project/plain"
	"chape/project/print/layout"
	"chape/ui/command/call"
	"chape/ui/command/settings"
	"chape/ui/term"
)

var placeVerb = call.Verb{
	Name: "place", Args: "[--json] FILE...", Does: "place parts on your leather",
	More: `  --on NAMES     the pieces to cut from, by name, with commas between; those
                 ticked on the Leather page, if it is not given
  --json         for other programs: lengths in mm, angles in degrees
  --out DIR      also write how they lie: a PDF at 1:4, or smaller where it has
                 no room, and an SVG at true size
  --force        replace files that chape did not write

The pieces are those of the Leather page of the workbench (R), kept in
leather.toml beside your settings; they are used one after another, in their
order there. Parts of several projects go on the same leather. Ctrl+C breaks the
search off and takes the best so far. The exit status is 1 where not all fit.`,
	Run: runPlace,
}

func runPlace(w call.World, v call.Verb, args []string) error {
	fs := call.Flags(v.Name)
	on := fs.String("on", "", "")
	asJSON := fs.Bool("json", false, "")
	out := fs.String("out", "", "")
	force := fs.Bool("force", false, "")
	if done, err := call.Parsed(w, v, fs, args); done || err != nil {
		return err
	}
	switch {
	case fs.NArg() == 0:
		return call.Misuse("%s needs a project's file: try chape place orchard.toml", v.Name)
	}
	set := settings.For(w)
	stock, err := set.Leather().Read()
	if err != nil {
		return err
	}
	pieces, err := named(stock, *on)
	if err != nil {
		return err
	}
	works, first, err := worksOf(set, fs.Args())
	if err != nil {
		return err
	}
	laid, err := leather.Ask(stock.Gap, pieces, works)
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt) // keeps the best so far
	defer stop()
	laid.Result, err = nest.Place(ctx, laid.Task, telling(w.Progress))
	if err != nil {
		return err
	}
	if err := sayPlaced(w, laid, first, *asJSON); err != nil {
		return err
	}
	if *out != "" && len(laid.Result.Uses) > 0 {
		if *asJSON { // nothing but the figures goes to those who read them
			w.Out = w.Err
		}
		if err := writePlaced(w, set, laid, first, *out, *force); err != nil {
			return err
		}
	}
	if !laid.Result.Fits() {
		return fmt.Errorf("not all parts fit: %s", strings.Join(laid.Missing(first.project.Units), "; "))
	}
	return nil
}

// worksOf plans the projects whose parts are to be placed; first is the one that lends its
// name and its unit.
func worksOf(set settings.Chosen, paths []string) (works []leather.Work, first planned, err error) {
	for i, path := range paths {
		f, err := planOf(set, path)
		if err != nil {
			return nil, planned{}, err
		}
		if i == 0 {
			first = f
		}
		works = append(works, leather.Work{Project: f.project, Plan: f.plan})
	}
	return works, first, nil
}

// writePlaced writes how the parts lie into a folder.
func writePlaced(w call.World, set settings.Chosen, laid leather.Laid, first planned, dir string, force bool) error {
	o := layout.Options{Paper: set.Sheet(), Correction: set.Printer, Cutter: set.Cutter, Unit: first.project.Units}
	base := strings.TrimSuffix(filepath.Base(first.path), filepath.Ext(first.path))
	files, err := layout.Files(laid, base, first.project.Title, o)
	if err != nil {
		return err
	}
	return writeSheets(w, dir, files, force)
}

// named are the pieces of those names, in the order given; all that have a size without
// names.
func named(s leather.Stock, names string) ([]leather.Leather, error) {
	var out []leather.Leather
	var known []string
	for _, l := range s.Pieces {
		if l.Sized() {
			known = append(known, l.Name)
		}
	}
	if len(known) == 0 {
		return nil, fmt.Errorf("there is no leather to cut from: add a piece on the Leather page of the workbench (R)")
	}
	if names == "" {
		if chosen := s.Chosen(); len(chosen) > 0 {
			return chosen, nil
		}
		return nil, fmt.Errorf("every piece is put aside: name those to cut from with --on, or tick one on the Leather page of the workbench (R)")
	}
	for _, name := range strings.Split(names, ",") {
		name = strings.TrimSpace(name)
		i := s.Find(name)
		switch {
		case i >= 0 && s.Pieces[i].Sized():
			out = append(out, s.Pieces[i])
		case i >= 0:
			return nil, fmt.Errorf("%s has no size to cut from: give it one on the Leather page of the workbench (R)", plain.Quote(name))
		default:
			if near := plain.Near(name, known); near != "" {
				return nil, call.Misuse("there is no leather called %q: did you mean %s?", name, near)
			}
			return nil, call.Misuse("there is no leather called %q: you have %s", name, strings.Join(known, ", "))
		}
	}
	return out, nil
}

// sayPlaced prints what became of it.
func sayPlaced(w call.World, laid leather.Laid, first planned, asJSON bool) error {
	if asJSON {
		data, err := laid.JSON()
		if err == nil {
			_, err = w.Out.Write(data)
		}
		return err
	}
	u := first.project.Units
	fmt.Fprintln(w.Out, laid.Verdict())
	if len(laid.Result.Uses) > 0 {
		word := u.String()
		if u == length.Inches {
			word = "inches"
		}
		fmt.Fprintf(w.Out, "places in %s, along and up from the lower left corner of the leather's smallest\nupright rectangle; a body by its fold, others by the middle of their length\n", word)
	}
	for _, use := range laid.Result.Uses {
		fmt.Fprintln(w.Out, term.Plain(laid.Used(use, u)))
		for i, p := range laid.On(use.Piece) {
			fmt.Fprintln(w.Out, term.Plain(fmt.Sprintf("  %2d  %s", i+1, laid.Where(p, u))))
		}
	}
	return nil
}

// telling says how far a search is, each tenth of it once: a search tells of itself hundreds
// of times, and each is a line.
func telling(say func(string)) func(nest.Progress) {
	if say == nil {
		return nil
	}
	tenths := 0
	return func(p nest.Progress) {
		if n := int(10 * p.Share); n > tenths {
			tenths = n
			say(fmt.Sprintf("placing, %d %%", 10*n))
		}
	}
}
