package command

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"chape/calc/length"
	"chape/project"
	"chape/project/file"
)

// A project begun in inches has round inches in all its figures, as one that is begun in the
// workbench; in millimetres they are those of always.
func TestNewInInches(t *testing.T) {
	for unit, wrong := range map[string]func(shown string) bool{
		"in": func(s string) bool { return strings.Contains(s, ".") }, // no binary fraction
		"mm": func(s string) bool { return strings.Contains(s, "/") },
	} {
		path := filepath.Join(t.TempDir(), "orchard.toml")
		said(t, "new", "--units", unit, path)
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		p, _, err := file.Decode(path, data)
		if err != nil {
			t.Fatal(err)
		}
		if p.Units.String() != unit || p.Validate() != nil {
			t.Fatalf("in %s: %v, %v", unit, p.Units, p.Validate())
		}
		n := 0
		for _, f := range project.Fields {
			if v, is := f.Get(p).(length.Length); is && v > 0 {
				if n++; wrong(f.Show(p)) {
					t.Errorf("%s: %s %s", f.Key, f.Show(p), unit)
				}
			}
		}
		if n < 25 {
			t.Errorf("only %d lengths looked at", n)
		}
	}
}
