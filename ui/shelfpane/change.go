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
	undo       *undoing
	undone     bool // it was the last of the changes that can be undone
}

func (m *Model) changed(msg changedMsg) []act.Msg {
	m.noteUndo(msg)
	if msg.err != nil {
		return append(warn(msg.err.Error()), m.look()...)
	}
	if msg.open {
		return append(m.look(), act.Open{Path: msg.path})
	}
	if i, ok := m.places()[msg.from]; ok { // its row moves at once, and the choice with it
		entries := append([]shelf.Entry(nil), m.entries...)
		entries[i].Path, entries[i].PutAway = msg.path, filepath.Base(filepath.Dir(msg.path)) == shelf.Away
		m.entries, m.moved = entries, true
		m.setEntries(append([]shelf.Entry(nil), entries...))
	}
	return append(say(msg.said), m.look()...)
}

func title(text string) (string, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return "", errors.New("a project needs a title: type one, or Esc")
	}
	return text, nil
}

func (m *Model) askNew() []act.Msg {
	return m.ask("New project. What do you call the knife?", "", func(text string) ([]act.Msg, error) {
		text, err := title(text)
		if err != nil {
			return nil, err
		}
		return m.askBegin(m.o.Begin(text)), nil
	})
}

func (m *Model) askFrom(e shelf.Entry) []act.Msg {
	if e.State == shelf.Broken {
		return warn("nothing can be taken from it: " + e.Err)
	}
	label := "New project from " + quoted(e.Title) + ". What do you call the knife?"
	return m.ask(label, "", func(text string) ([]act.Msg, error) {
		text, err := title(text)
		if err != nil {
			return nil, err
		}
		return m.load(e, text), nil
	})
}

// create gives the command that puts a new project on the shelf.
func (m *Model) create(make func() (project.Project, error)) []act.Msg {
	s := m.o.Shelf
	return do(func() tea.Msg {
		p, err := make()
		if err != nil {
			return changedMsg{err: err}
		}
		path, err := s.Create(p)
		return changedMsg{path: path, err: err, open: true}
	})
}

func (m *Model) askTitle(e shelf.Entry) []act.Msg {
	if e.State == shelf.Broken {
		return warn("it can't be renamed: " + e.Err)
	}
	return m.ask("Another title; the file's name follows it", term.Plain(e.Title), func(text string) ([]act.Msg, error) {
		text, err := title(text)
		if err != nil {
			return nil, err
		}
		s, now := m.o.Shelf, m.o.Clock()
		return do(func() tea.Msg {
			to, err := s.Rename(e.Path, text, now)
			return changedMsg{
				from: e.Path, path: to, err: err, said: "renamed; the file is " + filepath.Base(to),
				undo: &undoing{to, quoted(e.Title) + " has its old title again", func(path string) (string, error) {
					return s.Rename(path, e.Title, now)
				}},
			}
		}), nil
	})
}

// putAway puts the project away or, where it is, takes it out. Both are taken back by
// the same key, so nothing is asked.
func (m *Model) putAway(e shelf.Entry) []act.Msg {
	if e.State == shelf.Broken {
		return warn("it is left where it is: " + e.Err)
	}
	move, said := m.o.Shelf.PutAway, quoted(e.Title)+" is put away, at the end of the list; its holds go on"
	back, again := m.o.Shelf.TakeOut, quoted(e.Title)+" is back on the shelf"
	if e.PutAway {
		move, said, back, again = back, again, move, said
	}
	return do(func() tea.Msg {
		to, err := move(e.Path)
		return changedMsg{from: e.Path, path: to, err: err, said: said, undo: &undoing{to, again, back}}
	})
}

func quoted(s string) string { return `"` + term.Plain(s) + `"` }
