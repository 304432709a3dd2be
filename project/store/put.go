package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// put brings the fresh file in. Either way of doing so leaves what the file
// held in the hold, where it is compared with what was expected before it
// becomes the backup: what another program wrote at the last moment is put
// back.
func (s *saving) put() (Stamp, error) {
	err := s.exchange()
	if errors.Is(err, errors.ErrUnsupported) {
		err = s.replace()
	}
	if err != nil {
		s.drop(s.names.fresh)
		s.drop(s.names.old)
		s.drop(s.names.hold)
		return s.expect, err
	}
	// From here on the new bytes are in the file. The folder is synced before
	// the hold is looked at, so that the look comes late.
	syncErr := s.fsys.SyncDir(filepath.Dir(s.target))
	held, err := hashOf(s.fsys, s.names.hold)
	if errors.Is(err, fs.ErrNotExist) {
		err = &Failure{Path: s.path, Doing: "backed up", Why: "another program took its last version away",
			Try: "look for a program that cleans up this folder", Err: err}
	}
	if err != nil {
		return s.ours, err
	}
	if held != short(s.expect) {
		return s.giveBack()
	}
	if err := rename(s.fsys, s.names.hold, BackupName(s.target)); err != nil {
		return s.ours, err
	}
	if syncErr != nil {
		return s.ours, syncErr
	}
	return s.verify()
}

// exchange swaps the whole new file with the old one, in one step.
func (s *saving) exchange() error {
	if err := rename(s.fsys, s.names.fresh, s.names.hold); err != nil {
		return err
	}
	err := retryBusy(s.fsys, func() error { return s.fsys.Swap(s.names.hold, s.target) })
	if errors.Is(err, errors.ErrUnsupported) {
		if back := rename(s.fsys, s.names.hold, s.names.fresh); back != nil {
			return back
		}
	}
	if errors.Is(err, fs.ErrNotExist) {
		return goneOrNoFolder(s.fsys, s.path, err)
	}
	return err
}

// replace is for file systems without an exchange: the old version gets a
// second name, is looked at under it, and then loses its first.
func (s *saving) replace() error {
	before, err := s.fsys.Stat(s.target)
	if err == nil {
		err = s.fsys.Link(s.target, s.names.hold)
	}
	if errors.Is(err, fs.ErrNotExist) {
		return goneOrNoFolder(s.fsys, s.path, err)
	}
	if err != nil {
		if err = s.copyOld(); err != nil {
			return err
		}
	}
	held, err := hashOf(s.fsys, s.names.hold)
	if err != nil {
		return err
	}
	if held != short(s.expect) || !s.untouched(before) {
		return s.changed("")
	}
	return rename(s.fsys, s.names.fresh, s.target)
}

// untouched is the last look, in one call: what replaces the file after it is
// what can be lost here. Only a file system that numbers its files anew at
// each look needs the longer way.
func (s *saving) untouched(before fs.FileInfo) bool {
	info, err := s.fsys.Stat(s.target)
	if err != nil {
		return false
	}
	if os.SameFile(before, info) && before.Size() == info.Size() && before.ModTime().Equal(info.ModTime()) {
		return true
	}
	held, err := hashOf(s.fsys, s.target)
	return err == nil && held == short(s.expect)
}

// copyOld is for file systems that give a file one name only.
func (s *saving) copyOld() error {
	old, now, err := read(s.fsys, s.target)
	if err != nil {
		return err
	}
	if !now.Same(s.expect) {
		return s.changed("")
	}
	if _, err = writeFresh(s.fsys, s.names.old, old, s.mode); err != nil {
		return err
	}
	// Half a copy must not pass for a version: the hold is always whole.
	return rename(s.fsys, s.names.old, s.names.hold)
}

// verify looks whether the file still holds what was just put there.
func (s *saving) verify() (Stamp, error) {
	changed, _, err := Changed(s.fsys, s.target, s.ours)
	if err != nil {
		return s.ours, err
	}
	if changed {
		return s.ours, s.changed("")
	}
	return s.ours, nil
}

// giveBack puts a version that came in at the last moment back into the file.
// If a further one has come in meanwhile, each keeps a name.
func (s *saving) giveBack() (Stamp, error) {
	err := retryBusy(s.fsys, func() error { return s.fsys.Swap(s.names.hold, s.target) })
	if errors.Is(err, errors.ErrUnsupported) {
		err = s.giveBackWithoutSwap()
	}
	if err != nil {
		return s.ours, s.changed(keepVisible(s.fsys, s.target, s.names.hold))
	}
	kept := ""
	if held, err := hashOf(s.fsys, s.names.hold); err == nil && held != short(s.ours) {
		kept = keepVisible(s.fsys, s.target, s.names.hold)
	} else if err == nil {
		s.drop(s.names.hold)
	}
	return s.expect, s.changed(kept)
}

func (s *saving) giveBackWithoutSwap() error {
	if _, now, err := read(s.fsys, s.target); err != nil || !now.Same(s.ours) {
		return &ErrChanged{Path: s.path, Now: now}
	}
	return rename(s.fsys, s.names.hold, s.target)
}
