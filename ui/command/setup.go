package command

import (
	"fmt"

	"chape/project/config"
	"chape/ui/term"
)

var settingsVerb = verb{
	name: "settings", args: "[--sample]", does: "say where your settings are, and if they will do",
	more: `  --sample       print a whole file of the defaults, each key behind a "#"

The file holds units, paper, the shelf's folder, colours, the alarm, the
printer's correction, your usual sheath, belt, stitches
and steps, thresholds and prices. To have one, put what --sample prints into the
file that "chape settings" names, and change what you want changed. Without it,
or without a key of it, the defaults hold.`,
	run: func(w World, v verb, args []string) error {
		fs := flags(v.name)
		help := addHelp(fs)
		sample := fs.Bool("sample", false, "")
		if err := parse(fs, args, v.name); err != nil {
			return err
		}
		switch {
		case *help:
			return v.help(w.Out)
		case fs.NArg() > 0:
			return misuse("settings takes no file: %q is too much", fs.Arg(0))
		case *sample:
			_, err := w.Out.Write(config.Sample())
			return err
		}
		set := loadSettings()
		if set.path == "" {
			return misuse("this system has no folder for settings: set HOME")
		}
		fmt.Fprintf(w.Out, "settings: %s\nshelf:    %s\n", term.Plain(set.path), term.Plain(set.shelf()))
		return set.broken
	},
}
