package command

import (
	"errors"
	"fmt"
)

var ringVerb = verb{
	name: "ring", does: "try the alarm: ring as a hold does that falls due",
	more: "Hear nothing? Look for the bell in the settings of your terminal, and for its\nvolume.",
	run: func(w World, v verb, args []string) error {
		fs := flags(v.name)
		help := addHelp(fs)
		if err := parse(fs, args, v.name); err != nil {
			return err
		}
		switch {
		case *help:
			return v.help(w.Out)
		case fs.NArg() > 0:
			return misuse("ring takes no file: %q is too much", fs.Arg(0))
		case w.Ring == nil:
			return errors.New("there is no terminal to ring in: call it in one")
		}
		if err := w.Ring(); err != nil {
			return err
		}
		_, err := fmt.Fprintln(w.Out, "That was the alarm. A hold that falls due rings like this every 20 s until a key is pressed.")
		return err
	},
}
