package print

import (
	"testing"

	"chape/calc/length"
)

// No line of a sheet, and no joint, runs through words.
func TestWordsAreClear(t *testing.T) {
	for name, o := range map[string]Options{
		"a4": {}, "letter": {Paper: paper(t, "letter")}, "half": {Half: true}, "narrow": {Paper: paper(t, "148x180")},
		"flesh, corrected": {Up: 1, Correction: Correction{98.5, 101.2}}, "trial": {Trial: length.Length(0.1)},
	} {
		p := garden()
		j, err := newJob(p, compute(t, p), o)
		if err != nil {
			t.Fatal(err)
		}
		named := map[string]bool{}
		for _, page := range j.pages()[1:] {
			for _, w := range page.d.texts {
				named[w.s] = true
				if w.layer == wordLayer && w.crossed(page.d.paths) {
					t.Errorf("%s, %s: a line runs through %q", name, page.name, w.s)
				}
			}
		}
		for _, want := range []string{"stitch line", "glue line: welt to here"} {
			if !named[want] {
				t.Errorf("%s: no line is named %q", name, want)
			}
		}
	}
}
