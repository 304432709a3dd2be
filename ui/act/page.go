package act

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Page is what the root has to know of a pane or page before it can show it. The
// package of the page gives it; the root has them in one list, and a line there is all
// that it takes to add one.
type Page struct {
	Name  string                // no two alike; in the foot, and on the frame where there is no Title
	Title string                // on the frame; "": Name
	Room  Room                  // where it stands
	Open  key.Binding           // opens it from where Openers are alive; the zero one: Go alone does
	Brief string                // what Open does, for the foot; "": not named there
	Back  string                // the page that Leave leads to; "": Knife, Plan and Steps
	Root  RootKeys              // the root's keys that are alive on it while nothing is typed
	Ticks bool                  // it shows the time: while it is seen it has a new snapshot every second
	Lasts bool                  // it is not made anew when another project is opened
	Takes func(tea.KeyMsg) bool // of a key on Knife, Plan and Steps: it opens the page and goes to it, as what is dropped on the window; nil: none
	New   func() Pane           // nil: there is no such page now, as where there is no folder for a shelf
}

// Room is where a page stands.
type Room uint8

// The rooms. The first page of the list that stands in one of the first three is seen
// from the start; a later one takes its place, in its frame, until Leave.
const (
	InKnife Room = iota
	InPlan
	InSteps
	Whole  // between head and foot
	Screen // the whole screen: such a page has the whole keyboard, too
)

// RootKeys are keys of the root's that a page may have alive beside its own. Those for
// help, quitting and the shell always are, outside of Screen.
type RootKeys uint8

// The keys.
const (
	Turn    RootKeys = 1 << iota // Tab: the panes in turn
	Openers                      // the keys that open pages
	Changes                      // undo and redo
	Saving                       // keep a copy, save at once
	Printing
	AllKeys = Turn | Openers | Changes | Saving | Printing
)

// Go shows the page of that name.
type Go struct{ Page string }

// Undo takes the last change of the project back, or with Redo makes it again: for a page
// that has changes of its own beside them.
type Undo struct{ Redo bool }
