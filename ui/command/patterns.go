package command

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"chape/calc/length"
	"chape/project/print/folder"
	"chape/project/print/pair"
	"chape/project/versions"
	"chape/ui/command/call"
	"chape/ui/command/settings"
	"chape/ui/layout"
	"chape/ui/term"
)

var patternsVerb = call.Verb{
	Name: "patterns", Args: "[--json] FILE", Does: "two patterns of a project laid over each other",
	More: `  --then N       the number of the one laid below; if not given, the one before
  --now N        the number of the one laid on it; if not given, that of today
  --json         for other programs: lengths in mm
  --out DIR      also write both on a page, a PDF with the difference as a curve
  --force        replace a file that chape did not write

Each number that is printed is kept in the file with what it was drawn from.
The first table has the figures that differ, the second the half-widths.`,
	Run: runPatterns,
}

func runPatterns(w call.World, v call.Verb, args []string) error {
	fs := call.Flags(v.Name)
	then := fs.Int("then", -1, "")
	now := fs.Int("now", -1, "")
	asJSON := fs.Bool("json", false, "")
	out := fs.String("out", "", "")
	force := fs.Bool("force", false, "")
	path, done, err := call.File(w, v, fs, args)
	if done || err != nil {
		return err
	}
	set := settings.For(w)
	f, err := planOf(set, path)
	if err != nil {
		return err
	}
	was, is, err := twoOf(versions.Of(f.project), *then, *now)
	if err != nil {
		return err
	}
	p, err := versions.Between(was, is, set.Limits())
	if err != nil {
		return fmt.Errorf("%q: one of the two can't be planned: %w", f.path, err)
	}
	if err := sayPair(w, p, f.project.Units, *asJSON); err != nil || *out == "" {
		return err
	}
	if *asJSON { // nothing but the figures goes to those who read them
		w.Out = w.Err
	}
	base := strings.TrimSuffix(filepath.Base(f.path), filepath.Ext(f.path))
	sheet, err := pair.File(p, pair.Options{Paper: set.Sheet(), Correction: set.Printer}, base, f.project.Units)
	if err != nil {
		return err
	}
	return writeSheets(w, *out, []folder.File{sheet}, *force)
}

// twoOf picks two patterns by their numbers; below 0 stands for the one that stands, and
// for the one before it. The later of two with one number is the one that stands.
func twoOf(all []versions.Version, then, now int) (was, is versions.Version, err error) {
	if len(all) < 2 {
		return was, is, fmt.Errorf("there is one pattern so far, %s: there are two once it is printed, changed and raised (chape print --raise)", all[0].Name())
	}
	at := len(all) - 1
	if now >= 0 {
		if at, err = numbered(all, now, len(all)); err != nil {
			return was, is, err
		}
	}
	below := at - 1
	if then >= 0 {
		if below, err = numbered(all, then, at); err != nil {
			return was, is, err
		}
	}
	if below < 0 || below == at {
		return was, is, call.Misuse("%s: give the other one a number of its own, --then and --now", all[at].Name())
	}
	return all[below], all[at], nil
}

// numbered is the place of a number, the last of two, but before one place where there is
// another.
func numbered(all []versions.Version, number, before int) (int, error) {
	found := -1
	var have []string
	for i, v := range all {
		have = append(have, fmt.Sprint(v.Number))
		if v.Number == number && (found < 0 || i != before) {
			found = i
		}
	}
	if found < 0 {
		return 0, call.Misuse("there is no pattern %d: give one of %s", number, strings.Join(have, ", "))
	}
	return found, nil
}

// sayPair prints how two patterns differ.
func sayPair(w call.World, p versions.Pair, u length.Unit, asJSON bool) error {
	if asJSON {
		data, err := p.JSON()
		if err == nil {
			_, err = w.Out.Write(data)
		}
		return err
	}
	_, err := fmt.Fprintf(w.Out, "Then: %s. Now: %s.\n%s.\n", p.Was.Name(), p.Is.Name(), term.Plain(p.Most(u)))
	for _, t := range p.Tables(u) {
		left := 0
		if t.Columns[0] == "figure" {
			left = 1
		}
		lines := layout.Aligned(append([][]string{t.Columns}, t.Rows...), left)
		for _, l := range append([]string{"", t.Heading()}, lines...) {
			_, e := fmt.Fprintln(w.Out, term.Plain(l))
			err = errors.Join(err, e)
		}
	}
	return err
}
