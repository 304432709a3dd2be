package workbench

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/project"
	"chape/project/example"
	"chape/project/file"
	"chape/project/shelf"
	"chape/project/steps"
	"chape/ui/act"
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

// TestExampleIsQuiet: what the example holds is shown and never rings, nor when it falls
// due; what is begun on it does.
func TestExampleIsQuiet(t *testing.T) {
	p := example.Load(morning)
	s := start(t, 80, 24, p, "", calc.Compute, func(o *Options) {
		for _, h := range steps.Holds(p.Steps, "") {
			o.Alarm.Quiet = append(o.Alarm.Quiet, h.Begun())
		}
	})
	s.wait(10 * time.Second)
	s.shows("LOOSEN 2: due since")
	s.shows("DRY: 21 h to go")
	s.wait(60 * time.Hour) // dry, and too late for it
	s.lacks("any key silences it")
	if s.voice.bells != 0 {
		t.Errorf("%d bells", s.voice.bells)
	}
	s.m.session.Doc().Commit("begun here", func(p *project.Project) error {
		p.Steps[0].Done, p.Steps[0].Hold, p.Steps[0].Started = time.Time{}, time.Hour, s.now
		return nil
	})
	s.m.changed = true
	s.wait(time.Second)
	s.wait(2 * time.Hour)
	s.shows("any key silences it")
	if s.voice.bells == 0 {
		t.Error("a hold that was begun on the example does not ring")
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
	s.shows("Esc, Ctrl+S saves it elsewhere")
	s.shows("not before")
}

// TestSaidAtTheBench: what was refused, and a command that failed, is seen there until a
// key is pressed, at any size, beside a banner.
func TestSaidAtTheBench(t *testing.T) {
	for _, size := range [][2]int{{60, 20}, {100, 30}} {
		p := fresh()
		p.Steps[1].Started = morning.Add(-time.Hour + 5*time.Second)
		s := filed(t, size[0], size[1], p)
		s.m.o.Alarm.OnDue = []string{filepath.Join(t.TempDir(), "missing")}
		s.keys("b", " ")
		s.wait(6 * time.Second)
		s.shows("DRY is due")
		s.shows("on_due")
		s.fits()
		s.keys("f1")
		s.lacks("DRY is due")
		s.shows("on_due")
		s.keys("f1")
		s.lacks("on_due")
		s.m.take(act.Commit{Label: "tick FORM", Do: func(*project.Project) error { return errors.New("look and press again") }})
		s.send(tickMsg{})
		s.shows("! tick FORM: look and press again")
		s.fits()
	}
}

// TestQuitWithHolds: who quits is told what does not ring then; a copy that is in no file
// has nothing to ring.
func TestQuitWithHolds(t *testing.T) {
	p := fresh()
	p.Steps[1].Started = morning.Add(-time.Minute)
	s := filed(t, 100, 30, p)
	if got := strings.Join(s.m.unrung(), ";"); got != "Nothing rings while chape is closed. Still running:;  Test knife DRY: 59 min to go, 10:29" {
		t.Errorf("%q", got)
	}
	s.wait(time.Hour)
	if got := s.m.unrung(); got != nil {
		t.Errorf("nothing runs: %q", got)
	}
	s = start(t, 100, 30, p, "", calc.Compute)
	if got := s.m.unrung(); got != nil {
		t.Errorf("a copy: %q", got)
	}
}

// TestBannerNamesItsKey: however much fell due, the banner says what silences it.
func TestBannerNamesItsKey(t *testing.T) {
	p := fresh()
	p.Steps[1].Started = morning.Add(-90 * time.Minute)
	s := filed(t, 80, 24, p)
	s.m.alarm.Silence()
	s.shelve("Heron with a rather long name", "Otter with a rather long name")
	for _, n := range []string{"Heron with a rather long name", "Otter with a rather long name"} {
		path := filepath.Join(s.m.o.Shelf.Dir(), n+".toml")
		q := s.readFile(path)
		q.Steps = p.Steps
		if err := os.WriteFile(path, file.Encode(q), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	again := start(t, 80, 24, p, s.path, calc.Compute, func(o *Options) { o.Shelf = shelf.Open(disk, s.m.o.Shelf.Dir()) })
	again.shows("any key silences it")
	again.fits()
}

// TestAlarmEatsNoFigure: a figure silences the alarm and is typed all the same, key by
// key, in one piece or pasted; a letter, Enter, Space or an arrow does nothing else.
func TestAlarmEatsNoFigure(t *testing.T) {
	rings := func() *screen {
		p := fresh()
		p.Steps[1].Started = morning.Add(-time.Hour + 2*time.Second)
		s := filed(t, 80, 24, p)
		s.wait(3 * time.Second)
		s.shows("any key silences it")
		return s
	}
	for name, typed := range map[string]func(*screen){
		"key by key": func(s *screen) { s.keys("1", "2", "4", ".", "5", "enter") },
		"a reading":  func(s *screen) { s.reading("124.5", "enter", "lf") },
		"a fast one": func(s *screen) { s.fast("124.5"); s.keys("enter") },
		"pasted":     func(s *screen) { s.pasted("124.5"); s.keys("enter") },
		"in an edit": func(s *screen) {
			s.keys("f1", "1")
			s.wait(2 * time.Hour)
			s.shows("look at it")
			s.keys("2", "4", ".", "5", "enter")
		},
	} {
		s := rings()
		typed(s)
		s.lacks("any key silences it")
		if got := s.onDisk().Outline.Blade; got != 124.5 {
			t.Errorf("%s: the blade is %v long", name, got)
		}
	}
	for _, key := range []string{"down", "enter", " ", "x", "n", "P", "b", "?", "tab"} {
		s := rings()
		was := s.text()
		s.keys(key)
		s.lacks("any key silences it")
		_, was, _ = strings.Cut(was, "\n")
		if _, is, _ := strings.Cut(s.text(), "\n"); is != was {
			t.Errorf("%q did something beside silencing:\n%s", key, is)
		}
	}
}

// TestAlarmAndReadingElsewhere: where no number is meant a reading silences, and no more.
func TestAlarmAndReadingElsewhere(t *testing.T) {
	for _, to := range []string{"tab", "b", "?", "o", "P"} {
		p := fresh()
		p.Steps[1].Started = morning.Add(-time.Hour + 5*time.Second)
		s := filed(t, 100, 30, p)
		s.keys(to)
		before := s.onDisk()
		s.wait(6 * time.Second)
		s.shows("DRY is due")
		s.reading("24.5", "enter", "lf")
		s.lacks("any key silences it")
		if !reflect.DeepEqual(before, s.onDisk()) || s.quit {
			t.Errorf("%q: a reading did something", to)
		}
	}
}

// TestAlarmAnswersNoQuestion: the key that silences is no answer to a question that Enter
// alone answers; it stays, and the next Enter is one.
func TestAlarmAnswersNoQuestion(t *testing.T) {
	for _, key := range []string{"enter", "5", "x", "esc"} {
		p := fresh()
		p.Steps[1].Started = morning.Add(-time.Hour + 5*time.Second)
		s := filed(t, 100, 30, p)
		s.keys("tab", "tab", "x")
		s.shows("Enter removes this step")
		s.wait(6 * time.Second)
		s.shows("any key silences it")
		s.keys(key)
		s.lacks("any key silences it")
		s.shows("Enter removes this step")
		if got := len(s.onDisk().Steps); got != len(p.Steps) {
			t.Errorf("%q took a step out", key)
		}
		s.keys("enter")
		if got := len(s.onDisk().Steps); got != len(p.Steps)-1 {
			t.Errorf("after %q Enter takes nothing out", key)
		}
	}
}
