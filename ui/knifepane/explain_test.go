package knifepane

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"chape/project/words"
	"chape/ui/form"
)

// ? on a row says what it is, with the picture of what can be measured on one.
func TestExplanations(t *testing.T) {
	f := open(t, withRows())
	for p := range form.Page(form.Pages) {
		f.pane.show(p)
		for i, r := range f.pane.rows {
			if r.IsHeading() {
				continue
			}
			f.pane.line, f.pane.column = i, 0
			title, body, ok := f.pane.Explain()
			if !ok || title == "" {
				t.Fatalf("nothing is said of %s", f.at())
			}
			for _, size := range [][2]int{{76, 18}, {30, 6}, {12, 4}} {
				for _, l := range body(size[0], size[1]) {
					if n := ansi.StringWidth(l); n > size[0] {
						t.Errorf("%s: a line of %d cells in %d", f.at(), n, size[0])
					}
				}
			}
			said, w := strings.Join(body(400, 3), " "), words.Word{}
			if w, _ = words.Of(f.at()); w.Text == "" { // its line on the form says it all
				hint := f.pane.cell().Hint
				w.Text = strings.ToUpper(hint[:1]) + hint[1:] + "."
			}
			if said != w.Text {
				t.Errorf("%s: said %q, want %q, once", f.at(), said, w.Text)
			}
		}
	}
	f.goTo("belt.lap", -1)
	_, body, _ := f.pane.Explain()
	if lines := body(76, 18); len(lines) < 10 || !strings.Contains(ansi.Strip(strings.Join(lines[3:], "\n")), "lap") {
		t.Errorf("no picture:\n%s", strings.Join(lines, "\n"))
	}
}
