package workbench

import (
	"errors"
	"fmt"
	"path/filepath"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/doc"
)

// quit ends the program when everything is on the disk, waits for a save that
// is under way, and asks where something would be lost.
func (m *Model) quit() tea.Cmd {
	m.bench.SetOn(false)
	next, cmd := m.bench.Flush()
	m.bench = next
	cmd = m.run(cmd)
	switch {
	case m.doc.State() == doc.Loose:
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
	if m.doc.State() == doc.Divided && !m.doc.Unsaved() {
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
	if crash == nil && m.doc.Path() != "" {
		_, err := store.Save(m.o.FS, m.doc.Path(), project.Encode(m.doc.Committed()), m.doc.Stamp())
		if err == nil {
			return nil
		}
		return m.rescue(err, "mine")
	}
	if crash == nil {
		return m.rescue(errors.New("this copy had no file yet"), "unkept")
	}
	return crashed(crash, m.rescue(nil, "after a fault").Error())
}

// rescue puts the document into the first folder that takes it.
func (m *Model) rescue(why error, label string) error {
	path := m.doc.Path()
	if path == "" {
		path = store.SafeName(m.doc.Committed().Title) + ".toml"
		if m.o.Shelf != nil {
			path = filepath.Join(m.o.Shelf.Dir(), path)
		}
	}
	where, err := store.Rescue(m.o.FS, path, project.Encode(m.doc.Committed()), label, m.now(), m.o.Elsewhere...)
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
