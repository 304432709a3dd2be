package store

import (
	"errors"
	"io/fs"
	"path/filepath"
	"time"
)

const (
	busyFor  = 2 * time.Second // how long a held file is waited for
	busyStep = 50 * time.Millisecond
)

// Save replaces the bytes of a file that the caller last saw as expect (from
// Read, Changed or an earlier save), and keeps those as its one backup. With
// the zero Stamp it is SaveNew. It gives the Stamp to expect at the next save,
// also together with an error: that of the new bytes if they got as far as the
// file, else expect.
//
// An *ErrChanged means that someone else changed the file and that it holds
// what they made of it. Bytes equal to those in the file are not written
// again. A *Failure is a save to repeat until it works.
func Save(fsys FS, path string, data []byte, expect Stamp) (Stamp, error) {
	if expect.IsZero() {
		return SaveNew(fsys, path, data)
	}
	if len(data) > MaxSize {
		return expect, tooLarge(path, "saved")
	}
	target, err := fsys.Resolve(path)
	if errors.Is(err, fs.ErrNotExist) {
		return expect, goneOrNoFolder(fsys, path, err)
	}
	if err != nil {
		return expect, failure(path, "saved", err)
	}
	defer guard(fsys, target)()
	s := saving{fsys: fsys, path: path, target: target, data: data, expect: expect,
		ours: stampOf(data, time.Time{}, fsys.Now())}
	stamp, err := s.run()
	return stamp, s.explain(err)
}

// saving is one save under way. target is path with its links followed.
type saving struct {
	fsys         FS
	path, target string
	data         []byte
	expect, ours Stamp
	mode         fs.FileMode
	names        hiddenNames
}

func (s *saving) run() (Stamp, error) {
	now, err := s.look()
	if err != nil {
		return s.expect, err
	}
	tidy(s.fsys, s.target, now)
	if now.Same(s.ours) {
		// Already there, perhaps by a save whose last step failed.
		return now, s.fsys.SyncDir(filepath.Dir(s.target))
	}
	if !now.Same(s.expect) {
		return s.expect, &ErrChanged{Path: s.path, Now: now}
	}
	s.names = newNames(s.target, s.ours, s.expect, s.fsys.Now())
	defer s.names.done()
	if s.ours.ModTime, err = writeFresh(s.fsys, s.names.fresh, s.data, s.mode); err != nil {
		return s.expect, err
	}
	return s.put()
}

// look reads what the file holds and refuses one that may not be written.
func (s *saving) look() (Stamp, error) {
	_, now, err := read(s.fsys, s.target)
	if errors.Is(err, fs.ErrNotExist) {
		return now, goneOrNoFolder(s.fsys, s.path, err)
	}
	if err != nil {
		return now, err
	}
	info, err := s.fsys.Stat(s.target)
	if err != nil {
		return now, err
	}
	s.mode = info.Mode().Perm()
	locked := s.fsys.CanWrite(s.target)
	if s.mode&0o222 == 0 || errors.Is(locked, fs.ErrPermission) {
		return now, &Failure{Path: s.path, Doing: "saved", Why: "the file is read-only",
			Try: "allow writing to it, or save under another name", Err: fs.ErrPermission}
	}
	return now, locked
}

// changed is the error for a file that is not what it was expected to be.
func (s *saving) changed(kept string) error {
	_, now, err := read(s.fsys, s.target)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return &ErrChanged{Path: s.path, Now: now, Kept: kept}
}

// drop removes a hidden file of this save. A hold that may be the only one of
// its bytes stays: the next save makes it the backup, or gives it a name
// people see. That counts when others wrote, and when a call did its work and
// failed nevertheless, as on a share whose answer got lost.
func (s *saving) drop(name string) {
	if name == s.names.hold {
		held, err := hashOf(s.fsys, name)
		if err != nil {
			return
		}
		there, err := hashOf(s.fsys, s.target)
		superseded := err == nil && held == short(s.expect) && there != short(s.ours)
		if held != short(s.ours) && held != there && !superseded {
			return
		}
	}
	s.fsys.Remove(name)
}

// explain gives every error its line for people.
func (s *saving) explain(err error) error { return explain(s.path, err) }

func explain(path string, err error) error {
	var c *ErrChanged
	var e *ErrExists
	var f *Failure
	if err == nil || errors.As(err, &c) || errors.As(err, &e) || errors.As(err, &f) {
		return err
	}
	return failure(path, "saved", err)
}

// goneOrNoFolder tells a file that is gone from a folder that is.
func goneOrNoFolder(fsys FS, path string, err error) error {
	if _, dirErr := fsys.Stat(filepath.Dir(path)); dirErr != nil {
		return failure(path, "saved", err)
	}
	return &ErrChanged{Path: path}
}
