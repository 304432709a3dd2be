package store_test

import (
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"chape/project/store"
	"chape/project/store/storetest"
)

// leftoverName is a hidden name as a killed process leaves it.
func leftoverName(path string, made time.Time, ours, expect []byte) string {
	return filepath.Join(filepath.Dir(path), fmt.Sprintf(".%s.0123456789ab-1-%x-%s-%s.hold",
		filepath.Base(path), made.Unix(), sum(ours), sum(expect)))
}

func sum(data []byte) string {
	s := sha256.Sum256(data)
	return fmt.Sprintf("%x", s[:8])
}

func TestLeftovers(t *testing.T) {
	aged, young := time.Now().Add(-48*time.Hour), time.Now().Add(-time.Hour)
	for _, c := range []struct {
		what       string
		name       func(path string) string
		data       []byte
		age        time.Time
		keep       bool // under its name
		wantBackup []byte
		found      bool // under a name people see
	}{
		{"half a file", freshName, []byte("tit"), aged, false, older, false},
		{"half a file, perhaps still being written", freshName, []byte("tit"), young, true, older, false},
		{"never called saved", holdName(aged, fresh, old), fresh, aged, false, older, false},
		{"perhaps under way", holdName(young, fresh, old), fresh, aged, true, older, false},
		{"the version before, newer than the backup", holdName(aged, old, fresh), fresh, time.Now().Add(time.Hour), false, fresh, false},
		{"the version before, older than the backup", holdName(aged, old, fresh), fresh, aged, false, older, false},
		{"what the file holds", holdName(aged, fresh, old), old, aged, false, older, false},
		{"theirs", holdName(aged, fresh, old), their, aged, false, older, true},
	} {
		path, stamp := saved(t)
		name := c.name(path)
		put(t, name, c.data)
		if err := os.Chtimes(name, c.age, c.age); err != nil {
			t.Fatal(err)
		}
		// Saving what is there only cleans up.
		if _, err := store.Save(storetest.New(), path, old, stamp); err != nil {
			t.Fatal(err)
		}
		left := litter(t, path)
		if got := slices.Contains(left, filepath.Base(name)); got != c.keep {
			t.Errorf("%s: kept %v, want %v", c.what, got, c.keep)
		}
		if got := get(t, store.BackupName(path)); got != string(c.wantBackup) {
			t.Errorf("%s: backup holds %q, want %q", c.what, got, c.wantBackup)
		}
		if c.found != (len(left) == 1 && !c.keep && get(t, filepath.Join(filepath.Dir(path), left[0])) == string(their)) {
			t.Errorf("%s: beside the file: %q", c.what, left)
		}
	}
}

func freshName(path string) string {
	return filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".0123456789ab-7.new")
}

func holdName(made time.Time, ours, expect []byte) func(path string) string {
	return func(path string) string { return leftoverName(path, made, ours, expect) }
}

// TestNotOurs: names that only look like those of this package stay.
func TestNotOurs(t *testing.T) {
	path, stamp := saved(t)
	dir, base := filepath.Split(path)
	link := dir + "." + base + ".0123456789ab-9.new"
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	names := []string{
		link,
		dir + base + ".0123456789ab-1.new",
		dir + "." + base + ".0123456789ab-1.new.toml",
		dir + "." + base + ".0123456789AB-1.new",
		dir + "." + base + ".tmp",
		dir + "." + base + "x.0123456789ab-1.new",
		dir + "." + base + ".0123456789ab-1-zz-00.hold",
	}
	aged := time.Now().Add(-1000 * time.Hour)
	for _, name := range names[1:] {
		put(t, name, their)
		if err := os.Chtimes(name, aged, aged); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := store.Save(storetest.New(), path, fresh, stamp); err != nil {
		t.Fatal(err)
	}
	if l := litter(t, path); len(l) != len(names) {
		t.Errorf("of %q stayed %q", names, l)
	}
}
