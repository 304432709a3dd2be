package workbench

import (
	"errors"
	"io/fs"
	"path/filepath"
	"sync/atomic"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/file"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/session"
)

// All disk work is done in commands, and told with these messages.
type (
	savedMsg struct {
		save    session.Save
		notices file.Notices // of the file that is saved over
		stamp   store.Stamp
		err     error
		version string // where the file as it was, with its comments, was put
	}
	lookedMsg struct { // at the file
		path    string
		stamp   store.Stamp
		asked   bool // by a key
		changed bool
		version session.Version // where changed and not gone
		err     error
	}
	dividedMsg struct { // ours was put beside the file
		theirs session.Version
		beside string
		rev    uint64
		stamp  store.Stamp
		err    error
	}
	othersMsg struct { // the holds of the shelf
		running []shelf.Running
		read    bool // every file was looked at once
	}
)

// disk deals with the answers of the disk's commands; ok is false for other messages.
func (m *Model) disk(msg tea.Msg) (cmd tea.Cmd, ok bool) {
	switch msg := msg.(type) {
	case savedMsg:
		return m.saved(msg), true
	case lookedMsg:
		return m.looked(msg), true
	case dividedMsg:
		return m.divided(msg), true
	case printingMsg:
		return m.printsOn(msg), true
	case printedMsg:
		m.printed(msg)
		return nil, true
	case keptMsg:
		return m.kept(msg), true
	case othersMsg:
		return m.neighbours(msg), true
	}
	return nil, false
}

// save gives the command for the save that is due, or nil.
func (m *Model) save() tea.Cmd {
	s, ok := m.doc.NextSave(m.now())
	if !ok {
		return nil
	}
	return m.saving(s)
}

// saving writes one state. Before the first one a file with comments, or of an
// older format, is put beside as it was: the save would not keep it.
func (m *Model) saving(s session.Save) tea.Cmd {
	fsys, notices, now, encode := m.o.FS, m.o.Notices, m.now(), m.o.Encode
	m.o.Notices = file.Notices{}
	f := &flight{done: make(chan savedMsg, 1)}
	m.flight = f
	return func() tea.Msg {
		if !f.begin() {
			return nil // the program has ended, and saves itself
		}
		out := savedMsg{save: s, notices: notices, stamp: s.Expect, err: errUnfinished}
		defer func() { f.done <- out }()
		if label := asItWas(notices); label != "" {
			if out.version, out.err = copyBeside(fsys, s.Path, label, now); out.err != nil {
				return out
			}
		}
		data := encode(s.Project)
		out.stamp, out.err = store.Save(fsys, s.Path, data, s.Expect)
		return out
	}
}

// errUnfinished is the answer of a save in whose midst the program failed.
var errUnfinished = errors.New("the save came to no end")

// flight is a save under way. A signal may end the program before its answer
// comes back; Finish then takes it from here.
type flight struct {
	begun atomic.Bool
	done  chan savedMsg
}

// begin is true for the first who asks: the save itself, or the end of the program,
// after which a save that had not begun does nothing any more.
func (f *flight) begin() bool { return f.begun.CompareAndSwap(false, true) }

// land takes the answer of a save that was under way when the screen closed.
func (m *Model) land() {
	if !m.doc.Flying() || m.flight == nil || m.flight.begin() {
		return
	}
	msg := <-m.flight.done // a save waits for nobody for long, see store
	m.doc.SaveDone(msg.save, msg.stamp, msg.err, m.now())
}

func asItWas(n file.Notices) string {
	switch {
	case n.OldFormat:
		return "older format"
	case n.Comments:
		return "with comments"
	}
	return ""
}

func copyBeside(fsys store.FS, path, label string, now time.Time) (string, error) {
	data, _, err := store.Read(fsys, path)
	if errors.Is(err, fs.ErrNotExist) {
		return "", nil
	}
	if err != nil {
		return "", err
	}
	return store.SaveBeside(fsys, path, data, label, now)
}

func (m *Model) saved(msg savedMsg) tea.Cmd {
	if msg.version != "" {
		m.message = act.Say{Text: "the file as it was is kept in " + filepath.Base(msg.version)}
	}
	if m.doc.SaveDone(msg.save, msg.stamp, msg.err, m.now()) {
		return m.divide(msg.save)
	}
	if msg.err != nil {
		if msg.version == "" && msg.save.Path == m.doc.Path() {
			m.o.Notices = msg.notices // the next try has to keep the file as it was
		}
		if m.doc.Failure() != nil { // else it is done again at once
			m.saveFailed()
		}
		return m.save()
	}
	m.saySaved()
	return m.afterSave()
}

// divide puts ours beside the file that someone else has changed meanwhile, and
// reads theirs.
func (m *Model) divide(s session.Save) tea.Cmd {
	fsys, now, encode := m.o.FS, m.now(), m.o.Encode
	return func() tea.Msg {
		out := dividedMsg{rev: s.Rev}
		out.theirs = readVersion(fsys, s.Path)
		data := encode(s.Project)
		if out.beside, out.err = store.SaveBeside(fsys, s.Path, data, "mine", now); out.err == nil {
			_, out.stamp, out.err = store.Read(fsys, out.beside)
		}
		return out
	}
}

func (m *Model) divided(msg dividedMsg) tea.Cmd {
	if msg.err != nil {
		m.doc.DivideFailed(msg.err) // the save is tried again, and comes here again
		m.saveFailed()
		return nil
	}
	m.doc.Divide(msg.theirs, msg.beside, msg.rev, msg.stamp)
	m.next, m.asked = "", false
	if !m.quitting {
		m.question = m.sidesQuestion()
	}
	m.refresh()
	return m.afterSave()
}

func readVersion(fsys store.FS, path string) session.Version {
	data, stamp, err := store.Read(fsys, path)
	v := session.Version{Stamp: stamp, Err: err}
	if err == nil {
		v.Project, v.Notices, v.Err = file.Decode(path, data)
	}
	return v
}
