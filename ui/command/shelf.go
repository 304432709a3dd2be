package command

import (
	"github.com/charmbracelet/x/ansi"

	"errors"
	"fmt"
	"os"
	"strings"
	"text/tabwriter"
	"time"

	"chape/project/lookback"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/layout"
	"chape/ui/term"
)

var shelfVerb = verb{
	name: "shelf", args: "[--json] [FOLDER]", does: "look back: hours, leather, quoted against taken",
	more: `  --json         for other programs: areas in mm², lengths in mm, minutes, money
                 as texts

FOLDER is another folder of projects; your shelf, if it is not given.`,
	run: func(w World, v verb, args []string) error {
		fs := flags(v.name)
		help := addHelp(fs)
		asJSON := fs.Bool("json", false, "")
		if err := parse(fs, args, v.name); err != nil {
			return err
		}
		switch {
		case *help:
			return v.help(w.Out)
		case fs.NArg() > 1:
			return misuse("one folder at a time: %q is one too many", fs.Arg(1))
		}
		set := settingsFor(w)
		folder, err := fs.Arg(0), error(nil)
		if folder == "" {
			if folder, err = set.shelf(); err != nil {
				return err
			}
		} else if info, err := os.Stat(folder); err != nil || !info.IsDir() {
			return fmt.Errorf("%q is no folder: name one with projects in it, or none for your shelf", folder)
		}
		return lookBack(w, set, folder, *asJSON)
	},
}

// lookBack prints what the sheaths of a folder took.
func lookBack(w World, set settings, folder string, asJSON bool) error {
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
		return errors.Join(printTable(w, lookback.Sheaths(all, set.Shop(), set.Units)), printTable(w, lookback.StepRows(all)))
	}
	data, err := lookback.JSON(all, set.Shop(), now())
	if err == nil {
		_, err = w.Out.Write(data)
	}
	return err
}

// printTable prints a table, figures to the right, and an empty line behind it.
func printTable(w World, t lookback.Table) error {
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
	for _, row := range rows {
		first := layout.Line(term.Plain(row[0]), name)
		fmt.Fprintln(tab, first+"\t"+strings.Join(row[1:], "\t")+"\t")
	}
	fmt.Fprintln(tab)
	return tab.Flush()
}
