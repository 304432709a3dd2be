package workbench

import (
	"errors"
	"path/filepath"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/print/sheet"
)

// TestPrintPanel: Enter prints as configured; what a sheet measured is kept.
func TestPrintPanel(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	var kept sheet.Correction
	s.m.o.KeepPrinter = func(c sheet.Correction) error { kept = c; return nil }
	s.keys("P")
	s.shows("grain")
	s.shows("the pattern: 2 sheets")
	s.keys("hfp")
	s.shows("the pattern: 1 sheet")
	s.shows("one half, to be marked and flipped")
	s.shows("flesh")
	s.shows("a3")
	s.fits()
	s.keys("t", "0.3", "enter")
	s.shows("0.3 mm thick")
	s.keys("t", "300", "enter")
	s.shows("no thickness for trial stock")
	s.keys("esc", "esc")
	if s.m.mode == printing {
		t.Fatal("Esc does not lead out")
	}
	s.keys("P", "m", "99,5 100.2", "enter")
	if want := (sheet.Correction{X: 99.5, Y: 100.2}); kept != want || s.m.o.Print.Correction != want {
		t.Errorf("kept %v", kept)
	}
	s.keys("enter")
	s.shows("written: ")
	if files, _ := filepath.Glob(filepath.Join(filepath.Dir(s.path), "*.pdf")); len(files) == 0 {
		t.Error("no sheets")
	}
	s.keys("P", "m", "none", "enter")
	if kept.Set() {
		t.Errorf("taken back: %v", kept)
	}
	s.m.o.KeepPrinter = func(sheet.Correction) error { return errors.New("no folder") }
	s.keys("m", "99.5,100.2", "enter")
	s.shows("for this time only: no folder")
}

// TestPrintedByAFastHand: Enter right behind the panel's letters prints; while the panel is
// open nothing says "written" of what was before.
func TestPrintedByAFastHand(t *testing.T) {
	for _, pace := range []time.Duration{10 * time.Millisecond, 60 * time.Millisecond, 150 * time.Millisecond, time.Second} {
		s := filed(t, 80, 24, fresh())
		s.keys("P", "enter")
		s.shows("written: ")
		s.now = s.now.Add(2 * time.Second)
		for _, k := range []tea.KeyMsg{char('P'), char('s'), {Type: tea.KeyEnter}} {
			if s.now = s.now.Add(pace); k.Type == tea.KeyEnter {
				s.lacks("written: ")
			}
			s.send(k)
		}
		s.shows("written: ")
		if files, _ := filepath.Glob(filepath.Join(filepath.Dir(s.path), "tracing sheet*.pdf")); len(files) == 0 || s.m.mode == printing {
			t.Errorf("%v a key: no tracing sheet was printed", pace)
		}
	}
}

// TestCalliperInThePanel: its readings go into the field for them and print nothing.
func TestCalliperInThePanel(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	s.keys("P")
	s.reading("99.52", "enter")
	if s.m.mode != printing {
		t.Fatal("a reading prints")
	}
	s.keys("m")
	s.reading("99.52", "enter", "lf")
	s.reading("100.20", "enter", "lf")
	if want := (sheet.Correction{X: 99.52, Y: 100.2}); s.m.o.Print.Correction != want {
		t.Errorf("measured %v", s.m.o.Print.Correction)
	}
	s.keys("m")
	s.reading("none", "enter")
	s.keys("m")
	s.reading("98,102", "enter") // both at once, as fast as a tool
	if want := (sheet.Correction{X: 98, Y: 102}); s.m.o.Print.Correction != want {
		t.Errorf("measured %v, want %v", s.m.o.Print.Correction, want)
	}
}

// TestPrintsAreFound: the panel shows the folder and takes another; the paths stay on the
// screen until another message, with the keys below them.
func TestPrintsAreFound(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	other, kept := t.TempDir(), ""
	s.m.o.Documents, s.m.o.KeepPrints = t.TempDir(), func(folder string) error { kept = folder; return nil }
	s.keys("P")
	s.shows(filepath.Base(s.m.o.Documents))
	s.keys("d", "prints", "enter")
	s.shows("give a full path")
	s.keys("esc", "d", other, "enter")
	s.shows("into the folder")
	s.shows(filepath.Base(other))
	if kept != other {
		t.Errorf("kept %q", kept)
	}
	s.fits()
	s.keys("enter")
	for range 3 {
		s.shows("written: ")
		s.shows("? keys")
		s.fits()
		s.keys("down")
	}
	if files, _ := filepath.Glob(filepath.Join(other, "*.pdf")); len(files) == 0 {
		t.Error("no sheets in the folder that was chosen")
	}
	s.keys("ctrl+s")
	s.lacks("written: ")
}

// TestWrittenGoes: what was printed stays while one looks, goes with another page or a
// change, and P shows it again.
func TestWrittenGoes(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	for _, goes := range [][]string{{"tab"}, {"o"}, {"b"}, {"tab", "tab", "down", "4", "2", "enter"}} {
		s.keys("P", "enter")
		s.shows("written: ")
		s.keys("up", "home")
		s.shows("written: ")
		s.keys(goes...)
		s.lacks("written: ")
		s.keys("esc", "esc", "P")
		s.shows("written last: ")
		s.shows("knife pattern 1.pdf")
		s.keys("esc")
	}
}

// TestPaperIsKept: what is printed on is what lies in the printer.
func TestPaperIsKept(t *testing.T) {
	s := filed(t, 80, 24, fresh())
	var kept []string
	s.m.o.KeepPaper = func(p sheet.Paper) error { kept = append(kept, p.Name); return nil }
	s.keys("P", "pp", "esc", "P")
	s.shows("a4")
	s.keys("pp", "enter", "P")
	s.shows("letter")
	s.keys("enter")
	if len(kept) != 1 || kept[0] != "letter" {
		t.Errorf("kept %q", kept)
	}
	s.m.o.KeepPaper = func(sheet.Paper) error { return errors.New("no folder") }
	s.run(s.m.do(s.m.session.KeepPaper(sheet.Papers[0])))
	s.shows("not kept for the next time: no folder")
}

// TestNewFolderIsAsked: one that is not there yet is made only after a second Enter.
func TestNewFolderIsAsked(t *testing.T) {
	s := filed(t, 80, 24, fresh())
	there, none := t.TempDir(), filepath.Join(t.TempDir(), "none")
	kept := ""
	s.m.o.KeepPrints = func(folder string) error { kept = folder; return nil }
	s.keys("P", "d", s.path, "enter")
	s.shows("this is a file")
	s.keys("esc", "d", none, "enter")
	s.shows("there is no such folder yet")
	if kept != "" {
		t.Fatalf("kept %q unasked", kept)
	}
	s.keys("x", "backspace", "enter") // it was typed on: asked anew
	s.shows("there is no such folder yet")
	s.keys("enter")
	if kept != none {
		t.Errorf("kept %q", kept)
	}
	s.keys("d", there, "enter")
	if kept != there {
		t.Errorf("kept %q", kept)
	}
	s.keys("d", "enter")
	if kept != "" {
		t.Errorf("the usual one: %q", kept)
	}
}
