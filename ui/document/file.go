package document

import (
	"errors"
	"time"

	"chape/project"
	"chape/project/file"
	"chape/project/store"
)

// State is how the document stands to its file.
type State uint8

// The states.
const (
	Saved   State = iota // everything that is committed is on the disk
	Saving               // a save is under way or due
	Failed               // the last save failed; it is tried again
	Loose                // a copy that touches nothing until it is kept
	Divided              // changed on both sides; ours goes beside the file until a choice is made
	Gone                 // the file was moved or deleted by another program
	Damaged              // another program made of the file what can't be loaded
)

// onDisk is what is known about the file of the document.
type onDisk struct {
	path  string
	stamp store.Stamp // the version this document was made from or last saved as
	lost  store.Stamp // that version, while the file is gone; it may come back

	rev     uint64 // rises with every change
	saved   uint64 // the newest rev that was on the disk
	away    bool   // the file is not there any more
	damage  error  // why what another program made of it can't be loaded; nil: it can
	anew    bool   // it is to be put on the disk once more, though nothing was changed
	flying  bool   // a save is under way
	failure error  // why the last save failed
	retry   time.Time
	wait    time.Duration

	divided bool
	ours    string // where ours goes while divided; "" until it is known
	main    string // the file itself, while divided
	theirs  Version
}

// The pauses between tries of a failing save: short at first, so that a disk
// back after a moment is used at once.
const (
	firstWait = time.Second
	mostWait  = 30 * time.Second
)

// Version is what was found on the disk.
type Version struct {
	Project project.Project
	Notices file.Notices // what it holds that a save would not keep
	Stamp   store.Stamp
	Err     error // it could not be read: the project means nothing
}

// Save is one save to be done.
type Save struct {
	Rev     uint64
	Path    string
	Project project.Project
	Expect  store.Stamp // the version that may be replaced; zero: no file may be there
}

// Path is the file that is saved to; "" for a loose copy.
func (d *Doc) Path() string { return d.file.path }

// Stamp is the version on disk that this document stands on.
func (d *Doc) Stamp() store.Stamp { return d.file.stamp }

// State tells how the document stands to its file.
func (d *Doc) State() State {
	f := &d.file
	switch {
	case f.path == "" && !f.divided:
		return Loose
	case f.divided:
		return Divided
	case f.failure != nil:
		return Failed
	case f.due() || f.flying:
		return Saving
	case f.away:
		return Gone
	case f.damage != nil:
		return Damaged
	}
	return Saved
}

// Failure is why the last save failed; nil when it did not.
func (d *Doc) Failure() error { return d.file.failure }

// Damage is why what another program made of the file can't be loaded; nil when
// it can.
func (d *Doc) Damage() error { return d.file.damage }

// Unsaved tells whether something committed is not on the disk, or is there no
// more.
func (d *Doc) Unsaved() bool { return d.file.due() || d.file.harmed() }

// due tells whether there is something that is saved without being asked for.
func (f *onDisk) due() bool { return f.rev != f.saved || f.anew }

// harmed tells whether another program has taken what was saved away.
func (f *onDisk) harmed() bool { return f.away || f.damage != nil }

// Flying tells whether a save is under way.
func (d *Doc) Flying() bool { return d.file.flying }

// NextSave gives the save that is due, if one is: never two at a time, the
// newest state always, and after a failure not before its pause is over. The
// caller must answer it with SaveDone. A file that another program has taken away
// or damaged is not made anew before something changes, or SaveNow is called.
func (d *Doc) NextSave(now time.Time) (Save, bool) {
	f := &d.file
	if f.path == "" || f.flying || !f.due() {
		return Save{}, false
	}
	if f.failure != nil && now.Before(f.retry) && f.retry.Sub(now) <= mostWait {
		return Save{}, false
	}
	f.flying = true
	return Save{Rev: f.rev, Path: f.path, Project: d.committed, Expect: f.stamp}, true
}

// SaveNow is NextSave without the pause after a failure. It also makes a file
// anew that is gone; of one that is damaged SaveDone says that it is not ours.
func (d *Doc) SaveNow() (Save, bool) {
	d.file.retry = time.Time{}
	d.file.anew = d.file.anew || d.file.harmed()
	return d.NextSave(time.Time{})
}

// SaveDone tells how a save went. It reports whether the file was changed by
// someone else meanwhile: then theirs must be read, ours put beside it, and
// both told with Divide, or DivideFailed; no other save begins before.
func (d *Doc) SaveDone(s Save, stamp store.Stamp, err error, now time.Time) (divided bool) {
	f := &d.file
	if s.Path != f.path {
		return false // kept elsewhere, or divided, meanwhile
	}
	f.flying = false
	if err == nil {
		f.stamp, f.saved = stamp, s.Rev
		f.failure, f.wait, f.anew = nil, 0, false
		f.whole()
		return false
	}
	f.stamp, f.failure = stamp, err
	f.wait = min(max(firstWait, 2*f.wait), mostWait)
	f.retry = now.Add(f.wait)
	var changed *store.ErrChanged
	var exists *store.ErrExists // it was gone, and is there again
	switch {
	case errors.As(err, &changed) && changed.Now.IsZero():
		f.stamp = s.Expect
		f.gone() // the next try makes it anew
		return false
	case errors.As(err, &exists) && !f.lost.IsZero():
		// Back again: the next try, at once, tells whether it is the same.
		f.back()
		f.failure, f.wait, f.retry = nil, 0, time.Time{}
		return false
	case errors.As(err, &changed), errors.As(err, &exists):
		f.flying = true // until both sides are kept
		return true
	}
	return false
}

// DivideFailed says that ours could not be put beside: it is tried again.
func (d *Doc) DivideFailed(err error) {
	d.file.flying, d.file.failure = false, err
}

// Restamp notes a later look at the file that found the same bytes.
func (d *Doc) Restamp(s store.Stamp) {
	if !s.IsZero() && s.Same(d.file.stamp) && !d.file.flying {
		d.file.stamp = s
		d.file.whole()
	}
}

// Kept gives a loose copy the file into which its state rev was put.
func (d *Doc) Kept(path string, rev uint64, stamp store.Stamp) {
	d.file = onDisk{path: path, stamp: stamp, rev: d.file.rev, saved: rev}
}

// Rev is the number of the committed state: it rises with every change.
func (d *Doc) Rev() uint64 { return d.file.rev }
