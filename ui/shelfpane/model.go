// Package shelfpane is the shelf on the screen: every project of the folder by what
// needs attention, found by typing, opened, begun, renamed and put away.
package shelfpane

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/shelf"
	"chape/project/shop"
	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/part"
	"chape/ui/term/ink"
)

// Options are what the shelf needs from outside.
type Options struct {
	Shelf  *shelf.Shelf
	Begin  func(title string) project.Project // a new project by the user's defaults
	Clock  func() time.Time                   // the wall clock
	Styles ink.Styles
}

// Model is the shelf's screen. What it gives to do is disk work, whose messages are for
// Update.
type Model struct {
	o        Options
	w, h     int
	entries  []shelf.Entry   // sorted
	twice    map[string]bool // titles that more than one has
	shown    []int           // those found, places in entries
	list     part.List       // of shown
	moved    bool            // somebody has chosen: the choice stays on its project
	find     *part.Ask
	finding  bool // keys go into find
	question *question
	visit    bool      // it was opened for a new project alone
	undos    []undoing // what was changed here, the latest last
	busy     bool      // one of them is being undone
	scan     scanning
	shop     shop.Shop
	queue    shop.Queue
}

// New returns the screen; taken in hand it looks at the folder.
func New(o Options) *Model {
	if o.Clock == nil {
		o.Clock = time.Now
	}
	if o.Begin == nil {
		o.Begin = func(title string) project.Project {
			p := project.New(title, 0, project.Defaults())
			p.Steps = steps.FormThenSew(p.Parts())
			return p
		}
	}
	return &Model{o: o, find: part.NewAsk("", "", longestTitle)}
}

// SetSize sets the cells inside the screen's edge.
func (m *Model) SetSize(w, h int) {
	m.w, m.h = max(w, 0), max(h, 0)
	m.find.SetWidth(m.w - 22) // beside the words before it
	if m.question != nil {
		m.question.SetWidth(m.w)
	}
	m.scroll()
}

// SetSnapshot implements act.Pane: the shelf shows no project's inside, but when each can
// be ready in the shop's hours.
func (m *Model) SetSnapshot(s act.Snapshot) {
	m.shop = s.Shop
	m.scroll()
}

// Chosen is the project in hand.
func (m *Model) Chosen() (shelf.Entry, bool) {
	if m.list.At >= len(m.shown) {
		return shelf.Entry{}, false
	}
	return m.entries[m.shown[m.list.At]], true
}

// Choose picks the project of a path, where it is in sight.
func (m *Model) Choose(path string) {
	for i, e := range m.shown {
		if m.entries[e].Path == path {
			m.choose(i)
			return
		}
	}
}

// Update implements act.Pane.
func (m *Model) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	switch msg := msg.(type) {
	case part.Press:
		return m, m.key(msg)
	case tea.MouseMsg:
		m.mouse(msg)
	case act.InHand:
		m.visit = false
		if msg.Is {
			return m, m.look()
		}
	case act.Begin:
		m.visit = true
		return m, m.askNew()
	case lookedMsg:
		return m, m.looked(msg)
	case batchMsg:
		return m, m.batch(msg)
	case loadedMsg:
		return m, m.askTake(msg)
	case changedMsg:
		return m, m.changed(msg)
	case learnedMsg:
		if m.question == msg.of && msg.of != nil {
			msg.of.past = msg.past
			m.scroll()
		}
	}
	return m, nil
}

func (m *Model) key(p part.Press) []act.Msg {
	switch {
	case m.question != nil:
		return m.reply(p)
	case m.finding:
		return m.findKey(p)
	}
	was := m.list.At
	out, known := m.keys().Take(p)
	m.moved = m.moved || known && m.list.At != was
	m.scroll()
	return out
}

func (m *Model) open(e shelf.Entry) []act.Msg {
	if e.State == shelf.Broken {
		return warn("it can't be opened: " + e.Err)
	}
	if m.find.Text() != "" { // it is found: one Esc shall lead back to it
		m.find.SetText("")
		m.refindFor(e.Path, true)
	}
	return []act.Msg{act.Open{Path: e.Path}}
}

// leave shows everything again or, where everything is shown, goes back.
func (m *Model) leave() []act.Msg {
	if m.find.Text() == "" {
		return []act.Msg{act.Leave{}}
	}
	m.find.SetText("")
	m.refind()
	return nil
}

// seek begins to find by typing.
func (m *Model) seek() { m.finding = true }

// findKey takes a key into the words looked for. Enter goes back to the list, which
// stays as it was found; Esc shows everything again.
func (m *Model) findKey(p part.Press) []act.Msg {
	onList := p.Type == tea.KeyUp || p.Type == tea.KeyDown || p.Type == tea.KeyPgUp || p.Type == tea.KeyPgDown
	if onList {
		m.list.Keys("project").Take(p)
		m.moved = true
		return nil
	}
	switch m.find.Take(p) {
	case part.Typed:
		m.refind()
	case part.Kept:
		m.finding = false
	case part.Dropped:
		m.finding = false
		m.find.SetText("")
		m.refind()
	}
	return nil
}

func (m *Model) mouse(msg tea.MouseMsg) {
	switch {
	case msg.Action != tea.MouseActionPress || m.question != nil:
		return
	case m.list.Wheel(msg):
		m.moved = true
	case msg.Button == tea.MouseButtonLeft && msg.X >= 0 && msg.X < m.w:
		if _, ok := m.list.Click(msg.Y - m.headRows()); ok {
			m.moved = true
		}
	}
	m.scroll()
}

func (m *Model) choose(i int) {
	m.list.At, m.moved = i, true
	m.scroll()
}

// scroll keeps the chosen one on the screen.
func (m *Model) scroll() { m.list.Set(len(m.shown), max(m.rows(), 1)) }
