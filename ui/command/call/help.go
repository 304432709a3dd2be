package call

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

// form is one way to call the program.
type form struct{ call, does string }

// forms are the ways to call it, the commands among them, in the order of the help.
func (all Verbs) forms() []form {
	out := []form{
		{"chape", "open the shelf, or the example while it is empty"},
		{"chape FILE", "open one project, by its file or its title"},
		{"chape FOLDER", "open another folder as the shelf"},
	}
	for _, v := range all {
		out = append(out, form{strings.TrimSpace("chape " + v.Name + " " + v.Args), v.Does})
	}
	return append(out, form{"chape --version", "say the version"})
}

// helpVerb is given all verbs when it runs: help lists them, itself included.
func helpVerb(given func() Verbs) Verb {
	return Verb{
		Name: "help", Args: "[COMMAND]", Does: "say how chape, or one command, is used",
		More: `"chape help words" says what the words of the form and of the plan mean.
"chape help man" prints the manual page: chape help man > chape.1`,
		Run: func(w World, v Verb, args []string) error {
			all := given()
			fs := Flags(v.Name)
			AddHelp(fs)
			if err := Parse(fs, args); err != nil {
				return err
			}
			switch fs.NArg() {
			case 0:
				return all.Overview(w.Out)
			case 1:
				if fs.Arg(0) == "words" {
					return wordList(w.Out)
				}
				if fs.Arg(0) == "man" {
					return all.man(w.Out)
				}
				about, ok := all.Find(fs.Arg(0))
				if !ok {
					return all.noHelp(fs.Arg(0))
				}
				return about.Help(w.Out)
			}
			return Misuse("one command at a time: %q is one too many", fs.Arg(1))
		},
	}
}

// Overview prints the help of the program: how it is called.
func (all Verbs) Overview(w io.Writer) error {
	var b strings.Builder
	b.WriteString(opening)
	b.WriteByte('\n')
	for _, c := range all.forms() {
		fmt.Fprintf(&b, "  %-29s %s\n", c.call, c.does)
	}
	b.WriteString("\nIn the workbench ? lists the keys. \"chape help COMMAND\" says more about one.\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// Help prints how a command is called, and what it takes.
func (v Verb) Help(w io.Writer) error {
	_, err := fmt.Fprintf(w, "%s\n\n%s.\n", strings.TrimSpace("chape "+v.Name+" "+v.Args), Sentence(v.Does))
	if err == nil && v.More != "" {
		_, err = fmt.Fprintf(w, "\n%s\n", v.More)
	}
	return err
}

// Sentence begins with a capital, in whatever script.
func Sentence(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToTitle(r)) + s[n:]
}
