package print

import (
	"os"
	"path/filepath"
	"testing"

	"chape/calc/length"
	"chape/project"
	"chape/project/file"
	"chape/project/print/sheet"
)

// No line of a sheet, and no joint, runs through words.
func TestWordsAreClear(t *testing.T) {
	t.Parallel()
	for name, o := range map[string]Options{
		"a4": {}, "letter": {Paper: paper(t, "letter")}, "half": {Half: true}, "narrow": {Paper: paper(t, "148x180")},
		"flesh, corrected": {Up: 1, Correction: sheet.Correction{X: 98.5, Y: 101.2}}, "trial": {Trial: length.Length(0.1)},
	} {
		for _, p := range odd(t) {
			wordsAreClear(t, name+", "+p.Title, p, o)
		}
	}
}

// odd are sheaths of different make.
func odd(t *testing.T) []project.Project {
	out := []project.Project{garden()}
	for _, name := range []string{"kitchen", "guard", "inches"} {
		path := filepath.Join("..", "..", "testdata", name+".toml")
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		p, _, err := file.Decode(path, data)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, p)
	}
	return out
}

func wordsAreClear(t *testing.T, name string, p project.Project, o Options) {
	t.Helper()
	j, err := newJob(p, compute(t, p), o)
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]bool{}
	for _, page := range j.pages() {
		for _, w := range page.Drawing.Texts {
			named[w.Says] = true
			if (w.Layer == sheet.WordLayer || w.Layer == sheet.MapLayer && len([]rune(w.Says)) > 3) && w.Crossed(page.Drawing.Paths) {
				t.Errorf("%s, %s: a line runs through %q", name, page.Name, w.Says)
			}
		}
	}
	for _, want := range []string{"stitch line", "glue line: welt to here"} {
		if !named[want] {
			t.Errorf("%s: no line is named %q", name, want)
		}
	}
}
