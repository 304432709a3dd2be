package workbench

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/project/store"
	"chape/ui/act"
	"chape/ui/session"
)

// keep gives a loose copy a file on the shelf, or saves again at once.
func (m *Model) keep() tea.Cmd {
	if m.doc.State() == session.Failed && m.o.Shelf != nil {
		m.question = m.elsewhereQuestion()
		return nil
	}
	if m.doc.Path() != "" {
		return m.saveNow()
	}
	if m.o.Shelf == nil {
		m.message = act.Say{Text: "there is no folder to keep it in: start with chape new FILE", Warn: true}
		return nil
	}
	return m.keepOnShelf()
}

// saveNow saves, or looks whether what was saved is still there, and has it said
// when it is known to be on the disk.
func (m *Model) saveNow() tea.Cmd {
	if s, ok := m.doc.SaveNow(); ok {
		m.asked = true
		return m.saving(s)
	}
	if m.doc.Flying() {
		m.asked = true
		return nil
	}
	return m.lookAtFile(true)
}

// saySaved answers who asked for a save.
func (m *Model) saySaved() {
	if m.asked && !m.doc.Unsaved() {
		m.asked = false
		m.message = act.Say{Text: "saved in " + m.doc.Path()}
	}
}

// keepOnShelf gives the document a file of its own on the shelf.
func (m *Model) keepOnShelf() tea.Cmd {
	if m.keeping {
		return nil // a held key makes one file
	}
	m.keeping = true
	d, p, rev, sh, fsys := m.doc, m.doc.Committed(), m.doc.Rev(), m.o.Shelf, m.o.FS
	return func() tea.Msg {
		out := keptMsg{doc: d, rev: rev}
		if out.path, out.err = sh.Create(p); out.err == nil {
			_, out.stamp, out.err = store.Read(fsys, out.path)
		}
		return out
	}
}

// keptMsg tells where a loose copy was put.
type keptMsg struct {
	doc   *session.Doc // as it was then: another one may be open by now
	path  string
	rev   uint64
	stamp store.Stamp
	err   error
}

func (m *Model) kept(msg keptMsg) tea.Cmd {
	m.keeping = false
	if msg.err != nil {
		m.quitting, m.next = false, ""
		m.message = act.Say{Text: "not kept: " + msg.err.Error(), Warn: true}
		return nil
	}
	m.message = act.Say{Text: "kept as " + msg.path}
	if msg.doc != m.doc {
		return nil
	}
	m.moving(func() { m.doc.Kept(msg.path, msg.rev, msg.stamp) })
	m.refresh()
	return m.afterSave()
}
