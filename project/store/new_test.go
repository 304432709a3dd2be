package store_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"chape/project/store"
	"chape/project/store/storetest"
)

var noon = time.Date(2026, 11, 25, 14, 3, 0, 0, time.UTC)

func TestSaveNew(t *testing.T) {
	for _, w := range without {
		path := filepath.Join(t.TempDir(), "a.toml")
		d := storetest.New()
		w.set(d)
		stamp, err := store.Save(d, path, fresh, store.Stamp{})
		if err != nil {
			t.Fatal(err)
		}
		info, err := os.Stat(path)
		if err != nil || info.Mode() != 0o600 {
			t.Errorf("%s: mode %v, %v, want 0600", w.name, info.Mode(), err)
		}
		if _, got, _ := store.Read(d, path); !got.Same(stamp) || len(litter(t, path)) > 0 {
			t.Errorf("%s: read %v, want %v; left %q", w.name, got, stamp, litter(t, path))
		}
	}
}

func TestSaveNewTaken(t *testing.T) {
	for _, w := range without {
		dir := t.TempDir()
		path := filepath.Join(dir, "a.toml")
		put(t, path, their)
		link := filepath.Join(dir, "link.toml")
		if err := os.Symlink("nowhere", link); err != nil {
			t.Fatal(err)
		}
		for _, name := range []string{path, link, dir} {
			d := storetest.New()
			w.set(d)
			_, err := store.SaveNew(d, name, fresh)
			var exists *store.ErrExists
			if !errors.As(err, &exists) || !errors.Is(err, fs.ErrExist) {
				t.Errorf("%s: SaveNew(%q): %v, want ErrExists", w.name, name, err)
			}
		}
		// Taken at the last moment.
		late := filepath.Join(dir, "late.toml")
		d := storetest.New()
		w.set(d)
		d.Before = func(_ int, call string) {
			if strings.HasPrefix(call, "sync ") {
				put(t, late, their)
			}
		}
		if _, err := store.SaveNew(d, late, fresh); !errors.Is(err, fs.ErrExist) {
			t.Errorf("%s: SaveNew of a name taken meanwhile: %v", w.name, err)
		}
		if get(t, path) != string(their) || get(t, late) != string(their) || len(litter(t, path)) != 2 {
			t.Errorf("%s: something was touched: %q", w.name, litter(t, path))
		}
	}
}

// TestSaveNewTogether: of many who want a name, one gets it.
func TestSaveNewTogether(t *testing.T) {
	for _, w := range without {
		path := filepath.Join(t.TempDir(), "a.toml")
		var wg sync.WaitGroup
		var won atomic.Int32
		for i := range 8 {
			wg.Go(func() {
				d := storetest.New()
				w.set(d)
				if _, err := store.SaveNew(d, path, []byte{byte(i)}); err == nil {
					won.Add(1)
				} else if !errors.Is(err, fs.ErrExist) {
					t.Error(err)
				}
			})
		}
		wg.Wait()
		if won.Load() != 1 || len(litter(t, path)) > 0 {
			t.Errorf("%s: %d got the name, want 1; left %q", w.name, won.Load(), litter(t, path))
		}
	}
}

func TestSaveBeside(t *testing.T) {
	path, _ := saved(t)
	long := filepath.Join(filepath.Dir(path), strings.Repeat("ä", 125)+".toml")
	for _, c := range []struct{ path, label, want string }{
		{path, "mine", "Kitchen Knife (mine 2026-11-25 14.03).toml"},
		{path, "mine", "Kitchen Knife (mine 2026-11-25 14.03, 2).toml"},
		{path, "mine", "Kitchen Knife (mine 2026-11-25 14.03, 3).toml"},
		{path, "a/b\n", "Kitchen Knife (a-b 2026-11-25 14.03).toml"},
		{long, "mine", strings.Repeat("ä", 85) + " (mine 2026-11-25 14.03).toml"},
	} {
		got, err := store.SaveBeside(storetest.New(), c.path, fresh, c.label, noon)
		if err != nil || filepath.Base(got) != c.want || get(t, got) != string(fresh) {
			t.Errorf("SaveBeside(%q, %q) = %q, %v, want %q", c.path, c.label, got, err, c.want)
		}
	}
	if get(t, path) != string(old) {
		t.Error("the file itself was touched")
	}
}

// TestLongNames: a name as long as the system allows has a backup as well.
func TestLongNames(t *testing.T) {
	for _, base := range []string{strings.Repeat("x", 255), strings.Repeat("€", 80) + ".toml"} {
		path := filepath.Join(t.TempDir(), base)
		stamp, err := store.SaveNew(storetest.New(), path, old)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := store.Save(storetest.New(), path, fresh, stamp); err != nil {
			t.Fatal(err)
		}
		checkSaved(t, path)
	}
}

func TestLock(t *testing.T) {
	path, _ := saved(t)
	link := filepath.Join(t.TempDir(), "link.toml")
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	fsys := store.OSLockingIn(t.TempDir())
	first, elsewhere := store.TakeLock(fsys, path)
	if elsewhere {
		t.Error("the first window is told of another")
	}
	second, elsewhere := store.TakeLock(fsys, link)
	if !elsewhere {
		t.Error("the second window is not told of the first")
	}
	second.Release()
	first.Release()
	first.Release()
	third, elsewhere := store.TakeLock(fsys, path)
	defer third.Release()
	if elsewhere {
		t.Error("a window is told of one that is closed")
	}
	if l := litter(t, path); len(l) > 0 {
		t.Errorf("left on the shelf: %q", l)
	}
	none, elsewhere := store.TakeLock(store.OSLockingIn(""), path)
	none.Release()
	if elsewhere {
		t.Error("without locks, another window is told of")
	}
}
