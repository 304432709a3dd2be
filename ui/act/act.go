// Package act is what the panes of the workbench and its root say to each
// other. A pane never touches the project: it answers with these values, and
// the root shows every pane a new Snapshot.
package act

import (
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/shop"
	"chape/project/steps"
	"chape/project/versions"
	"chape/ui/canvas"
)

// Snapshot is what the root shows every pane after each change. Panes read it
// and keep no copy of their own of what stands in it.
type Snapshot struct {
	Project project.Project // with the running preview applied, where there is one
	Plan    *calc.Plan      // the last good plan; nil before the first
	Stale   bool            // Plan is older than Project, which can't be planned
	Err     error           // why not
	Unit    length.Unit     // what the screens show
	Mark    int             // the chosen station
	Now     time.Time       // wall clock, monotonic reading stripped

	Others []steps.Hold // of the other projects of the shelf
	Font   Font         // what drawings are made of
	Shop   shop.Shop
	Path   string  // of the project's file, in full; "": it has none
	Prints string  // the folder that printed sheets go to
	Scale  float64 // grams, one step of the user's scale; 0: as the digits of the weighings tell
}

// Font is what the characters of the screen can show, and the shape of their cell.
type Font struct {
	Glyphs canvas.Glyphs
	Aspect float64 // the height of a cell in its widths
}

// Look has drawings made so from now on, and remembers it.
type Look struct{ Font Font }

// Preview shows what Do would make of the project without keeping it.
// Only one preview stands at a time, always on the last committed state.
type Preview struct {
	Do func(*project.Project)
}

// Drop takes the running preview away.
type Drop struct{}

// Commit changes the project for good: one undo entry, one save. Label names
// the change for undo ("leather 3.2 mm"). When Do returns an error nothing is
// changed and the error is shown.
type Commit struct {
	Label string
	Do    func(*project.Project) error
}

// Record puts a fact into the project, such as minutes spent: undo does not take it back,
// and Do is done to the states that undo leads to as well.
type Record struct {
	Do func(*project.Project)
}

// Choose picks the mark (station) whose section is shown.
type Choose struct{ Mark int }

// Say shows one line under the panes until the next key, or until another one.
type Say struct {
	Text  string
	Warn  bool
	Lasts bool // until another one, a change or another page; the keys stand below it
}

// PrintPair has two patterns printed on one page, laid over each other.
type PrintPair struct{ Pair versions.Pair }
