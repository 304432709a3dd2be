package command

import (
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"chape/ui/command/call"
)

// Completions and the manual page are made from the table of the help: every command
// and every option of it stands in each.
func TestMadeFromTheHelp(t *testing.T) {
	texts := map[string]string{"man": said(t, "help", "man")}
	for _, sh := range call.Shells {
		texts[sh] = said(t, "completion", sh)
	}
	for name, text := range texts {
		for _, v := range verbs {
			if !strings.Contains(text, v.Name) {
				t.Errorf("%s: no command %s", name, v.Name)
			}
			all, _ := v.Options()
			for _, o := range all {
				want := map[string]string{"man": `.B \-\-` + o.Name, "bash": "--" + o.Name, "zsh": "--" + o.Name + "[", "fish": "-l " + o.Name + " "}[name]
				if !strings.Contains(text, want) {
					t.Errorf("%s: no option %s of %s", name, o.Name, v.Name)
				}
				if o.About == "" {
					t.Errorf("%s of %s: says nothing", o.Name, v.Name)
				}
			}
			for key := range v.Values {
				if !strings.Contains(v.More, "--"+key) {
					t.Errorf("%s offers words for --%s, which it has not", v.Name, key)
				}
			}
		}
		for line := range strings.Lines(text) {
			if name == "man" && strings.HasPrefix(line, "'") {
				t.Errorf("man: a line that would be taken for a request: %s", line)
			}
		}
	}
}

// The scripts are what their shells can read, on a machine that has them; bash offers
// what is wanted.
func TestShellsReadTheirCompletions(t *testing.T) {
	for _, sh := range call.Shells {
		path, err := exec.LookPath(sh)
		if err != nil {
			continue // TestMadeFromTheHelp stands for it
		}
		c := exec.Command(path, "-n")
		c.Stdin = strings.NewReader(said(t, "completion", sh))
		if out, err := c.CombinedOutput(); err != nil {
			t.Errorf("%s: %v\n%s", sh, err, out)
		}
	}
	bash, err := exec.LookPath("bash")
	if err != nil {
		return
	}
	dir := t.TempDir()
	said(t, "new", filepath.Join(dir, "my knife.toml"))
	for _, c := range []struct{ words, want string }{
		{"chape pla", "plan place"},
		{"chape --v", "--version"},
		{"chape print --fo", "--force"},
		{"chape print --paper le", "letter legal"},
		{"chape new --units i", "in"},
		{"chape help se", "settings"},
		{"chape completion z", "zsh"},
		{"chape plan my", "my knife.toml"},
		{"chape ring my", ""},
	} {
		cmd := exec.Command(bash, "--norc", "-c", said(t, "completion", "bash")+"\nCOMP_WORDS=("+c.words+"); COMP_CWORD=$((${#COMP_WORDS[@]}-1)); _chape; echo \"${COMPREPLY[*]}\"")
		cmd.Dir = dir
		out, err := cmd.CombinedOutput()
		if got := strings.TrimSpace(string(out)); err != nil || got != c.want {
			t.Errorf("%q is completed by %q, %v; want %q", c.words, got, err, c.want)
		}
	}
}

func TestHelpFitsAScreen(t *testing.T) {
	if n := strings.Count(said(t, "--help"), "\n"); n > 23 { // and the prompt
		t.Errorf("chape --help has %d lines", n)
	}
}
