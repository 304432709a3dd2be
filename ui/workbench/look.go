package workbench

import (
	"path/filepath"
	"reflect"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/doc"
)

// look gives the command that looks whether someone else changed the file, and
// at the other projects of the shelf.
func (m *Model) look() tea.Cmd {
	neighbours := m.lookAround()
	path, seen, fsys := m.doc.Path(), m.doc.Stamp(), m.o.FS
	if path == "" || m.polling || m.doc.Flying() {
		return neighbours
	}
	m.polling = true
	return tea.Batch(neighbours, func() tea.Msg {
		out := lookedMsg{path: path, stamp: seen}
		out.changed, out.stamp, out.err = store.Changed(fsys, path, seen)
		if out.changed && !out.stamp.IsZero() {
			out.version = readVersion(fsys, path)
		}
		return out
	})
}

// lookAround gives the command that asks for the holds of the shelf.
func (m *Model) lookAround() tea.Cmd {
	sh, now := m.o.Shelf, m.now()
	if sh == nil || m.looking {
		return nil
	}
	m.looking = true
	return func() tea.Msg { return othersMsg{sh.Holds(now)} }
}

// neighbours takes the holds of the other projects on.
func (m *Model) neighbours(running []shelf.Running) {
	m.looking = false
	var others []project.Hold
	for _, r := range running {
		if !samePath(r.Path, m.doc.Path()) {
			others = append(others, r.Holds...)
		}
	}
	if !reflect.DeepEqual(others, m.others) {
		m.others = others
		m.refreshTime(m.doc.Snapshot(m.o.Clock()))
	}
}

// samePath compares two names of files, one of which may be relative.
func samePath(a, b string) bool {
	if a == "" || b == "" {
		return a == b
	}
	whole := func(p string) string {
		if abs, err := filepath.Abs(p); err == nil {
			return abs
		}
		return p
	}
	return whole(a) == whole(b)
}

func (m *Model) looked(msg lookedMsg) tea.Cmd {
	m.polling = false
	name := filepath.Base(msg.path)
	switch {
	case msg.path != m.doc.Path() || msg.err != nil:
		return nil // another document by now; or the next save will say what is wrong
	case !msg.changed:
		m.doc.Restamp(msg.stamp)
		return nil
	case msg.stamp.IsZero():
		m.doc.Gone()
		m.message = act.Say{Text: name + " was moved or deleted by another program; the next change makes it anew", Warn: true}
		return nil
	}
	switch m.doc.DiskChanged(msg.version) {
	case doc.Loaded:
		m.o.Notices = msg.version.Notices
		m.message = act.Say{Text: name + " was changed by another program: its new state is loaded; u brings yours back"}
		m.refresh()
	case doc.Refused:
		if m.refused.Same(msg.stamp) {
			return nil // said already
		}
		m.refused = msg.stamp
		m.message = act.Say{Text: "changed by another program, and can't be loaded: " + msg.version.Err.Error(), Warn: true}
	case doc.BothSide:
		if s, ok := m.doc.SaveNow(); ok { // it meets theirs, and goes beside
			return m.saving(s)
		}
	}
	return nil
}
