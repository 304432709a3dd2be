package shelf

import (
	"cmp"
	"path/filepath"
	"slices"
	"strings"
	"time"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"chape/project/file"
	"chape/project/steps"
	"chape/project/store"
)

// State is how far a project has come.
type State uint8

// The states.
const (
	Unread   State = iota // not loaded yet: only its name and time are known
	InHand                // there is a step to do
	Finished              // every step is done or skipped, or it has none
	Broken                // it can't be loaded
)

// Entry is one file of the shelf.
type Entry struct {
	Path     string
	Title    string // until it is loaded: the file's name
	Customer string
	State    State
	Step     string       // the title of the step in hand
	Short    string       // its short name
	Steps    int          // how many there are
	Holds    []steps.Hold // those that run or wait to be looked at, the one due first leading
	Due      time.Time    // the day it is promised for, UTC; zero: none
	Open     steps.Open   // what is still to be done, for when it can be ready; its Steps left out
	Modified time.Time
	PutAway  bool
	Err      string // why it can't be loaded, in one line

	begun  []steps.Begun // every hold that was started, over or not
	folded string        // title, customer and file name, for finding
}

// NextDue is the hold that needs attention first.
func (e *Entry) NextDue() (h steps.Hold, ok bool) {
	if len(e.Holds) == 0 {
		return steps.Hold{}, false
	}
	return e.Holds[0], true
}

// unread is the entry of a file that is not loaded.
func unread(path string, away bool, mod time.Time) Entry {
	return Entry{Path: path, Title: nameOf(path), Modified: mod, PutAway: away}.fold()
}

func nameOf(path string) string {
	base := filepath.Base(path)
	return base[:len(base)-len(filepath.Ext(base))]
}

// read loads the file of an entry.
func (e Entry) read(fsys store.FS) Entry {
	data, _, err := store.Read(fsys, e.Path)
	if err != nil {
		return e.broken(err)
	}
	p, _, err := file.Decode(filepath.Base(e.Path), data)
	if err != nil {
		return e.broken(err)
	}
	if p.Title != "" {
		e.Title = p.Title
	}
	e.Customer, e.Due, e.State, e.Steps = p.Customer.Name, p.Customer.Due, Finished, len(p.Steps)
	for _, s := range p.Steps {
		if !s.Started.IsZero() {
			e.begun = append(e.begun, s.Begun())
		}
	}
	if i := steps.Current(p.Steps); i >= 0 {
		e.State, e.Step, e.Short = InHand, p.Steps[i].Title, p.Steps[i].ShortName()
		e.Open = steps.StillOpen(p.Steps)
		e.Open.Steps = nil
	}
	e.Holds = steps.Holds(p.Steps, e.Title)
	steps.SortHolds(e.Holds)
	return e.fold()
}

func (e Entry) broken(err error) Entry {
	e.State, e.Err = Broken, store.Reason(err) // the list shows the name already
	return e
}

func (e Entry) fold() Entry {
	e.folded = folded(e.Title + "\n" + e.Customer + "\n" + nameOf(e.Path))
	return e
}

// folded takes accents and capitals off.
func folded(s string) string {
	plain := true
	for i := range len(s) {
		plain = plain && s[i] < 0x80
	}
	if !plain {
		s = strings.Map(func(r rune) rune {
			if unicode.Is(unicode.Mn, r) {
				return -1
			}
			return r
		}, norm.NFKD.String(s))
	}
	return strings.ToLower(s)
}

// Query is what is looked for.
type Query []string

// ParseQuery takes a text apart: every word of it has to be found, in the title, the
// customer's name or the file's, whatever the accents and capitals.
func ParseQuery(text string) Query { return strings.Fields(folded(text)) }

// Finds tells whether the entry is one of those looked for.
func (q Query) Finds(e Entry) bool {
	for _, word := range q {
		if !strings.Contains(e.folded, word) {
			return false
		}
	}
	return true
}

// What needs attention, in this order.
const (
	holdIsDue = iota
	holdRuns
	isPromised
	inWork
	cantLoad
	finished
	putAway
)

func (e *Entry) attention(now time.Time) (rank int, by time.Time) {
	hold, held := e.NextDue()
	switch {
	case held && hold.State(now) != steps.HoldRunning:
		return holdIsDue, hold.Due
	case held && !e.PutAway:
		return holdRuns, hold.Due
	case e.PutAway:
		return putAway, time.Time{}
	case e.State == Broken:
		return cantLoad, time.Time{}
	case e.State == Finished && e.Steps > 0:
		return finished, time.Time{}
	case !e.Due.IsZero():
		return isPromised, e.Due
	}
	return inWork, time.Time{}
}

// Sort sorts in place by what needs attention: holds that are due, put away or not;
// holds that run, by when they fall due; what is promised for a day, by that day;
// the others in work, those changed last first; files that can't be loaded; the finished
// ones; what is put away last.
func Sort(entries []Entry, now time.Time) {
	type keyed struct {
		rank  int
		by    time.Time
		entry *Entry
	}
	from := slices.Clone(entries)
	all := make([]keyed, len(from))
	for i := range from {
		rank, by := from[i].attention(now)
		all[i] = keyed{rank, by, &from[i]}
	}
	slices.SortFunc(all, func(a, b keyed) int {
		if a.rank != b.rank {
			return a.rank - b.rank
		}
		if c := a.by.Compare(b.by); c != 0 {
			return c
		}
		return cmp.Or(b.entry.Modified.Compare(a.entry.Modified), cmp.Compare(a.entry.Path, b.entry.Path))
	})
	for i, k := range all {
		entries[i] = *k.entry
	}
}
