//go:build unix

package store_test

import (
	"io/fs"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"chape/project/store"
	"chape/project/store/storetest"
)

func TestReadRefusesPipe(t *testing.T) {
	path := filepath.Join(t.TempDir(), "pipe.toml")
	if err := syscall.Mkfifo(path, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, _, err := store.Read(storetest.New(), path); err == nil || !strings.Contains(err.Error(), "a named pipe") {
		t.Errorf("Read of a pipe: %v", err)
	}
	// Put there after the first look, it is still not waited for.
	file, stamp := saved(t)
	info, err := storetest.New().Stat(file)
	if err != nil {
		t.Fatal(err)
	}
	d := storetest.New()
	d.Under = looksLike{d.Under, info}
	if _, _, err := store.Read(d, path); err == nil || !strings.Contains(err.Error(), "a named pipe") {
		t.Errorf("Read of a pipe that was a file: %v", err)
	}
	if _, err := store.Save(storetest.New(), path, fresh, stamp); err == nil || !strings.Contains(err.Error(), "a named pipe") {
		t.Errorf("Save to a pipe: %v", err)
	}
}

// looksLike is a file system where every name looks like one file, until it is
// opened.
type looksLike struct {
	store.FS
	info fs.FileInfo
}

func (l looksLike) Stat(string) (fs.FileInfo, error) { return l.info, nil }
