package config

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"chape/calc/length"
	"chape/project/store"
	"chape/project/store/storetest"
)

func TestKeepEdits(t *testing.T) {
	for _, c := range []struct {
		name, text string
		changes    []Change
		want       string
	}{
		{"value with a remark", "# mine\nunits = \"mm\"\t # the bench\ncell=2.0\n", []Change{{"units", "in"}, {"cell", 2.25}},
			"# mine\nunits = \"in\"\t # the bench\ncell= 2.25\n"},
		{"a sign in the text", "shelf = '/a#b' # there\n", []Change{{"shelf", "/c"}}, "shelf = \"/c\" # there\n"},
		{"key missing", "# mine\npaper = \"a3\"\n\n[printer]\n# none yet\n[price]\nhour = 40\n",
			[]Change{{"glyphs", "ascii"}, {"printer.x", 99.5}, {"price.thread", 0.1}},
			"# mine\npaper = \"a3\"\nglyphs = \"ascii\"\n\n[printer]\nx = 99.5\n# none yet\n[price]\nhour = 40\nthread = 0.1\n"},
		{"no table", "bell = false", []Change{{"printer.y", 100.25}}, "bell = false\n\n[printer]\ny = 100.25\n"},
		{"empty", "", []Change{{"bell", false}}, "bell = false\n"},
		{"as a comment", "#glyphs = \"\"\n#cell = 2.0\n[printer]\n#x = 0.0\n", []Change{{"printer.x", 101.0}, {"glyphs", "blocks"}},
			"glyphs = \"blocks\"\n#cell = 2.0\n[printer]\nx = 101\n"},
		{"other line ends", "bell = true\r\n[printer]\r\nx = 99.0\r\n", []Change{{"printer.x", 98.5}, {"cell", 1.9}},
			"bell = true\r\ncell = 1.9\r\n[printer]\r\nx = 98.5\r\n"},
		{"before the steps", "[[step]]\ntitle = \"x\"\n", []Change{{"glyphs", "ascii"}, {"printer.x", 99.0}},
			"glyphs = \"ascii\"\n[[step]]\ntitle = \"x\"\n\n[printer]\nx = 99\n"},
	} {
		path := filepath.Join(t.TempDir(), "config.toml")
		if err := os.WriteFile(path, []byte(c.text), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := Keep(store.OSLockingIn(""), path, c.changes...); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if got, _ := os.ReadFile(path); string(got) != c.want {
			t.Errorf("%s:\ngot  %q\nwant %q", c.name, got, c.want)
		}
	}
}

// What would have to be rewritten, or will not do, is refused and left alone.
func TestKeepRefuses(t *testing.T) {
	for _, c := range []struct {
		text   string
		change Change
		want   string
	}{
		{"[printer\n", Change{"glyphs", "ascii"}, "config.toml is left as it is until it is mended"},
		{"shelf = \"/mine\n", Change{"glyphs", "ascii"}, "config.toml:1: found a text that does not end"},
		{"units = \"cm\"\n", Change{"glyphs", "ascii"}, `units: found "cm": try mm or in`},
		{"printer = { x = 99.0, y = 99.0 }\n", Change{"printer.x", 98.0}, "set printer.x there by hand"},
		{"printer.x = 99.0\n", Change{"printer.x", 98.0}, "set printer.x there by hand"},
		{"\"glyphs\" = \"ascii\"\n", Change{"glyphs", "blocks"}, "set glyphs there by hand"},
		{"", Change{"glyphs", "dots"}, `glyphs: found "dots"`},
		{"", Change{"cell", "2"}, "not of that kind"},
		{"", Change{"limits", 3.0}, "no such key"},
		{"", Change{"printer.x", 12.0}, "printer.x: found 12"},
	} {
		path := filepath.Join(t.TempDir(), "config.toml")
		if err := os.WriteFile(path, []byte(c.text), 0o600); err != nil {
			t.Fatal(err)
		}
		err := Keep(store.OSLockingIn(""), path, c.change)
		if err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%q, %v: %v, want …%s", c.text, c.change, err, c.want)
		}
		if got, _ := os.ReadFile(path); string(got) != c.text {
			t.Errorf("%q was changed to %q", c.text, got)
		}
	}
}

