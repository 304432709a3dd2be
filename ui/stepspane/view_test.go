package stepspane

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chape/project"
)

var update = flag.Bool("update", false, "write the golden files")

func golden(t *testing.T, name, got string) {
	t.Helper()
	var b strings.Builder
	for line := range strings.SplitSeq(ansi.Strip(got), "\n") {
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	path := filepath.Join("testdata", name+".txt")
	if *update {
		if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if b.String() != string(want) {
		t.Errorf("%s is now\n%swant\n%s", name, b.String(), want)
	}
}

// busy has every state a row can be in.
func busy() project.Project {
	p := sheath(9)
	s := p.Steps
	s[4].Done, s[4].Skipped = time.Time{}, true
	s[8].Spent, s[1].Spent = 25*time.Minute, 40*time.Minute
	s[9].Started = noon.Add(-12 * time.Minute)
	s[9].Note = "second tin of cement, thinner than the first"
	s[11].Started = noon
	s[15].Started, s[15].Ended = noon.Add(-30*time.Minute), noon.Add(-5*time.Minute)
	s[17].Started = noon.Add(-50 * time.Hour)
	return p
}

func TestGolden(t *testing.T) {
	for _, c := range []struct {
		name string
		w, h int
		at   int
		keys []string
	}{
		{"narrow", 26, 17, 9, nil},
		{"wide", 46, 30, 9, nil},
		{"single", 78, 20, 9, nil},
		{"single_first", 78, 20, 0, nil},
		{"ended", 78, 20, 15, nil},
		{"late", 34, 30, 17, nil},
		{"asking_hold", 78, 20, 9, []string{"d"}},
		{"asking_end", 26, 17, 11, []string{"e"}},
	} {
		r := newRig(busy(), c.w, c.h)
		r.m.choose(c.at)
		r.keys(c.keys...)
		golden(t, c.name, r.m.View())
	}
	golden(t, "empty", newRig(project.Project{}, 30, 5).m.View())
}

// The caution of every step can be read whole in the narrowest of three panes.
func TestCautionsFit(t *testing.T) {
	for i, s := range project.FormThenSew() {
		r := newRig(sheath(i), 26, 15)
		text := strings.Join(strings.Fields(ansi.Strip(r.m.View())), " ")
		if !strings.Contains(text, strings.Join(strings.Fields(s.Caution), " ")) {
			t.Errorf("%s: the caution is cut:\n%s", s.Short, ansi.Strip(r.m.View()))
		}
	}
}

func TestHostileTitles(t *testing.T) {
	p := project.Project{Steps: []project.Step{{Title: "a\x1b[2Jb\nc\x07", Note: "\x1b]0;x\x07n", Caution: "\r\x1b[31mred"}}}
	view := newRig(p, 60, 20).m.View()
	if strings.ContainsAny(view, "\x1b\x07\r") {
		t.Errorf("controls reach the screen: %q", view)
	}
}
