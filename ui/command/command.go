// Package command holds the plain commands: what chape does when it is called
// with a word or a file, and how it answers a call it does not understand.
package command

import (
	"fmt"
	"os"
	"strings"

	"chape/ui/command/call"
	"chape/ui/command/settings"
)

// verbs are the commands in the order of the help.
var verbs = call.All(newVerb, planVerb, printVerb, patternsVerb, placeVerb, traceVerb, shelfVerb, settingsVerb, ringVerb)

// Run does what the arguments, without the program's name, ask for.
func Run(w call.World, args []string) error {
	fs := call.Flags("")
	version := fs.Bool("version", false, "say the version and stop")
	help := call.AddHelp(fs)
	if err := call.Parse(fs, args); err != nil {
		return err
	}
	switch {
	case *version && fs.NArg() > 0:
		return call.Misuse("--version takes nothing behind it: %q is too much", fs.Arg(0))
	case *version:
		_, err := fmt.Fprintln(w.Out, "chape", w.Version)
		return err
	case *help:
		return verbs.Overview(w.Out)
	case fs.NArg() == 0:
		return w.Open("", false)
	}
	first, rest := fs.Arg(0), fs.Args()[1:]
	if v, ok := verbs.Find(first); ok {
		return v.Run(w, v, rest)
	}
	path := first
	if !looksLikeFile(first) {
		var err error
		if path, err = locate(settings.Load(), first); err != nil {
			return err
		}
		if path == first {
			return verbs.Unknown(first)
		}
	}
	if len(rest) > 0 {
		return call.Misuse("one file at a time: %q is one too many", rest[0])
	}
	return w.Open(path, path == first)
}

// looksLikeFile keeps a mistyped command from being taken for a file: a file
// has a folder in its name, or ends as one of ours, or is there.
func looksLikeFile(s string) bool {
	if strings.ContainsAny(s, `/\`) || strings.HasSuffix(strings.ToLower(s), ".toml") {
		return true
	}
	_, err := os.Stat(s)
	return err == nil
}