// The sample with every sign taken off is a whole configuration.
func TestSampleIsWhole(t *testing.T) {
	var b strings.Builder
	for line := range strings.Lines(string(Sample())) {
		if rest, ok := strings.CutPrefix(line, "#"); ok && !strings.HasPrefix(rest, " ") {
			line = rest
		}
		b.WriteString(line)
	}
	c, err := Decode("sample", []byte(b.String()))
	if err != nil {
		t.Fatalf("%v in\n%s", err, b.String())
	}
	want := Defaults()
	want.start.Steps = c.start.Steps
	if !reflect.DeepEqual(c, want) || len(c.start.Steps) != 1 {
		t.Errorf("it says %+v", c)
	}
}

func TestKeepMakesTheFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "chape", "config.toml")
	fsys := store.OSLockingIn("")
	if err := Keep(fsys, path, Change{"glyphs", "braille"}, Change{"cell", 1.85}, Change{"printer.y", 99.25}); err != nil {
		t.Fatal(err)
	}
	want := Defaults()
	want.Glyphs, want.Cell, want.Printer.Y = "braille", 1.85, 99.25
	if got, err := Load(fsys, path); err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("kept %+v, %v", got, err)
	}
	data, _ := os.ReadFile(path)
	for _, line := range []string{"\nglyphs = \"braille\"\n", "\n#units = \"mm\"\n", "\n[limits]\n", "\n#drum = 50.0\n"} {
		if !strings.Contains(string(data), line) {
			t.Errorf("no line %q in\n%s", line, data)
		}
	}
	if err := Keep(fsys, path, Change{"units", "in"}); err != nil {
		t.Error(err)
	}
	if got, err := Load(fsys, path); err != nil || got.Units != length.Inches || got.Glyphs != "braille" {
		t.Errorf("then %+v, %v", got, err)
	}
}

// A save that fails at any of its calls leaves the old file or the new.
func TestKeepFails(t *testing.T) {
	const text = "# mine\nbell = false\n"
	for at := 1; ; at++ {
		path := filepath.Join(t.TempDir(), "config.toml")
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		disk := storetest.New()
		disk.FailAt = at
		err := Keep(disk, path, Change{"cell", 2.5})
		got, _ := os.ReadFile(path)
		if string(got) != text && string(got) != text+"cell = 2.5\n" {
			t.Fatalf("call %d fails: %q", at, got)
		}
		if err == nil && at > len(disk.Calls()) {
			return
		}
		if err != nil && string(got) == text+"cell = 2.5\n" && !errors.Is(err, storetest.ErrFault) {
			t.Errorf("call %d fails: %v", at, err)
		}
	}
}

// Whatever the file holds, a change changes one key and no comment, or nothing.
func FuzzKeep(f *testing.F) {
	f.Add([]byte(mine), "braille", 99.5)
	f.Add([]byte("[printer]\nx = 99.0 # '\n[[step]]\ntitle = '''\nglyphs = 3\n'''\n"), "", 100.0)
	f.Add(Sample(), "ascii", 101.0)
	f.Fuzz(func(t *testing.T, data []byte, glyphs string, x float64) {
		before, err := Decode("x", data)
		after, editErr := edit("x", data, []Change{{"glyphs", glyphs}, {"printer.x", x}})
		if editErr != nil {
			return
		}
		if err != nil {
			t.Fatalf("a file that can't be loaded was changed: %v", err)
		}
		got, err := Decode("x", after)
		before.Glyphs, before.Printer.X = glyphs, x
		if err != nil || !reflect.DeepEqual(got, before) {
			t.Errorf("%q\nbecomes %q\n%v", data, after, err)
		}
	})
}
