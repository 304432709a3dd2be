package command

import (
	"fmt"
	"io"
	"strings"
)

// shells are those there is a completion for.
var shells = []string{"bash", "zsh", "fish"}

func completionVerb() verb {
	return verb{
		name: "completion", args: "SHELL", does: "print what lets bash, zsh or fish complete",
		words: shells,
		more: `For good, in one of these files:

  bash   echo 'source <(chape completion bash)' >> ~/.bashrc
  zsh    echo 'source <(chape completion zsh)' >> ~/.zshrc
  fish   chape completion fish > ~/.config/fish/completions/chape.fish

In zsh the line stands behind the one that calls compinit.`,
		run: func(w World, v verb, args []string) error {
			fs := flags(v.name)
			help := addHelp(fs)
			if err := parse(fs, args, v.name); err != nil {
				return err
			}
			switch {
			case *help:
				return v.help(w.Out)
			case fs.NArg() == 0:
				return misuse("for which shell? chape completion bash, zsh or fish")
			case fs.NArg() > 1:
				return misuse("for one shell at a time: %q is one too many", fs.Arg(1))
			}
			script := map[string]func() string{"bash": forBash, "zsh": forZsh, "fish": forFish}[fs.Arg(0)]
			if script == nil {
				return misuse("%q is no shell known here: try bash, zsh or fish", fs.Arg(0))
			}
			_, err := io.WriteString(w.Out, script())
			return err
		},
	}
}

// standing are the words that may stand behind a command: help's are the commands.
func (v verb) standing() []string {
	if v.name == "help" {
		return append(names(), "man")
	}
	return v.words
}

// single quotes a text for any of the shells.
func single(s string) string { return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'" }

func forBash() string {
	var b strings.Builder
	fmt.Fprintf(&b, "# Completion of chape for bash.\n_chape() {\n"+
		"\tlocal cur=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} words= files=yes IFS=$' \\t\\n'\n\tCOMPREPLY=()\n"+
		"\tif [ \"$COMP_CWORD\" -eq 1 ]; then\n\t\twords='%s --version --help'\n\telse\n\t\tcase ${COMP_WORDS[1]} in\n", strings.Join(names(), " "))
	for _, v := range verbs() {
		all, _ := v.options()
		fmt.Fprintf(&b, "\t\t%s)\n\t\t\tcase $before in\n", v.name)
		var flags []string
		for _, o := range all {
			flags = append(flags, "--"+o.name)
			switch {
			case o.value == "DIR":
				fmt.Fprintf(&b, "\t\t\t--%s) IFS=$'\\n'; COMPREPLY=($(compgen -d -- \"$cur\")); return ;;\n", o.name)
			case o.value != "":
				fmt.Fprintf(&b, "\t\t\t--%s) COMPREPLY=($(compgen -W '%s' -- \"$cur\")); return ;;\n", o.name, strings.Join(o.words, " "))
			}
		}
		fmt.Fprintf(&b, "\t\t\tesac\n\t\t\twords='%s'\n", strings.Join(append(append(flags, v.standing()...), "--help"), " "))
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

func forZsh() string {
	var b strings.Builder
	b.WriteString("#compdef chape\n# Completion of chape for zsh.\n_chape() {\n\tlocal -a commands\n\tcommands=(\n")
	for _, v := range verbs() {
		fmt.Fprintf(&b, "\t\t%s\n", single(v.name+":"+v.does))
	}
	b.WriteString("\t)\n\tif (( CURRENT == 2 )); then\n\t\t_describe -t commands command commands\n\t\t_files -g '*.toml'\n\t\treturn\n\tfi\n" +
		"\tlocal name=$words[2]\n\tshift words\n\t(( CURRENT-- ))\n\tcase $name in\n")
	for _, v := range verbs() {
		all, _ := v.options()
		fmt.Fprintf(&b, "\t%s) _arguments", v.name)
		for _, o := range all {
			spec := "--" + o.name + "[" + strings.NewReplacer("[", "(", "]", ")", ":", ";").Replace(o.about) + "]"
			switch {
			case o.value == "DIR":
				spec += ":folder:_files -/"
			case len(o.words) > 0:
				spec += ":" + strings.ToLower(o.value) + ":(" + strings.Join(o.words, " ") + ")"
			case o.value != "":
				spec += ":" + strings.ToLower(o.value) + ":"
			}
			b.WriteString(" " + single(spec))
		}
		switch {
		case v.takesFile():
			b.WriteString(" " + single("*:file:_files -g '*.toml'"))
		case len(v.standing()) > 0:
			b.WriteString(" " + single("1:what:("+strings.Join(v.standing(), " ")+")"))
		}
		b.WriteString(" ;;\n")
	}
	b.WriteString("\tesac\n}\ncompdef _chape chape\n")
	return b.String()
}

func forFish() string {
	var b strings.Builder
	b.WriteString("# Completion of chape for fish.\ncomplete -c chape -f\n" +
		"complete -c chape -n __fish_use_subcommand -k -a '(__fish_complete_suffix .toml)'\n" +
		"complete -c chape -n __fish_use_subcommand -l version -d 'say the version'\n")
	for _, v := range verbs() {
		in := single("__fish_seen_subcommand_from " + v.name)
		fmt.Fprintf(&b, "complete -c chape -n __fish_use_subcommand -a %s -d %s\n", v.name, single(v.does))
		all, _ := v.options()
		for _, o := range all {
			fmt.Fprintf(&b, "complete -c chape -n %s -l %s -d %s", in, o.name, single(o.about))
			switch {
			case o.value == "DIR":
				b.WriteString(" -x -a '(__fish_complete_directories)'")
			case len(o.words) > 0:
				b.WriteString(" -x -a " + single(strings.Join(o.words, " ")))
			case o.value != "":
				b.WriteString(" -x")
			}
			b.WriteByte('\n')
		}
		if len(v.standing()) > 0 {
			fmt.Fprintf(&b, "complete -c chape -n %s -a %s\n", in, single(strings.Join(v.standing(), " ")))
		}
		if v.takesFile() {
			fmt.Fprintf(&b, "complete -c chape -n %s -k -a '(__fish_complete_suffix .toml)'\n", in)
		}
	}
	return b.String()
}
