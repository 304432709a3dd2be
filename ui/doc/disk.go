package doc

import (
	"chape/calc/length"
	"chape/project"
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
	if f.flying || v.Err == nil && v.Stamp.Same(f.stamp) {
		return Nothing
	}
	if f.rev != f.saved {
		return BothSide
	}
	if v.Err != nil {
		// What stands here was saved once and is on the screen still: the
		// next change must not replace theirs unseen, so the stamp stays.
		return Refused
	}
	d.load(v, "the file's new state")
	return Loaded
}

// Gone notes that the file is not there any more: the next change makes it
// anew.
func (d *Doc) Gone() { d.file.stamp = store.Stamp{} }

// load shows v as the committed state. The preview stays: a number being typed
// is not lost because a sync program came by.
func (d *Doc) load(v Version, label string) {
	d.push(label)
	d.committed = v.Project.Clone()
	d.file.stamp = v.Stamp
	d.file.rev++
	d.file.saved = d.file.rev
	d.file.failure = nil
	d.refresh()
}

// Divide notes that the file was changed on both sides. Theirs stays in the
// file; ours was put into the file beside, as that version, and further
// changes go there until Theirs or Ours is chosen.
func (d *Doc) Divide(theirs Version, beside string, rev uint64, stamp store.Stamp) {
	f := &d.file
	*f = file{
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
func (d *Doc) Theirs() project.Notices {
	f := &d.file
	if !f.divided || f.theirs.Err != nil {
		return project.Notices{}
	}
	v := f.theirs
	*f = file{path: f.main, rev: f.rev, saved: f.rev}
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
	*f = file{
		path: f.ours, stamp: f.stamp, rev: f.rev, saved: f.saved,
		flying: f.flying, failure: f.failure, retry: f.retry, wait: f.wait,
	}
}

// Unit is what the screens show.
func (d *Doc) Unit() length.Unit { return d.committed.Units }
