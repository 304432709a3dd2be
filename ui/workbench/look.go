package workbench

import (
	"path/filepath"
	"reflect"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/steps"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/session"
)

// look gives the command that looks whether someone else changed the file, and
// at the other projects of the shelf.
func (m *Model) look() tea.Cmd {
	neighbours := m.lookAround()
	if m.doc.Path() == "" || m.polling || m.doc.Flying() {
		return neighbours
	}
	m.polling = true
	return tea.Batch(neighbours, m.lookAtFile(false))
}

// lookAtFile gives the command that looks whether the file is as it was saved; asked:
// its answer is waited for.
func (m *Model) lookAtFile(asked bool) tea.Cmd {
	path, seen, fsys := m.doc.Path(), m.doc.Stamp(), m.o.FS
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

// lookAround gives the command that asks for the holds of the shelf.
func (m *Model) lookAround() tea.Cmd {
	sh, now := m.o.Shelf, m.now()
	if sh == nil || m.looking {
		return nil
	}
	m.looking = true
	return func() tea.Msg { return othersMsg{sh.Holds(now), sh.Read()} }
}

// neighbours takes the holds of the other projects on.
func (m *Model) neighbours(msg othersMsg) tea.Cmd {
	m.looking = false
	var others []steps.Hold
	for _, r := range msg.running {
		if samePath(r.Path, m.doc.Path()) {
			continue
		}
		for _, h := range r.Holds {
			if h.Key = wholePath(r.Path); !m.ownHold(h) {
				others = append(others, h)
			}
		}
	}
	if !reflect.DeepEqual(others, m.others) {
		m.others = others
		m.refreshTime(m.snapshot())
	}
	if msg.read && !m.read {
		m.read = true
		return m.observe()
	}
	return nil
}

// ownHold tells whether h, of another file, is a hold of the document as well: a copy
// that was put beside tells of the same ones.
func (m *Model) ownHold(h steps.Hold) bool {
	p := m.doc.Committed()
	return h.Project == p.Title && slices.ContainsFunc(steps.Holds(p.Steps, ""), func(own steps.Hold) bool {
		return own.Title == h.Title && own.Started.Equal(h.Started) && own.Due.Equal(h.Due)
	})
}

// samePath compares two names of files, one of which may be relative.
func samePath(a, b string) bool {
	if a == "" || b == "" {
		return a == b
	}
	return wholePath(a) == wholePath(b)
}

func wholePath(p string) string {
	if p == "" {
		return ""
	}
	if abs, err := filepath.Abs(p); err == nil {
		return abs
	}
	return p
}

func (m *Model) looked(msg lookedMsg) tea.Cmd {
	if !msg.asked {
		m.polling = false
	}
	if msg.path != m.doc.Path() {
		return nil // another document by now
	}
	before := m.doc.State()
	if cmd := m.found(msg); cmd != nil {
		return cmd
	}
	switch state := m.doc.State(); {
	case msg.asked && (state == session.Gone || state == session.Damaged):
		return m.saveNow() // makes it anew, or puts ours beside
	case msg.asked && m.message.Text == "":
		m.asked = true
		m.saySaved()
	case state != before:
		m.refresh()
	}
	return m.save()
}

// found takes in what a look at the file has found.
func (m *Model) found(msg lookedMsg) tea.Cmd {
	name := filepath.Base(msg.path)
	switch {
	case msg.err != nil:
		if !m.doc.Unsaved() { // else the next save will say what is wrong
			m.doc.Damaged(msg.err)
		}
		return nil
	case !msg.changed:
		m.doc.Restamp(msg.stamp)
		return nil
	case msg.stamp.IsZero():
		m.doc.Gone()
		m.message = act.Say{Text: name + " was moved or deleted by another program: Ctrl+S or the next change makes it anew", Warn: true}
		return nil
	}
	switch m.doc.DiskChanged(msg.version) {
	case session.Loaded:
		m.o.Notices = msg.version.Notices
		m.message = act.Say{Text: name + " was changed by another program: its new state is loaded; u brings yours back"}
		m.refresh()
	case session.Refused:
		if !m.refused.Same(msg.stamp) { // else it was said already
			m.refused = msg.stamp
			m.message = act.Say{Text: "changed by another program, and can't be loaded: " + msg.version.Err.Error(), Warn: true}
		}
	case session.BothSide:
		if s, ok := m.doc.SaveNow(); ok { // it meets theirs, and goes beside
			return m.saving(s)
		}
	}
	return nil
}
