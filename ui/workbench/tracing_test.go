package workbench

import (
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/project/file"
	"chape/project/store"
	"chape/ui/test/photo"
	"chape/ui/tracing"
)

// pasted hands a text over as a terminal with bracketed paste does.
func (s *screen) pasted(text string) {
	s.now = s.now.Add(byHand)
	s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
}

// fast hands it over as one without does: as keys, a millisecond apart.
func (s *screen) fast(text string) {
	s.now = s.now.Add(byHand)
	for _, r := range text {
		s.now = s.now.Add(time.Millisecond)
		s.send(char(r))
	}
}

// TestFromAPictureToThePattern counts the keys from the picture of a tracing, dropped on
// the Knife pane, to the printed pattern: 12 at most beside the calliper's readings.
func TestFromAPictureToThePattern(t *testing.T) {
	s := filed(t, 80, 24, fresh())
	path := photo.Traced(t, t.TempDir(), "IMG 2031.jpg")
	keys := 0
	press := func(words ...string) {
		for _, w := range words {
			keys++
			s.keys(w)
		}
	}
	s.pasted("'" + path + "'")
	keys++
	s.shows("read to about 0.1 mm; sheet flat; one gap of 1.")
	s.shows("steps at 95 mm, 109 mm") // as the strokes are, to 0.05 mm
	if got := s.onDisk(); got.Tracing.Picture != "" {
		t.Fatal("taken before it was seen")
	}
	press("enter")
	n := len(s.onDisk().Unmeasured())
	if n < 5 || n != len(s.onDisk().Knife.Stations) {
		t.Fatalf("%d thicknesses are left of %d marks", n, len(s.onDisk().Knife.Stations))
	}
	for range n {
		s.reading("4.50", "enter", "lf")
	}
	press("enter", "P", "enter")
	s.shows("written: ")
	if keys > 12 {
		t.Errorf("%d keys", keys)
	}
	p := s.onDisk()
	if p.Tracing.Picture != "IMG 2031.jpg" || p.Tracing.Residual <= 0 || p.Tracing.Read.IsZero() || len(p.Unmeasured()) > 0 {
		t.Errorf("the file has %+v", p.Tracing)
	}
	if l := p.Knife.Length().MM(); math.Abs(l-200) > 0.5 {
		t.Errorf("the knife is %v mm long", l)
	}
	for _, m := range p.Knife.Stations {
		if m.Thick != 4.5 {
			t.Errorf("at %v it is %v thick", m.At, m.Thick)
		}
	}
	if sheets, _ := filepath.Glob(filepath.Join(filepath.Dir(s.path), "*.pdf")); len(sheets) == 0 {
		t.Error("no pattern was printed")
	}
	for range n {
		s.keys("u")
	}
	s.keys("u")
	if got := s.onDisk(); got.Tracing.Picture != "" || !reflect.DeepEqual(got.Knife, fresh().Knife) {
		t.Errorf("undone: %+v", got.Tracing)
	}
}

// TestDroppedAnywhere: in all forms, with and without bracketed paste, on the page and on
// the panes; no letter of a path is a command.
func TestDroppedAnywhere(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "q u o P")
	if err := os.Mkdir(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(folder, "x fjbq.jpg")
	if err := os.WriteFile(path, []byte("no picture"), 0o600); err != nil {
		t.Fatal(err)
	}
	slashed := strings.ReplaceAll(path, " ", `\ `)
	forms := []string{path, "'" + path + "'", `"` + path + `"`, slashed, "file://" + strings.ReplaceAll(path, " ", "%20")}
	for where, keys := range map[string][]string{"page": {"I"}, "knife": nil, "plan": {"tab"}, "steps": {"shift+tab"}} {
		for _, form := range forms {
			for _, fast := range []bool{false, true} {
				if where != "page" && fast && strings.HasPrefix(form, "file") {
					continue // there an f is a command before it can be known for a path's
				}
				s := filed(t, 100, 30, fresh())
				s.keys(keys...)
				before := s.onDisk()
				if fast {
					s.fast(form)
					s.keys("enter")
				} else {
					s.pasted(form)
				}
				s.shows("! x fjbq.jpg: that is not a picture: ")
				if !reflect.DeepEqual(s.onDisk(), before) || s.quit || s.m.mode != browsing {
					t.Errorf("%s: %q, fast %v: quit %v, mode %v", where, form, fast, s.quit, s.m.mode)
				}
			}
		}
	}
}

// Where a number is being typed, what is dropped is no picture's.
func TestNotDroppedIntoANumber(t *testing.T) {
	s := filed(t, 100, 30, fresh())
	s.keys("1", "4")
	s.pasted("/a/b.jpg")
	s.shows("Knife")
	if s.m.book.Cover != nil {
		t.Error("another page took it")
	}
}

// Nor is the stroke of a fraction, where there is no number to type it into.
func TestNoPathInAFraction(t *testing.T) {
	s := filed(t, 100, 30, fresh())
	s.keys("end")
	s.fast("7/8")
	s.shows("no number here: back is a choice, Space changes it")
	if s.m.book.Cover != nil {
		t.Error("another page took it")
	}
}

// TestTracingSheetIsPrinted: P on the page, where no plan is needed, and s in the panel.
func TestTracingSheetIsPrinted(t *testing.T) {
	s := filed(t, 100, 30, fresh())
	s.keys("I", "P")
	s.shows("to trace a knife on")
	s.keys("hf", "enter")
	s.shows("written: ")
	sheet := filepath.Join(filepath.Dir(s.path), "tracing sheet.pdf")
	if data, err := os.ReadFile(sheet); err != nil || !strings.HasPrefix(string(data), "%PDF") {
		t.Fatalf("the sheet: %v", err)
	}
	if err := os.Remove(sheet); err != nil {
		t.Fatal(err)
	}
	s.keys("esc", "P", "s", "p", "enter")
	s.shows("written: ")
	if _, err := os.Stat(strings.Replace(sheet, "sheet.pdf", "sheet a3.pdf", 1)); err != nil {
		t.Error(err)
	}
	if got := s.onDisk(); len(got.Patterns) > 0 {
		t.Error("a pattern is noted as printed")
	}
	s = loose(t, 100, 30) // no file, and so no pattern
	s.keys("f1", "I", "P", "s", "enter")
	s.shows("keep this copy first")
}

// TestNewestOfTheSettings: the folder is the settings' of the moment.
func TestNewestOfTheSettings(t *testing.T) {
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "a.jpg"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	p := fresh()
	path := filepath.Join(t.TempDir(), "knife.toml")
	if _, err := store.SaveNew(disk, path, file.Encode(p)); err != nil {
		t.Fatal(err)
	}
	s := start(t, 100, 30, p, path, calc.Compute, func(o *Options) { o.Tracing = tracing.Settings{Folder: "/nowhere"} })
	s.keys("I")
	s.shows("There is no picture in /nowhere yet")
	s.m.o.Tracing.Folder = folder
	s.keys("esc", "I")
	s.shows("Enter takes the newest one: a.jpg")
	s.keys("enter")
	s.shows("! a.jpg: the file is empty")
}
