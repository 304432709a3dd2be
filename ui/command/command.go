// Package command holds the plain commands: what chape does when it is called
// with a word or a file, and how it answers a call it does not understand.
package command

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"chape/project/plain"
	"chape/ui/term"
)

// The exit statuses.
const (
	good     = 0
	badFile  = 1 // the file, or what it holds
	badUsage = 2 // the call
)

// World is what a command may touch.
type World struct {
	In       io.Reader
	Out, Err io.Writer
	Version  string
	// Open shows the workbench: on a file, on the folder of a shelf, or with
	// "" on the user's own shelf.
	Open func(path string) error
	// Now is the wall clock; nil: time.Now.
	Now func() time.Time
	// Progress hears what long work is at; nil where nobody is looking.
	Progress func(what string)
	// Ring sounds the alarm; nil where there is no terminal.
	Ring Voice
	// Pause lets that time pass; nil: none does.
	Pause func(time.Duration)
}

// usageError is a call that does not make sense.
type usageError struct{ text string }

func (e usageError) Error() string { return e.text }

func misuse(format string, args ...any) error {
	return usageError{fmt.Sprintf(format, args...)}
}

// Status prints an error, if there is one, and gives the exit status for it. The
// lines are made safe: a file's name or a mistyped word may hold anything.
func Status(w io.Writer, err error) int {
	if err == nil {
		return good
	}
	for i, line := range strings.Split(err.Error(), "\n") {
		if line = term.Plain(line); i == 0 {
			line = "chape: " + line
		}
		fmt.Fprintln(w, line)
	}
	var u usageError
	if errors.As(err, &u) {
		return badUsage
	}
	return badFile
}

// verb is one command.
type verb struct {
	name string
	args string
	does string // one line
	more string // the rest of its help; may be empty
	// What completions offer: words in its place of a file, values of its options.
	words  []string
	values map[string][]string
	run    func(w World, v verb, args []string) error
}

// verbs lists the commands in the order of the help. It is a function because
// help itself is one of them.
func verbs() []verb {
	return []verb{
		newVerb, planVerb, printVerb, placeVerb, traceVerb, shelfVerb, settingsVerb, ringVerb, completionVerb(), helpVerb(),
	}
}

func find(name string) (verb, bool) {
	for _, v := range verbs() {
		if v.name == name {
			return v, true
		}
	}
	return verb{}, false
}

// Run does what the arguments, without the program's name, ask for.
func Run(w World, args []string) error {
	fs := flags("")
	version := fs.Bool("version", false, "say the version and stop")
	help := addHelp(fs)
	if err := parse(fs, args, ""); err != nil {
		return err
	}
	switch {
	case *version:
		_, err := fmt.Fprintln(w.Out, "chape", w.Version)
		return err
	case *help:
		return overview(w.Out)
	case fs.NArg() == 0:
		return w.Open("")
	}
	first, rest := fs.Arg(0), fs.Args()[1:]
	if v, ok := find(first); ok {
		return v.run(w, v, rest)
	}
	path := first
	if !looksLikeFile(first) {
		var err error
		if path, err = locate(loadSettings(), first); err != nil {
			return err
		}
		if path == first {
			return unknown(first)
		}
	}
	if len(rest) > 0 {
		return misuse("one file at a time: %q is one too many", rest[0])
	}
	return w.Open(path)
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

// unknown says that a word is no command, with the nearest command or file if one
// is near.
func unknown(word string) error {
	if best := plain.Near(word, names()); best != "" {
		return misuse("%q is not a command: did you mean chape %s? (\"chape help\" lists them)", word, best)
	}
	if file := nearFile(word); file != "" {
		return misuse("%q is neither a command nor a file: did you mean %s?", word, typablePath(file))
	}
	return misuse("%q is neither a command nor a file: plain \"chape\" opens the shelf, \"chape help\" lists the commands", word)
}

// names lists the commands.
func names() []string {
	var out []string
	for _, v := range verbs() {
		out = append(out, v.name)
	}
	return out
}

func flags(name string) *flag.FlagSet {
	fs := flag.NewFlagSet(name, flag.ContinueOnError)
	fs.SetOutput(io.Discard) // the error is said once, by Status
	return fs
}

func addHelp(fs *flag.FlagSet) *bool {
	help := fs.Bool("help", false, "say how it is used and stop")
	fs.BoolVar(help, "h", false, "the same")
	return help
}

// oneFile parses the flags of a command that takes one file. done: help was
// asked for and given.
func oneFile(w World, v verb, fs *flag.FlagSet, args []string) (path string, done bool, err error) {
	return fileUnless(new(bool), w, v, fs, args)
}
