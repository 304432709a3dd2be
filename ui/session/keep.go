package session

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/project/store"
	"chape/ui/act"
	"chape/ui/document"
)

// Keep gives a loose copy a file on the shelf, or saves again at once.
func (s *Session) Keep() []act.Msg {
	if s.doc.State() == document.Failed && s.o.Shelf != nil {
		return []act.Msg{s.elsewhereQuestion()}
	}
	if s.doc.Path() != "" {
		return s.saveNow()
	}
	if s.o.Shelf == nil {
		return warn("there is no folder to keep it in: start with chape new FILE")
	}
	return s.keepOnShelf()
}

// saveNow saves, or looks whether what was saved is still there, and has it said
// when it is known to be on the disk.
func (s *Session) saveNow() []act.Msg {
	if save, ok := s.doc.SaveNow(); ok {
		s.asked = true
		return do(s.saving(save))
	}
	if s.doc.Flying() {
		s.asked = true
		return nil
	}
	return do(s.lookAtFile(true))
}

// keepOnShelf gives the document a file of its own on the shelf.
func (s *Session) keepOnShelf() []act.Msg {
	if s.keeping {
		return nil // a held key makes one file
	}
	s.keeping = true
	d, p, rev, sh, fsys := s.doc, s.doc.Committed(), s.doc.Rev(), s.o.Shelf, s.o.FS
	return do(func() tea.Msg {
		out := keptMsg{doc: d, rev: rev}
		if out.path, out.err = sh.Create(p); out.err == nil {
			_, out.stamp, out.err = store.Read(fsys, out.path)
		}
		return out
	})
}

// keptMsg tells where a loose copy was put.
type keptMsg struct {
	doc   *document.Doc // as it was then: another one may be open by now
	path  string
	rev   uint64
	stamp store.Stamp
	err   error
}

func (s *Session) kept(msg keptMsg) []act.Msg {
	s.keeping = false
	if msg.err != nil {
		s.quitting, s.next = false, ""
		return warn("not kept: " + msg.err.Error())
	}
	out := say("kept as " + msg.path)
	if msg.doc != s.doc {
		return out
	}
	out = append(out, s.moving(func() { s.doc.Kept(msg.path, msg.rev, msg.stamp) }), Changed{})
	return append(out, s.afterSave()...)
}
