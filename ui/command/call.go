package command

import (
	"flag"
	"fmt"
	"slices"
	"strings"

	"chape/project/plain"
)

// parse reads flags wherever they stand among the arguments; "--" ends them.
func parse(fs *flag.FlagSet, args []string, command string) error {
	if command == "" { // what follows a command is the command's own
		return flagError(fs, fs.Parse(args), args, command)
	}
	var plain []string
	for left := args; ; {
		if err := fs.Parse(left); err != nil {
			return flagError(fs, err, args, command)
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
func flagError(fs *flag.FlagSet, err error, args []string, command string) error {
	if err == nil {
		return nil
	}
	of, help := "chape", "chape help"
	if command != "" {
		of, help = command, help+" "+command
	}
	said := err.Error()
	_, last, _ := strings.Cut(said, ": -") // the package names flags with one dash
	name, _, _ := strings.Cut(last, ":")
	switch {
	case strings.HasPrefix(said, "flag provided but not defined"):
		if best := plain.Near(name, options(fs)); best != "" {
			return misuse("%q is not an option of %s: try --%s", typed(args, name), of, best)
		}
	case strings.HasPrefix(said, "flag needs an argument"):
		return misuse("%q needs a value behind it: \"%s\" shows what it takes", typed(args, name), help)
	case strings.HasPrefix(said, "invalid boolean"):
		_, name, _ = strings.Cut(said, " for -")
		name, _, _ = strings.Cut(name, ":")
		return misuse("--%s takes no value: leave off what is behind it", name)
	default: // "bad flag syntax: ---x"
		_, name, _ = strings.Cut(said, ": ")
		return misuse("%q is not an option of %s: \"%s\" lists them", name, of, help)
	}
	return misuse("%q is not an option of %s: \"%s\" lists them", typed(args, name), of, help)
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
