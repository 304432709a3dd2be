package workbench

import (
	"strings"
	"testing"
	"time"

	"chape/project/file"
)

var day = time.Date(2026, time.November, 20, 0, 0, 0, 0, time.UTC)

// TestNumberIsOffered: where a change makes the pattern another than the one printed under
// its number, that is said once, and A raises it; undo takes it back.
func TestNumberIsOffered(t *testing.T) {
	p := fresh()
	p.Revision = 3
	p, _ = file.Printed(p, day)
	s := filed(t, 120, 40, p)
	s.keys("A")
	s.shows("Nothing that is cut has changed since pattern 3 was printed on 20 Nov 2026")
	s.keys("esc")
	if got := s.m.session.Doc().Committed().Revision; got != 3 {
		t.Errorf("A, Esc on what was printed: number %d", got)
	}
	s.keys("A", "n")
	if got := s.m.session.Doc().Committed().Revision; got != 4 { // asked for, it is raised
		t.Errorf("A, n on what was printed: number %d", got)
	}
	s = filed(t, 120, 40, p)
	s.keys("9", "9", "enter")
	s.shows("pattern 3 was printed on")
	s.shows("A raises its number to 4")
	s.keys("down", "up", "9", "8", "enter")
	s.lacks("A raises its number")
	s.keys("A")
	s.shows("pattern number 4 from now on")
	if got := s.m.session.Doc().Committed(); got.Revision != 4 || len(got.Patterns) != 1 || got.Patterns[0].Number != 3 {
		t.Errorf("raised: number %d, patterns %d", got.Revision, len(got.Patterns))
	}
	s.keys("A")
	s.shows("pattern 4 was not printed yet")
	s.keys("N")
	s.shows("thin: pattern 3")
	s.shows("heavy: pattern 4 as it is now")
}

// TestPrintAsksForTheNumber before sheets under one number are of two patterns.
func TestPrintAsksForTheNumber(t *testing.T) {
	p := fresh()
	p.Revision = 3
	p, _ = file.Printed(p, day)
	p.Sheath.Leather = 2.4
	s := filed(t, 80, 24, p)
	s.keys("P", "enter")
	s.shows("Pattern 3 was printed on")
	s.keys("n")
	got := s.m.session.Doc().Committed()
	if got.Revision != 4 || len(got.Patterns) != 2 || got.Patterns[1].Number != 4 {
		t.Errorf("n: number %d, patterns %v", got.Revision, len(got.Patterns))
	}
	s = filed(t, 80, 24, p)
	s.keys("P", "enter", "s")
	if got := s.m.session.Doc().Committed(); got.Revision != 3 || len(got.Patterns) != 1 || strings.Contains(got.Patterns[0].Inputs, "leather = 3.2") {
		t.Errorf("s: number %d, patterns %d", got.Revision, len(got.Patterns))
	}
	s = filed(t, 80, 24, p)
	s.keys("P", "enter", "esc")
	if got := s.m.session.Doc().Committed(); got.Revision != 3 || len(got.Patterns) != 1 {
		t.Errorf("Esc: number %d, patterns %d", got.Revision, len(got.Patterns))
	}
}
