package session

import (
	"errors"
	"fmt"
	"path/filepath"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/document"
)

// Quit ends the program when everything is on the disk, waits for a save that
// is under way, and asks where something would be lost.
func (s *Session) Quit() []act.Msg {
	switch {
	case s.doc.State() == document.Loose:
		if s.doc.Unsaved() {
			return []act.Msg{s.looseQuestion()}
		}
		return do(tea.Quit)
	case !s.doc.Unsaved():
		return do(tea.Quit)
	}
	s.quitting = true
	if save, ok := s.doc.SaveNow(); ok {
		return do(s.saving(save))
	}
	return say("saving…") // the running save ends it
}

// Finish puts what is not on the disk there, after the screen is closed for
// whatever reason; crash is why, where the program had a fault. It returns an error
// that says what could not be saved, why, and where it was put instead, the path on a line
// of its own, to be copied; nil when all is well.
func (s *Session) Finish(crash error) error {
	s.land()
	s.lastLook()
	if s.doc.State() == document.Divided && !s.doc.Unsaved() {
		theirs, ours, _ := s.doc.Sides()
		err := fmt.Errorf("%q was changed by another program as well; yours is in\n%q", theirs, ours)
		if crash != nil {
			err = crashed(crash, err.Error())
		}
		return err
	}
	if s.dropped || !s.doc.Unsaved() {
		return crashed(crash, "everything was saved")
	}
	if crash != nil {
		return crashed(crash, s.rescue(nil, "after a fault").Error())
	}
	if s.doc.Path() == "" {
		return s.rescue(errors.New("this copy had no file yet"), "unkept")
	}
	data, err := s.encode(s.doc.Committed())
	if err == nil {
		_, err = store.Save(s.o.FS, s.doc.Path(), data, s.doc.Stamp())
	}
	if err != nil {
		return s.rescue(err, "mine")
	}
	return nil
}

// Release lets another window open the project.
func (s *Session) Release() {
	if s.o.Lock != nil {
		s.o.Lock.Release()
	}
}

// lastLook notices what other programs did to the file since the last tick: what was
// saved may be there no more.
func (s *Session) lastLook() {
	if s.dropped || s.doc.Path() == "" || s.doc.Unsaved() {
		return
	}
	s.found(lookAt(s.o.FS, s.doc.Path(), s.doc.Stamp()))
}

// rescue puts the document into the first folder that takes it; a copy without a
// file goes on the shelf.
func (s *Session) rescue(why error, label string) error {
	data, fault := s.newest()
	if fault != nil {
		why = errors.Join(why, fault)
	}
	where, err := s.putAside(data, label, fault == nil)
	switch {
	case err != nil:
		return fmt.Errorf("the last changes are lost: %w", errors.Join(why, err))
	case why == nil:
		return fmt.Errorf("your work is in\n%q", where)
	}
	return fmt.Errorf("%w; your work is in\n%q", why, where)
}

// crashed adds to a fault what became of the work, and where in the program it was.
func crashed(crash error, saved string) error {
	if crash == nil {
		return nil
	}
	stack := ""
	var traced interface{ Trace() []byte }
	if errors.As(crash, &traced) {
		stack = "\n\n" + string(traced.Trace())
	}
	return fmt.Errorf("%w; %s%s", crash, saved, stack)
}

// putAside gives the file into which the bytes were put.
func (s *Session) putAside(data []byte, label string, last bool) (where string, err error) {
	if data == nil {
		return "", errors.New("nothing of it can be written")
	}
	path := s.doc.Path()
	if path == "" {
		path = store.SafeName(s.doc.Committed().Title) + ".toml"
		if sh := s.o.Shelf; sh != nil {
			if last {
				if where, err = sh.Create(s.doc.Committed()); err == nil {
					return where, nil
				}
			}
			path = filepath.Join(sh.Dir(), path)
		}
	}
	return store.Rescue(s.o.FS, path, data, label, s.now(), s.o.Elsewhere...)
}

// newest gives the bytes of the newest state that can be written: a fault in the
// writing of one change must not take all of them along. The error says that it is
// not the last one.
func (s *Session) newest() (data []byte, fault error) {
	if data, fault = s.encode(s.doc.Committed()); fault == nil {
		return data, nil
	}
	for i, p := range s.doc.Past() {
		if data, err := s.encode(p); err == nil {
			return data, fmt.Errorf("%w: without the last changes, %d of them", fault, i+1)
		}
	}
	return nil, fault
}

// encode is safe against a fault in the writing.
func (s *Session) encode(p project.Project) (data []byte, err error) {
	defer func() {
		if v := recover(); v != nil {
			data, err = nil, fmt.Errorf("a change can't be written: %v", v)
		}
	}()
	return s.o.Encode(p), nil
}
