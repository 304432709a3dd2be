package store_test

import (
	"bytes"
	"errors"
	"io/fs"
	"net"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"chape/project/store"
	"chape/project/store/storetest"
)

func TestReadRefuses(t *testing.T) {
	dir := t.TempDir()
	large := filepath.Join(dir, "large.toml")
	put(t, large, bytes.Repeat([]byte("x"), store.MaxSize+1))
	for _, c := range []struct{ path, want string }{
		{dir, "it is a folder"},
		{large, "it is over 1024 KiB"},
		{os.DevNull, "it is a device"},
		{filepath.Join(dir, "none.toml"), "there is no such file"},
		{filepath.Join(dir, "new\nline\x1b[31m.toml"), `new\nline\x1b[31m.toml" can't be read`},
	} {
		data, stamp, err := store.Read(storetest.New(), c.path)
		if err == nil || !strings.Contains(err.Error(), c.want) || data != nil || !stamp.IsZero() {
			t.Errorf("Read(%q): %d bytes, %v, %v, want %q", c.path, len(data), stamp, err, c.want)
			continue
		}
		if strings.ContainsAny(err.Error(), "\n\x1b") {
			t.Errorf("Read(%q): the error is not one clean line: %q", c.path, err)
		}
	}
	if _, _, err := store.Read(storetest.New(), filepath.Join(dir, "none.toml")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("Read of no file: %v, want fs.ErrNotExist", err)
	}
}

func TestReadRefusesSocket(t *testing.T) {
	// The name of a socket is short by nature: no t.TempDir.
	dir, err := os.MkdirTemp("", "s")
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(dir)
	path := filepath.Join(dir, "s")
	l, err := net.Listen("unix", path)
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if _, _, err := store.Read(storetest.New(), path); err == nil || !strings.Contains(err.Error(), "a socket") {
		t.Errorf("Read of a socket: %v", err)
	}
}

func TestReadLimit(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.toml")
	want := bytes.Repeat([]byte("x"), store.MaxSize)
	put(t, path, want)
	got, stamp, err := store.Read(storetest.New(), path)
	if err != nil || !bytes.Equal(got, want) || stamp.Size != store.MaxSize {
		t.Errorf("Read of the largest file: %d bytes, %v", len(got), err)
	}
	if _, err := store.Save(storetest.New(), path, append(want, 'x'), stamp); err == nil ||
		!strings.Contains(err.Error(), "shorten its notes") {
		t.Errorf("Save of too much: %v", err)
	}
}

// TestReadGrowing: a file that grows while it is read stays within bounds.
func TestReadGrowing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.toml")
	put(t, path, old)
	d := storetest.New()
	d.Before = func(_ int, call string) {
		if strings.HasPrefix(call, "read ") {
			put(t, path, bytes.Repeat([]byte("x"), 3*store.MaxSize))
		}
	}
	if data, _, err := store.Read(d, path); err == nil || data != nil {
		t.Errorf("Read of a growing file: %d bytes, %v", len(data), err)
	}
}

func TestChanged(t *testing.T) {
	path, stamp := saved(t)
	d := storetest.New()
	check := func(what string, want bool, wantData []byte) {
		t.Helper()
		changed, now, err := store.Changed(d, path, stamp)
		if err != nil || changed != want {
			t.Errorf("%s: changed %v, %v, want %v", what, changed, err, want)
		}
		if now.IsZero() != (wantData == nil) || now.Size != int64(len(wantData)) {
			t.Errorf("%s: now %v, want %q", what, now, wantData)
		}
		stamp = now
	}
	check("nothing done", false, old)

	// The same size and time within the clock's grain: only the bytes tell.
	same := bytes.ToUpper(old)
	put(t, path, same)
	if err := os.Chtimes(path, stamp.ModTime, stamp.ModTime); err != nil {
		t.Fatal(err)
	}
	check("same size and time", true, same)

	d.Sleep(time.Minute)
	check("a minute later", false, same)
	before := len(d.Calls())
	check("settled", false, same)
	if calls := d.Calls()[before:]; len(calls) != 1 {
		t.Errorf("a settled file is asked for with %q, want one stat", calls)
	}

	later := time.Now().Add(time.Second)
	if err := os.Chtimes(path, later, later); err != nil {
		t.Fatal(err)
	}
	check("touched", false, same)
	put(t, path, their)
	check("written", true, their)
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	check("gone", true, nil)
	check("still gone", false, nil)
	put(t, path, old)
	check("back", true, old)
}
