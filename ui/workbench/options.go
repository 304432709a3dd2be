package workbench

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/project"
	"chape/project/file"
	"chape/project/print"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/canvas"
	"chape/ui/session"
	"chape/ui/term"
	"chape/ui/term/ink"
)

// Options are what the workbench needs from outside. New fills in what is left
// out, so that a test gives only what it is about.
type Options struct {
	Doc       *session.Doc
	Notices   file.Notices // what the file held that a save would not keep
	FS        store.FS
	Encode    func(project.Project) []byte                         // what is saved; project.Encode
	Clock     func() time.Time                                     // the wall clock
	Tick      func(time.Duration, func(time.Time) tea.Msg) tea.Cmd // waits; tea.Tick
	Voice     Voice
	Styles    ink.Styles
	Looks     Looks
	Ask       bool                // nobody has said yet which glyphs show
	Remember  func(g Looks) error // keeps the answer; nil: for this time only
	Shelf     *shelf.Shelf        // where projects are kept; nil: nowhere
	Elsewhere []string            // folders for what can't be saved where it belongs
	Suspends  bool                // the system can put the program aside
	Notice    term.NoticeKind
	NoBell    bool     // a hold that falls due shows, but does not ring
	OnDue     []string // a command of the user's and its words; none: empty
	Print     print.Options
	// KeepPrinter keeps what the pricks on a sheet measured; nil: for this time only.
	KeepPrinter func(c print.Correction) error
	Rates       calc.Rates
	Currency    string
	OnShelf     bool                                                                 // start on the shelf, with no project open
	Lock        *store.Lock                                                          // of the document
	Document    func(p project.Project, path string, stamp store.Stamp) *session.Doc // opens another one
	Begin       func(title string) project.Project                                   // a new project by the user's defaults
	Greeting    string                                                               // one line for the start
}

// Looks is what a terminal's font shows well.
type Looks struct {
	Glyphs canvas.Glyphs
	Aspect float64 // height of a cell over its width
}

// Voice is what the workbench says beside the screen.
type Voice interface {
	Bell() error
	Title(string) error
	Notice(kind term.NoticeKind, heading, text string) error
	Close() error // gives the window its old title back, until Title is called again
}

type mute struct{}

func (mute) Bell() error                                  { return nil }
func (mute) Close() error                                 { return nil }
func (mute) Title(string) error                           { return nil }
func (mute) Notice(term.NoticeKind, string, string) error { return nil }

func (o Options) filled() Options {
	if o.Looks.Aspect == 0 {
		o.Looks.Aspect = canvas.DefaultAspect
	}
	if o.FS == nil {
		o.FS = store.OS()
	}
	if o.Encode == nil {
		o.Encode = file.Encode
	}
	if o.Clock == nil {
		o.Clock = time.Now
	}
	if o.Tick == nil {
		o.Tick = tea.Tick
	}
	if o.Voice == nil {
		o.Voice = mute{}
	}
	return o
}

// ascii tells whether the screen keeps to plain characters.
func (o Options) ascii() bool { return o.Looks.Glyphs == canvas.ASCII }
