package workbench

import (
	"errors"
	"path/filepath"
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/file"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/session"
	"chape/ui/shelfpane"
)

// place is what stands between the head and the foot.
type place uint8

const (
	onPanes  place = iota // knife, plan and steps
	onShelf               // every project of the folder
	onDrying              // the weighings
)

// goTo shows another place; a number being typed is kept or dropped first.
func (m *Model) goTo(p place) tea.Cmd {
	var cmd tea.Cmd
	if m.at == onPanes {
		left, ok := m.knife.Leave()
		if cmd = m.run(left); !ok {
			return cmd
		}
	}
	m.dry.Close()
	m.at = p
	m.refresh()
	if p == onShelf {
		return tea.Batch(cmd, m.shelf.Look())
	}
	return cmd
}

// placeKey takes a key on the shelf or the page of weighings. Only those keys of
// the root are alive there that make sense.
func (m *Model) placeKey(k tea.KeyMsg) tea.Cmd {
	if m.placeTyping() {
		switch {
		case key.Matches(k, m.Keys.Break): // as in an edit: first what is typed, then the program
			return m.toPlace(tea.KeyMsg{Type: tea.KeyEsc})
		case key.Matches(k, m.Keys.Suspend):
			return m.suspend()
		}
	} else {
		switch {
		case key.Matches(k, m.Keys.Quit), key.Matches(k, m.Keys.Break):
			return m.quit()
		case key.Matches(k, m.Keys.Help):
			m.help = &help{}
			return nil
		case key.Matches(k, m.Keys.Suspend):
			return m.suspend()
		case m.at == onDrying && key.Matches(k, m.Keys.Undo):
			return m.undo()
		case m.at == onDrying && key.Matches(k, m.Keys.Redo):
			return m.redo()
		case m.at == onDrying && key.Matches(k, m.dry.KeyMap.Leave):
			return m.goTo(onPanes)
		}
	}
	return m.toPlace(k)
}

// toPlace hands a message to what is shown. The shelf's commands do disk work and
// are left to the program; the weighings' are done at once.
func (m *Model) toPlace(msg tea.Msg) tea.Cmd {
	var cmd tea.Cmd
	if m.at == onShelf {
		m.shelf, cmd = m.shelf.Update(msg)
		return cmd
	}
	m.dry, cmd = m.dry.Update(msg)
	return m.run(cmd)
}

// leaveShelf goes back to the project, if one is open.
func (m *Model) leaveShelf() tea.Cmd {
	if m.bare {
		m.message = act.Say{Text: "Enter opens a project, n begins one, q quits"}
		return nil
	}
	return m.goTo(onPanes)
}

// open goes over to another project, as soon as this one is on the disk.
func (m *Model) open(path string) tea.Cmd {
	switch {
	case m.bringing:
		return nil // Enter pressed twice opens once
	case samePath(path, m.doc.Path()):
		return m.goTo(onPanes)
	case !m.doc.Unsaved():
		return m.opening(path)
	case m.doc.Path() == "":
		m.question = m.leaveCopyQuestion(path)
		return nil
	}
	m.next = path
	if s, ok := m.doc.SaveNow(); ok {
		return m.saving(s)
	}
	return nil // the running save goes on with it
}

// leaveCopyQuestion asks before a changed copy without a file is left for
// another project.
func (m *Model) leaveCopyQuestion(path string) *question {
	return &question{
		title: "This copy is not kept",
		text:  []string{"You have changed it, and it has no file yet."},
		choices: []choice{
			{"k", "keep it as a project, and open the other one", func() tea.Cmd {
				m.next = path
				return m.keep()
			}},
			{"d", "drop it, and open the other one", func() tea.Cmd { return m.opening(path) }},
		},
	}
}

// openedMsg brings a project from the disk.
type openedMsg struct {
	path      string
	rev       uint64 // of the document that was left for it
	doc       *session.Doc
	notices   file.Notices
	lock      *store.Lock
	elsewhere bool
	err       error
}

