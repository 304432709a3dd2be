package command

import (
	"fmt"
	"path/filepath"

	"chape/project/config"
	"chape/ui/command/call"
	"chape/ui/command/settings"
	"chape/ui/term"
)

var settingsVerb = call.Verb{
	Name: "settings", Args: "[--sample]", Does: "say where your settings are, and if they will do",
	More: `  --sample       print a whole file of the defaults, each key behind a "#"

The file holds units, paper, the shelf's folder, colours, the alarm, the
printer's correction, your usual sheath, belt, stitches
and steps, thresholds and prices. To have one, put what --sample prints into the
file that "chape settings" names, and change what you want changed. Without it,
or without a key of it, the defaults hold.`,
	Run: func(w call.World, v call.Verb, args []string) error {
		fs := call.Flags(v.Name)
		sample := fs.Bool("sample", false, "")
		if done, err := call.Parsed(w, v, fs, args); done || err != nil {
			return err
		}
		switch {
		case fs.NArg() > 0:
			return call.Misuse("settings takes no file: %q is too much", fs.Arg(0))
		case *sample:
			_, err := w.Out.Write(config.Sample())
			return err
		}
		return sayWhere(w, settings.Load())
	},
}

// sayWhere says where the user's things are, and what is wrong with them.
func sayWhere(w call.World, set settings.Chosen) error {
	folder, noShelf := set.Folder()
	for _, l := range []struct{ name, path string }{{"settings", set.Path}, {"shelf", folder}} {
		if l.path != "" {
			fmt.Fprintf(w.Out, "%-9s %s\n", l.name+":", term.Plain(l.path))
		}
	}
	lines := settings.Exposed("your shelf", folder)
	if set.Path != "" {
		lines = append(settings.Exposed("your settings", set.Path, filepath.Dir(set.Path)), lines...)
	}
	for _, line := range lines {
		fmt.Fprintf(w.Err, "chape: %s\n", term.Plain(line))
	}
	if set.Broken != nil {
		return set.Broken
	}
	return noShelf
}
