package shelfpane

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chape/calc/calendar"
	"chape/project"
	"chape/project/file"
	"chape/project/steps"
	"chape/ui/test/rig"
)

func TestGolden(t *testing.T) {
	dir := full(t)
	for _, c := range []struct {
		name string
		w, h int
		keys []string
	}{
		{"list80x24", 80, 24, nil},
		{"list160x45", 160, 45, nil},
		{"narrow", 40, 14, nil},
		{"broken", 80, 24, []string{"/", "torn", "enter"}},
	} {
		r := newRig(t, dir, c.w, c.h)
		r.keys(c.keys...)
		check(t, c.name, r.Pane.View())
	}
}

// What is asked and found is said in a few lines of the same screen.
func TestSaid(t *testing.T) {
	dir := full(t)
	for _, c := range []struct {
		w, h int
		keys []string
		want []string
	}{
		{80, 24, []string{"/", "spare"}, []string{"Find: spare", "5 of 14"}},
		{80, 24, []string{"/", "zzz"}, []string{"Find: zzz", "0 of 14", "None found: Esc shows all again."}},
		{80, 24, []string{"n", "Bench kn"}, []string{"New project. What do you call the knife?", "Bench kn"}},
		{80, 24, []string{"n", "Bench knife", "enter", "u"}, []string{"How does it begin?", "[Form, then sew]", "[in]"}},
		{60, 20, []string{"f", "enter"}, []string{"New project from", "a project needs a title"}},
	} {
		r := newRig(t, dir, c.w, c.h)
		r.keys(c.keys...)
		r.Shows(c.want...)
	}
	newRig(t, filepath.Join(dir, "none"), 60, 10).Shows("No projects yet: n begins one.", "0 projects")
}

// Two of one title are told apart by their files' names, and what has no steps is not
// finished.
func TestSameTitlesAndNoSteps(t *testing.T) {
	dir := t.TempDir()
	data := file.Encode(sheath("Camp knife, second try", 3))
	put(t, dir, "Camp knife, second try.toml", data, noon)
	put(t, dir, "Camp knife, second try (mine 2026-11-25 14.03).toml", data, noon)
	put(t, dir, "other.toml", data, noon)
	bare := sheath("Bare", 0)
	bare.Steps = nil
	put(t, dir, "bare.toml", file.Encode(bare), noon)
	view := ansi.Strip(newRig(t, dir, 80, 24).Pane.View())
	for _, want := range []string{"Camp knife, second try ", "2026-11-25 14.03)", "Camp knif…second try: other", "no steps"} {
		if !strings.Contains(view, want) {
			t.Errorf("no %q in\n%s", want, view)
		}
	}
	if strings.Contains(view, "finished") {
		t.Errorf("finished without steps:\n%s", view)
	}
}

// Whatever the size and the state, the view has exactly that size.
func TestExactSize(t *testing.T) {
	dir := full(t)
	put(t, dir, "wild.toml", file.Encode(wild()), noon)
	states := map[string][]string{"list": nil, "end": {"end"}, "finding": {"/", "wild ünd weiter"}, "asking": {"n", strings.Repeat("long ", 30)},
		"refused": {"n", "enter"}, "beginning": {"n", "x", "enter"}, "broken": {"/", "torn", "enter"}}
	for name, keys := range states {
		r := newRig(t, dir, 80, 24)
		r.keys(keys...)
		for _, w := range []int{0, 1, 2, 3, 5, 9, 17, 37, 38, 39, 61, 62, 63, 80, 111, 112, 113, 160, 250} {
			for _, h := range []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 17, 24, 39} {
				r.Pane.SetSize(w, h)
				view := r.Pane.View()
				if w == 0 || h == 0 {
					if view != "" {
						t.Fatalf("%s at %d×%d is %q", name, w, h, view)
					}
					continue
				}
				lines := strings.Split(view, "\n")
				if len(lines) != h {
					t.Fatalf("%s at %d×%d has %d lines", name, w, h, len(lines))
				}
				for _, l := range lines {
					if ansi.StringWidth(l) != w {
						t.Fatalf("%s at %d×%d: %d wide: %q", name, w, h, ansi.StringWidth(l), l)
					}
				}
			}
		}
	}
}

