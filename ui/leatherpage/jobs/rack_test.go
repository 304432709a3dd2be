package jobs

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"chape/project/leather"
	"chape/project/store"
	"chape/ui/act"
)

// done runs the one command there is among values, and gives what it brings.
func done(t *testing.T, out []act.Msg) any {
	t.Helper()
	if len(out) != 1 {
		t.Fatalf("%d values, want one command", len(out))
	}
	do, ok := out[0].(act.Do)
	if !ok {
		t.Fatalf("%T is no command", out[0])
	}
	return do()
}

func add(name string) func(*leather.Stock) error {
	return func(s *leather.Stock) error { s.Pieces = append(s.Pieces, leather.New(name)); return nil }
}

// What is changed while a save is under way is saved after it; undo and redo are kept too.
func TestRackKeepsTheLast(t *testing.T) {
	file := &leather.File{FS: store.OS(), Path: filepath.Join(t.TempDir(), "leather.toml")}
	r := NewRack(file)
	r.Take(done(t, r.Look(nil)).(Read))
	out, err := r.Change(add("shoulder"))
	if err != nil {
		t.Fatal(err)
	}
	if more, err := r.Change(add("belly")); err != nil || len(more) != 0 {
		t.Fatalf("%v, %d values while a save is under way", err, len(more))
	}
	if out = r.Kept(done(t, out).(Kept)); len(out) != 1 {
		t.Fatal("the second change is not saved")
	}
	r.Kept(done(t, out).(Kept))
	has := func(names ...string) {
		t.Helper()
		s, err := file.Read()
		if err != nil || len(s.Pieces) != len(names) || len(r.Stock().Pieces) != len(names) {
			t.Fatalf("%v: %d on the disk, %d here, want %v", err, len(s.Pieces), len(r.Stock().Pieces), names)
		}
		for i, n := range names {
			if s.Pieces[i].Name != n {
				t.Errorf("%q on the disk, want %q", s.Pieces[i].Name, n)
			}
		}
	}
	has("shoulder", "belly")
	out, ok := r.Undo()
	if !ok {
		t.Fatal("nothing to undo")
	}
	r.Kept(done(t, out).(Kept))
	has("shoulder")
	if out, ok = r.Redo(); !ok {
		t.Fatal("nothing to redo")
	}
	r.Kept(done(t, out).(Kept))
	has("shoulder", "belly")
	if _, ok = r.Redo(); ok {
		t.Error("redone twice")
	}
}

// A file that can't be read is left as it is.
func TestRackLeavesWhatItCannotRead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "leather.toml")
	const bad = "gap = ["
	if err := os.WriteFile(path, []byte(bad), 0o600); err != nil {
		t.Fatal(err)
	}
	r := NewRack(&leather.File{FS: store.OS(), Path: path})
	if r.Take(done(t, r.Look(nil)).(Read)) {
		t.Error("taken on")
	}
	if !strings.HasPrefix(r.Wrong(), "the leather can't be read: ") {
		t.Errorf("said: %q", r.Wrong())
	}
	if out, err := r.Change(add("shoulder")); err == nil || len(out) != 0 {
		t.Errorf("changed: %v, %d values", err, len(out))
	}
	if now, _ := os.ReadFile(path); string(now) != bad {
		t.Errorf("on the disk: %q", now)
	}
}

// Before the leather has come from the disk nothing is put over it; what is changed while it
// is read once more stays.
func TestRackIsReadFirst(t *testing.T) {
	file := &leather.File{FS: store.OS(), Path: filepath.Join(t.TempDir(), "leather.toml")}
	s := leather.Empty()
	if err := file.Keep(s); err != nil {
		t.Fatal(err)
	}
	r := NewRack(file)
	read := done(t, r.Look(nil)).(Read)
	if out, err := r.Change(add("belly")); err == nil || len(out) > 0 || len(r.Stock().Pieces) != 0 {
		t.Fatalf("changed before it was read: %d values", len(out))
	}
	if !r.Take(read) {
		t.Fatal("not taken on")
	}
	read = done(t, r.Look(nil)).(Read)
	out, err := r.Change(add("shoulder"))
	if err != nil {
		t.Fatal(err)
	}
	if r.Take(read) || len(r.Stock().Pieces) != 1 {
		t.Error("what was read before the change takes its place")
	}
	r.Kept(done(t, out).(Kept))
	if read = done(t, r.Look(nil)).(Read); !r.Take(read) || len(r.Stock().Pieces) != 1 {
		t.Error("what was kept is not read")
	}
}
