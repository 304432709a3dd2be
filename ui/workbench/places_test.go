package workbench

import (
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// shelve puts projects on the shelf of a screen.
func (s *screen) shelve(titles ...string) {
	s.t.Helper()
	for _, title := range titles {
		p := fresh()
		p.Title = title
		if _, err := s.m.o.Shelf.Create(p); err != nil {
			s.t.Fatal(err)
		}
	}
}

func TestOpenAnotherProject(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	s.shelve("Heron", "Badger")
	s.keys("1", "4", "0", "o") // the shelf is a letter of the text, not a command
	if !s.m.editing() {
		t.Fatal("a letter ended the edit")
	}
	s.keys("backspace", "enter", "o")
	s.shows("Heron")
	s.shows("Badger")
	s.keys("/", "heron", "enter", "enter")
	s.shows("Heron  Heron.toml")
	if got := s.onDisk().Title; got != "Heron" {
		t.Errorf("open is %q", got)
	}
	if _, ok := s.m.doc.Undo(); ok {
		t.Error("the other project's changes can be undone in this one")
	}
	s.keys("9", "9", "enter")
	if got := s.onDisk().Outline.Blade; got != 99 {
		t.Errorf("a change went elsewhere: %v", got)
	}
	if got := readVersion(disk, s.path).Project.Outline.Blade; got != 140 {
		t.Errorf("the first project has %v", got)
	}
	s.keys("o", "esc") // all are shown: one leaves
	s.shows("Knife")
}

func TestBeginOnTheShelf(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	s.keys("o", "n", "Otter", "enter", "enter") // the second: as configured
	s.shows("Otter  Otter.toml")
	if got := filepath.Dir(s.m.doc.Path()); got != s.m.o.Shelf.Dir() {
		t.Errorf("it is in %q", got)
	}
}

func TestHoldsOfTheOthers(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	p := fresh()
	p.Title = "Heron"
	p.Steps[1].Started = morning.Add(-30 * time.Minute)
	if _, err := s.m.o.Shelf.Create(p); err != nil {
		t.Fatal(err)
	}
	s.wait(2 * time.Second)
	s.shows("Heron DRY: ")
	s.wait(31 * time.Minute)
	s.shows("! Heron DRY fell due")
	rung := s.voice.bells
	s.keys("f1", "o", "enter") // over to it: it is not announced again
	s.shows("Heron  Heron.toml")
	s.wait(time.Minute)
	if s.voice.bells != rung {
		t.Errorf("%d bells more after going over", s.voice.bells-rung)
	}
	if n := strings.Count(s.text(), "DRY: due since"); n != 1 {
		t.Errorf("the hold is shown %d times:\n%s", n, s.text())
	}
}

func TestChangedCopyAsksBeforeAnotherIsOpened(t *testing.T) {
	s := loose(t, 120, 40)
	s.shelve("Heron")
	s.keys("f1", "a", "o", "enter")
	s.shows("This copy is not kept")
	s.keys("k")
	s.shows("Heron  Heron.toml")
	if kept, _ := filepath.Glob(filepath.Join(s.m.o.Shelf.Dir(), "Example*.toml")); len(kept) != 1 {
		t.Errorf("kept: %q", kept)
	}
}

func TestUnsavedIsNotLeft(t *testing.T) {
	full := true
	s := filed(t, 120, 40, fresh())
	s.shelve("Heron")
	s.m.o.FS = fullDisk{disk, &full}
	s.keys("1", "4", "0", "enter", "o", "enter")
	s.shows("the other project is not opened")
	if s.m.doc.Path() != s.path {
		t.Error("left with something unsaved")
	}
	full = false
	s.keys("enter")
	s.shows("Heron  Heron.toml")
	if got := readVersion(disk, s.path).Project.Outline.Blade; got != 140 {
		t.Errorf("the first project has %v", got)
	}
}

func TestWeighings(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	s.keys("w")
	s.shows("Drying")
	s.keys("1", "4", "1", ".", "5", "enter")
	if got := s.onDisk().Weigh; len(got) != 1 || got[0].Grams != 141.5 {
		t.Fatalf("weighings %+v", got)
	}
	s.keys("u")
	if got := s.onDisk().Weigh; len(got) != 0 {
		t.Errorf("after undo %+v", got)
	}
	s.keys("esc")
	s.shows("blade length")
}

// TestCtrlCLeadsOut: wherever one is, a few of them end the program.
func TestCtrlCLeadsOut(t *testing.T) {
	for name, keys := range map[string][]string{
		"an edit": {"1"}, "a step": {"shift+tab", "a", "x"}, "a weighing": {"w", "1"}, "the help": {"?"},
		"finding": {"o", "/", "x"}, "a title": {"o", "n", "x"}, "the bench": {"b"}, "the plan": {"tab"},
	} {
		s := filed(t, 120, 40, fresh())
		s.keys(keys...)
		for range 4 {
			s.keys("ctrl+c")
		}
		if !s.quit {
			t.Errorf("no way out of %s:\n%s", name, s.text())
		}
	}
}
