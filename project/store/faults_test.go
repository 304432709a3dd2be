package store_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"chape/project/store"
	"chape/project/store/storetest"
)

// callsMax ends a loop over the calls of a save; one makes far fewer.
const callsMax = 200

// callsMin is fewer than any save makes: a loop that ends before tests nothing.
const callsMin = 8

func atLeast(t *testing.T, n int) {
	t.Helper()
	if n <= callsMin {
		t.Fatalf("only %d calls", n-1)
	}
}

// whole fails unless the file holds the old or the new version.
func whole(t *testing.T, path string) {
	t.Helper()
	if g := get(t, path); g != string(old) && g != string(fresh) {
		t.Fatalf("file holds %q, want all of the old or all of the new", g)
	}
}

func TestEachCallFails(t *testing.T) {
	for _, w := range without {
		t.Run(w.name, func(t *testing.T) {
			for n := 1; ; n++ {
				path, stamp := saved(t)
				d := storetest.New()
				w.set(d)
				d.FailAt = n
				next, err := store.Save(d, path, fresh, stamp)
				if len(d.Calls()) < n {
					atLeast(t, n)
					break // a save without a fault
				}
				call := d.Calls()[n-1]
				whole(t, path)
				if err == nil && get(t, path) != string(fresh) {
					t.Fatalf("%s failing: called saved, but holds %q", call, get(t, path))
				}
				if b := get(t, store.BackupName(path)); b != string(old) && b != string(older) {
					t.Fatalf("%s failing: backup holds %q", call, b)
				}
				if !holdsAnywhere(t, filepath.Dir(path), old) {
					t.Fatalf("%s failing: the old version is gone", call)
				}
				if err != nil && strings.Count(err.Error(), "\n") > 0 {
					t.Errorf("%s failing: more than a line: %q", call, err)
				}
				if _, err = store.Save(storetest.New(), path, fresh, next); err != nil {
					t.Fatalf("%s failing, then saving again: %v", call, err)
				}
				checkSaved(t, path)
				if t.Failed() || n > callsMax {
					t.Fatalf("call %d, %s", n, call)
				}
			}
		})
	}
}

func TestCrashAtEachCall(t *testing.T) {
	for _, w := range without {
		t.Run(w.name, func(t *testing.T) {
			for n := 1; ; n++ {
				path, stamp := saved(t)
				d := storetest.New()
				w.set(d)
				d.CrashAt = n
				_, err := store.Save(d, path, fresh, stamp)
				if !d.Crashed() {
					atLeast(t, n)
					break
				}
				call := d.Calls()[n-1]
				whole(t, path)
				if err == nil && get(t, path) != string(fresh) {
					t.Fatalf("crash at %s: called saved, but holds %q", call, get(t, path))
				}
				if !holdsAnywhere(t, filepath.Dir(path), old) {
					t.Fatalf("crash at %s: the old version is gone", call)
				}
				// A new start: reads, and saves something else.
				again := storetest.New()
				data, now, err := store.Read(again, path)
				if err != nil {
					t.Fatal(err)
				}
				if _, err = store.Save(again, path, their, now); err != nil {
					t.Fatalf("crash at %s, then saving: %v", call, err)
				}
				if b := get(t, store.BackupName(path)); b != string(data) {
					t.Fatalf("crash at %s, then saving: backup holds %q, want %q", call, b, data)
				}
				if l := litter(t, path); len(l) > 0 {
					t.Fatalf("crash at %s, then saving: left %q", call, l)
				}
				if n > callsMax {
					t.Fatal("no end of calls")
				}
			}
		})
	}
}

func TestEachCallOfSaveNewFails(t *testing.T) {
	for _, w := range without {
		t.Run(w.name, func(t *testing.T) {
			for n := 1; ; n++ {
				path := filepath.Join(t.TempDir(), "a.toml")
				d := storetest.New()
				w.set(d)
				d.FailAt = n
				next, err := store.SaveNew(d, path, fresh)
				if len(d.Calls()) < n {
					atLeast(t, n)
					break
				}
				call := d.Calls()[n-1]
				if g := get(t, path); g != "" && g != string(fresh) || err == nil && g == "" {
					t.Fatalf("%s failing: %v, file holds %q", call, err, g)
				}
				if _, err := os.Lstat(path); err == nil && next.IsZero() {
					t.Fatalf("%s failing: a file is there without its Stamp", call)
				}
				if _, err := store.Save(storetest.New(), path, fresh, next); err != nil {
					t.Fatalf("%s failing, then saving again: %v", call, err)
				}
				if l := litter(t, path); get(t, path) != string(fresh) || len(l) > 0 {
					t.Fatalf("%s failing, then saving again: file holds %q, left %q", call, get(t, path), l)
				}
				if n > callsMax {
					t.Fatal("no end of calls")
				}
			}
		})
	}
}

