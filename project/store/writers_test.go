package store_test

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"chape/project/store"
	"chape/project/store/storetest"
)

// otherWriter writes to a file without asking, in one of three ways.
type otherWriter struct {
	t    *testing.T
	path string
	way  string
	open *os.File // for "held open": opened before the save
}

var ways = []string{"replace", "in place", "held open"}

func newOtherWriter(t *testing.T, path, way string) *otherWriter {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return &otherWriter{t: t, path: path, way: way, open: f}
}

func (o *otherWriter) write(data []byte) {
	o.t.Helper()
	var err error
	switch o.way {
	case "replace":
		tmp := o.path + ".theirs"
		put(o.t, tmp, data)
		err = os.Rename(tmp, o.path)
	case "in place":
		put(o.t, o.path, data)
	case "held open":
		if err = o.open.Truncate(0); err == nil {
			_, err = o.open.WriteAt(data, 0)
		}
	}
	if err != nil {
		o.t.Fatal(err)
	}
}

// disturbed is how a save ended while another program wrote before a call.
type disturbed struct {
	path, call string // call is "" if the save made fewer
	late       bool   // the call came after the save's last look at the file
	err        error
}

// saveDisturbed saves while another program writes before call n.
func saveDisturbed(t *testing.T, set func(*storetest.Disk), way string, n int) (r disturbed) {
	path, stamp := saved(t)
	other := newOtherWriter(t, path, way)
	d := storetest.New()
	set(d)
	d.Before = func(i int, c string) {
		if i == n {
			r.call = c
			other.write(their)
		}
	}
	_, r.err = store.Save(d, path, fresh, stamp)
	look := 0
	for i, c := range d.Calls() {
		if c == "open "+filepath.Base(path) {
			look = i + 1
		}
	}
	r.path, r.late = path, n > look
	return r
}

func TestOtherWriterAtEachCall(t *testing.T) {
	for _, w := range without[:1] {
		for _, way := range ways {
			t.Run(w.name+"/"+way, func(t *testing.T) {
				for n := 1; ; n++ {
					r := saveDisturbed(t, w.set, way, n)
					if r.call == "" {
						atLeast(t, n)
						break
					}
					checkBothKept(t, r)
				}
			})
		}
	}
}

// TestOtherWriterWithoutSwap shows what can be lost where names can't be
// exchanged: what comes in right before the one rename into place, and, where
// a file can't have two names either, what a program writes into the file it
// had opened before.
func TestOtherWriterWithoutSwap(t *testing.T) {
	for _, w := range without[1:] {
		for _, way := range ways {
			t.Run(w.name+"/"+way, func(t *testing.T) {
				linked := w.name == "no swap"
				after := false
				for n := 1; ; n++ {
					r := saveDisturbed(t, w.set, way, n)
					if r.call == "" {
						atLeast(t, n)
						break
					}
					into := strings.HasPrefix(r.call, "rename ") && strings.HasSuffix(r.call, ".new "+filepath.Base(r.path))
					after = after || into
					mayLose := into && (way == "replace" || !linked) || after && way == "held open" && !linked
					if mayLose && !holdsAnywhere(t, filepath.Dir(r.path), their) {
						checkSaved(t, r.path)
						continue
					}
					checkBothKept(t, r)
				}
				if !after {
					t.Error("no rename into place seen")
				}
			})
		}
	}
}

// checkBothKept: theirs is where people look, or was written into the backup
// by a program that had it open; ours is there or the save was refused.
func checkBothKept(t *testing.T, r disturbed) {
	t.Helper()
	var changed *store.ErrChanged
	got := get(t, r.path)
	switch {
	case r.err == nil && got == string(fresh):
		if b := get(t, store.BackupName(r.path)); b != string(their) {
			t.Fatalf("their write before %q: called saved, and theirs is not in the backup: %q", r.call, b)
		}
	case r.err == nil && got == string(their):
		// Written over ours after the last look: the next poll sees it.
		if !r.late {
			t.Fatalf("their write before %q was not noticed", r.call)
		}
	case !errors.As(r.err, &changed):
		t.Fatalf("their write before %q: %v, file holds %q, want ErrChanged", r.call, r.err, got)
	case got != string(their):
		t.Fatalf("their write before %q: file holds %q, want theirs", r.call, got)
	}
	if l := litter(t, r.path); len(l) > 0 {
		t.Fatalf("their write before %q: left %q", r.call, l)
	}
}

