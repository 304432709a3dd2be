package stepspane

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/project/steps"
	"chape/project/weigh"
	"chape/ui/test/golden"
)

func check(t *testing.T, name, view string) {
	t.Helper()
	golden.Check(t, name+".txt", ansi.Strip(view))
}

// busy has every state a row can be in.
func busy() project.Project {
	p := sheath(12)
	s := p.Steps
	s[5].Done, s[5].Skipped = time.Time{}, true
	s[11].Spent, s[1].Spent = 25*time.Minute, 40*time.Minute
	s[12].Started = noon.Add(-12 * time.Minute)
	s[12].Note = "second tin of cement, thinner than the first"
	s[14].Started = noon
	s[18].Started, s[18].Ended = noon.Add(-30*time.Minute), noon.Add(-5*time.Minute)
	s[20].Started = noon.Add(-50 * time.Hour)
	return p
}

func TestGolden(t *testing.T) {
	for _, c := range []struct {
		name string
		w, h int
		at   int
		keys []string
	}{
		{"narrow", 26, 17, 12, nil},
		{"wide", 46, 30, 12, nil},
		{"single", 78, 20, 12, nil},
		{"single_first", 78, 20, 0, nil},
		{"ended", 78, 20, 18, nil},
		{"late", 34, 30, 20, nil},
		{"asking_hold", 78, 20, 12, []string{"d"}},
		{"asking_end", 26, 17, 14, []string{"e"}},
	} {
		r := newRig(t, busy(), c.w, c.h)
		choose(r, c.at)
		r.Keys(c.keys...)
		check(t, c.name, r.Pane.View())
	}
	check(t, "empty", newRig(t, project.Project{}, 30, 5).Pane.View())
}

// The caution of every step can be read whole in the narrowest of three panes.
func TestCautionsFit(t *testing.T) {
	for i, s := range steps.FormThenSew(steps.Whole) {
		r := newRig(t, sheath(i), 26, 15)
		text := strings.Join(strings.Fields(ansi.Strip(r.Pane.View())), " ")
		if !strings.Contains(text, strings.Join(strings.Fields(s.Caution), " ")) {
			t.Errorf("%s: the caution is cut:\n%s", s.Short, ansi.Strip(r.Pane.View()))
		}
	}
}

// Titles are shown where they can be told apart, with a space after the mark.
func TestNarrowRows(t *testing.T) {
	r := newRig(t, busy(), 26, 24)
	choose(r, 0)
	view := ansi.Strip(r.Pane.View())
	for _, want := range []string{">x Tape the edge, then me…", " - Bevel the mouth and th…", " x Slick the inside, noth…"} {
		if !strings.Contains(view, want) {
			t.Errorf("no %q in\n%s", want, view)
		}
	}
	if strings.Contains(view, "MEASURE") {
		t.Errorf("short names at 26 columns:\n%s", view)
	}
	r.Pane.SetSize(18, 24)
	if view := ansi.Strip(r.Pane.View()); !strings.Contains(view, ">x MEASURE ") {
		t.Errorf("no short names at 18 columns:\n%s", view)
	}
}

// A list that is longer than the pane says which part of it is shown.
func TestLongListSaysSo(t *testing.T) {
	r := newRig(t, sheath(9), 78, 19)
	choose(r, 19)
	want := fmt.Sprintf(" %d-%d of 37", r.Pane.list.Top+1, r.Pane.list.Top+r.Pane.listRows())
	if view := ansi.Strip(r.Pane.View()); !strings.Contains(view, want) {
		t.Errorf("no %q in\n%s", want, view)
	}
	if view := ansi.Strip(newRig(t, sheath(9), 78, 50).Pane.View()); strings.Contains(view, "of 37") {
		t.Errorf("all are shown:\n%s", view)
	}
}

// Beside the drying step stands when the scale says it is dry.
func TestDryBesideItsStep(t *testing.T) {
	p := sheath(20)
	p.Weigh = []weigh.Weighing{{When: noon.Add(-17 * time.Hour), Grams: 100, State: weigh.Before}}
	hours := []float64{0, 1, 2.5, 5, 10, 15} // Zumdahl, Chemistry, chapter 11, exercise 37, an hour for each 120 s
	for i, g := range []float64{200, 191, 178, 159, 137, 122} {
		p.Weigh = append(p.Weigh, weigh.Weighing{When: noon.Add(time.Duration((hours[i] - 15) * float64(time.Hour))), Grams: g, State: "drying"})
	}
	r := newRig(t, p, 78, 24)
	want, ok := weigh.DryingOf(p.Weigh, 0).By(p.Room, p.Weigh, noon)
	if view := ansi.Strip(r.Pane.View()); !ok || strings.Count(view, want) != 2 { // in its row, and below
		t.Errorf("%q is not in its row and below:\n%s", want, view)
	}
	r.Project.Weigh = nil
	r.Show()
	if view := ansi.Strip(r.Pane.View()); strings.Contains(view, "dry about") {
		t.Errorf("no weighings:\n%s", view)
	}
}

func TestHostileTitles(t *testing.T) {
	p := project.Project{Steps: []steps.Step{{Title: "a\x1b[2Jb\nc\x07", Note: "\x1b]0;x\x07n", Caution: "\r\x1b[31mred"}}}
	view := newRig(t, p, 60, 20).Pane.View()
	if strings.ContainsAny(view, "\x1b\x07\r") {
		t.Errorf("controls reach the screen: %q", view)
	}
}
