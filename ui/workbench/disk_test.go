package workbench

import (
	"errors"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/example"
	"chape/project/file"
	"chape/project/store"
	"chape/ui/guard"
)

func TestChangedByAnotherProgram(t *testing.T) {
	s := filed(t, 100, 30, fresh())
	theirs := fresh()
	theirs.Outline.Blade = 99
	s.write(theirs)
	s.wait(time.Second)
	if got := s.m.session.Doc().Committed().Outline.Blade; got != 99 {
		t.Errorf("theirs was not loaded: %v", got)
	}
	s.shows("was changed by another program: its new state is loaded")
	s.keys("u")
	if got := s.onDisk().Outline.Blade; got != 110 {
		t.Errorf("undo does not bring ours back: %v", got)
	}
}

// write puts a project into the file as another program would.
func (s *screen) write(p project.Project) {
	s.t.Helper()
	if err := os.WriteFile(s.path, file.Encode(p), 0o600); err != nil {
		s.t.Fatal(err)
	}
}

func TestChangedOnBothSides(t *testing.T) {
	for _, key := range []string{"t", "y"} {
		s := filed(t, 100, 30, fresh())
		theirs := fresh()
		theirs.Outline.Blade = 99
		s.write(theirs)
		s.keys("1", "4", "0", "enter") // before any look at the disk
		s.shows("Changed on both sides")
		blades := map[length.Length]bool{}
		files, _ := filepath.Glob(filepath.Join(filepath.Dir(s.path), "*.toml"))
		for _, f := range files {
			blades[s.readFile(f).Outline.Blade] = true
		}
		if !blades[99] || !blades[140] {
			t.Fatalf("%s: in the files are %v (%q)", key, blades, files)
		}
		s.keys("q") // answers nothing
		s.shows("Changed on both sides")
		s.keys(key)
		s.shows("saved")
		want, name := length.Length(99), s.path
		if key == "y" {
			want, name = 140, s.m.session.Doc().Path()
			if name == s.path {
				t.Error("ours took the place of theirs")
			}
		}
		if got := s.m.session.Doc().Committed().Outline.Blade; got != want || s.readFile(name).Outline.Blade != want {
			t.Errorf("%s: went on with %v", key, got)
		}
	}
}

func TestQuitWhileBothSidesChanged(t *testing.T) {
	s := filed(t, 100, 30, fresh())
	theirs := fresh()
	theirs.Outline.Blade = 99
	s.write(theirs)
	s.keys("1", "4", "0", "enter", "ctrl+c")
	if !s.quit {
		t.Fatal("Ctrl+C does not quit")
	}
	err := s.m.Finish(nil)
	if err == nil {
		t.Fatal("nothing is said of it")
	}
	where, alone := strings.CutPrefix(err.Error()[strings.LastIndex(err.Error(), "yours is in"):], "yours is in\n")
	if path, bad := strconv.Unquote(where); !alone || bad != nil || !filepath.IsAbs(path) { // alone on its line, to be copied
		t.Errorf("Finish: %v", err)
	}
	if got := s.readFile(s.path).Outline.Blade; got != 99 {
		t.Errorf("theirs has become %v", got)
	}
}

