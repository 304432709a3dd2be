package store_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"chape/project/store"
	"chape/project/store/storetest"
)

var (
	older = []byte("title = \"first\"\n")
	old   = []byte("title = \"second, before the save\"\n")
	fresh = []byte("title = \"third, what the save brings\"\n")
	their = []byte("title = \"what another program wrote\"\n")
)

// put makes a file as another program would.
func put(t testing.TB, name string, data []byte) {
	t.Helper()
	if err := os.WriteFile(name, data, 0o600); err != nil {
		t.Fatal(err)
	}
}

// get reads a file; one that is not there is "".
func get(t testing.TB, name string) string {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		t.Fatal(err)
	}
	return string(data)
}

// saved makes a folder with a file that was saved twice: it holds old, its
// backup older.
func saved(t testing.TB) (path string, stamp store.Stamp) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "Kitchen Knife.toml")
	d := storetest.New()
	stamp, err := store.SaveNew(d, path, older)
	if err != nil {
		t.Fatal(err)
	}
	if stamp, err = store.Save(d, path, old, stamp); err != nil {
		t.Fatal(err)
	}
	return path, stamp
}

// litter names all in a folder but the file and its backup.
func litter(t testing.TB, path string) (names []string) {
	t.Helper()
	entries, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if name := filepath.Join(filepath.Dir(path), e.Name()); name != path && name != store.BackupName(path) {
			names = append(names, e.Name())
		}
	}
	return names
}

// holdsAnywhere reports that some file of the folder holds just data.
func holdsAnywhere(t testing.TB, dir string, data []byte) bool {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if get(t, filepath.Join(dir, e.Name())) == string(data) {
			return true
		}
	}
	return false
}

// checkSaved looks for the state after a save of fresh over old.
func checkSaved(t testing.TB, path string) {
	t.Helper()
	if got := get(t, path); got != string(fresh) {
		t.Errorf("file holds %q, want %q", got, fresh)
	}
	if got := get(t, store.BackupName(path)); got != string(old) {
		t.Errorf("backup holds %q, want %q", got, old)
	}
	if l := litter(t, path); len(l) > 0 {
		t.Errorf("left beside it: %q", l)
	}
}

// without lists the kinds of file system a save has to do with.
var without = []struct {
	name string
	set  func(*storetest.Disk)
}{
	{"all", func(d *storetest.Disk) {}},
	{"no swap", func(d *storetest.Disk) { d.NoSwap, d.NoRenameNew = true, true }},
	{"no swap, no link", func(d *storetest.Disk) { d.NoSwap, d.NoRenameNew, d.NoLink = true, true, true }},
}

func TestSaveKeepsBackup(t *testing.T) {
	for _, w := range without {
		t.Run(w.name, func(t *testing.T) {
			path, stamp := saved(t)
			d := storetest.New()
			w.set(d)
			got, err := store.Save(d, path, fresh, stamp)
			if err != nil {
				t.Fatal(err)
			}
			checkSaved(t, path)
			_, want, err := store.Read(d, path)
			if err != nil || !got.Same(want) || !got.ModTime.Equal(want.ModTime) {
				t.Errorf("Save gives %v, Read %v, %v", got, want, err)
			}
		})
	}
}

// TestSaveOrder checks what no crash of a program can show, only one of the
// machine: bytes are synced before they get their name, names after.
func TestSaveOrder(t *testing.T) {
	for _, w := range without {
		path, stamp := saved(t)
		d := storetest.New()
		w.set(d)
		if _, err := store.Save(d, path, fresh, stamp); err != nil {
			t.Fatal(err)
		}
		last := map[string]int{}
		for i, c := range d.Calls() {
			kind, _, _ := strings.Cut(c, " ")
			if kind == "rename" && !strings.HasSuffix(c, " "+filepath.Base(path)) {
				continue // of hidden names
			}
			last[kind] = i
		}
		in := max(last["swap"], last["rename"])
		if !(last["write"] < last["sync"] && last["sync"] < in && in < last["syncdir"]) {
			t.Errorf("%s: want write, sync, swap or rename, syncdir in this order, got %q", w.name, d.Calls())
		}
	}
}

func TestSaveSameBytes(t *testing.T) {
	path, stamp := saved(t)
	d := storetest.New()
	if _, err := store.Save(d, path, old, stamp); err != nil {
		t.Fatal(err)
	}
	if got := get(t, store.BackupName(path)); got != string(older) {
		t.Errorf("backup holds %q after saving what was there, want still %q", got, older)
	}
}

