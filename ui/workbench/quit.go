package workbench

import (
	"errors"
	"fmt"
	"path/filepath"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/session"
)

// quit ends the program when everything is on the disk, waits for a save that
// is under way, and asks where something would be lost.
func (m *Model) quit() tea.Cmd {
	m.bench.SetOn(false)
	next, cmd := m.bench.Flush()
	m.bench = next
	cmd = m.run(cmd)
	switch {
	case m.doc.State() == session.Loose:
		if m.doc.Unsaved() {
			m.question = m.looseQuestion()
			return cmd
		}
		return tea.Quit
	case !m.doc.Unsaved():
		return tea.Quit
	}
	m.quitting = true
	if s, ok := m.doc.SaveNow(); ok {
		return tea.Batch(cmd, m.saving(s))
	}
	m.message = act.Say{Text: "saving…"}
	return cmd // the running save ends it
}

// Finish puts what is not on the disk there, after the screen is closed for
// whatever reason. It returns an error that says what could not be saved, why,
// and where it was put instead; nil when all is well.
func (m *Model) Finish(crash *Crash) error {
	m.land()
	m.lastLook()
	if m.doc.State() == session.Divided && !m.doc.Unsaved() {
		theirs, ours, _ := m.doc.Sides()
		err := fmt.Errorf("%q was changed by another program as well: yours is in %q", theirs, ours)
		if crash != nil {
			err = crashed(crash, err.Error())
		}
		return err
	}
	if m.dropped || !m.doc.Unsaved() {
		return crashed(crash, "everything was saved")
	}
	if crash != nil {
		return crashed(crash, m.rescue(nil, "after a fault").Error())
	}
	if m.doc.Path() == "" {
		return m.rescue(errors.New("this copy had no file yet"), "unkept")
	}
	data, err := m.encode(m.doc.Committed())
	if err == nil {
		_, err = store.Save(m.o.FS, m.doc.Path(), data, m.doc.Stamp())
	}
	if err != nil {
		return m.rescue(err, "mine")
	}
	return nil
}

// lastLook notices what other programs did to the file since the last tick: what was
// saved may be there no more.
func (m *Model) lastLook() {
	if m.dropped || m.doc.Path() == "" || m.doc.Unsaved() {
		return
	}
	m.found(lookAt(m.o.FS, m.doc.Path(), m.doc.Stamp()))
}

// rescue puts the document into the first folder that takes it; a copy without a
// file goes on the shelf.
func (m *Model) rescue(why error, label string) error {
	data, fault := m.newest()
	if fault != nil {
		why = errors.Join(why, fault)
	}
	where, err := m.putAside(data, label, fault == nil)
	switch {
	case err != nil:
		return fmt.Errorf("the last changes are lost: %w", errors.Join(why, err))
	case why == nil:
		return fmt.Errorf("your work is in %q", where)
	}
	return fmt.Errorf("%w; your work is in %q", why, where)
}

func crashed(c *Crash, saved string) error {
	if c == nil {
		return nil
	}
	return fmt.Errorf("%w; %s\n\n%s", c, saved, c.Stack)
}

// putAside gives the file into which the bytes were put.
func (m *Model) putAside(data []byte, label string, whole bool) (where string, err error) {
	if data == nil {
		return "", errors.New("nothing of it can be written")
	}
	path := m.doc.Path()
	if path == "" {
		path = store.SafeName(m.doc.Committed().Title) + ".toml"
		if sh := m.o.Shelf; sh != nil {
			if whole {
				if where, err = sh.Create(m.doc.Committed()); err == nil {
					return where, nil
				}
			}
			path = filepath.Join(sh.Dir(), path)
		}
	}
	return store.Rescue(m.o.FS, path, data, label, m.now(), m.o.Elsewhere...)
}

// newest gives the bytes of the newest state that can be written: a fault in the
// writing of one change must not take all of them along. The error says that it is
// not the last one.
func (m *Model) newest() (data []byte, fault error) {
	if data, fault = m.encode(m.doc.Committed()); fault == nil {
		return data, nil
	}
	for i, p := range m.doc.Past() {
		if data, err := m.encode(p); err == nil {
			return data, fmt.Errorf("%w: without the last changes, %d of them", fault, i+1)
		}
	}
	return nil, fault
}

// encode is safe against a fault in the writing.
func (m *Model) encode(p project.Project) (data []byte, err error) {
	defer func() {
		if v := recover(); v != nil {
			data, err = nil, fmt.Errorf("a change can't be written: %v", v)
		}
	}()
	return m.o.Encode(p), nil
}
