// Package document is the open document without a terminal: the project as it was
// last committed, the preview on top of it, the plan that follows, undo and
// redo, and what is known about the file. It never touches the disk or the
// clock: it says what should be saved, and is told how that went.
package document

import (
	"reflect"
	"slices"
	"time"

	"chape/calc"
	"chape/project"
	"chape/project/store"
	"chape/ui/act"
)

// depth is how many changes can be taken back. One change is a few kilobytes.
const depth = 500

// Maker turns an input into its plan.
type Maker func(calc.Input) (*calc.Plan, error)

// Doc is one open project. All methods belong to one goroutine.
type Doc struct {
	make   Maker
	check  func(project.Project) error
	limits calc.Limits

	committed project.Project
	shown     project.Project // committed, with the preview applied
	preview   func(*project.Project)
	plan      *calc.Plan // the last one that could be made
	planErr   error
	last      made // for what is shown
	kept      made // for what is committed
	mark      int

	undo, redo []change

	file onDisk
}

// change is a state that can be gone back to and the name of what left it.
type change struct {
	label  string
	before project.Project
}

// Options are what a Doc needs from outside.
type Options struct {
	Make   Maker
	Check  func(project.Project) error // refuses what may not be committed; nil: nothing
	Limits calc.Limits
}

// New opens p, which was read from path with the given stamp. With path "" it
// is a copy that touches nothing until it is kept.
func New(p project.Project, path string, stamp store.Stamp, o Options) *Doc {
	d := &Doc{make: o.Make, check: o.Check, limits: o.Limits, committed: p.Clone()}
	d.file = onDisk{path: path, stamp: stamp}
	d.refresh()
	return d
}

// refresh works out what is shown from what is committed and the preview.
func (d *Doc) refresh() {
	d.shown = d.committed.Clone()
	if d.preview != nil {
		d.preview(&d.shown)
	}
	m := d.planOf(d.shown.Input(d.limits))
	d.last, d.planErr = m, m.err
	if m.err == nil {
		d.plan = m.plan
	}
	if d.preview == nil {
		d.kept = m
	}
	d.mark = max(0, min(d.mark, len(d.shown.Knife.Stations)-1))
}

// made is what became of an input.
type made struct {
	in   calc.Input
	plan *calc.Plan
	err  error
}

// planOf makes a plan, unless it was made for the key before, or for what is committed:
// Enter keeps what was previewed, and a tick changes no measure.
func (d *Doc) planOf(in calc.Input) made {
	for _, m := range []made{d.last, d.kept} {
		if (m.plan != nil || m.err != nil) && reflect.DeepEqual(m.in, in) {
			return m
		}
	}
	plan, err := d.make(in)
	return made{in, plan, err}
}

// SetLimits has the plan checked by other thresholds.
func (d *Doc) SetLimits(l calc.Limits) {
	d.limits = l
	d.refresh()
}

// Preview shows what do would make of the project without keeping it. It
// stands on the last committed state, not on an earlier preview.
func (d *Doc) Preview(do func(*project.Project)) {
	d.preview = do
	d.refresh()
}

// Drop takes the preview away.
func (d *Doc) Drop() {
	if d.preview == nil {
		return
	}
	d.preview = nil
	d.refresh()
}

// Commit changes the project for good. A change that do or the check refuses
// leaves everything, the preview too, as it was. One that changes nothing
// makes no undo entry.
func (d *Doc) Commit(label string, do func(*project.Project) error) error {
	next := d.committed.Clone()
	if err := do(&next); err != nil {
		return err
	}
	next.Follow(d.committed)
	if d.check != nil {
		if err := d.check(next); err != nil {
			return err
		}
	}
	d.preview = nil
	if !same(next, d.committed) {
		d.push(label)
		d.take(next)
		return nil
	}
	d.refresh()
	return nil
}

// Record puts a fact into the project, such as that it was printed. Undo does not take
// it back: it holds in the states that undo and redo lead to as well.
func (d *Doc) Record(fact func(*project.Project)) {
	for _, past := range [][]change{d.undo, d.redo} {
		for i := range past {
			past[i].before = past[i].before.Clone()
			fact(&past[i].before)
		}
	}
	next := d.committed.Clone()
	fact(&next)
	d.take(next)
}

// push notes the committed state under the name of the change that leaves it.
func (d *Doc) push(label string) {
	d.undo = append(d.undo, change{label, d.committed})
	if len(d.undo) > depth {
		d.undo = append([]change(nil), d.undo[len(d.undo)-depth:]...)
	}
	d.redo = nil
}

// take makes next the committed state, to be saved.
func (d *Doc) take(next project.Project) {
	d.committed = next
	d.file.rev++
	d.refresh()
}

// Undo goes back by one change and gives its name; ok is false when there is
// none.
func (d *Doc) Undo() (label string, ok bool) {
	return d.step(&d.undo, &d.redo)
}

// Redo does again what Undo took back last.
func (d *Doc) Redo() (label string, ok bool) {
	return d.step(&d.redo, &d.undo)
}

func (d *Doc) step(from, to *[]change) (string, bool) {
	if len(*from) == 0 {
		return "", false
	}
	c := (*from)[len(*from)-1]
	*from = (*from)[:len(*from)-1]
	*to = append(*to, change{c.label, d.committed})
	d.preview = nil
	d.take(c.before.Clone())
	return c.label, true
}

// Choose picks the mark whose section is shown.
func (d *Doc) Choose(mark int) {
	d.mark = max(0, min(mark, len(d.shown.Knife.Stations)-1))
}

// Committed gives the project as it stands, without the preview. The caller
// may not change what its slices hold.
func (d *Doc) Committed() project.Project { return d.committed }

// Past gives the states that undo goes back to, the newest first.
func (d *Doc) Past() []project.Project {
	var out []project.Project
	for _, c := range slices.Backward(d.undo) {
		out = append(out, c.before)
	}
	return out
}

// Plan is the last plan that could be made of what is shown.
func (d *Doc) Plan() *calc.Plan { return d.plan }

// Previewing tells whether a preview stands.
func (d *Doc) Previewing() bool { return d.preview != nil }

// Snapshot is what the panes show. now is the wall clock.
func (d *Doc) Snapshot(now time.Time) act.Snapshot {
	return act.Snapshot{
		Project: d.shown,
		Plan:    d.plan,
		Stale:   d.planErr != nil,
		Err:     d.planErr,
		Unit:    d.committed.Units,
		Mark:    d.mark,
		Now:     now.Round(0),
	}
}
