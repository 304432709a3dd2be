package store

import (
	"io"
	"io/fs"
	"time"
)

// writeFresh makes a new file, whole and synced, or leaves none. It gives the
// file's time.
func writeFresh(fsys FS, name string, data []byte, mode fs.FileMode) (time.Time, error) {
	f, err := fsys.Create(name, 0o600)
	if err != nil {
		return time.Time{}, err
	}
	mod, err := fill(f, data, mode)
	if closeErr := f.Close(); err == nil {
		err = closeErr
	}
	if err != nil {
		fsys.Remove(name)
	}
	return mod, err
}

func fill(f File, data []byte, mode fs.FileMode) (time.Time, error) {
	n, err := f.Write(data)
	if err == nil && n < len(data) {
		err = io.ErrShortWrite
	}
	if err != nil {
		return time.Time{}, err
	}
	if mode != 0o600 {
		if err := f.Chmod(mode); err != nil {
			return time.Time{}, err
		}
	}
	if err := f.Sync(); err != nil {
		return time.Time{}, err
	}
	info, err := f.Stat()
	if err != nil {
		return time.Time{}, err
	}
	return info.ModTime(), nil
}

// rename replaces to, waiting for a program that holds it.
func rename(fsys FS, from, to string) error {
	return retryBusy(fsys, func() error { return fsys.Rename(from, to) })
}

// retryBusy repeats a call until no other program holds the file, for busyFor.
func retryBusy(fsys FS, call func() error) error {
	err := call()
	if err == nil || !isBusy(err) {
		return err
	}
	for end := fsys.Now().Add(busyFor); err != nil && isBusy(err) && fsys.Now().Before(end); {
		fsys.Sleep(busyStep)
		err = call()
	}
	return err
}

// hashOf is the short hash of what a plain file holds.
func hashOf(fsys FS, name string) (string, error) {
	_, stamp, err := read(fsys, name)
	if err != nil {
		return "", err
	}
	return short(stamp), nil
}
