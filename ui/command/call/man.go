package call

import (
	"fmt"
	"io"
	"strings"
)

// man prints the manual page: the help of all commands, for man(7).
func (all Verbs) man(w io.Writer) error {
	var b strings.Builder
	about, _, _ := strings.Cut(strings.ReplaceAll(opening, "\n", " "), ". ")
	_, about, _ = strings.Cut(about, "— ")
	b.WriteString(".TH CHAPE 1 \"\" chape \"User commands\"\n.SH NAME\nchape \\- a workbench for leather sheaths\n.SH SYNOPSIS\n")
	for _, form := range all.forms() {
		fmt.Fprintf(&b, ".B %s\n.br\n", roff(form.call))
	}
	fmt.Fprintf(&b, ".SH DESCRIPTION\nThis is %s.\n.PP\n", roff(about))
	for _, form := range all.forms() {
		fmt.Fprintf(&b, ".TP\n.B %s\n%s\n", roff(form.call), roff(form.does))
	}
	b.WriteString(".SH COMMANDS\n")
	for _, v := range all {
		fmt.Fprintf(&b, ".SS %s\n%s.\n", roff(strings.TrimSpace("chape "+v.Name+" "+v.Args)), roff(Sentence(v.Does)))
		opts, rest := v.Options()
		for _, o := range opts {
			fmt.Fprintf(&b, ".TP\n.B %s\n%s\n", roff(strings.TrimSpace("--"+o.Name+" "+o.Value)), roff(o.About))
		}
		if rest != "" {
			fmt.Fprintf(&b, ".PP\n.nf\n%s\n.fi\n", roff(rest))
		}
	}
	b.WriteString(".SH EXIT STATUS\n0 where all is well, 1 if a file will not do, 2 if the call will not do.\n" +
		".SH FILES\n.B chape settings\nsays where your settings and your shelf are.\n" +
		".SH ENVIRONMENT\nXDG_CONFIG_HOME and XDG_DATA_HOME, or HOME, say where settings and shelf are; NO_COLOR takes the colours away.\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// roff is a text that man(7) shows as it stands.
func roff(s string) string {
	lines := strings.Split(strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(s), "\n")
	for i, l := range lines {
		if strings.HasPrefix(l, ".") || strings.HasPrefix(l, "'") {
			lines[i] = `\&` + l
		}
	}
	return strings.Join(lines, "\n")
}
