// Package session is the open document at work: its file saved, looked at, kept and
// left for another; its sheets printed; the questions where something would be lost.
package session

import (
	"cmp"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/file"
	"chape/project/print/sheet"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/document"
	"chape/ui/form"
)

// Options are what a Session needs from outside.
type Options struct {
	Doc       *document.Doc
	Notices   file.Notices                 // what the file held that a save would not keep
	FS        store.FS                     // nil: the system's
	Encode    func(project.Project) []byte // what is saved; nil: project.Encode
	Clock     func() time.Time             // the wall clock; nil: time.Now
	Shelf     *shelf.Shelf                 // where projects are kept; nil: nowhere
	Elsewhere []string                     // folders for what can't be saved where it belongs
	Lock      *store.Lock                  // of the document
	// Document opens another project; nil: this session opens none.
	Document func(p project.Project, path string, stamp store.Stamp) *document.Doc
	// KeepPrinter keeps what the pricks on a sheet measured; nil: for this time only.
	KeepPrinter func(c sheet.Correction) error
	KeepPaper   func(p sheet.Paper) error // keeps what paper lies in the printer; nil: for this time only
	Prints      string                    // the folder for sheets that the user has chosen; "": none
	Documents   string                    // the folder for them otherwise; "": beside the project
	Named       string                    // the project named on the command line: by its path: its sheets go beside it
	KeepPrints  func(folder string) error // keeps the folder that the user chooses; nil: for this time only
}

// Session is the open project and its file: all disk work for it, and going over to
// another one. Disk work is done in commands, whose answers come back to Take; every
// method answers with values of package act, or of this one. All methods belong to
// one goroutine.
type Session struct {
	o   *Options
	doc *document.Doc

	printing bool   // sheets are being drawn
	moved    bool   // another folder for them was chosen since the start
	written  string // what was printed last
	quitting bool   // as soon as the running save has ended
	next     string // the project to be opened then
	dropped  bool   // a loose copy that nobody wants
	bringing bool   // another project is on its way from the disk
	keeping  bool   // a file is being made for the document
	asked    bool   // a key asked for the save: say when it is done
	polling  bool   // a look at the file is under way

	left    []*document.Doc // projects that were open before, the last one first
	flight  *flight         // the newest save
	refused store.Stamp     // what another program made of the file and can't be loaded
}

// What a session tells the root besides the values of package act.
type (
	// Changed tells that the project, or how it stands to its file, is another.
	Changed struct{}
	// Opened tells that another project has taken the place of the one before.
	Opened struct{}
	// Moved tells that the project known by one key is known by another from now on.
	Moved struct{ From, To string }
)

// New gives the session of a document, and fills in what o leaves out. What is changed
// in o later, as by settings read again, holds from then on.
func New(o *Options) *Session {
	if o.FS == nil {
		o.FS = store.OS()
	}
	if o.Encode == nil {
		o.Encode = file.Encode
	}
	if o.Clock == nil {
		o.Clock = time.Now
	}
	return &Session{o: o, doc: o.Doc}
}

// Doc is the open document.
func (s *Session) Doc() *document.Doc { return s.doc }

// Snapshot is what the panes show of it.
func (s *Session) Snapshot() act.Snapshot { return s.doc.Snapshot(s.now()) }

// Take deals with the answers of the session's own commands; ok is false for other
// messages.
func (s *Session) Take(msg tea.Msg) (out []act.Msg, ok bool) {
	switch msg := msg.(type) {
	case savedMsg:
		return s.saved(msg), true
	case lookedMsg:
		return s.looked(msg), true
	case dividedMsg:
		return s.divided(msg), true
	case printingMsg:
		return s.printsOn(msg), true
	case printedMsg:
		return s.printed(msg), true
	case keptMsg:
		return s.kept(msg), true
	case openedMsg:
		return s.opened(msg), true
	}
	return nil, false
}

// Undo takes the last change back.
func (s *Session) Undo() []act.Msg { return s.back("undone", "nothing to undo", s.doc.Undo) }

// Redo makes the change again that Undo took back last.
func (s *Session) Redo() []act.Msg { return s.back("redone", "nothing to redo", s.doc.Redo) }

func (s *Session) back(done, none string, step func() (string, bool)) []act.Msg {
	before := s.doc.Committed()
	label, ok := step()
	if !ok {
		return say(none)
	}
	now := s.doc.Committed()
	f, of := form.Changed(before, now)
	if !of {
		return append(say(done+": "+label), Changed{})
	}
	return append(say(done+": "+label+"; "+form.Stands(f, now, label)), Changed{}, act.Seek{Key: f.Key, Index: f.Index})
}

// Key is what the project is known by: its file, also while there are two of it; its
// title while it has none.
func (s *Session) Key() string { return cmp.Or(s.pathKey(), s.doc.Committed().Title) }

func (s *Session) pathKey() string {
	path := s.doc.Path()
	if s.doc.State() == document.Divided {
		path, _, _ = s.doc.Sides()
	}
	return store.FullPath(path)
}

// moving does what gives the document another file, and tells by which key it was
// known: nothing of it is announced again for that.
func (s *Session) moving(do func()) Moved {
	from := s.Key()
	do()
	return Moved{from, s.Key()}
}

// samePath compares two names of files, one of which may be relative.
func samePath(a, b string) bool { return store.FullPath(a) == store.FullPath(b) }

// now is the wall clock without the monotonic reading.
func (s *Session) now() time.Time { return s.o.Clock().Round(0) }

func say(text string) []act.Msg  { return []act.Msg{act.Say{Text: text}} }
func warn(text string) []act.Msg { return []act.Msg{act.Say{Text: text, Warn: true}} }

// do has a command run, if there is one.
func do(cmd tea.Cmd) []act.Msg {
	if cmd == nil {
		return nil
	}
	return []act.Msg{act.Do(cmd)}
}
