package command

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"text/tabwriter"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chape/project/lookback"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/command/call"
	"chape/ui/command/settings"
	"chape/ui/layout"
	"chape/ui/term"
)

var shelfVerb = call.Verb{
	Name: "shelf", Args: "[--json] [FOLDER]", Does: "look back: hours, leather, quoted against taken",
	More: `  --json         for other programs: areas in mm², lengths in mm, minutes, money
                 as texts

FOLDER is another folder of projects; your shelf, if it is not given.`,
	Run: func(w call.World, v call.Verb, args []string) error {
		fs := call.Flags(v.Name)
		help := call.AddHelp(fs)
		asJSON := fs.Bool("json", false, "")
		if err := call.Parse(fs, args); err != nil {
			return err
		}
		switch {
		case *help:
			return v.Help(w.Out)
		case fs.NArg() > 1:
			return call.Misuse("one folder at a time: %q is one too many", fs.Arg(1))
		}
		set := settings.For(w)
		folder, err := fs.Arg(0), error(nil)
		if folder == "" {
			if folder, err = set.Folder(); err != nil {
				return err
			}
		} else if info, err := os.Stat(folder); err != nil || !info.IsDir() {
			return fmt.Errorf("%q is no folder: name one with projects in it, or none for your shelf", folder)
		}
		return lookBack(w, set, folder, *asJSON)
	},
}

// lookBack prints what the sheaths of a folder took.
func lookBack(w call.World, set settings.Chosen, folder string, asJSON bool) error {
	now := time.Now
	if w.Now != nil {
		now = w.Now
	}
	look, err := lookback.Over(shelf.Open(store.OS(), folder), set.Shop())
	if err != nil {
		return err
	}
	all := look.Next(look.Left())
	if !asJSON {
		if len(all) == 0 {
			_, err := fmt.Fprintln(w.Out, "no projects in", term.Plain(folder))
			return err
		}
		return errors.Join(printTable(w, lookback.Sheaths(all, set.Shop(), set.Units), 0), printTable(w, lookback.StepRows(all), widestStep))
	}
	data, err := lookback.JSON(all, set.Shop(), now())
	if err == nil {
		_, err = w.Out.Write(data)
	}
	return err
}

// widestStep leaves the table of steps room in 80 columns: their names are sentences.
const widestStep = 40

// printTable prints a table, figures to the right, and an empty line behind it. A name runs
// on below where it is wider than widest; 0: it never does.
func printTable(w call.World, t lookback.Table, widest int) error {
	if len(t.Rows) == 0 {
		return nil
	}
	rows := append([][]string{t.Head}, t.Rows...)
	if len(t.Total) > 0 {
		rows = append(rows, t.Total)
	}
	tab := tabwriter.NewWriter(w.Out, 0, 0, 2, ' ', tabwriter.AlignRight)
	name := 0
	for _, row := range rows {
		name = max(name, ansi.StringWidth(term.Plain(row[0])))
	}
	if widest > 0 {
		name = min(name, widest)
	}
	for _, row := range rows {
		for i, part := range layout.Wrap(term.Plain(row[0]), name) {
			figures := row[1:]
			if i > 0 { // what has no room runs on below, without figures
				figures = make([]string, len(figures))
			}
			fmt.Fprintln(tab, layout.Line(part, name)+"\t"+strings.Join(figures, "\t")+"\t")
		}
	}
	fmt.Fprintln(tab)
	return tab.Flush()
}
