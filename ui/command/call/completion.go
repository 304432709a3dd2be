package call

import (
	"fmt"
	"io"
	"strings"
)

// Shells are those there is a completion for.
var Shells = []string{"bash", "zsh", "fish"}

// completionVerb is given all verbs when it runs.
func completionVerb(given func() Verbs) Verb {
	return Verb{
		Name: "completion", Args: "SHELL", Does: "print what lets bash, zsh or fish complete",
		Words: Shells,
		More: `For good, in one of these files:

  bash   echo 'source <(chape completion bash)' >> ~/.bashrc
  zsh    echo 'source <(chape completion zsh)' >> ~/.zshrc
  fish   chape completion fish > ~/.config/fish/completions/chape.fish

In zsh the line stands behind the one that calls compinit.`,
		Run: func(w World, v Verb, args []string) error {
			fs := Flags(v.Name)
			if done, err := Parsed(w, v, fs, args); done || err != nil {
				return err
			}
			switch {
			case fs.NArg() == 0:
				return Misuse("for which shell? chape completion bash, zsh or fish")
			case fs.NArg() > 1:
				return Misuse("one shell at a time: %q is one too many", fs.Arg(1))
			}
			script := map[string]func(Verbs) string{"bash": Verbs.bash, "zsh": Verbs.zsh, "fish": Verbs.fish}[fs.Arg(0)]
			if script == nil {
				return Misuse("%q is no shell known here: try bash, zsh or fish", fs.Arg(0))
			}
			_, err := io.WriteString(w.Out, script(given()))
			return err
		},
	}
}

// standing are the words that may stand behind a command: help's are the commands.
func (all Verbs) standing(v Verb) []string {
	if v.Name == "help" {
		return append(all.Names(), "man")
	}
	return v.Words
}

// single quotes a text for any of the shells.
func single(s string) string { return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'" }

func (all Verbs) bash() string {
	var b strings.Builder
	fmt.Fprintf(&b, "# Completion of chape for bash.\n_chape() {\n"+
		"\tlocal cur=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} words= files=yes IFS=$' \\t\\n'\n\tCOMPREPLY=()\n"+
		"\tif [ \"$COMP_CWORD\" -eq 1 ]; then\n\t\twords='%s --version --help'\n\telse\n\t\tcase ${COMP_WORDS[1]} in\n", strings.Join(all.Names(), " "))
	for _, v := range all {
		opts, _ := v.Options()
		fmt.Fprintf(&b, "\t\t%s)\n\t\t\tcase $before in\n", v.Name)
		var flags []string
		for _, o := range opts {
			flags = append(flags, "--"+o.Name)
			switch {
			case o.Value == "DIR":
				fmt.Fprintf(&b, "\t\t\t--%s) IFS=$'\\n'; COMPREPLY=($(compgen -d -- \"$cur\")); return ;;\n", o.Name)
			case o.Value != "":
				fmt.Fprintf(&b, "\t\t\t--%s) COMPREPLY=($(compgen -W '%s' -- \"$cur\")); return ;;\n", o.Name, strings.Join(o.Words, " "))
			}
		}
		fmt.Fprintf(&b, "\t\t\tesac\n\t\t\twords='%s'\n", strings.Join(append(append(flags, all.standing(v)...), "--help"), " "))
		if !v.takesFile() {
			b.WriteString("\t\t\tfiles=\n")
		}
		b.WriteString("\t\t\t;;\n")
	}
	b.WriteString("\t\tesac\n\tfi\n\tCOMPREPLY=($(compgen -W \"$words\" -- \"$cur\"))\n" +
		"\tif [ -n \"$files\" ]; then\n\t\tIFS=$'\\n'\n\t\tCOMPREPLY+=($(compgen -f -X '!*.toml' -- \"$cur\") $(compgen -d -- \"$cur\"))\n\tfi\n" +
		"}\ncomplete -o filenames -F _chape chape\n")
	return b.String()
}

func (all Verbs) zsh() string {
	var b strings.Builder
	b.WriteString("#compdef chape\n# Completion of chape for zsh.\n_chape() {\n\tlocal -a commands\n\tcommands=(\n")
	for _, v := range all {
		fmt.Fprintf(&b, "\t\t%s\n", single(v.Name+":"+v.Does))
	}
	b.WriteString("\t)\n\tif (( CURRENT == 2 )); then\n\t\t_describe -t commands command commands\n\t\t_files -g '*.toml'\n\t\treturn\n\tfi\n" +
		"\tlocal name=$words[2]\n\tshift words\n\t(( CURRENT-- ))\n\tcase $name in\n")
	for _, v := range all {
		opts, _ := v.Options()
		fmt.Fprintf(&b, "\t%s) _arguments", v.Name)
		for _, o := range opts {
			spec := "--" + o.Name + "[" + strings.NewReplacer("[", "(", "]", ")", ":", ";").Replace(o.About) + "]"
			switch {
			case o.Value == "DIR":
				spec += ":folder:_files -/"
			case len(o.Words) > 0:
				spec += ":" + strings.ToLower(o.Value) + ":(" + strings.Join(o.Words, " ") + ")"
			case o.Value != "":
				spec += ":" + strings.ToLower(o.Value) + ":"
			}
			b.WriteString(" " + single(spec))
		}
		switch {
		case v.takesFile():
			b.WriteString(" " + single("*:file:_files -g '*.toml'"))
		case len(all.standing(v)) > 0:
			b.WriteString(" " + single("1:what:("+strings.Join(all.standing(v), " ")+")"))
		}
		b.WriteString(" ;;\n")
	}
	b.WriteString("\tesac\n}\ncompdef _chape chape\n")
	return b.String()
}

func (all Verbs) fish() string {
	var b strings.Builder
	b.WriteString("# Completion of chape for fish.\ncomplete -c chape -f\n" +
		"complete -c chape -n __fish_use_subcommand -k -a '(__fish_complete_suffix .toml)'\n" +
		"complete -c chape -n __fish_use_subcommand -l version -d 'say the version'\n")
	for _, v := range all {
		in := single("__fish_seen_subcommand_from " + v.Name)
		fmt.Fprintf(&b, "complete -c chape -n __fish_use_subcommand -a %s -d %s\n", v.Name, single(v.Does))
		opts, _ := v.Options()
		for _, o := range opts {
			fmt.Fprintf(&b, "complete -c chape -n %s -l %s -d %s", in, o.Name, single(o.About))
			switch {
			case o.Value == "DIR":
				b.WriteString(" -x -a '(__fish_complete_directories)'")
			case len(o.Words) > 0:
				b.WriteString(" -x -a " + single(strings.Join(o.Words, " ")))
			case o.Value != "":
				b.WriteString(" -x")
			}
			b.WriteByte('\n')
		}
		if len(all.standing(v)) > 0 {
			fmt.Fprintf(&b, "complete -c chape -n %s -a %s\n", in, single(strings.Join(all.standing(v), " ")))
		}
		if v.takesFile() {
			fmt.Fprintf(&b, "complete -c chape -n %s -k -a '(__fish_complete_suffix .toml)'\n", in)
		}
	}
	return b.String()
}
