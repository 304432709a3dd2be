package session

import (
	"errors"
	"path/filepath"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/file"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/document"
)

// Open goes over to another project, as soon as this one is on the disk.
func (s *Session) Open(path string) []act.Msg {
	switch {
	case s.bringing:
		return nil // Enter pressed twice opens once
	case !s.doc.Unsaved():
		return s.opening(path)
	case s.doc.Path() == "":
		return []act.Msg{s.leaveCopyQuestion(path)}
	}
	s.next = path
	if save, ok := s.doc.SaveNow(); ok {
		return do(s.saving(save))
	}
	return nil // the running save goes on with it
}

// Has tells whether path is the open project's file.
func (s *Session) Has(path string) bool { return samePath(path, s.doc.Path()) }

// openedMsg brings a project from the disk.
type openedMsg struct {
	path      string
	rev       uint64 // of the document that was left for it
	doc       *document.Doc
	notices   file.Notices
	lock      *store.Lock
	elsewhere bool
	err       error
}

func (s *Session) opening(path string) []act.Msg {
	fsys, load := s.o.FS, s.o.Document
	if load == nil {
		return do(func() tea.Msg { return openedMsg{err: errors.New("this workbench opens no other project")} })
	}
	s.bringing = true
	out := openedMsg{path: path, rev: s.doc.Rev()}
	return do(func() tea.Msg {
		data, stamp, err := store.Read(fsys, path)
		if err != nil {
			out.err = err
			return out
		}
		var p project.Project
		if p, out.notices, out.err = file.Decode(filepath.Base(path), data); out.err != nil {
			return out
		}
		out.doc = load(p, path, stamp)
		out.lock, out.elsewhere = store.TakeLock(fsys, path)
		return out
	})
}

// opened takes the project that was brought in place of the one before.
func (s *Session) opened(msg openedMsg) []act.Msg {
	s.next, s.bringing = "", false
	switch {
	case msg.err != nil:
		return warn(msg.err.Error())
	case s.doc.Unsaved() && s.doc.Rev() != msg.rev: // changed while a slow disk was read
		return append(giveBack(msg.lock), s.Open(msg.path)...)
	}
	old := s.o.Lock
	next := s.takeBack(msg.doc)
	s.leave()
	s.doc, s.o.Notices, s.o.Lock = next, msg.notices, msg.lock
	s.polling, s.written = false, ""
	out := []act.Msg{Opened{}}
	if msg.elsewhere {
		out = append(out, act.Say{Text: "this project is open in another window as well: changes made there show here"})
	}
	return append(out, giveBack(old)...)
}

// mostLeft is of how many projects that were left the changes can be taken back.
const mostLeft = 8

// leave keeps the document for when it is opened again.
func (s *Session) leave() {
	if s.doc.Path() != "" && s.doc.State() == document.Saved {
		s.doc.Drop()
		s.left = slices.Insert(s.left, 0, s.doc)
		s.left = s.left[:min(len(s.left), mostLeft)]
	}
}

// takeBack gives the document that was left in the same file, with its changes to take
// back, if the file is as it left it.
func (s *Session) takeBack(fresh *document.Doc) *document.Doc {
	i := slices.IndexFunc(s.left, func(d *document.Doc) bool { return samePath(d.Path(), fresh.Path()) })
	if i < 0 {
		return fresh
	}
	known := s.left[i]
	s.left = slices.Delete(s.left, i, i+1)
	if !known.Stamp().Same(fresh.Stamp()) {
		return fresh
	}
	known.Restamp(fresh.Stamp())
	return known
}

// giveBack ends the note of an open file.
func giveBack(l *store.Lock) []act.Msg {
	if l == nil {
		return nil
	}
	return do(func() tea.Msg {
		l.Release()
		return nil
	})
}
