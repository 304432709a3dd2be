package config

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"unicode"

	"chape/calc/length"
	"chape/project"
	"chape/project/file"
	"chape/project/store"
)

// tomlOf is a setting as a file of it alone.
func tomlOf(key, value string) string {
	if table, name, ok := strings.Cut(key, "."); ok {
		return "[" + table + "]\n" + name + " = " + value + "\n"
	}
	return key + " = " + value + "\n"
}

// alone tells whether a setting may have any value of its range whatever the others are.
func alone(key string) bool {
	for _, tied := range []string{"limits.loose", "limits.snug", "limits.tight", "limits.near", "limits.too_near", "limits.longer", "limits.longest", "printer.x", "printer.y"} {
		if key == tied {
			return false
		}
	}
	return true
}

// Every figure of the settings is taken just in its range and refused just out of it, in one
// line with file, line and key; then the defaults hold.
func TestEverySettingAtItsBounds(t *testing.T) {
	def := Defaults()
	for _, o := range def.own() {
		var in, out []string
		switch o.Kind {
		case project.Number, project.Length:
			in = []string{fmt.Sprint(o.Min), fmt.Sprint(o.Max)}
			out = []string{fmt.Sprint(o.Min - 0.001), fmt.Sprint(math.Nextafter(o.Max, 1e300)), "nan", "inf", "-inf", "1e300", `"\u001b"`, "true", "[]"}
		case project.Flag:
			in, out = []string{"true", "false"}, []string{"1", `"yes"`}
		case project.Choice:
			for _, w := range o.Options {
				in = append(in, fmt.Sprintf("%q", w))
			}
			out = []string{`"other"`, "1", `"` + strings.ToUpper(o.Options[1]) + `"`}
		case project.Text:
			out = []string{`"` + strings.Repeat("é", int(o.Max)+1) + `"`, "3.5", "[]"}
		case project.Words:
			out = []string{`"one"`, "[1]", "[" + strings.Repeat(`"x",`, int(o.Max)+1) + "]"}
		}
		for _, v := range in {
			if _, err := Decode("c", []byte(tomlOf(o.Key, v))); err != nil && alone(o.Key) && v != `"own"` {
				t.Errorf("%s = %s: %v", o.Key, v, err)
			}
		}
		for _, v := range out {
			got, err := Decode("c.toml", []byte(tomlOf(o.Key, v)))
			if err == nil || !strings.HasPrefix(err.Error(), "c.toml:") || !strings.Contains(err.Error(), ": "+o.Key+": found ") || strings.ContainsFunc(err.Error(), unicode.IsControl) {
				t.Errorf("%s = %.30s: %v", o.Key, v, err)
			}
			if !reflect.DeepEqual(got, Defaults()) {
				t.Errorf("%s = %.30s: the defaults do not hold", o.Key, v)
			}
		}
	}
}

// another is a value of a setting that is not its default, and will do.
func another(o file.Setting) any {
	switch v := o.Get().(type) {
	case string:
		if o.Kind == project.Choice {
			for _, w := range o.Options {
				if w != v && w != OwnSteps {
					return w
				}
			}
		}
		switch o.Key {
		case "paper":
			return "8.5x11in"
		case "shelf", "prints", "tracing.pictures":
			return `~/né "quoted" \ # no remark`
		case "shop.hours":
			return "sat 9-13"
		case "price.unit", "price.minimum", "price.snap", "price.rivet":
			return "0.05"
		}
		if strings.HasPrefix(o.Key, "cutter.") {
			sum := 0
			for i, b := range []byte(o.Key) {
				sum += (i + 1) * int(b)
			}
			return fmt.Sprintf("#12%04x", sum)
		}
		return `né "x" \ #`
	case bool:
		return !v
	case float64:
		if strings.HasPrefix(o.Key, "printer.") {
			return 99.25
		}
		if o.Key == "price.holds" { // whole days
			return v + 1
		}
		if o.Key == "limits.longer" { // no more than limits.longest
			return v + 0.01
		}
		return min(o.Max, v+0.125)
	case length.Length:
		return v + 0.125
	}
	return []string{`a "b"`, "# c"}
}

// Every setting alone goes through the file and is the same, and no other is touched.
func TestEverySettingRoundTrip(t *testing.T) {
	for i, o := range new(Config).own() {
		c := Defaults()
		own := c.own()
		v := another(own[i])
		own[i].Set(v)
		if reflect.DeepEqual(c, Defaults()) {
			t.Errorf("%s is the default with %v", o.Key, v)
		}
		got, err := Decode("c", Encode(c))
		if err != nil || !reflect.DeepEqual(got, c) {
			t.Errorf("%s = %v: %v\n%+v\nwant %+v", o.Key, v, err, got, c)
		}
	}
}

