package workbench

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"chape/calc/length"
	"chape/project"
	"chape/project/file"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/guard"
)

// TestGoneIsSaid until the file is there again; 'saved' is said when it is.
func TestGoneIsSaid(t *testing.T) {
	s := filed(t, 100, 30, fresh())
	s.keys("1", "4", "0", "enter")
	s.remove()
	s.wait(2 * time.Second)
	s.keys("down")
	s.shows("! the file is gone: Ctrl+S makes it anew")
	s.keys("ctrl+s")
	if got := s.onDisk().Outline.Blade; got != 140 {
		t.Errorf("made anew with %v", got)
	}
	s.shows("saved in " + s.path)
	s.lacks("is gone")
}

// TestGoneWhileANumberIsRefused: what is committed can be saved all the same.
func TestGoneWhileANumberIsRefused(t *testing.T) {
	s := filed(t, 100, 30, fresh())
	s.keys("1", "4", "0", "enter")
	s.remove()
	s.wait(2 * time.Second)
	s.keys("9", ".", ".", "enter", "ctrl+s")
	if got := s.onDisk().Outline.Blade; got != 140 {
		t.Errorf("made anew with %v", got)
	}
	s.lacks("is gone")
}

// remove deletes the file and the copy beside it.
func (s *screen) remove() {
	os.Remove(s.path)
	os.Remove(store.BackupName(s.path))
}

// TestGoneAndNobodyLooked: neither Ctrl+S nor quitting trusts what was so a second ago.
func TestGoneAndNobodyLooked(t *testing.T) {
	for _, keys := range [][]string{{"ctrl+s"}, {"q"}, {"ctrl+c"}, nil} {
		s := filed(t, 100, 30, fresh())
		s.keys("1", "4", "0", "enter")
		s.remove()
		s.keys(keys...)
		if err := s.m.Finish(nil); err != nil {
			t.Errorf("%q: Finish: %v", keys, err)
		}
		if got := s.onDisk().Outline.Blade; got != 140 {
			t.Errorf("%q: on the disk: %v", keys, got)
		}
	}
}

// TestDamaged: what another program made of the file is left as it is; ours goes
// beside it before 'saved' is said, or the program ends.
func TestDamaged(t *testing.T) {
	for name, damage := range map[string][]byte{"emptied": {}, "cut off": []byte("format = 1\n[sheath]\nmouth = \"f"), "noise": {0, 1, 2, 255}} {
		for _, how := range []string{"ctrl+s", "q", "q at once", "ended"} {
			s := filed(t, 120, 30, fresh())
			s.keys("1", "4", "0", "enter")
			if err := os.WriteFile(s.path, damage, 0o600); err != nil {
				t.Fatal(err)
			}
			switch how {
			case "ctrl+s", "q":
				s.wait(2 * time.Second)
				s.keys("down")
				s.shows("! the file was damaged by another program")
				s.keys(how)
			case "q at once":
				s.keys("q")
			}
			err := s.m.Finish(nil)
			if err == nil || !strings.Contains(err.Error(), " is in\n") {
				t.Errorf("%s, %s: Finish: %v", name, how, err)
			}
			if got, _ := os.ReadFile(s.path); string(got) != string(damage) {
				t.Errorf("%s, %s: what was there was written over", name, how)
			}
			mine, _ := filepath.Glob(filepath.Join(filepath.Dir(s.path), "knife (mine*"))
			if len(mine) != 1 || s.readFile(mine[0]).Outline.Blade != 140 {
				t.Errorf("%s, %s: beside it: %q", name, how, mine)
			}
		}
	}
}

// TestSomethingElseInItsPlace: a folder where the file was.
func TestSomethingElseInItsPlace(t *testing.T) {
	s := filed(t, 120, 30, fresh())
	s.remove()
	if err := os.Mkdir(s.path, 0o700); err != nil {
		t.Fatal(err)
	}
	s.wait(2 * time.Second)
	s.shows("! the file can't be read")
	if err := s.m.Finish(nil); err == nil || !strings.Contains(err.Error(), "your work is in") {
		t.Errorf("Finish: %v", err)
	}
}

// TestFaultInTheWriting: a change that can't be written takes no other one along.
func TestFaultInTheWriting(t *testing.T) {
	s := filed(t, 120, 30, fresh())
	s.keys("1", "4", "0", "enter")
	s.m.o.Encode = func(p project.Project) []byte {
		if p.Outline.Blade == 150 {
			panic("no way to write 150")
		}
		return file.Encode(p)
	}
	s.m.session.Doc().Commit("blade", func(p *project.Project) error { p.Outline.Blade = 141; return nil })
	s.m.session.Doc().Commit("blade", func(p *project.Project) error { p.Outline.Blade = 150; return nil })
	g := &guard.Guard{Inner: s.m}
	g.Update(g.Wrap(s.m.do(s.m.session.Save()))())
	if g.Crashed() == nil {
		t.Fatal("the fault was not noticed")
	}
	err := s.m.Finish(g.Crashed())
	if err == nil || !strings.Contains(err.Error(), "without the last changes, 1 of them; your work is in") {
		t.Fatalf("Finish: %v", err)
	}
	found := map[length.Length]bool{}
	files, _ := filepath.Glob(filepath.Join(filepath.Dir(s.path), "*.toml"))
	for _, f := range files {
		found[s.readFile(f).Outline.Blade] = true
	}
	if !found[140] || !found[141] {
		t.Errorf("in the files: %v", found)
	}
}

// TestTerminalGone: a copy that was changed and never kept goes on the shelf, which
// is made for it.
func TestTerminalGone(t *testing.T) {
	s := loose(t, 120, 30)
	s.m.session.Doc().Commit("leather", func(p *project.Project) error { p.Sheath.Leather = 4.5; return nil })
	err := s.m.Finish(nil)
	files, _ := filepath.Glob(filepath.Join(s.m.o.Shelf.Dir(), "*.toml"))
	if err == nil || len(files) != 1 || s.readFile(files[0]).Sheath.Leather != 4.5 {
		t.Errorf("Finish: %v; on the shelf: %q", err, files)
	}
}

// TestDividedRingsOnce: a second file of the same project announces nothing again.
func TestDividedRingsOnce(t *testing.T) {
	for _, key := range []string{"t", "y"} {
		p := fresh()
		p.Steps[1].Started = morning.Add(-90 * time.Minute)
		s := filed(t, 120, 30, p)
		s.m.o.Shelf = shelf.Open(disk, filepath.Dir(s.path))
		s.keys("f1")
		rung := s.voice.bells
		theirs := p.Clone()
		theirs.Outline.Blade = 99
		s.write(theirs)
		s.keys("1", "4", "0", "enter")
		s.shows("Changed on both sides")
		s.wait(5 * time.Second)
		s.keys(key)
		s.lacks("Changed on both sides")
		s.wait(3 * time.Minute)
		if s.voice.bells != rung {
			t.Errorf("%s: %d bells more", key, s.voice.bells-rung)
		}
		if n := strings.Count(strings.Join(s.m.running, ""), "DRY"); n != 1 {
			t.Errorf("%s: the hold is said %d times: %q", key, n, s.m.running)
		}
	}
}
