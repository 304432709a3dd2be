package shelfpane

import (
	"errors"
	"path/filepath"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/shelf"
	"chape/ui/act"
	"chape/ui/term"
)

// changedMsg tells what became of a change on the disk.
type changedMsg struct {
	from, path string // of the file, before and after
	said       string
	err        error
	open       bool // the project is new: open it
}

func (m Model) changed(msg changedMsg) (Model, tea.Cmd) {
	if msg.err != nil {
		return m, tea.Batch(warn(msg.err.Error()), m.Look())
	}
	if msg.open {
		return m, tea.Batch(act.Send(OpenMsg{msg.path}), m.Look())
	}
	if i, ok := m.places()[msg.from]; ok { // its row moves at once, and the choice with it
		entries := append([]shelf.Entry(nil), m.entries...)
		entries[i].Path, entries[i].PutAway = msg.path, filepath.Base(filepath.Dir(msg.path)) == shelf.Away
		m.entries, m.moved = entries, true
		m.setEntries(append([]shelf.Entry(nil), entries...))
	}
	return m, tea.Batch(say(msg.said), m.Look())
}

func title(text string) (string, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return "", errors.New("a project needs a title: type one, or Esc")
	}
	return text, nil
}

func (m Model) askNew() Model {
	return m.ask("New project. What do you call the knife?", "", func(m Model, text string) (Model, tea.Cmd, error) {
		text, err := title(text)
		if err != nil {
			return m, nil, err
		}
		return m.askBegin(m.o.Begin(text)), nil, nil
	})
}

func (m Model) askFrom(e shelf.Entry) (Model, tea.Cmd) {
	if e.State == shelf.Broken {
		return m, warn("nothing can be taken from it: " + e.Err)
	}
	label := "New project with the sheath, corrections and steps of " + quoted(e.Title) + ". What do you call the knife?"
	return m.ask(label, "", func(m Model, text string) (Model, tea.Cmd, error) {
		text, err := title(text)
		if err != nil {
			return m, nil, err
		}
		return m, m.create(func() (project.Project, error) {
			earlier, err := m.o.Shelf.Load(e.Path)
			return shelf.From(earlier, text, m.o.Begin(text)), err
		}), nil
	}), nil
}

// create gives the command that puts a new project on the shelf.
func (m Model) create(make func() (project.Project, error)) tea.Cmd {
	s := m.o.Shelf
	return func() tea.Msg {
		p, err := make()
		if err != nil {
			return changedMsg{err: err}
		}
		path, err := s.Create(p)
		return changedMsg{path: path, err: err, open: true}
	}
}

func (m Model) askTitle(e shelf.Entry) (Model, tea.Cmd) {
	if e.State == shelf.Broken {
		return m, warn("it can't be renamed: " + e.Err)
	}
	return m.ask("Another title; the file's name follows it", e.Title, func(m Model, text string) (Model, tea.Cmd, error) {
		text, err := title(text)
		if err != nil {
			return m, nil, err
		}
		s, now := m.o.Shelf, m.o.Clock()
		return m, func() tea.Msg {
			to, err := s.Rename(e.Path, text, now)
			return changedMsg{from: e.Path, path: to, err: err, said: "renamed; the file is " + filepath.Base(to)}
		}, nil
	}), nil
}

// putAway puts the project away or, where it is, takes it out. Both are taken back by
// the same key, so nothing is asked.
func (m Model) putAway(e shelf.Entry) (Model, tea.Cmd) {
	if e.State == shelf.Broken {
		return m, warn("it is left where it is: " + e.Err)
	}
	do, said := m.o.Shelf.PutAway, quoted(e.Title)+" is put away, at the end of the list; its holds go on"
	if e.PutAway {
		do, said = m.o.Shelf.TakeOut, quoted(e.Title)+" is back on the shelf"
	}
	return m, func() tea.Msg {
		to, err := do(e.Path)
		return changedMsg{from: e.Path, path: to, err: err, said: said}
	}
}

func quoted(s string) string { return `"` + term.Plain(s) + `"` }
