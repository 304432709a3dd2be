package document

import (
	"chape/calc/length"
	"chape/project/file"
	"chape/project/store"
)

// News is what DiskChanged made of a change on the disk.
type News uint8

// The outcomes.
const (
	Nothing  News = iota // it was our own save
	Loaded               // theirs is shown now; undo brings ours back
	Refused              // theirs can't be read: ours stays on the screen
	BothSide             // changed here as well: both must be kept
)

// DiskChanged takes in what someone else wrote to the file.
func (d *Doc) DiskChanged(v Version) News {
	f := &d.file
	if f.flying {
		return Nothing
	}
	f.back()
	if v.Err == nil && v.Stamp.Same(f.stamp) { // ours, or it was only away
		f.stamp = v.Stamp
		f.whole()
		return Nothing
	}
	if f.rev != f.saved {
		return BothSide
	}
	if v.Err != nil {
		d.Damaged(v.Err)
		return Refused
	}
	d.load(v, "the file's new state")
	return Loaded
}

// Gone notes that the file is not there any more: the next change, or SaveNow,
// makes it anew.
func (d *Doc) Gone() {
	if !d.file.flying {
		d.file.gone()
	}
}

// Damaged notes that what the file holds now can't be loaded, and why. What stands
// here was saved once and is on the screen still: the next change must not replace
// theirs unseen, so the stamp stays.
func (d *Doc) Damaged(why error) {
	if !d.file.flying {
		d.file.back()
		d.file.damage = why
	}
}

func (f *onDisk) gone() {
	f.away, f.damage = true, nil
	if !f.stamp.IsZero() {
		f.stamp, f.lost = store.Stamp{}, f.stamp
	}
}

// back takes a file that was gone for there again, whatever it holds.
func (f *onDisk) back() {
	f.away = false
	if !f.lost.IsZero() {
		f.stamp, f.lost = f.lost, store.Stamp{}
	}
}

// whole takes a file for what was saved.
func (f *onDisk) whole() { f.away, f.damage, f.lost = false, nil, store.Stamp{} }

// load shows v as the committed state. The preview stays: a number being typed
// is not lost because a sync program came by.
func (d *Doc) load(v Version, label string) {
	d.push(label)
	d.committed = v.Project.Clone()
	d.file.stamp = v.Stamp
	d.file.whole()
	d.file.rev++
	d.file.saved = d.file.rev
	d.file.failure, d.file.anew = nil, false
	d.refresh()
}

// Divide notes that the file was changed on both sides. Theirs stays in the
// file; ours was put into the file beside, as that version, and further
// changes go there until Theirs or Ours is chosen.
func (d *Doc) Divide(theirs Version, beside string, rev uint64, stamp store.Stamp) {
	f := &d.file
	*f = onDisk{
		path: beside, stamp: stamp, rev: f.rev, saved: rev,
		divided: true, ours: beside, main: f.path, theirs: theirs,
	}
}

// Sides gives, while the document is divided, the file with theirs and the one
// with ours.
func (d *Doc) Sides() (theirs, ours string, readable bool) {
	return d.file.main, d.file.ours, d.file.theirs.Err == nil
}

// Theirs ends a division: go on with what the others made, and gives what their
// file holds that a save would not keep. Ours stays beside.
func (d *Doc) Theirs() file.Notices {
	f := &d.file
	if !f.divided || f.theirs.Err != nil {
		return file.Notices{}
	}
	v := f.theirs
	*f = onDisk{path: f.main, rev: f.rev, saved: f.rev}
	d.preview = nil
	d.load(v, "going on with theirs")
	return v.Notices
}

// Ours ends a division: go on with ours, in the file beside. Theirs stays in
// the file it is in; nobody's file is replaced.
func (d *Doc) Ours() {
	f := &d.file
	if !f.divided {
		return
	}
	*f = onDisk{
		path: f.ours, stamp: f.stamp, rev: f.rev, saved: f.saved,
		flying: f.flying, failure: f.failure, retry: f.retry, wait: f.wait,
	}
}

// Unit is what the screens show.
func (d *Doc) Unit() length.Unit { return d.committed.Units }
