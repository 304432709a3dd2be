package call

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestSentence(t *testing.T) {
	for in, want := range map[string]string{"": "", "épée": "Épée", "ärger": "Ärger", "knife": "Knife", "ǆ": "ǅ", "刀": "刀", "ß": "ß", "\xff": "\xff"} {
		if got := Sentence(in); in != "\xff" && got != want {
			t.Errorf("Sentence(%q) = %q, want %q", in, got, want)
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
		if got := NearFile(in(word)); got != want {
			t.Errorf("NearFile(%q) = %q, want %q", word, got, want)
		}
	}
}

// The flag package's own words reach nobody.
func TestFlagErrorsAreOurs(t *testing.T) {
	for _, args := range [][]string{{"--nope"}, {"--out"}, {"---"}, {"--=x"}, {"-h=maybe"}} {
		fs := Flags("x")
		fs.String("out", "", "")
		AddHelp(fs)
		err := Parse(fs, args)
		if err == nil || strings.Contains(err.Error(), "flag") || !strings.Contains(err.Error(), ": ") {
			t.Errorf("%q: %v", args, err)
		}
	}
}
