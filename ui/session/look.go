package session

import (
	"path/filepath"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/store"
	"chape/ui/act"
	"chape/ui/document"
)

type lookedMsg struct { // at the file
	path    string
	stamp   store.Stamp
	asked   bool // by a key
	changed bool
	version document.Version // where changed and not gone
	err     error
}

// Poll gives the command that looks whether someone else changed the file; nil while
// there is nothing to look at.
func (s *Session) Poll() tea.Cmd {
	if s.doc.Path() == "" || s.polling || s.doc.Flying() {
		return nil
	}
	s.polling = true
	return s.lookAtFile(false)
}

// lookAtFile looks whether the file is as it was saved; asked: its answer is waited for.
func (s *Session) lookAtFile(asked bool) tea.Cmd {
	path, seen, fsys := s.doc.Path(), s.doc.Stamp(), s.o.FS
	return func() tea.Msg {
		out := lookAt(fsys, path, seen)
		out.asked = asked
		return out
	}
}

func lookAt(fsys store.FS, path string, seen store.Stamp) lookedMsg {
	out := lookedMsg{path: path}
	out.changed, out.stamp, out.err = store.Changed(fsys, path, seen)
	if out.changed && !out.stamp.IsZero() {
		out.version = readVersion(fsys, path)
	}
	return out
}

func (s *Session) looked(msg lookedMsg) []act.Msg {
	if !msg.asked {
		s.polling = false
	}
	if msg.path != s.doc.Path() {
		return nil // another document by now
	}
	before := s.doc.State()
	out, saving := s.found(msg)
	if saving {
		return out
	}
	switch state := s.doc.State(); {
	case msg.asked && (state == document.Gone || state == document.Damaged):
		return append(out, s.saveNow()...) // makes it anew, or puts ours beside
	case msg.asked && len(out) == 0:
		s.asked = true
		out = s.saySaved()
	case state != before:
		out = append(out, Changed{})
	}
	return append(out, s.Save()...)
}

// found takes in what a look at the file has found; saving: a save has begun for it.
func (s *Session) found(msg lookedMsg) (out []act.Msg, saving bool) {
	name := filepath.Base(msg.path)
	switch {
	case msg.err != nil:
		if !s.doc.Unsaved() { // else the next save will say what is wrong
			s.doc.Damaged(msg.err)
		}
		return nil, false
	case !msg.changed:
		s.doc.Restamp(msg.stamp)
		return nil, false
	case msg.stamp.IsZero():
		s.doc.Gone()
		return warn(name + " was moved or deleted by another program: Ctrl+S or the next change makes it anew"), false
	}
	switch s.doc.DiskChanged(msg.version) {
	case document.Loaded:
		s.o.Notices = msg.version.Notices
		return append(say(name+" was changed by another program: its new state is loaded; u brings yours back"), Changed{}), false
	case document.Refused:
		if !s.refused.Same(msg.stamp) { // else it was said already
			s.refused = msg.stamp
			return warn("changed by another program, and can't be loaded: " + msg.version.Err.Error()), false
		}
	case document.BothSide:
		if save, ok := s.doc.SaveNow(); ok { // it meets theirs, and goes beside
			return do(s.saving(save)), true
		}
	}
	return nil, false
}
