package command

import (
	"regexp"
	"strings"
)

// option is one option of a command, as its help lists it: the shells' completions and
// the manual page are made from there, so that nothing is said twice.
type option struct {
	name, value, about string   // value is "" for a flag
	words              []string // what may stand for the value, where that is known
}

var optionRE = regexp.MustCompile(`^  --([a-z]+)(?: ([A-Z][A-Z,]*))?(?: {2,}(.*))?$`)

// options are those that the help of a command lists, and their text; rest is what the
// help says besides.
func (v verb) options() (all []option, rest string) {
	var others []string
	in := false // within the text of an option
	for _, line := range strings.Split(v.more, "\n") {
		m := optionRE.FindStringSubmatch(line)
		switch {
		case m != nil:
			all, in = append(all, option{name: m[1], value: m[2], about: m[3], words: v.values[m[1]]}), true
		case in && strings.HasPrefix(line, "   "):
			all[len(all)-1].about += " " + strings.TrimSpace(line)
		default:
			others, in = append(others, line), false
		}
	}
	return all, strings.TrimSpace(strings.Join(others, "\n"))
}

// takesFile tells whether a project's file stands behind a command.
func (v verb) takesFile() bool { return strings.Contains(v.args, "FILE") }
