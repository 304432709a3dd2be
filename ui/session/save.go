package session

import (
	"errors"
	"io/fs"
	"path/filepath"
	"sync/atomic"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/file"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/document"
	"chape/ui/term"
)

type (
	savedMsg struct {
		save    document.Save
		notices file.Notices // of the file that is saved over
		stamp   store.Stamp
		err     error
		version string // where the file as it was, with its comments, was put
	}
	dividedMsg struct { // ours was put beside the file
		theirs document.Version
		beside string
		rev    uint64
		stamp  store.Stamp
		err    error
	}
)

// Save begins the save that is due, if one is.
func (s *Session) Save() []act.Msg {
	save, ok := s.doc.NextSave(s.now())
	if !ok {
		return nil
	}
	return do(s.saving(save))
}

// saving writes one state. Before the first one a file with comments, or of an
// older format, is put beside as it was: the save would not keep it.
func (s *Session) saving(save document.Save) tea.Cmd {
	fsys, notices, now, encode := s.o.FS, s.o.Notices, s.now(), s.o.Encode
	s.o.Notices = file.Notices{}
	f := &flight{done: make(chan savedMsg, 1)}
	s.flight = f
	return func() tea.Msg {
		if !f.begin() {
			return nil // the program has ended, and saves itself
		}
		out := savedMsg{save: save, notices: notices, stamp: save.Expect, err: errUnfinished}
		defer func() { f.done <- out }()
		if label := asItWas(notices); label != "" {
			if out.version, out.err = copyBeside(fsys, save.Path, label, now); out.err != nil {
				return out
			}
		}
		data := encode(save.Project)
		out.stamp, out.err = store.Save(fsys, save.Path, data, save.Expect)
		return out
	}
}

// errUnfinished is the answer of a save in whose midst the program failed.
var errUnfinished = errors.New("the save was broken off")

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
func (s *Session) land() {
	if !s.doc.Flying() || s.flight == nil || s.flight.begin() {
		return
	}
	msg := <-s.flight.done // a save waits for nobody for long, see store
	s.doc.SaveDone(msg.save, msg.stamp, msg.err, s.now())
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

func (s *Session) saved(msg savedMsg) (out []act.Msg) {
	if msg.version != "" {
		out = say("the file as it was is kept in " + filepath.Base(msg.version))
	}
	if s.doc.SaveDone(msg.save, msg.stamp, msg.err, s.now()) {
		return append(out, act.Do(s.divide(msg.save)))
	}
	if msg.err != nil {
		if msg.version == "" && msg.save.Path == s.doc.Path() {
			s.o.Notices = msg.notices // the next try has to keep the file as it was
		}
		if s.doc.Failure() != nil { // else it is done again at once
			out = append(out, s.saveFailed()...)
		}
		return append(out, s.Save()...)
	}
	out = append(out, s.saySaved()...)
	return append(out, s.afterSave()...)
}

// afterSave goes on with what was waiting for the document to be on the disk.
func (s *Session) afterSave() []act.Msg {
	if s.doc.Unsaved() {
		return s.Save()
	}
	switch {
	case s.quitting:
		return do(tea.Quit)
	case s.next != "":
		return s.opening(s.next)
	}
	return nil
}

// saveFailed gives up what was waiting for a save that failed.
func (s *Session) saveFailed() (out []act.Msg) {
	switch {
	case s.quitting:
		out = []act.Msg{s.lossQuestion()}
	case s.next != "":
		out = warn("the other project is not opened, for this one can't be saved: " + reason(s.doc.Failure()))
	}
	s.quitting, s.asked, s.next = false, false, ""
	return out
}

// saySaved answers who asked for a save.
func (s *Session) saySaved() []act.Msg {
	if !s.asked || s.doc.Unsaved() {
		return nil
	}
	s.asked = false
	return say("saved in " + s.doc.Path())
}

// divide puts ours beside the file that someone else has changed meanwhile, and
// reads theirs.
func (s *Session) divide(save document.Save) tea.Cmd {
	fsys, now, encode := s.o.FS, s.now(), s.o.Encode
	return func() tea.Msg {
		out := dividedMsg{rev: save.Rev}
		out.theirs = readVersion(fsys, save.Path)
		data := encode(save.Project)
		if out.beside, out.err = store.SaveBeside(fsys, save.Path, data, "mine", now); out.err == nil {
			_, out.stamp, out.err = store.Read(fsys, out.beside)
		}
		return out
	}
}

func (s *Session) divided(msg dividedMsg) []act.Msg {
	if msg.err != nil {
		s.doc.DivideFailed(msg.err) // the save is tried again, and comes here again
		return s.saveFailed()
	}
	s.doc.Divide(msg.theirs, msg.beside, msg.rev, msg.stamp)
	s.next, s.asked = "", false
	var out []act.Msg
	if !s.quitting {
		out = append(out, s.sidesQuestion())
	}
	out = append(out, Changed{})
	return append(out, s.afterSave()...)
}

func readVersion(fsys store.FS, path string) document.Version {
	data, stamp, err := store.Read(fsys, path)
	v := document.Version{Stamp: stamp, Err: err}
	if err == nil {
		v.Project, v.Notices, v.Err = file.Decode(path, data)
	}
	return v
}

// reason is why a save failed, without the name of the file, which stands beside it.
func reason(err error) string {
	if err == nil {
		return "it will be tried again"
	}
	return term.Plain(store.Reason(err))
}
