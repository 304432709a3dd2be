package command

import (
	"errors"
	"fmt"
	"os"
	"strings"
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

The table fits 80 columns and says which figures it leaves out.
FOLDER is another folder of projects; your shelf, if it is not given.`,
	Run: func(w call.World, v call.Verb, args []string) error {
		fs := call.Flags(v.Name)
		asJSON := fs.Bool("json", false, "")
		if done, err := call.Parsed(w, v, fs, args); done || err != nil {
			return err
		}
		switch {
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
		return errors.Join(printTable(w, lookback.Sheaths(all, set.Shop(), set.Units)), printTable(w, lookback.StepRows(all)))
	}
	data, err := lookback.JSON(all, set.Shop(), now())
	if err == nil {
		_, err = w.Out.Write(data)
	}
	return err
}

// Tables fit pageWidth, as the plan's page does, on a terminal and in a pipe; a name of
// more than widestName runs on below.
const pageWidth, widestName = 80, 36

// printTable prints a table, figures to the right, with the columns that have room, and an
// empty line behind it.
func printTable(w call.World, t lookback.Table) error {
	if len(t.Rows) == 0 {
		return nil
	}
	rows := append([][]string{t.Head}, t.Rows...)
	if len(t.Total) > 0 {
		rows = append(rows, t.Total)
	}
	name := 0
	for _, row := range rows {
		for i := range row {
			row[i] = term.Plain(row[i])
		}
		name = max(name, ansi.StringWidth(row[0]))
	}
	name = min(name, widestName)
	widths := layout.Columns(rows, pageWidth, name)
	widths[0] = name
	var text strings.Builder
	for _, row := range rows {
		for i, part := range layout.Wrap(row[0], name) {
			if i > 0 { // what has no room runs on below, without figures
				fmt.Fprintln(&text, "  "+part)
				continue
			}
			fmt.Fprintln(&text, strings.TrimRight(layout.Row(append([]string{part}, row[1:]...), widths), " "))
		}
	}
	if left := t.Head[len(widths):]; len(left) > 0 {
		fmt.Fprintf(&text, "No room here for: %s. --json has all.\n", strings.Join(left, ", "))
	}
	_, err := fmt.Fprintln(w.Out, text.String())
	return err
}
