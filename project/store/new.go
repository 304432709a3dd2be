package store

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"
	"time"
)

// triesForName bounds the search for a free name.
const triesForName = 1000

// SaveNew saves under a name that must not exist yet; one that does is an
// *ErrExists and is left alone. The file gets mode 0600, for it may name
// customers. The file appears whole.
func SaveNew(fsys FS, path string, data []byte) (Stamp, error) {
	if len(data) > MaxSize {
		return Stamp{}, tooLarge(path, "saved")
	}
	stamp, err := saveNew(fsys, path, data)
	return stamp, explain(path, err)
}

func saveNew(fsys FS, path string, data []byte) (Stamp, error) {
	// Asked early only to spare the work: the move refuses as well.
	if _, err := fsys.Lstat(path); err == nil {
		return Stamp{}, &ErrExists{path}
	}
	tidy(fsys, path, Stamp{})
	ours := stampOf(data, time.Time{}, fsys.Now())
	names := newNames(path, ours, Stamp{}, fsys.Now())
	defer names.done()
	var err error
	if ours.ModTime, err = writeFresh(fsys, names.fresh, data, 0o600); err != nil {
		return Stamp{}, err
	}
	if err := moveNew(fsys, names.fresh, path); err != nil {
		fsys.Remove(names.fresh)
		if errors.Is(err, fs.ErrExist) {
			err = &ErrExists{path}
		}
		return Stamp{}, err
	}
	return ours, fsys.SyncDir(filepath.Dir(path))
}

// moveNew renames a file to a name that must be free: in one step, or by a
// second name, or by taking the name with an empty file first.
func moveNew(fsys FS, from, to string) error {
	err := retryBusy(fsys, func() error { return fsys.RenameNew(from, to) })
	if !errors.Is(err, errors.ErrUnsupported) {
		return err
	}
	if err = fsys.Link(from, to); err == nil {
		fsys.Remove(from) // else the next save does
		return nil
	}
	if errors.Is(err, fs.ErrExist) {
		return err
	}
	f, err := fsys.Create(to, 0o600)
	if err != nil {
		return err
	}
	f.Close()
	if err := rename(fsys, from, to); err != nil {
		// The empty file of a moment ago, if it still is that.
		if info, statErr := fsys.Lstat(to); statErr == nil && info.Size() == 0 {
			fsys.Remove(to)
		}
		return err
	}
	return nil
}

// SaveBeside saves under a free name in the folder of path that says what it
// is, such as "Bowie (mine 2026-11-25 14.03).toml", and gives that name. For
// both sides of a conflict, and for what is in memory when a program dies.
func SaveBeside(fsys FS, path string, data []byte, label string, at time.Time) (string, error) {
	if len(data) > MaxSize {
		return "", tooLarge(path, "saved")
	}
	return intoFreeName(path, label, at, func(name string) error {
		_, err := SaveNew(fsys, name, data)
		return err
	})
}

// Rescue is SaveBeside in the first folder that takes it: that of path, then
// each of elsewhere. The error is that of the last.
func Rescue(fsys FS, path string, data []byte, label string, at time.Time, elsewhere ...string) (string, error) {
	name, err := SaveBeside(fsys, path, data, label, at)
	for _, dir := range elsewhere {
		if err == nil {
			break
		}
		name, err = SaveBeside(fsys, filepath.Join(dir, filepath.Base(path)), data, label, at)
	}
	return name, err
}

// intoFreeName calls save with names beside path until one is free.
func intoFreeName(path, label string, at time.Time, save func(name string) error) (string, error) {
	dir, base := filepath.Split(path)
	ext := filepath.Ext(base)
	if len(ext) > 16 {
		ext = ""
	}
	title := strings.TrimSuffix(base, ext)
	to, err := FirstFree(func(n int) string {
		mark := fmt.Sprintf(" (%s %s)", SafeName(label), at.Format("2006-01-02 15.04"))
		if n > 1 {
			mark = fmt.Sprintf(" (%s %s, %d)", SafeName(label), at.Format("2006-01-02 15.04"), n)
		}
		return dir + cutBytes(title, 200-len(mark)-len(ext)) + mark + ext
	}, save)
	if errors.Is(err, fs.ErrExist) {
		return "", &ErrExists{path}
	}
	return to, err
}

// FirstFree calls do with the names for 1, 2 and so on until one is not taken yet, and
// gives that; an error other than fs.ErrExist ends it.
func FirstFree(name func(n int) string, do func(path string) error) (string, error) {
	for n := 1; ; n++ {
		path := name(n)
		err := do(path)
		if err == nil {
			return path, nil
		}
		if !errors.Is(err, fs.ErrExist) || n == triesForName {
			return "", err
		}
	}
}
