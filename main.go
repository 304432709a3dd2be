// Chape is a workbench for leather sheaths: a knife's measurements in, the flat
// pattern and the stitch plan out, and the steps of the work with their waiting
// times.
package main

import (
	"fmt"
	"os"
	"runtime/debug"
	"time"

	_ "chape/ui/term/background" // before anything that asks the terminal for its colours

	"github.com/charmbracelet/x/term"

	"chape/ui/command"
	chapeterm "chape/ui/term"
)

func main() {
	os.Exit(command.Status(os.Stderr, run(os.Args[1:])))
}

func run(args []string) error {
	w := command.World{
		Out: os.Stdout, Err: os.Stderr,
		Version: version(),
		Open:    command.Workbench,
	}
	if term.IsTerminal(os.Stderr.Fd()) {
		w.Progress = func(what string) { fmt.Fprintln(os.Stderr, chapeterm.Plain(what)+"…") }
	}
	if term.IsTerminal(os.Stdout.Fd()) {
		w.Ring, w.Pause = chapeterm.Open(os.Stdout), time.Sleep
	}
	return command.Run(w, args)
}

// version is what the build knows of itself.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "(unknown version)"
	}
	return info.Main.Version
}