// TestWrittenOver: what others put over a version just saved is noticed before
// the save is called good.
func TestWrittenOver(t *testing.T) {
	for _, w := range without {
		path, stamp := saved(t)
		d := storetest.New()
		w.set(d)
		d.Before = func(_ int, call string) {
			if strings.HasSuffix(call, ".before") && strings.HasPrefix(call, "rename ") {
				newOtherWriter(t, path, "replace").write(their)
			}
		}
		_, err := store.Save(d, path, fresh, stamp)
		var changed *store.ErrChanged
		if !errors.As(err, &changed) || get(t, path) != string(their) {
			t.Errorf("%s: %v, file holds %q, want ErrChanged and theirs", w.name, err, get(t, path))
		}
	}
}

// TestTwoOtherWrites: two versions of others come in at any two calls. Each is
// still somewhere, unless its own author wrote over it.
func TestTwoOtherWrites(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	kept := 0
	for range 200 {
		path, stamp := saved(t)
		other := newOtherWriter(t, path, "replace")
		first := 5 + rng.IntN(40)
		second := first + 1 + rng.IntN(15)
		var alive [][]byte
		d := storetest.New()
		d.Before = func(i int, c string) {
			if i != first && i != second {
				return
			}
			if len(alive) == 1 && get(t, path) == string(alive[0]) {
				alive = nil
			}
			version := []byte(fmt.Sprintf("theirs %d", i))
			other.write(version)
			alive = append(alive, version)
		}
		_, err := store.Save(d, path, fresh, stamp)
		for _, v := range alive {
			if !holdsAnywhere(t, filepath.Dir(path), v) {
				t.Fatalf("writes before calls %d and %d of %q: %q is gone", first, second, d.Calls(), v)
			}
		}
		var changed *store.ErrChanged
		if errors.As(err, &changed) && changed.Kept != "" {
			kept++
			if !strings.Contains(changed.Kept, "(found ") || get(t, changed.Kept) == "" {
				t.Errorf("the third version is in %q", changed.Kept)
			}
		}
	}
	if kept == 0 {
		t.Error("no run had three versions at once")
	}
}

func TestTwoWriters(t *testing.T) {
	locks := t.TempDir()
	for _, c := range []struct {
		name string
		disk func() store.FS
	}{
		{"locks and swap", func() store.FS { return store.OSLockingIn(locks) }},
		{"no locks", func() store.FS { return store.OSLockingIn("") }},
		{"no swap", func() store.FS {
			real := store.OSLockingIn(locks)
			return waiting{&storetest.Disk{Under: real, NoSwap: true}, real}
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "a.toml")
			if _, err := store.SaveNew(c.disk(), path, []byte("start\n")); err != nil {
				t.Fatal(err)
			}
			var wg sync.WaitGroup
			said := make([][]string, 3)
			for w := range said {
				wg.Go(func() { said[w] = addLines(t, c.disk(), path, w, 15) })
			}
			wg.Wait()
			all := visible(t, path)
			for _, lines := range said {
				for _, line := range lines {
					if !strings.Contains(all, line) {
						t.Errorf("%q was called saved and is gone", line)
					}
				}
			}
			if !strings.Contains(all, "start") {
				t.Error("the start is gone")
			}
		})
	}
}

// waiting is a disk that waits by the real clock: on the disk's own, which no
// wait costs anything, a save would at once have waited long enough for another's lock.
type waiting struct {
	*storetest.Disk
	real store.FS
}

func (w waiting) Now() time.Time        { return w.real.Now() }
func (w waiting) Sleep(d time.Duration) { w.real.Sleep(d) }

// addLines adds n lines to a file that others write as well, reading again at
// each conflict. It gives the lines that were called saved.
func addLines(t *testing.T, fsys store.FS, path string, writer, n int) (lines []string) {
	for i := range n {
		line := fmt.Sprintf("writer %d line %d.\n", writer, i)
		for {
			data, stamp, err := store.Read(fsys, path)
			if err != nil {
				t.Error(err)
				return lines
			}
			_, err = store.Save(fsys, path, append(data, line...), stamp)
			var changed *store.ErrChanged
			if err == nil {
				break
			}
			if !errors.As(err, &changed) {
				t.Error(err)
				return lines
			}
		}
		lines = append(lines, line)
	}
	return lines
}

// visible joins what is in the files of a folder that are not hidden.
func visible(t *testing.T, path string) string {
	var b strings.Builder
	b.WriteString(get(t, path))
	for _, name := range litter(t, path) {
		if !strings.HasPrefix(name, ".") {
			b.WriteString(get(t, filepath.Join(filepath.Dir(path), name)))
		}
	}
	return b.String()
}
