package command

import (
	"flag"
	"slices"

	"chape/project/print"
	"chape/project/print/folder"
	"chape/project/print/tracing"
	"chape/ui/command/call"
)

// tracingAlone refuses options that say nothing of a tracing sheet.
func tracingAlone(fs *flag.FlagSet) (err error) {
	fs.Visit(func(f *flag.Flag) {
		if err == nil && !slices.Contains([]string{"tracing", "paper", "out", "measured", "force"}, f.Name) {
			err = call.Misuse("--%s means nothing for a tracing sheet: leave it off", f.Name)
		}
	})
	return err
}

func printTracing(w call.World, dir string, o print.Options, force bool) error {
	file, err := tracing.File(tracing.Options{Paper: o.Paper, Correction: o.Correction, Date: o.Date, Progress: o.Progress})
	if err != nil {
		return call.Misuse("%v", err)
	}
	return writeSheets(w, dir, []folder.File{file}, force)
}