func TestTheirsCannotBeLoaded(t *testing.T) {
	s := filed(t, 100, 30, fresh())
	if err := os.WriteFile(s.path, []byte("format = 1\n[sheath]\nmouth = \"far\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	s.wait(time.Second)
	s.shows("can't be loaded")
	s.keys("f1")
	s.wait(3 * time.Second)
	s.lacks("can't be loaded") // said once
	s.keys("1", "4", "0", "enter")
	s.shows("Theirs can't be loaded; it is left as it is.")
	s.keys("y")
	if got := s.onDisk().Outline.Blade; got != 140 || s.m.session.Doc().Path() == s.path {
		t.Errorf("ours is %v in %q", got, s.m.session.Doc().Path())
	}
}

func TestFileGoneAndBack(t *testing.T) {
	s := filed(t, 100, 30, fresh())
	if err := os.Rename(s.path, s.path+".away"); err != nil {
		t.Fatal(err)
	}
	s.wait(time.Second)
	s.shows("was moved or deleted by another program")
	s.keys("1", "4", "0", "enter")
	if got := s.onDisk().Outline.Blade; got != 140 {
		t.Errorf("made anew with %v", got)
	}
	os.Remove(s.path)
	s.wait(time.Second)
	theirs := fresh()
	theirs.Outline.Blade = 99
	s.write(theirs)
	s.wait(time.Second)
	if got := s.m.session.Doc().Committed().Outline.Blade; got != 99 {
		t.Errorf("a file that came back was not loaded: %v", got)
	}
}

func TestAnotherFileWhereItCannotBeSaved(t *testing.T) {
	full := true
	s := filed(t, 120, 30, fresh())
	s.m.o.FS = fullDisk{disk, &full}
	s.keys("1", "4", "0", "enter", "ctrl+s")
	s.shows("go on in another file")
	s.keys("k")
	s.shows("saved")
	if got := s.onDisk().Outline.Blade; got != 140 || s.m.session.Doc().Path() == s.path {
		t.Errorf("kept %v in %q", got, s.m.session.Doc().Path())
	}
}

// fullDisk fails to make files while it is full.
type fullDisk struct {
	store.FS
	full *bool
}

func (f fullDisk) Create(name string, perm os.FileMode) (store.File, error) {
	if *f.full {
		return nil, &os.PathError{Op: "open", Path: name, Err: errors.New("no space left on device")}
	}
	return f.FS.Create(name, perm)
}

func TestSaveFailsUntilItWorks(t *testing.T) {
	full := true
	s := filed(t, 120, 30, fresh())
	s.m.o.FS = fullDisk{disk, &full}
	s.keys("1", "4", "0", "enter")
	s.shows("NOT SAVED")
	s.wait(time.Minute)
	s.shows("NOT SAVED")
	s.keys("q")
	s.shows("Quitting puts your work into a file of its own")
	s.keys("esc")
	full = false
	s.wait(time.Minute)
	s.shows("saved")
	if got := s.onDisk().Outline.Blade; got != 140 {
		t.Errorf("on the disk: %v", got)
	}
}

func TestQuittingWithoutADisk(t *testing.T) {
	full := true
	s := filed(t, 120, 30, fresh())
	s.m.o.FS = fullDisk{disk, &full}
	s.keys("1", "4", "0", "enter", "q", "q")
	if !s.quit {
		t.Fatal("q and q do not quit")
	}
	full = false // the rescue folder takes it
	if err := s.m.Finish(nil); err != nil {
		t.Fatalf("Finish: %v", err)
	}
	if got := s.onDisk().Outline.Blade; got != 140 {
		t.Errorf("on the disk: %v", got)
	}
	s.keys("9")
	s.m.session.Doc().Commit("more", func(p *project.Project) error { p.Sheath.Leather = 4; return nil })
	s.path = filepath.Join(t.TempDir(), "gone", "x.toml")
	if err := s.m.Finish(&guard.Crash{Value: "test"}); err == nil || !strings.Contains(err.Error(), "your work is in") {
		t.Errorf("after a fault: %v", err)
	}
}

func TestLooseCopy(t *testing.T) {
	s := loose(t, 120, 30)
	s.keys("f1", "q")
	if !s.quit {
		t.Error("an untouched copy asks before it goes")
	}
	s = loose(t, 120, 30)
	s.keys("f1", "a", "q")
	s.shows("This copy is not kept")
	s.keys("k")
	if !s.quit || s.m.session.Doc().Path() == "" {
		t.Fatalf("quit %v, path %q", s.quit, s.m.session.Doc().Path())
	}
	if got, want := len(s.onDisk().Knife.Stations), len(example.Load(morning).Knife.Stations)+1; got != want {
		t.Errorf("kept with %d marks, want %d", got, want)
	}
	info, err := os.Stat(filepath.Dir(s.m.session.Doc().Path()))
	if err != nil || info.Mode().Perm()&0o077 != 0 {
		t.Errorf("the new shelf is open to others: %v, %v", info.Mode(), err)
	}
}

func TestCommentsAreKeptBeside(t *testing.T) {
	s := filed(t, 100, 30, fresh())
	commented := append([]byte("# my own words\n"), file.Encode(fresh())...)
	if err := os.WriteFile(s.path, commented, 0o600); err != nil {
		t.Fatal(err)
	}
	s = start(t, 100, 30, fresh(), s.path, calc.Compute)
	s.m.o.Notices = file.Notices{Comments: true}
	s.keys("1", "4", "0", "enter")
	s.shows("the file as it was is kept in")
	beside, _ := filepath.Glob(filepath.Join(filepath.Dir(s.path), "*with comments*"))
	if len(beside) != 1 {
		t.Fatalf("beside the file: %q", beside)
	}
	if data, _ := os.ReadFile(beside[0]); string(data) != string(commented) {
		t.Error("the commented file was not kept as it was")
	}
	s.keys("1", "5", "0", "enter")
	if beside, _ = filepath.Glob(filepath.Join(filepath.Dir(s.path), "*with comments*")); len(beside) != 1 {
		t.Errorf("kept more than once: %q", beside)
	}
}

// TestEndedInTheMidstOfASave has a signal end the program while a save runs, or
// before it has begun, and another change waits behind it.
func TestEndedInTheMidstOfASave(t *testing.T) {
	for _, begun := range []bool{true, false} {
		s := filed(t, 100, 30, fresh())
		started := make(chan bool, 9)
		s.m.o.Encode = func(p project.Project) []byte {
			started <- true
			return file.Encode(p)
		}
		change := func(mm length.Length) tea.Cmd {
			s.m.session.Doc().Commit("blade", func(p *project.Project) error { p.Sheath.Leather = mm; return nil })
			return s.m.do(s.m.session.Save())
		}
		running := change(3)
		if change(4) != nil {
			t.Fatal("two saves at once")
		}
		done := make(chan bool)
		if begun {
			go func() { running(); close(done) }()
			<-started
		}
		if err := s.m.Finish(nil); err != nil {
			t.Errorf("Finish: %v", err)
		}
		if !begun {
			running() // late
			close(done)
		}
		<-done
		if got := s.onDisk().Sheath.Leather; got != 4 {
			t.Errorf("begun %v: on the disk: %v", begun, got)
		}
	}
}
