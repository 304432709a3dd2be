package command

import (
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

const opening = `chape — a workbench for leather sheaths: a knife's measurements in, the flat
pattern and the stitch plan out, and the steps of the work with their waits.
`

// call is one form of calling the program.
type call struct{ call, does string }

// calls are the forms of calling it, the commands among them, in the order of the help.
func calls() []call {
	all := []call{
		{"chape", "open the shelf, or the example while it is empty"},
		{"chape FILE", "open one project, by its file or its title"},
		{"chape FOLDER", "open another folder as the shelf"},
	}
	for _, v := range verbs() {
		all = append(all, call{strings.TrimSpace("chape " + v.name + " " + v.args), v.does})
	}
	return append(all, call{"chape --version", "say the version"})
}

// helpVerb is made by a function: help lists all verbs, itself included.
func helpVerb() verb {
	return verb{
		name: "help", args: "[COMMAND]", does: "say how chape, or one command, is used",
		more: `"chape help words" says what the words of the form and of the plan mean.
"chape help man" prints the manual page: chape help man > chape.1`,
		run: func(w World, v verb, args []string) error {
			fs := flags(v.name)
			addHelp(fs)
			if err := parse(fs, args, v.name); err != nil {
				return err
			}
			switch fs.NArg() {
			case 0:
				return overview(w.Out)
			case 1:
				if fs.Arg(0) == "words" {
					return wordList(w.Out)
				}
				if fs.Arg(0) == "man" {
					return man(w.Out)
				}
				about, ok := find(fs.Arg(0))
				if !ok {
					return unknown(fs.Arg(0))
				}
				return about.help(w.Out)
			}
			return misuse("help is for one command at a time: %q is one too many", fs.Arg(1))
		},
	}
}

func overview(w io.Writer) error {
	var b strings.Builder
	b.WriteString(opening)
	b.WriteByte('\n')
	for _, c := range calls() {
		fmt.Fprintf(&b, "  %-29s %s\n", c.call, c.does)
	}
	b.WriteString("\nIn the workbench ? lists the keys. \"chape help COMMAND\" says more about one.\n")
	_, err := io.WriteString(w, b.String())
	return err
}

func (v verb) help(w io.Writer) error {
	_, err := fmt.Fprintf(w, "%s\n\n%s.\n", strings.TrimSpace("chape "+v.name+" "+v.args), sentence(v.does))
	if err == nil && v.more != "" {
		_, err = fmt.Fprintf(w, "\n%s\n", v.more)
	}
	return err
}

// sentence begins with a capital, in whatever script.
func sentence(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToTitle(r)) + s[n:]
}
