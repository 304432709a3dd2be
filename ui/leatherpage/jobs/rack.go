// Package jobs is what the page of the leather does with the disk and with time: the
// leather on the rack is read, changed and kept, other projects of the shelf are read and
// planned, a placing is looked for. Each answers with the command that does it, and hears
// what came of it.
package jobs

import (
	"errors"
	"fmt"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/leather"
	"chape/project/shelf"
	"chape/ui/act"
	"chape/ui/term"
)

// Rack is the leather as the page has it, and how it stands to its file.
type Rack struct {
	file    *leather.File
	stock   leather.Stock
	before  []leather.Stock // what undo goes back to
	after   []leather.Stock // what redo goes on to
	saving  bool
	again   bool  // changed since that save began
	failed  error // the last save, or the reading: why
	unread  bool  // the file is there and can't be read: nothing is put over it
	arrived bool
	changes int // counted, so that a reading begun before the last is told
}

// What comes of work with the disk.
type (
	Read struct {
		Others Others
		stock  leather.Stock
		err    error
		since  int // how many changes there had been when it was begun
	}
	Kept struct{ err error }
)

// NewRack gives an empty one, kept in a file.
func NewRack(file *leather.File) *Rack { return &Rack{file: file, stock: leather.Empty()} }

// Stock is the leather, to be read only.
func (r *Rack) Stock() leather.Stock { return r.stock }

// Look reads the leather, and lists the shelf.
func (r *Rack) Look(sh *shelf.Shelf) []act.Msg {
	if r.saving {
		return nil
	}
	file, since := r.file, r.changes
	return []act.Msg{act.Do(func() tea.Msg {
		s, err := file.Read()
		return Read{stock: s, err: err, Others: list(sh), since: since}
	})}
}

// Take takes on what was on the disk; fresh is false where the leather stays as it was.
func (r *Rack) Take(msg Read) (fresh bool) {
	if r.unread = msg.err != nil; msg.err != nil {
		r.failed = msg.err
		return false
	}
	if r.arrived && (r.file.Path == "" || msg.since != r.changes) {
		return false // it is nowhere but here, or was changed since
	}
	r.failed, r.arrived = nil, true
	r.stock = msg.stock
	return true
}

// Change changes the leather: one step of undo, one save.
func (r *Rack) Change(do func(*leather.Stock) error) ([]act.Msg, error) {
	if r.unread {
		return nil, fmt.Errorf("%w: nothing is changed until that is mended", r.failed)
	}
	if !r.arrived { // what is on the disk would be lost
		return nil, errors.New("the leather is being read: try again in a moment")
	}
	s := r.stock.Clone()
	if err := do(&s); err != nil {
		return nil, err
	}
	if err := s.Validate(); err != nil {
		return nil, err
	}
	const most = 200
	r.before = append(r.before, r.stock)
	if len(r.before) > most {
		r.before = r.before[1:]
	}
	r.after, r.stock = nil, s
	return r.save(), nil
}

// save keeps the leather as it is now, one save at a time.
// Forget takes a file that can't be cut out of what is ticked, in all that undo and redo
// lead to as well: there it would be read and taken out again, and no undo lead past that.
func (r *Rack) Forget(path string) []act.Msg {
	if r.unread {
		return nil
	}
	without := func(s leather.Stock) leather.Stock {
		s = s.Clone()
		s.With = slices.DeleteFunc(s.With, func(p string) bool { return p == path })
		return s
	}
	r.stock = without(r.stock)
	for _, states := range [][]leather.Stock{r.before, r.after} {
		for i := range states {
			states[i] = without(states[i])
		}
	}
	return r.save()
}

func (r *Rack) save() []act.Msg {
	r.changes++
	if r.saving {
		r.again = true
		return nil
	}
	r.saving, r.again = true, false
	file, s := r.file, r.stock.Clone()
	return []act.Msg{act.Do(func() tea.Msg { return Kept{file.Keep(s)} })}
}

// Kept hears how a save went.
func (r *Rack) Kept(msg Kept) []act.Msg {
	r.saving = false
	r.failed = msg.err
	if r.again {
		return r.save()
	}
	if msg.err != nil {
		return []act.Msg{act.Say{Text: r.Wrong(), Warn: true}}
	}
	return nil
}

// Wrong says what is wrong between the leather and its file; "": nothing.
func (r *Rack) Wrong() string {
	switch {
	case r.failed == nil:
		return ""
	case r.unread:
		return "the leather can't be read: " + term.Plain(r.failed.Error())
	}
	return "the leather is NOT SAVED: " + term.Plain(r.failed.Error())
}

// Undo takes the last change back; ok is false where there is none.
func (r *Rack) Undo() (out []act.Msg, ok bool) {
	last := len(r.before) - 1
	if last < 0 {
		return nil, false
	}
	r.after = append(r.after, r.stock)
	r.stock, r.before = r.before[last], r.before[:last]
	return r.save(), true
}

// Redo makes it again; ok is false where there is none.
func (r *Rack) Redo() (out []act.Msg, ok bool) {
	last := len(r.after) - 1
	if last < 0 {
		return nil, false
	}
	r.before = append(r.before, r.stock)
	r.stock, r.after = r.after[last], r.after[:last]
	return r.save(), true
}