func TestFullDisk(t *testing.T) {
	for _, w := range without {
		for room := 0; room <= len(fresh)+len(old); room += 5 {
			path, stamp := saved(t)
			d := storetest.New()
			w.set(d)
			d.Limited, d.Room = true, room
			next, err := store.Save(d, path, fresh, stamp)
			if err == nil {
				checkSaved(t, path)
				continue
			}
			if !errors.Is(err, syscall.ENOSPC) || !strings.Contains(err.Error(), "the disk is full: free some space") {
				t.Errorf("%s, room for %d: %v", w.name, room, err)
			}
			if l := litter(t, path); get(t, path) != string(old) || len(l) > 0 {
				t.Errorf("%s, room for %d: file holds %q, left %q", w.name, room, get(t, path), l)
			}
			if _, err := store.Save(storetest.New(), path, fresh, next); err != nil {
				t.Fatal(err)
			}
			checkSaved(t, path)
		}
	}
}

// TestLostAnswer: the exchange is done, but said to have failed.
func TestLostAnswer(t *testing.T) {
	path, stamp := saved(t)
	d := storetest.New()
	d.Under = lostAnswer{d.Under}
	next, err := store.Save(d, path, fresh, stamp)
	if !errors.Is(err, syscall.EIO) || !holdsAnywhere(t, filepath.Dir(path), old) {
		t.Fatalf("Save: %v, left %q", err, litter(t, path))
	}
	if _, err := store.Save(storetest.New(), path, fresh, next); err != nil {
		t.Fatal(err)
	}
	checkSaved(t, path)
}

// TestFolderSyncFails: nothing is called saved before its name is on the disk,
// however often it is tried.
func TestFolderSyncFails(t *testing.T) {
	path, stamp := saved(t)
	d := storetest.New()
	d.FailOn = "syncdir"
	for try := range 3 {
		var err error
		if stamp, err = store.Save(d, path, fresh, stamp); !errors.Is(err, storetest.ErrFault) {
			t.Fatalf("try %d: %v, want the fault of the sync", try, err)
		}
	}
	if _, err := store.SaveNew(d, path+".toml", fresh); !errors.Is(err, storetest.ErrFault) {
		t.Errorf("SaveNew: %v, want the fault of the sync", err)
	}
	if err := os.Remove(path + ".toml"); err != nil {
		t.Fatal(err)
	}
	if _, err := store.Save(storetest.New(), path, fresh, stamp); err != nil {
		t.Fatal(err)
	}
	checkSaved(t, path)
}

func TestReadOnlyFolder(t *testing.T) {
	for _, c := range []struct {
		err  error
		want string
	}{
		{syscall.EACCES, "no permission in the folder"},
		{syscall.EROFS, "the disk is read-only: save in another folder"},
	} {
		path, stamp := saved(t)
		d := storetest.New()
		d.FailOn, d.Err = "create", c.err
		if _, err := store.Save(d, path, fresh, stamp); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("Save: %v, want %q", err, c.want)
		}
		if get(t, path) != string(old) {
			t.Errorf("file holds %q", get(t, path))
		}
		other := t.TempDir()
		d.FailOn = ""
		d.Under = closed{d.Under, filepath.Dir(path), c.err}
		at := time.Date(2026, 11, 25, 14, 3, 0, 0, time.UTC)
		name, err := store.Rescue(d, path, fresh, "mine", at, other)
		want := filepath.Join(other, "Kitchen Knife (mine 2026-11-25 14.03).toml")
		if err != nil || name != want || get(t, name) != string(fresh) {
			t.Errorf("Rescue: %q, %v, want %q", name, err, want)
		}
	}
}
