package call

import (
	"regexp"
	"strings"
)

// Option is one option of a command, as its help lists it: the shells' completions and
// the manual page are made from there, so that nothing is said twice.
type Option struct {
	Name, Value, About string   // Value is "" for a flag
	Words              []string // what may stand for the value, where that is known
}

var optionRE = regexp.MustCompile(`^  --([a-z]+)(?: ([A-Z][A-Z,]*))?(?: {2,}(.*))?$`)

// Options are those that the help of a command lists, and their text; rest is what the
// help says besides.
func (v Verb) Options() (all []Option, rest string) {
	var others []string
	in := false // within the text of an option
	for _, line := range strings.Split(v.More, "\n") {
		m := optionRE.FindStringSubmatch(line)
		switch {
		case m != nil:
			all, in = append(all, Option{Name: m[1], Value: m[2], About: m[3], Words: v.Values[m[1]]}), true
		case in && strings.HasPrefix(line, "   "):
			all[len(all)-1].About += " " + strings.TrimSpace(line)
		default:
			others, in = append(others, line), false
		}
	}
	return all, strings.TrimSpace(strings.Join(others, "\n"))
}

// takesFile tells whether a project's file stands behind a command.
func (v Verb) takesFile() bool { return strings.Contains(v.Args, "FILE") }