func TestSaveChanged(t *testing.T) {
	for _, w := range without {
		path, stamp := saved(t)
		put(t, path, their)
		d := storetest.New()
		w.set(d)
		got, err := store.Save(d, path, fresh, stamp)
		var changed *store.ErrChanged
		if !errors.As(err, &changed) {
			t.Fatalf("Save over a changed file: %v, want ErrChanged", err)
		}
		if _, now, _ := store.Read(d, path); !changed.Now.Same(now) {
			t.Errorf("ErrChanged.Now is %v, want %v", changed.Now, now)
		}
		if got != stamp {
			t.Errorf("Stamp %v, want the one given", got)
		}
		if g := get(t, path); g != string(their) {
			t.Errorf("file holds %q, want theirs", g)
		}
		for _, c := range d.Calls() {
			if kind, _, _ := strings.Cut(c, " "); kind == "create" || kind == "swap" {
				t.Errorf("%s: %q for a file known to be changed", w.name, c)
			}
		}
		if l := litter(t, path); len(l) > 0 {
			t.Errorf("left beside it: %q", l)
		}
	}
}

func TestSaveGone(t *testing.T) {
	path, stamp := saved(t)
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	_, err := store.Save(storetest.New(), path, fresh, stamp)
	var changed *store.ErrChanged
	if !errors.As(err, &changed) || !changed.Now.IsZero() {
		t.Errorf("Save of a file that is gone: %v, want ErrChanged without a Stamp", err)
	}
	if err := os.RemoveAll(filepath.Dir(path)); err != nil {
		t.Fatal(err)
	}
	_, err = store.Save(storetest.New(), path, fresh, stamp)
	if err == nil || !strings.Contains(err.Error(), "the folder") || !strings.Contains(err.Error(), "is gone") {
		t.Errorf("Save into a folder that is gone: %v", err)
	}
}

func TestSaveKeepsMode(t *testing.T) {
	for _, mode := range []fs.FileMode{0o600, 0o640, 0o664} {
		path, stamp := saved(t)
		if err := os.Chmod(path, mode); err != nil {
			t.Fatal(err)
		}
		if _, err := store.Save(storetest.New(), path, fresh, stamp); err != nil {
			t.Fatal(err)
		}
		info, err := os.Stat(path)
		if err != nil || info.Mode() != mode {
			t.Errorf("mode %v, want %v", info.Mode(), mode)
		}
	}
}

func TestSaveThroughLink(t *testing.T) {
	path, stamp := saved(t)
	link := filepath.Join(t.TempDir(), "link.toml")
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	if _, err := store.Save(storetest.New(), link, fresh, stamp); err != nil {
		t.Fatal(err)
	}
	checkSaved(t, path)
	if to, err := os.Readlink(link); err != nil || to != path {
		t.Errorf("the link is %q, %v, want still %q", to, err, path)
	}
	if l := litter(t, link); len(l) > 0 {
		t.Errorf("left beside the link: %q", l)
	}
}

func TestSaveReadOnly(t *testing.T) {
	path, stamp := saved(t)
	if err := os.Chmod(path, 0o444); err != nil {
		t.Fatal(err)
	}
	_, err := store.Save(storetest.New(), path, fresh, stamp)
	if err == nil || !strings.Contains(err.Error(), "the file is read-only: allow writing") {
		t.Errorf("Save over a read-only file: %v", err)
	}
	if g := get(t, path); g != string(old) {
		t.Errorf("file holds %q, want the old", g)
	}
}

func TestBusy(t *testing.T) {
	for _, c := range []struct {
		name  string
		times int
		ok    bool
	}{{"for a while", 5, true}, {"for good", 1 << 30, false}} {
		path, stamp := saved(t)
		d := storetest.New()
		d.Under = &held{FS: d.Under, times: c.times}
		d.NoSwap = true
		_, err := store.Save(d, path, fresh, stamp)
		if (err == nil) != c.ok {
			t.Errorf("%s: %v", c.name, err)
		}
		if c.ok {
			checkSaved(t, path)
			continue
		}
		if !strings.Contains(err.Error(), "another program holds it: close it there") {
			t.Errorf("%s: %v", c.name, err)
		}
		if s := d.Slept(); s < 2*time.Second || s > 3*time.Second {
			t.Errorf("waited %v, want 2 s", s)
		}
		if l := litter(t, path); get(t, path) != string(old) || len(l) > 0 {
			t.Errorf("file holds %q, left %q", get(t, path), l)
		}
	}
}

// held is a file system where another program holds the project file.
type held struct {
	store.FS
	times int
}

func (h *held) Rename(from, to string) error {
	if strings.HasSuffix(to, "Knife.toml") && h.times > 0 {
		h.times--
		return store.ErrBusy
	}
	return h.FS.Rename(from, to)
}

// What may be written is asked before sheets are printed that have to be noted: the answer
// must be that of the save, also for whoever may write to anything.
func TestCanWriteIsWhatASaveSays(t *testing.T) {
	path, _ := saved(t)
	if err := store.OS().CanWrite(path); err != nil {
		t.Errorf("a file of one's own: %v", err)
	}
	if err := os.Chmod(path, 0o444); err != nil {
		t.Fatal(err)
	}
	if err := store.OS().CanWrite(path); !errors.Is(err, fs.ErrPermission) {
		t.Errorf("a read-only file: %v", err)
	}
}
