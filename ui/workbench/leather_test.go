package workbench

import "testing"

// The leather's page opens from the panes; what it changes of the project the root's undo
// takes back from there.
func TestLeatherPage(t *testing.T) {
	s := filed(t, 100, 40, fresh())
	s.keys("R")
	s.shows("another piece of leather")
	s.keys("home", "down", "down", "enter")
	s.shows("half-widths")
	if n := len(s.m.session.Doc().Committed().Added); n != 1 {
		t.Fatalf("%d parts added", n)
	}
	s.keys("down", "u") // on the name above letters are the name
	if n := len(s.m.session.Doc().Committed().Added); n != 0 {
		t.Errorf("%d parts after undo", n)
	}
	s.keys("U")
	if n := len(s.m.session.Doc().Committed().Added); n != 1 {
		t.Errorf("%d parts after redo", n)
	}
	s.keys("esc", "esc")
	s.lacks("another piece of leather")
}
