package workbench

import (
	"errors"
	"testing"

	"chape/calc"
	"chape/ui/act"
	"chape/ui/canvas"
)

const askedNew = "What do you call the knife?"

// TestNewFromEverywhere: n asks for a new project on every pane and page, and Esc leads
// back; in a text, a question and the bench view it is what is typed, or nothing.
func TestNewFromEverywhere(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	for _, l := range s.m.book.Leaves {
		if l.Room == act.Screen {
			continue
		}
		s.m.takeUp(l)
		s.keys("n")
		s.shows(askedNew)
		s.keys("esc")
		s.lacks(askedNew)
		s.keys("esc")
		if s.m.book.Cover != nil && s.m.book.Cover.Name == "Shelf" {
			t.Errorf("from %s Esc leads nowhere", l.Name)
		}
	}
	for name, keys := range map[string][]string{
		"a step's name": {"shift+tab", "r"}, "a title on the shelf": {"o", "n"}, "the keys": {"?"},
		"how to print": {"P"}, "the bench view": {"b"}, "finding": {"o", "/"},
	} {
		s := filed(t, 120, 40, fresh())
		s.keys(keys...)
		was, mode := s.m.book.InHand(), s.m.mode
		s.keys("n")
		if s.m.book.InHand() != was || s.m.mode != mode {
			t.Errorf("n in %s: %s is in hand", name, s.m.book.InHand().Name)
		}
	}
}

// TestOwnKnifeFromTheExample: while the example is open the foot says how to begin; one n,
// a title and Enter twice open the own project.
func TestOwnKnifeFromTheExample(t *testing.T) {
	s := loose(t, 80, 24)
	s.keys("f1")
	s.shows("n your own knife")
	s.keys("n", "Otter", "enter", "enter")
	s.shows("Otter")
	s.lacks("n your own knife")
	if p := s.m.session.Doc(); p.Path() == "" || p.Committed().Title != "Otter" {
		t.Errorf("open: %q, %q", p.Path(), p.Committed().Title)
	}
}

// TestLookIsKept: what is moved to on the look page is what drawings are made of at once,
// and the last of it is what is kept.
func TestLookIsKept(t *testing.T) {
	var kept []act.Font
	s := start(t, 80, 24, fresh(), "", calc.Compute, func(o *Options) {
		o.Remember = func(f act.Font) error { kept = append(kept, f); return nil }
	})
	s.keys("D", "right", "right", "down", "left")
	want := act.Font{Glyphs: canvas.Blocks, Aspect: 2.1}
	if got := s.m.snapshot().Font; got != want {
		t.Errorf("drawn with %+v", got)
	}
	if len(kept) == 0 || kept[len(kept)-1] != want {
		t.Errorf("kept %+v", kept)
	}
	s.keys("enter")
	s.lacks("Take the drawing")

	// While one is being kept no other is: the last follows.
	s.m.o.Remember = func(f act.Font) error { kept = append(kept, f); return nil }
	kept = nil
	cmd := s.m.setLook(act.Font{Glyphs: canvas.ASCII, Aspect: 2})
	if s.m.setLook(act.Font{Glyphs: canvas.Braille, Aspect: 2}) != nil {
		t.Error("two are kept at once")
	}
	s.run(cmd)
	if len(kept) != 2 || kept[1].Glyphs != canvas.Braille {
		t.Errorf("kept %+v", kept)
	}
	s.m.o.Remember = func(act.Font) error { return errors.New("no room on the disk") }
	s.keys("D", "right")
	s.shows("for this time only, it can't be kept: no room on the disk")
}