// Kept one after another, in the sample and in an empty file, each setting is what it was set
// to; the file stays one that people read: not a line of it is lost.
func TestKeepEverySetting(t *testing.T) {
	for name, text := range map[string]string{"the sample": string(Sample()), "an empty file": "", "a remark": "# mine, with = and \"\n"} {
		path := filepath.Join(t.TempDir(), "config.toml")
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		want := Defaults()
		var changes []Change
		for _, o := range want.own() {
			v := another(o)
			switch v.(type) {
			case string, float64, bool:
				if o.Key == "price.leather_ft2" { // it is one of two
					continue
				}
				changes = append(changes, Change{o.Key, v})
				o.Set(v)
			}
		}
		for _, ch := range changes[:len(changes)/2] {
			if err := Keep(store.OS(), path, ch); err != nil {
				t.Fatalf("%s: %s: %v", name, ch.Key, err)
			}
		}
		if err := Keep(store.OS(), path, changes[len(changes)/2:]...); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		got, err := Load(store.OS(), path)
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %v\n%+v\nwant %+v", name, err, got, want)
		}
		data, _ := os.ReadFile(path)
		for line := range strings.Lines(text) {
			if !strings.Contains(line, "=") && !strings.Contains(string(data), line) {
				t.Errorf("%s: %q is lost", name, line)
			}
		}
	}
}

// Folders are full paths, or from the home folder on: another would lie wherever the program
// was begun.
func TestFolders(t *testing.T) {
	for _, key := range []string{"shelf", "prints", "tracing.pictures"} {
		for _, path := range []string{"", "~", "~/a b", "/srv/a"} {
			if _, err := Decode("c", []byte(tomlOf(key, fmt.Sprintf("%q", path)))); err != nil {
				t.Errorf("%s = %q: %v", key, path, err)
			}
		}
		for _, path := range []string{"a", "./a", "../a", "~other/a", " /srv"} {
			if _, err := Decode("c", []byte(tomlOf(key, fmt.Sprintf("%q", path)))); err == nil || !strings.Contains(err.Error(), key+": found "+fmt.Sprintf("%q", path)+": give a full path, or one from the home folder on") {
				t.Errorf("%s = %q: %v", key, path, err)
			}
		}
	}
	for path, want := range map[string]string{"": "", "~": "/home/me", "~/a": "/home/me/a", "/srv/a/../b/": "/srv/b"} {
		c := Config{Prints: path, Shelf: path}
		if got := filepath.ToSlash(c.PrintsFolder("/home/me")); got != want {
			t.Errorf("prints in %q are in %q, want %q", path, got, want)
		}
		if got := filepath.ToSlash(c.ShelfFolder("/home/me", "/data")); got != want && !(path == "" && got == "/data") {
			t.Errorf("a shelf in %q is in %q, want %q", path, got, want)
		}
	}
}

// Two groups of a cutter's lines never have one colour, and what is none is refused.
func TestCutterColours(t *testing.T) {
	def := Defaults()
	first, second := *def.cutterColours()[0].colour, def.cutterColours()[1].key
	for v, want := range map[string]string{first: "give another colour than cutter.cut has", "red": `give it as "#7a2e21"`, "#12345": `give it as "#7a2e21"`, "": `give it as "#7a2e21"`, "#12345g": `give it as "#7a2e21"`} {
		if _, err := Decode("c", []byte(tomlOf(second, fmt.Sprintf("%q", v)))); err == nil || !strings.Contains(err.Error(), second+": found ") || !strings.Contains(err.Error(), want) {
			t.Errorf("%s = %q: %v", second, v, err)
		}
	}
}

// A sheet that was fitted to the page is no measure: 95 to 105 mm, or 0 for none.
func TestPrinterAtItsBounds(t *testing.T) {
	for v, ok := range map[string]bool{"0": true, "95": true, "105": true, "94.99": false, "105.01": false, "-1": false, "1": false} {
		for _, key := range []string{"printer.x", "printer.y"} {
			if _, err := Decode("c", []byte(tomlOf(key, v))); (err == nil) != ok || err != nil && !strings.Contains(err.Error(), key+": found "+v) {
				t.Errorf("%s = %s: %v", key, v, err)
			}
		}
	}
}

// What only looks like the line of a key, in a text of several lines, is not written into.
func TestKeepIntoAText(t *testing.T) {
	for _, line := range []string{"#glyphs = 1", "glyphs = 1", "[printer]\nx = 99"} {
		text := "shelf = \"\"\"~/a\n" + line + "\n\"\"\"\n"
		path := filepath.Join(t.TempDir(), "config.toml")
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		ch := Change{"glyphs", "ascii"}
		if strings.HasPrefix(line, "[") {
			ch = Change{"printer.x", 98.0}
		}
		err := Keep(store.OS(), path, ch)
		if got, _ := os.ReadFile(path); err == nil || !strings.Contains(err.Error(), "set "+ch.Key+" there by hand") || string(got) != text {
			t.Errorf("%q: %v, and it is now %q", text, err, got)
		}
	}
}
