package command

import (
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"chape/project/plain"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/command/call"
)

func said(t *testing.T, args ...string) string {
	t.Helper()
	var b strings.Builder
	if err := Run(call.World{Out: &b, Err: &b}, args); err != nil {
		t.Errorf("%q: %v", args, err)
	}
	return b.String()
}

// Help fits an ordinary terminal, and every command has some.
func TestHelpWidth(t *testing.T) {
	const wide = 80
	pages := map[string]string{"": said(t, "help")}
	for _, v := range verbs {
		pages[v.Name] = said(t, "help", v.Name)
		if v.Name != "help" && v.More == "" {
			t.Errorf("%s has no help of its own", v.Name)
		}
		if !strings.Contains(pages[""], "chape "+v.Name) {
			t.Errorf("%s is not listed", v.Name)
		}
		if v.Name != "help" && pages[v.Name] != said(t, v.Name, "--help") {
			t.Errorf("chape %s --help and chape help %s differ", v.Name, v.Name)
		}
	}
	for name, page := range pages {
		for line := range strings.Lines(page) {
			if n := utf8.RuneCountInString(strings.TrimRight(line, "\n")); n > wide {
				t.Errorf("help %s: %d columns: %s", name, n, line)
			}
		}
	}
}

// Every option that help names is taken, and each that is taken is named.
func TestHelpNamesTheOptions(t *testing.T) {
	named := regexp.MustCompile(`(?m)^  --([a-z]+)`)
	for _, v := range verbs {
		for _, m := range named.FindAllStringSubmatch(v.More, -1) {
			err := Run(call.World{Out: io.Discard, Err: io.Discard}, []string{v.Name, "--" + m[1] + "x=1"})
			if err == nil || !strings.Contains(err.Error(), "try --"+m[1]) && len(m[1]) > 3 {
				t.Errorf("%s has no option near --%sx: %v", v.Name, m[1], err)
			}
		}
	}
}

// Help is on commands: a file is nothing to it.
func TestNoHelp(t *testing.T) {
	for word, want := range map[string]string{"plam": "did you mean chape help plan?", "wrods": "did you mean chape help words?", "anvil": "\"chape help\" lists the commands"} {
		err := Run(call.World{Out: io.Discard, Err: io.Discard}, []string{"help", word})
		if err == nil || !strings.HasSuffix(err.Error(), want) || strings.Contains(err.Error(), "file") {
			t.Errorf("help %s: %v", word, err)
		}
	}
}

// The steps of a look back have room in 80 columns, and lose no word.
func TestLookBackFitsAScreen(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	dir := t.TempDir()
	file := filepath.Join(dir, "a.toml")
	said(t, "new", file)
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	const long = "Push the knife in, form, bone it in round the front of the handle, the glued edge clamped; knife out, dry it and oil it"
	if i := strings.Index(string(text), "[[step]]"); i > 0 {
		text = text[:i]
	}
	text = append(text, "\n[[step]]\ntitle = \""+long+"\"\nspent = \"45m\"\n"...)
	if err := os.WriteFile(file, text, 0o600); err != nil {
		t.Fatal(err)
	}
	_, steps, _ := strings.Cut(said(t, "shelf", dir), "\n\n")
	if !strings.Contains(steps, "45 min") {
		t.Fatalf("no minutes are said:\n%s", steps)
	}
	for _, line := range strings.Split(steps, "\n") {
		if len(line) > 80 {
			t.Errorf("%d wide: %q", len(line), line)
		}
	}
	if flat := strings.Join(strings.Fields(strings.ReplaceAll(steps, "45 min  1  45 min", "")), " "); !strings.Contains(flat, "dry it and oil it") {
		t.Errorf("words are lost:\n%s", steps)
	}
}

// What new makes, the shelf lists.
func TestShelfListsWhatNewMakes(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	dir := t.TempDir()
	names := []string{"knife", "épée.toml", "v1.2", "LOUD.TOML", "two words", "a.toml.txt"}
	for _, name := range names {
		if err := Run(call.World{Out: io.Discard, Err: io.Discard}, []string{"new", filepath.Join(dir, name)}); err != nil {
			t.Errorf("new %q: %v", name, err)
		}
	}
	scan, err := shelf.Open(store.OSLockingIn(""), dir).Look()
	if err != nil {
		t.Fatal(err)
	}
	listed := scan.Entries()
	if len(listed) != len(names) {
		t.Errorf("the shelf lists %d of %d: %+v", len(listed), len(names), listed)
	}
}

func TestNear(t *testing.T) {
	all := verbs.Names()
	for word, want := range map[string]string{"plam": "plan", "hlep": "help", "setings": "settings", "prnt": "print", "anvil": "", "open": "", "orchard": "",
		"": "", "n": "", "plan!": "plan", strings.Repeat("plan", 5000): ""} {
		if got := plain.Near(word, all); got != want {
			t.Errorf("near(%.20q) = %q, want %q", word, got, want)
		}
	}
}

// Progress is heard line by line, paths come at the end.
func TestPrintTellsProgress(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	dir := t.TempDir()
	file := filepath.Join(dir, "a.toml")
	said(t, "new", file)
	var out strings.Builder
	var heard []string
	w := call.World{Out: &out, Err: &out, Progress: func(s string) {
		if out.Len() > 0 {
			t.Error("a path is said before all is done")
		}
		heard = append(heard, s)
	}}
	if err := Run(w, []string{"print", file}); err != nil {
		t.Fatal(err)
	}
	got := strings.Join(heard, ", ")
	for _, want := range []string{"pattern, ", "welt", "work card", "svg", "writing a pattern 1.pdf", "writing a pattern 1.svg"} {
		if !strings.Contains(got, want) {
			t.Errorf("heard %q, not %q", got, want)
		}
	}
	if want := filepath.Join(dir, "a pattern 1.pdf") + "\n" + filepath.Join(dir, "a pattern 1.svg") + "\n"; out.String() != want {
		t.Errorf("said %q, want %q", out.String(), want)
	}
}

// TestHostileWords: whatever is typed in a call comes back as plain text.
func TestHostileWords(t *testing.T) {
	const word = "x\x1b]0;y\a\u202e"
	for _, args := range [][]string{
		{word}, {"--" + word}, {"help", word}, {"plan", "--" + word, "a"}, {"plan", word + ".toml"}, {"plan", "a", word},
		{"print", "--paper", word, "a.toml"}, {"print", "--measured", word, "a.toml"}, {"new", "--units", word, t.TempDir() + "/a.toml"},
	} {
		var b strings.Builder
		err := Run(call.World{Out: &b, Err: &b}, args)
		if err == nil {
			t.Errorf("%q is taken", args)
		}
		call.Status(&b, err)
		if said := b.String(); strings.ContainsAny(said, "\x1b\a\u202e") || strings.Count(said, "\n") != 1 {
			t.Errorf("%q: said %q", args, said)
		}
	}
}
