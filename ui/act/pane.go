package act

import (
	"slices"
	"unicode"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Pane is what every pane and every page of the workbench is to the root, which
// holds them in one list and loops over it: all hear their size and each new
// snapshot; the one in hand gets the keys, the one under the mouse its events, and all
// of them whatever else arrives. What a pane does not know it leaves alone.
//
// Update takes
//   - a part.Press, which is a key that the root has shown to its part.Reading,
//   - a tea.MouseMsg in cells of the pane's inside,
//   - InHand, when it is taken in hand or left,
//   - Silenced, a key that was used up by silencing an alarm,
//   - and whatever a command it gave (Do) has brought.
//
// It answers with values, in the order in which they are to happen; the root does them
// at once and stops at the first that is refused. Nothing takes time but what is in Do.
// The Pane that Update gives takes the place of the one asked, mostly itself.
//
// View is exactly the size that was set: that many lines, all that wide. Keys are all
// the keys there are, by state; the help page shows them all, the foot those that are
// alive now.
type Pane interface {
	Update(tea.Msg) (Pane, []Msg)
	View() string
	SetSize(w, h int)
	SetSnapshot(Snapshot)
	Keys() []Section
}

// Section is the keys of one state of a pane.
type Section struct {
	Title string // in the help, where one title stands once
	Keys  []Key
	Now   bool // they are alive now
	Text  bool // they are those of a text being typed: the root keeps its own keys back
	Plain bool // Enter alone is the answer: one that silences an alarm was not meant for it
}

// Key is a key, and what is said of it: its name and words in the help are the
// binding's own.
type Key struct {
	key.Binding
	Brief string // its words in the foot; "": it is not named there
	Late  bool   // there it is named behind the root's own, where there is room
}

// InHand tells a pane that it was taken in hand or, where Is is false, that it is
// being left. A pane that has to be answered first says Stay.
type InHand struct{ Is bool }

// Stay keeps the pane that says it in hand.
type Stay struct{}

// Silenced tells a pane that a key was used up by silencing an alarm: while it is held
// down it does nothing there.
type Silenced struct{}

// Begin asks the shelf for a new project, from wherever the key was pressed.
type Begin struct{}

// Seek puts the cursor of the form on a field: by its key in the file, and the row of its
// list, -1 for a field of its own.
type Seek struct {
	Key   string
	Index int
}

// Unfit says that what is being typed will not do, and why: the plan that is shown is
// of the last value that did. It stands until the next Preview, Drop or Commit.
type Unfit struct{ Err error }

// Open asks for the project in a file to be opened.
type Open struct{ Path string }

// What only the root can do.
type (
	Leave   struct{} // back to the panes
	Quit    struct{} // end the program
	Suspend struct{} // to the shell
	Help    struct{} // the list of keys
)

// Explainer is a pane that says what the row in hand is; ok is false where there is none.
// Body fills a room of w by h cells.
type Explainer interface {
	Explain() (title string, body func(w, h int) []string, ok bool)
}

// Keyed is a pane, or whatever else has keys by state.
type Keyed interface{ Keys() []Section }

// Writer is a pane with rows of text: while one of them is in hand a letter begins to type
// there and is no command.
type Writer interface{ Writing() bool }

// Writing tells whether letters begin a text in a pane.
func Writing(p Pane) bool {
	w, can := p.(Writer)
	return can && w.Writing()
}

// Writes tells whether a key begins a text in a pane: ? and ! do not.
func Writes(p Pane, k tea.KeyMsg) bool {
	return k.Type == tea.KeyRunes && !k.Alt && !k.Paste && len(k.Runes) > 0 && unicode.IsLetter(k.Runes[0]) && Writing(p)
}

// Typing tells whether keys go into a text of the pane.
func Typing(p Keyed) bool {
	for _, s := range p.Keys() {
		if s.Now && s.Text {
			return true
		}
	}
	return false
}

// Confirming tells whether a pane asks what Enter alone answers.
func Confirming(p Keyed) bool {
	return slices.ContainsFunc(p.Keys(), func(s Section) bool { return s.Now && s.Plain })
}

// Alive are the keys of a pane that are alive now.
func Alive(p Keyed) []Key {
	var keys []Key
	for _, s := range p.Keys() {
		if s.Now {
			keys = append(keys, s.Keys...)
		}
	}
	return keys
}

// TracingSheet asks how to print a sheet to trace a knife on.
type TracingSheet struct{}
