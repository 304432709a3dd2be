package store_test

import (
	"io/fs"
	"path/filepath"
	"syscall"

	"chape/project/store"
)

// closed is a file system where no file can be made in one folder: permission
// bits do not bind a test that runs as root.
type closed struct {
	store.FS
	dir string
	err error
}

func (c closed) Create(name string, perm fs.FileMode) (store.File, error) {
	if filepath.Dir(name) == c.dir {
		return nil, &fs.PathError{Op: "open", Path: name, Err: c.err}
	}
	return c.FS.Create(name, perm)
}

// lostAnswer is a share that exchanges names and then says that it failed.
type lostAnswer struct{ store.FS }

func (l lostAnswer) Swap(a, b string) error {
	if err := l.FS.Swap(a, b); err != nil {
		return err
	}
	return syscall.EIO
}
