package bench

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/test/golden"
)

func check(t *testing.T, name, view string) {
	t.Helper()
	golden.Check(t, name+".txt", ansi.Strip(view))
}

// sheath is a project in its step of that short name, the steps before it done.
func sheath(short string) project.Project {
	p := project.Project{Title: "Example skinner", Steps: steps.FormThenSew(steps.Whole)}
	for i := range p.Steps {
		if p.Steps[i].Short == "CURE" {
			p.Steps[i].Latest = 24 * time.Hour // so that both times are seen
		}
		if p.Steps[i].Short == short {
			break
		}
		p.Steps[i].Done = noon.Add(-time.Hour)
	}
	return p
}

func TestGolden(t *testing.T) {
	for _, c := range []struct {
		name, step string
		w, h       int
		after      time.Duration
		keys       string
	}{
		{"small_drill", "DRILL", 60, 20, 0, ""},
		{"small_running", "CEMENT 1", 60, 20, 0, " "},
		{"dry_running", "DRY", 80, 24, 0, " "},
		{"cement_due", "CEMENT 1", 80, 24, 11 * time.Minute, ""},
		{"cement_late", "CEMENT 1", 80, 24, time.Hour, ""},
		{"large", "DRY", 160, 45, 0, " "},
		{"all_done", "none", 80, 24, 0, ""},
		{"too_small", "DRY", 59, 20, 0, ""},
	} {
		r := newDesk(t, sheath(c.step), c.w, c.h)
		if c.after > 0 {
			r.keys(" ").wait(c.after)
		}
		r.keys(c.keys)
		check(t, c.name, r.Pane.View())
	}
}

// The name and the digits are at least five rows and a quarter of the window at any size
// from 60×20 up, nothing is wider or higher than the window.
func TestSizes(t *testing.T) {
	list := steps.FormThenSew(steps.Whole)
	for _, s := range list {
		p := sheath(s.Short)
		at := steps.Current(p.Steps)
		if !p.Steps[at].HasHold() {
			p.Steps[at].Hold = 100 * time.Hour
		}
		p.Steps[at].Started = noon
		p.Steps[at].Note = "刀の鞘 and a note that is rather long, " + strings.Repeat("on and on ", 30)
		for _, size := range [][2]int{{60, 20}, {61, 21}, {60, 80}, {80, 24}, {100, 30}, {132, 43}, {400, 20}, {400, 120}} {
			r := newDesk(t, p, size[0], size[1])
			checkSize(t, r.Pane.View(), size[0], size[1])
			if page := r.Pane.page(); len(page.name) < max(5, (size[1]+3)/4) || len(page.digits) < max(5, (size[1]+3)/4) {
				t.Errorf("%s at %v: %d rows of name, %d of digits", s.Short, size, len(page.name), len(page.digits))
			}
		}
	}
	for w := range 64 {
		for h := range 26 {
			for _, p := range []project.Project{{}, sheath("DRY"), sheath("SLICK")} {
				checkSize(t, newDesk(t, p, w, h).Pane.View(), w, h)
			}
		}
	}
}

func checkSize(t *testing.T, view string, w, h int) {
	t.Helper()
	lines := strings.Split(view, "\n")
	if h > 0 && len(lines) != h { // exactly: what is below would show through
		t.Fatalf("%d lines at %d×%d", len(lines), w, h)
	}
	for _, l := range lines {
		if ansi.StringWidth(l) > w {
			t.Fatalf("at %d×%d a line of %d: %q", w, h, ansi.StringWidth(l), l)
		}
	}
}

// A caution that is cut off is none.
func TestCautionsFitTheSmallest(t *testing.T) {
	for i, s := range slices.Repeat(steps.FormThenSew(steps.Whole), 2) {
		r := newDesk(t, sheath(s.Short), 60, 20)
		r.holds([]steps.Hold{gum(time.Hour), gum(-time.Hour), gum(-2 * time.Hour)})
		if i < len(steps.FormThenSew(steps.Whole)) { // else it waits to be started
			r.Project.Steps[steps.Current(r.Project.Steps)].Started = noon
		}
		r.Show()
		text := strings.Join(strings.Fields(ansi.Strip(r.Pane.View())), " ")
		if !strings.Contains(text, strings.Join(strings.Fields(s.Caution), " ")) {
			t.Errorf("%s: the caution is cut at 60×20:\n%s", s.Short, ansi.Strip(r.Pane.View()))
		}
	}
}

// Every letter differs from every other, and is drawn in its squares.
func TestLetters(t *testing.T) {
	seen := map[string]rune{}
	for _, r := range "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789: " {
		rows, ok := letters[r]
		if !ok {
			t.Fatalf("no letter %q", r)
		}
		for _, row := range rows {
			if len(row) != len(rows[0]) || len(row) > squares || strings.Trim(row, "#.") != "" {
				t.Errorf("letter %q has the row %q", r, row)
			}
		}
		if other, twice := seen[fmt.Sprint(rows)]; twice {
			t.Errorf("%q looks like %q", r, other)
		}
		seen[fmt.Sprint(rows)] = r
	}
	check(t, "letters", strings.Join([]string{
		strings.Join(big("ABCDEFGHI", 60, 5, 5, '#'), "\n"), strings.Join(big("JKLMNOPQR", 60, 6, 6, '#'), "\n"),
		strings.Join(big("STUVWXYZ:", 60, 5, 5, '#'), "\n"), strings.Join(big("0123456789", 90, 7, 7, '#'), "\n"),
	}, "\n\n"))
	if got := big("", 60, 5, 5, '#'); got != nil {
		t.Errorf("nothing drawn as %q", got)
	}
}

func BenchmarkView(b *testing.B) {
	r := newDesk(b, sheath("DRY"), 160, 48)
	r.Pane.SetSnapshot(act.Snapshot{Project: r.Project, Now: noon})
	for b.Loop() {
		_ = r.Pane.View()
	}
}
