package workbench

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/file"
	"chape/ui/act"
)

// hold sends a message whose command the disk has yet to answer.
func (s *screen) hold(msg tea.Msg) tea.Cmd {
	_, cmd := s.m.Update(msg)
	return cmd
}

// heron is another project on the shelf.
func (s *screen) heron() (open act.Open) {
	s.t.Helper()
	s.shelve("Heron")
	return act.Open{Path: filepath.Join(s.m.o.Shelf.Dir(), "Heron.toml")}
}

func TestEnterTwiceOpensOnce(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	open := s.heron()
	first := s.hold(open)
	if s.hold(open) != nil {
		t.Error("opened twice")
	}
	s.run(first)
	s.shows("Heron  Heron.toml")
	s.lacks("another window")
}

// TestChangedWhileAnotherComes: a slow disk takes so long that the project is
// worked on meanwhile; it is saved before the other one takes its place.
func TestChangedWhileAnotherComes(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	first := s.path
	coming := s.hold(s.heron())
	s.m.session.Doc().Commit("leather", func(p *project.Project) error { p.Sheath.Leather = 4.5; return nil })
	s.run(coming)
	s.shows("Heron  Heron.toml")
	if got := s.readFile(first).Sheath.Leather; got != 4.5 {
		t.Errorf("in the file: %v", got)
	}
}

func TestKeepTwiceMakesOneFile(t *testing.T) {
	s := loose(t, 120, 40)
	first := s.m.do(s.m.session.Keep())
	if s.m.do(s.m.session.Keep()) != nil {
		t.Error("kept twice")
	}
	s.run(first)
	s.shows("kept as")
	s.keys("ctrl+s")
	if files, _ := filepath.Glob(filepath.Join(s.m.o.Shelf.Dir(), "*.toml")); len(files) != 1 {
		t.Errorf("kept: %q", files)
	}
}

// TestKeptAfterAnotherCame: the answer of the one is not taken for the other.
func TestKeptAfterAnotherCame(t *testing.T) {
	s := loose(t, 120, 40)
	kept := s.m.do(s.m.session.Keep())
	s.send(s.heron())
	s.run(kept)
	s.shows("kept as")
	s.keys("f1", "9", "9", "enter") // f1 silences a hold of the kept copy
	if got := s.onDisk(); got.Title != "Heron" || got.Outline.Blade != 99 {
		t.Errorf("a change to Heron went into %q, %v", got.Title, got.Outline.Blade)
	}
}

// TestCommentsByHand: comments written while the file is open are kept beside, also
// when that works only at the second try.
func TestCommentsByHand(t *testing.T) {
	full := true
	s := filed(t, 120, 40, fresh())
	s.m.o.FS = fullDisk{disk, &full}
	commented := append([]byte("# my own words\n"), file.Encode(fresh())...)
	commented = append(commented, "# and more\n"...)
	if err := os.WriteFile(s.path, commented, 0o600); err != nil {
		t.Fatal(err)
	}
	s.wait(time.Second)
	s.keys("1", "4", "0", "enter")
	s.shows("NOT SAVED")
	full = false
	s.wait(time.Minute)
	s.shows("saved")
	beside, _ := filepath.Glob(filepath.Join(filepath.Dir(s.path), "*with comments*"))
	if len(beside) != 1 {
		t.Fatalf("beside the file: %q", beside)
	}
	if data, _ := os.ReadFile(beside[0]); string(data) != string(commented) {
		t.Error("the commented file was not kept as it was")
	}
}