func (m *Model) opening(path string) tea.Cmd {
	fsys, document := m.o.FS, m.o.Document
	if document == nil {
		return func() tea.Msg { return openedMsg{err: errors.New("this workbench opens no other project")} }
	}
	m.bringing = true
	out := openedMsg{path: path, rev: m.doc.Rev()}
	return func() tea.Msg {
		data, stamp, err := store.Read(fsys, path)
		if err != nil {
			out.err = err
			return out
		}
		var p project.Project
		if p, out.notices, out.err = file.Decode(filepath.Base(path), data); out.err != nil {
			return out
		}
		out.doc = document(p, path, stamp)
		out.lock, out.elsewhere = store.TakeLock(fsys, path)
		return out
	}
}

// opened shows the project that was brought.
func (m *Model) opened(msg openedMsg) tea.Cmd {
	m.next, m.bringing = "", false
	switch {
	case msg.err != nil:
		m.message = act.Say{Text: msg.err.Error(), Warn: true}
		return nil
	case m.doc.Unsaved() && m.doc.Rev() != msg.rev: // changed while a slow disk was read
		return tea.Batch(giveBack(msg.lock), m.open(msg.path))
	}
	old := m.o.Lock
	next := m.takeBack(msg.doc)
	m.leave()
	m.doc, m.o.Notices, m.o.Lock = next, msg.notices, msg.lock
	m.bare = false
	m.polling = false
	m.makePanes()
	m.at, m.focus = onPanes, layout.Knife
	if msg.elsewhere {
		m.message = act.Say{Text: "this project is open in another window as well: changes made there show here"}
	}
	m.refresh()
	m.voice(m.o.Voice.Title(m.title()))
	return tea.Batch(giveBack(old), m.look())
}

// mostLeft is of how many projects that were left the changes can be taken back.
const mostLeft = 8

// leave keeps the document for when it is opened again.
func (m *Model) leave() {
	if m.doc.Path() != "" && m.doc.State() == session.Saved {
		m.doc.Drop()
		m.left = slices.Insert(m.left, 0, m.doc)
		m.left = m.left[:min(len(m.left), mostLeft)]
	}
}

// takeBack gives the document that was left in the same file, with its changes to take
// back, if the file is as it left it.
func (m *Model) takeBack(fresh *session.Doc) *session.Doc {
	i := slices.IndexFunc(m.left, func(d *session.Doc) bool { return samePath(d.Path(), fresh.Path()) })
	if i < 0 {
		return fresh
	}
	known := m.left[i]
	m.left = slices.Delete(m.left, i, i+1)
	if !known.Stamp().Same(fresh.Stamp()) {
		return fresh
	}
	known.Restamp(fresh.Stamp())
	return known
}

// giveBack gives the command that ends the note of an open file.
func giveBack(l *store.Lock) tea.Cmd {
	if l == nil {
		return nil
	}
	return func() tea.Msg {
		l.Release()
		return nil
	}
}

// shelfMessage deals with what the shelf asks for; ok is false for other
// messages.
func (m *Model) shelfMessage(msg tea.Msg) (cmd tea.Cmd, ok bool) {
	switch msg := msg.(type) {
	case shelfpane.OpenMsg:
		return m.open(msg.Path), true
	case shelfpane.LeaveMsg:
		return m.leaveShelf(), true
	case openedMsg:
		return m.opened(msg), true
	}
	return nil, false
}

// afterSave goes on with what was waiting for the document to be on the disk.
func (m *Model) afterSave() tea.Cmd {
	if m.doc.Unsaved() {
		return m.save()
	}
	switch {
	case m.quitting:
		return tea.Quit
	case m.next != "":
		return m.opening(m.next)
	}
	return nil
}

// saveFailed gives up what was waiting for a save that failed.
func (m *Model) saveFailed() {
	switch {
	case m.quitting:
		m.question = m.lossQuestion()
	case m.next != "":
		m.message = act.Say{Text: "the other project is not opened, for this one can't be saved: " + reason(m.doc.Failure()), Warn: true}
	}
	m.quitting, m.asked, m.next = false, false, ""
}
