package command

import (
	"flag"
	"fmt"
	"path/filepath"
	"slices"

	"chape/project/print"
	"chape/project/print/folder"
	"chape/project/print/tracing"
	"chape/ui/term"
)

// fileUnless parses the flags of a command that takes one file, or none where the
// flag is set.
func fileUnless(none *bool, w World, v verb, fs *flag.FlagSet, args []string) (path string, done bool, err error) {
	help := addHelp(fs)
	if err := parse(fs, args, v.name); err != nil {
		return "", false, err
	}
	switch {
	case *help:
		return "", true, v.help(w.Out)
	case *none && fs.NArg() > 0:
		return "", false, misuse("a tracing sheet is of no project: leave %q off", fs.Arg(0))
	case *none:
		return "", false, nil
	case fs.NArg() == 0:
		return "", false, misuse("which file? chape %s %s", v.name, v.args)
	case fs.NArg() > 1:
		return "", false, misuse("one file at a time: %q is one too many", fs.Arg(1))
	}
	return fs.Arg(0), false, nil
}

// tracingAlone refuses options that say nothing of a tracing sheet.
func tracingAlone(fs *flag.FlagSet) (err error) {
	fs.Visit(func(f *flag.Flag) {
		if err == nil && !slices.Contains([]string{"tracing", "paper", "out", "measured", "force"}, f.Name) {
			err = misuse("--%s says nothing of a tracing sheet: leave it off", f.Name)
		}
	})
	return err
}

func printTracing(w World, dir string, o print.Options, force bool) error {
	file, err := tracing.File(tracing.Options{Paper: o.Paper, Correction: o.Correction, Date: o.Date, Progress: o.Progress})
	if err != nil {
		return misuse("%v", err)
	}
	paths, err := folder.Write(dir, []folder.File{file}, force, func(_, _ int, path string) {
		if w.Progress != nil && path != "" {
			w.Progress("writing " + filepath.Base(path))
		}
	})
	if err != nil {
		return err
	}
	_, err = fmt.Fprintln(w.Out, term.Plain(paths[0]))
	return err
}
