package call

import (
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"

	"chape/project/plain"
)

// Flags are those of the command of that name, none as yet; "" stands for the program.
func Flags(name string) *flag.FlagSet {
	fs := flag.NewFlagSet(name, flag.ContinueOnError)
	fs.SetOutput(io.Discard) // the error is said once, by Status
	return fs
}

// AddHelp adds the flag that asks for help.
func AddHelp(fs *flag.FlagSet) *bool {
	help := fs.Bool("help", false, "say how it is used and stop")
	fs.BoolVar(help, "h", false, "the same")
	return help
}

// Parsed parses the flags of a command. done: help was asked for and given.
func Parsed(w World, v Verb, fs *flag.FlagSet, args []string) (done bool, err error) {
	help := AddHelp(fs)
	if err := Parse(fs, args); err != nil || !*help {
		return false, err
	}
	return true, v.Help(w.Out)
}

// File parses the flags of a command that takes one file. done: help was
// asked for and given.
func File(w World, v Verb, fs *flag.FlagSet, args []string) (path string, done bool, err error) {
	return FileUnless(new(bool), "", w, v, fs, args)
}

// FileUnless parses the flags of a command that takes one file, or none where the
// flag is set, for the reason given.
func FileUnless(none *bool, why string, w World, v Verb, fs *flag.FlagSet, args []string) (path string, done bool, err error) {
	if done, err := Parsed(w, v, fs, args); done || err != nil {
		return "", done, err
	}
	switch {
	case *none && fs.NArg() > 0:
		return "", false, Misuse("%s: leave %q off", why, fs.Arg(0))
	case *none:
		return "", false, nil
	case fs.NArg() == 0:
		return "", false, Misuse("which file? chape %s %s", v.Name, v.Args)
	case fs.NArg() > 1:
		return "", false, Misuse("one file at a time: %q is one too many", fs.Arg(1))
	}
	return fs.Arg(0), false, nil
}

// Parse reads flags wherever they stand among the arguments; "--" ends them. What does not
// fit is refused in our own words.
func Parse(fs *flag.FlagSet, args []string) error {
	if fs.Name() == "" { // what follows a command is the command's own
		return flagError(fs, fs.Parse(args), args)
	}
	var plain []string
	for left := args; ; {
		if err := fs.Parse(left); err != nil {
			return flagError(fs, err, args)
		}
		rest := fs.Args()
		if len(rest) == 0 {
			break
		}
		if n := len(left) - len(rest); n > 0 && left[n-1] == "--" {
			plain = append(plain, rest...)
			break
		}
		plain = append(plain, rest[0])
		left = rest[1:]
	}
	return fs.Parse(append([]string{"--"}, plain...))
}

// flagError puts what the flag package says of a call into our own words: what was
// typed, and what would do.
func flagError(fs *flag.FlagSet, err error, args []string) error {
	if err == nil {
		return nil
	}
	of, help := "chape", "chape help"
	if command := fs.Name(); command != "" {
		of, help = command, help+" "+command
	}
	said := err.Error()
	_, last, _ := strings.Cut(said, ": -") // the package names flags with one dash
	name, _, _ := strings.Cut(last, ":")
	switch {
	case strings.HasPrefix(said, "flag provided but not defined"):
		if best := plain.Near(name, options(fs)); best != "" {
			return Misuse("%q is not an option of %s: try --%s", typed(args, name), of, best)
		}
	case strings.HasPrefix(said, "flag needs an argument"):
		return Misuse("%q needs a value behind it: \"%s\" shows what it takes", typed(args, name), help)
	case strings.HasPrefix(said, "invalid boolean"):
		_, name, _ = strings.Cut(said, " for -")
		name, _, _ = strings.Cut(name, ":")
		return Misuse("--%s takes no value: leave off what is behind it", name)
	default: // "bad flag syntax: ---x"
		_, name, _ = strings.Cut(said, ": ")
		return Misuse("%q is not an option of %s: \"%s\" lists them", name, of, help)
	}
	return Misuse("%q is not an option of %s: \"%s\" lists them", typed(args, name), of, help)
}

// typed is an option as it stands in the call.
func typed(args []string, name string) string {
	i := slices.IndexFunc(args, func(a string) bool {
		bare, _, _ := strings.Cut(a, "=")
		return bare == "-"+name
	})
	if i >= 0 {
		return "-" + name
	}
	return fmt.Sprintf("--%s", name)
}

func options(fs *flag.FlagSet) []string {
	var out []string
	fs.VisitAll(func(f *flag.Flag) { out = append(out, f.Name) })
	return out
}