// wild has texts that no screen should obey.
func wild() project.Project {
	p := sheath("wild \u202e\u0301漢字 \U0001F52A and on and on and on and on and on and on", 0)
	p.Customer.Name = "\x1b[2J\a\tbell"
	p.Steps[0].Title, p.Steps[0].Short = "\x1b]0;title\a", "漢字漢字漢"
	return p
}

func TestHostileTexts(t *testing.T) {
	dir := t.TempDir()
	put(t, dir, "wild.toml", file.Encode(wild()), noon)
	put(t, dir, "torn \x1b[31m.toml", []byte("units = \"\x1b[31m\""), noon)
	for _, keys := range [][]string{nil, {"down"}, {"f"}, {"r"}, {"p"}} {
		r := newRig(t, dir, 100, 24)
		r.Pane.o.Styles.Chosen, r.Pane.o.Styles.Warn = r.Pane.o.Styles.Text, r.Pane.o.Styles.Text
		r.keys(keys...)
		view := r.Pane.View()
		if clean := ansi.Strip(view); strings.ContainsAny(clean, "\x1b\a\t\u202e") || strings.Contains(view, "\x1b[2J") || strings.Contains(view, "\x1b[31m") {
			t.Errorf("after %v controls reach the screen: %q", keys, view)
		}
	}
}

// From noon on a Wednesday, evenings of three hours: 2 h are done at 20:00, five times that,
// 10 h, on Saturday at 10:00, a day after what was promised. Without hours nothing is said.
func TestReadyOnTheShelf(t *testing.T) {
	dir := t.TempDir()
	for name, work := range map[string]time.Duration{"soon": 2 * time.Hour, "late": 10 * time.Hour} {
		p := project.Defaults()
		p.Title, p.Customer.Name, p.Customer.Due = name, "R. Example", time.Date(2026, 11, 27, 0, 0, 0, 0, time.UTC)
		p.Steps = []steps.Step{{Title: "Sew", Expect: work}, {Title: "Buff"}}
		if err := os.WriteFile(filepath.Join(dir, name+".toml"), file.Encode(p), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	r := newRig(t, dir, 78, 20)
	r.Lacks("at the earliest")
	r.Snap.Shop.Broken = "your settings can't be read: config.toml, line 3"
	r.Show().Shows("when it can be ready is not known: your settings", "config.toml, line 3").Lacks("27 Nov !")
	r.Snap.Shop.Broken = ""
	week, err := calendar.ParseWeek("mon-fri 18-21, sat 9-13")
	if err != nil {
		t.Fatal(err)
	}
	r.Snap.Shop.Week = week
	r.Show()
	r.Pane.Choose(filepath.Join(dir, "soon.toml"))
	r.Shows("at the earliest Wed 25 Nov 20:00; promised 27 Nov: 2 days to spare", "not counted, so later: 1 step without minutes", "27 Nov !")
	r.Pane.Choose(filepath.Join(dir, "late.toml"))
	r.Shows("! at the earliest Sat 28 Nov 10:00; promised 27 Nov: 1 day short")
	if n := strings.Count(r.Screen(), "27 Nov !"); n != 1 {
		t.Errorf("%d projects are short of days:\n%s", n, r.Screen())
	}
	for _, w := range []int{58, 78, 120} { // neither takes the other's room
		r.Pane.SetSize(w, 20)
		r.Shows("for R. Example", "not counted, so later: 1 step without minutes", "1 day short")
	}
	rig.CheckSizes(t, r.Pane, 100, 30)
}

// Keys that are of a project say what would do where there is none.
func TestNothingChosen(t *testing.T) {
	for _, k := range []string{"enter", "f", "r", "p"} {
		r := newRig(t, t.TempDir(), 60, 20)
		r.keys(k)
		if len(r.Said) != 1 || !strings.Contains(r.Said[0], "n begins one") {
			t.Errorf("%s says %q", k, r.Said)
		}
	}
}
