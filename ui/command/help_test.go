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
)

func said(t *testing.T, args ...string) string {
	t.Helper()
	var b strings.Builder
	if err := Run(World{Out: &b, Err: &b}, args); err != nil {
		t.Errorf("%q: %v", args, err)
	}
	return b.String()
}

// Help fits an ordinary terminal, and every command has some.
func TestHelpWidth(t *testing.T) {
	const wide = 80
	pages := map[string]string{"": said(t, "help")}
	for _, v := range verbs() {
		pages[v.name] = said(t, "help", v.name)
		if v.name != "help" && v.more == "" {
			t.Errorf("%s has no help of its own", v.name)
		}
		if !strings.Contains(pages[""], "chape "+v.name) {
			t.Errorf("%s is not listed", v.name)
		}
		if v.name != "help" && pages[v.name] != said(t, v.name, "--help") {
			t.Errorf("chape %s --help and chape help %s differ", v.name, v.name)
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
	for _, v := range verbs() {
		for _, m := range named.FindAllStringSubmatch(v.more, -1) {
			err := Run(World{Out: io.Discard, Err: io.Discard}, []string{v.name, "--" + m[1] + "x=1"})
			if err == nil || !strings.Contains(err.Error(), "try --"+m[1]) && len(m[1]) > 3 {
				t.Errorf("%s has no option near --%sx: %v", v.name, m[1], err)
			}
		}
	}
}

func TestSentence(t *testing.T) {
	for in, want := range map[string]string{"": "", "épée": "Épée", "ärger": "Ärger", "knife": "Knife", "ǆ": "ǅ", "刀": "刀", "ß": "ß", "\xff": "\xff"} {
		if got := sentence(in); in != "\xff" && got != want {
			t.Errorf("sentence(%q) = %q, want %q", in, got, want)
		}
	}
}

// What new makes, the shelf lists.
func TestShelfListsWhatNewMakes(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	dir := t.TempDir()
	names := []string{"knife", "épée.toml", "v1.2", "LOUD.TOML", "two words", "a.toml.txt"}
	for _, name := range names {
		if err := Run(World{Out: io.Discard, Err: io.Discard}, []string{"new", filepath.Join(dir, name)}); err != nil {
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
	all := names()
	for word, want := range map[string]string{"plam": "plan", "hlep": "help", "setings": "settings", "prnt": "print", "anvil": "", "open": "", "orchard": "",
		"": "", "n": "", "plan!": "plan", strings.Repeat("plan", 5000): ""} {
		if got := plain.Near(word, all); got != want {
			t.Errorf("near(%.20q) = %q, want %q", word, got, want)
		}
	}
}

func TestNearFile(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"kitchen.toml", ".kitchen.toml", "notes.txt"} {
		if err := os.WriteFile(filepath.Join(dir, name), nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	in := func(name string) string { return filepath.Join(dir, name) }
	for word, want := range map[string]string{"kitchen": in("kitchen.toml"), "kitchen.tmol": in("kitchen.toml"), "kichten.toml": in("kitchen.toml"),
		"notes.tx": "", "orchard.toml": "", "Kitchen.toml": in("kitchen.toml")} {
		if got := nearFile(in(word)); got != want {
			t.Errorf("nearFile(%q) = %q, want %q", word, got, want)
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
	w := World{Out: &out, Err: &out, Progress: func(s string) {
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

// The flag package's own words reach nobody.
func TestFlagErrorsAreOurs(t *testing.T) {
	for _, args := range [][]string{{"--nope"}, {"--out"}, {"---"}, {"--=x"}, {"-h=maybe"}} {
		fs := flags("x")
		fs.String("out", "", "")
		addHelp(fs)
		err := parse(fs, args, "x")
		if err == nil || strings.Contains(err.Error(), "flag") || !strings.Contains(err.Error(), ": ") {
			t.Errorf("%q: %v", args, err)
		}
	}
}
