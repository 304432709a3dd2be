package command

import (
	"fmt"
	"os"
	"runtime/debug"
	"time"

	"github.com/charmbracelet/x/term"

	"chape/ui/command/call"
	chapeterm "chape/ui/term"
	_ "chape/ui/term/background" // before anything that asks the terminal for its colours
)

// Main runs the program on the arguments and streams of the process, and returns its
// exit status.
func Main() int {
	w := call.World{
		Out: os.Stdout, Err: os.Stderr,
		Version: version(),
		Open:    Workbench,
	}
	if term.IsTerminal(os.Stderr.Fd()) {
		w.Progress = func(what string) { fmt.Fprintln(os.Stderr, chapeterm.Plain(what)+"…") }
	}
	if term.IsTerminal(os.Stdout.Fd()) {
		w.Ring, w.Pause = chapeterm.Open(os.Stdout), time.Sleep
	}
	return call.Status(os.Stderr, Run(w, os.Args[1:]))
}

// version is what the build knows of itself.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "(unknown version)"
	}
	return info.Main.Version
}
