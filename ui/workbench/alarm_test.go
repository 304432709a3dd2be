package workbench

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/project/example"
	"chape/project/file"
	"chape/project/shelf"
	"chape/ui/layout"
)

var mark = flag.String("mark", "", "a file that TestBeTheCommand makes")

// TestBeTheCommand is the user's command of TestOwnCommand: the test's own binary.
func TestBeTheCommand(t *testing.T) {
	if *mark == "" {
		return // not called as a command
	}
	if err := os.WriteFile(*mark, []byte(os.Getenv("CHAPE_DUE")), 0o600); err != nil {
		t.Fatal(err)
	}
}

// TestOwnCommand runs what the user has named for a hold that falls due: without a
// shell, its failure shown and harmless.
func TestOwnCommand(t *testing.T) {
	p := fresh()
	p.Steps[1].Started = morning.Add(-time.Hour + 2*time.Second)
	mark := filepath.Join(t.TempDir(), "rang; exit")
	s := filed(t, 100, 30, p)
	s.m.o.Alarm.OnDue = []string{os.Args[0], "-test.run", "^TestBeTheCommand$", "-mark", mark}
	s.wait(3 * time.Second)
	if text, err := os.ReadFile(mark); err != nil || !strings.HasPrefix(string(text), "DRY is due") {
		t.Errorf("the command was told %q, %v", text, err)
	}

	s = filed(t, 100, 30, p)
	s.m.o.Alarm.OnDue = []string{filepath.Join(t.TempDir(), "missing")}
	s.m.o.Alarm.NoBell = true
	s.wait(3 * time.Second)
	s.shows("on_due")
	s.shows("DRY is due")
	if s.voice.bells != 0 {
		t.Errorf("%d bells, though none are wanted", s.voice.bells)
	}
}

// TestClockSetBack: the bell is not silent for as long as the clock was set back.
func TestClockSetBack(t *testing.T) {
	p := fresh()
	p.Steps[1].Started = morning.Add(-time.Hour + 2*time.Second)
	s := filed(t, 100, 30, p)
	s.wait(3 * time.Second)
	rung := s.voice.bells
	s.now = s.now.Add(-5 * time.Hour)
	s.send(tickMsg{})
	s.wait(30 * time.Second)
	if s.voice.bells <= rung {
		t.Errorf("%d bells before, %d after", rung, s.voice.bells)
	}
}

// TestMeanwhileInOneGo: what fell due before the start, in all projects, is told once,
// and calls no command.
func TestMeanwhileInOneGo(t *testing.T) {
	p := fresh()
	p.Steps[1].Started = morning.Add(-90 * time.Minute)
	s := filed(t, 100, 30, p)
	s.keys("f1")
	s.shelve("Heron", "Otter")
	for _, n := range []string{"Heron", "Otter"} {
		path := filepath.Join(s.m.o.Shelf.Dir(), n+".toml")
		q := s.readFile(path)
		q.Steps = p.Steps
		if err := os.WriteFile(path, file.Encode(q), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	again := start(t, 100, 30, p, s.path, calc.Compute, func(o *Options) {
		o.Shelf = shelf.Open(disk, s.m.o.Shelf.Dir())
		o.Alarm.OnDue = []string{filepath.Join(t.TempDir(), "missing")}
	})
	again.shows("Fell due meanwhile")
	again.shows("fell due meanwhile: ")
	again.shows("Heron DRY: due since 09:00")
	again.shows("Otter DRY: due since 09:00")
	again.shows("Test knife DRY: due since 09:00")
	again.lacks("on_due")
	again.fits()
	if again.voice.bells != 1 {
		t.Errorf("%d bells", again.voice.bells)
	}
	again.keys("f1")
	again.lacks("Fell due meanwhile")
	again.wait(25 * time.Second)
	if again.voice.bells != 1 {
		t.Errorf("%d bells after a key", again.voice.bells)
	}
}

// TestFontFirst: at the first start the question about the font comes before the alarm.
func TestFontFirst(t *testing.T) {
	s := start(t, 80, 24, example.Load(morning), "", calc.Compute, func(o *Options) { o.Ask = true })
	s.wait(10 * time.Second)
	s.shows("ring of dots")
	s.lacks("any key silences it")
	s.keys("y")
	s.lacks("ring of dots")
	s.wait(time.Second)
	s.shows("any key silences it")
	if s.m.focus != layout.Plan {
		t.Errorf("in hand: %v", s.m.focus)
	}
}

// TestToTheShell: it is said that nothing rings there, and the title is the shell's.
func TestToTheShell(t *testing.T) {
	p := fresh()
	p.Steps[1].Started = morning.Add(-time.Minute)
	s := filed(t, 100, 30, p)
	if s.m.suspend() != nil {
		t.Fatal("gone to the shell while a hold runs, and nothing said")
	}
	s.shows("no bell rings in the shell")
	cmd := s.m.suspend()
	if cmd == nil || s.voice.title != "" {
		t.Fatalf("the second time: title %q", s.voice.title)
	}
	s.send(tea.ResumeMsg{})
	if s.voice.title != "chape: Test knife" {
		t.Errorf("back: title %q", s.voice.title)
	}
	if s = filed(t, 100, 30, fresh()); s.m.suspend() == nil {
		t.Error("without a hold it asks")
	}
}

// TestBelowTheLeastSize: what must not be missed is shown.
func TestBelowTheLeastSize(t *testing.T) {
	p := fresh()
	p.Steps[1].Started = morning.Add(-time.Hour + 5*time.Second)
	s := filed(t, 30, 6, p)
	s.shows("needs 40×12")
	s.shows("DRY: 5 s to go")
	s.wait(6 * time.Second)
	s.shows("! DRY is due")
	s.fits()
}

// TestNotSavedAtTheBench: the state of the work hides no answer.
func TestNotSavedAtTheBench(t *testing.T) {
	full := true
	p := fresh()
	p.Steps = p.Steps[1:]
	s := filed(t, 100, 30, p)
	s.m.o.FS = fullDisk{disk, &full}
	s.keys("b", " ")
	s.wait(3 * time.Second)
	s.keys(" ")
	s.shows("NOT SAVED")
	s.shows("not before")
}
