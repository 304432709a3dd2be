package shelfpane

import (
	"errors"
	"io/fs"

	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
)

// undoing is a change on the shelf that can be taken back: of which file, what to say
// then, and how, which gives the file's path after it.
type undoing struct {
	path string
	said string
	do   func(path string) (string, error)
}

// undo takes back the last change made here that still stands.
func (m *Model) undo() []act.Msg {
	if m.busy {
		return nil
	}
	if len(m.undos) == 0 {
		return say("nothing was changed here: there is nothing to undo")
	}
	m.busy = true
	last := m.undos[len(m.undos)-1]
	return do(func() tea.Msg {
		to, err := last.do(last.path)
		return changedMsg{from: last.path, path: to, err: err, said: "undone: " + last.said, undone: true}
	})
}

// noteUndo keeps how a change is taken back, and what was. One that was refused, as of a
// project that is open, can be tried again; that of a file that is gone can't.
func (m *Model) noteUndo(msg changedMsg) {
	if msg.undone {
		m.busy = false
		if msg.err == nil || errors.Is(msg.err, fs.ErrNotExist) {
			m.undos = m.undos[:len(m.undos)-1]
		}
	}
	for i := range m.undos {
		if m.undos[i].path == msg.from && msg.path != "" {
			m.undos[i].path = msg.path
		}
	}
	if msg.err == nil && msg.undo != nil {
		m.undos = append(m.undos, *msg.undo)
	}
}
