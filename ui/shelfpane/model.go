// Package shelfpane is the shelf on the screen: every project of the folder by what
// needs attention, found by typing, opened, begun, renamed and put away.
package shelfpane

import (
	"time"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/shelf"
	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/term/ink"
)

// OpenMsg asks for a project to be opened.
type OpenMsg struct{ Path string }

// LeaveMsg asks to go back to what was there before the shelf.
type LeaveMsg struct{}

// Options are what the shelf needs from outside.
type Options struct {
	Shelf  *shelf.Shelf
	Begin  func(title string) project.Project // a new project by the user's defaults
	Clock  func() time.Time                   // the wall clock
	Styles ink.Styles
}

// Model is the shelf's screen. Its commands do disk work: they are to be run by the
// program, beside Update, and all their messages are for Update, but for OpenMsg,
// LeaveMsg and act.Say.
type Model struct {
	KeyMap KeyMap

	o        Options
	w, h     int
	entries  []shelf.Entry   // sorted
	twice    map[string]bool // titles that more than one has
	shown    []int           // those found, places in entries
	at       int             // the chosen one, a place in shown
	top      int             // the first one on the screen
	moved    bool            // somebody has chosen: the choice stays on its project
	find     textinput.Model
	finding  bool // keys go into find
	question *question
	hand     hand
	scan     scanning
}

// New returns the screen; Init gives the command for its first look at the folder.
func New(o Options) Model {
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
	m := Model{KeyMap: DefaultKeyMap(), o: o, find: newInput("", longestTitle)}
	m.find.Prompt = ""
	return m
}

// Init gives the command for the first look.
func (m *Model) Init() tea.Cmd { return m.Look() }

// SetSize sets the cells inside the screen's edge.
func (m *Model) SetSize(w, h int) {
	m.w, m.h = max(w, 0), max(h, 0)
	m.find.Width = max(4, m.w-24)
	if m.question != nil {
		q := *m.question
		q.input.Width = max(4, m.w-2)
		m.question = &q
	}
	m.scroll()
}

// Typing tells whether keys go into a text; the root then keeps its own keys back.
func (m Model) Typing() bool { return m.finding || m.question != nil }

// Chosen is the project in hand.
func (m Model) Chosen() (shelf.Entry, bool) {
	if m.at < 0 || m.at >= len(m.shown) {
		return shelf.Entry{}, false
	}
	return m.entries[m.shown[m.at]], true
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

// Update takes a key, a mouse event in cells of the inside, or what a command of the
// screen found on the disk.
func (m Model) Update(msg tea.Msg) (Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.KeyMsg:
		return m.key(msg)
	case tea.MouseMsg:
		return m.mouse(tea.MouseEvent(msg)), nil
	case lookedMsg:
		return m.looked(msg)
	case batchMsg:
		return m.batch(msg)
	case changedMsg:
		return m.changed(msg)
	}
	return m, nil
}

func (m Model) key(msg tea.KeyMsg) (Model, tea.Cmd) {
	var tool bool
	text, typing := m.typed()
	m.hand, tool = m.hand.key(msg, m.o.Clock(), text, typing)
	switch {
	case tool: // the Enter of a measuring tool
		return m, nil
	case m.question != nil:
		return m.reply(msg)
	case m.finding:
		return m.findKey(msg)
	}
	return m.command(msg)
}

// typed is the text that keys go into.
func (m Model) typed() (text string, typing bool) {
	switch {
	case m.question != nil && m.question.begin == nil:
		return m.question.input.Value(), true
	case m.finding:
		return m.find.Value(), true
	}
	return "", false
}

// move is the keys that choose, in the list and while finding.
func (m *Model) move(msg tea.KeyMsg) bool {
	k, page := m.KeyMap, max(m.rows(), 1)
	for _, move := range []struct {
		key key.Binding
		to  int
	}{
		{k.Up, m.at - 1}, {k.Down, m.at + 1}, {k.PageUp, m.at - page}, {k.PageDown, m.at + page},
		{k.First, 0}, {k.Last, len(m.shown) - 1},
	} {
		if key.Matches(msg, move.key) {
			m.choose(move.to)
			return true
		}
	}
	return false
}

func (m Model) command(msg tea.KeyMsg) (Model, tea.Cmd) {
	if msg.Paste || m.move(msg) {
		return m, nil
	}
	k := m.KeyMap
	switch {
	case key.Matches(msg, k.Find):
		m.finding = true
		return m, m.find.Focus()
	case key.Matches(msg, k.Leave):
		return m.leave()
	case key.Matches(msg, k.Again):
		return m, m.Look()
	case key.Matches(msg, k.New):
		return m.askNew(), nil
	}
	e, ok := m.Chosen()
	if !ok {
		return m, nil
	}
	switch {
	case key.Matches(msg, k.Open):
		return m.open(e)
	case key.Matches(msg, k.From):
		return m.askFrom(e)
	case key.Matches(msg, k.Rename):
		return m.askTitle(e)
	case key.Matches(msg, k.Away):
		return m.putAway(e)
	}
	return m, nil
}

func (m Model) open(e shelf.Entry) (Model, tea.Cmd) {
	if e.State == shelf.Broken {
		return m, warn("it can't be opened: " + e.Err)
	}
	if m.find.Value() != "" { // it is found: one Esc shall lead back to it
		m.find.SetValue("")
		m.refindFor(e.Path, true)
	}
	return m, act.Send(OpenMsg{e.Path})
}

// leave shows everything again or, where everything is shown, goes back.
func (m Model) leave() (Model, tea.Cmd) {
	if m.find.Value() == "" {
		return m, act.Send(LeaveMsg{})
	}
	m.find.SetValue("")
	m.refind()
	return m, nil
}

// findKey takes a key into the words looked for. Enter goes back to the list, which
// stays as it was found; Esc shows everything again.
func (m Model) findKey(msg tea.KeyMsg) (Model, tea.Cmd) {
	k := m.KeyMap
	onList := msg.Type == tea.KeyUp || msg.Type == tea.KeyDown || msg.Type == tea.KeyPgUp || msg.Type == tea.KeyPgDown
	switch {
	case onList && m.move(msg):
		return m, nil
	case key.Matches(msg, k.Keep):
		m.finding = false
		m.find.Blur()
		return m, nil
	case key.Matches(msg, k.Drop):
		m.finding = false
		m.find.Blur()
		m.find.SetValue("")
		m.refind()
		return m, nil
	}
	before := m.find.Value()
	m.find, _ = m.find.Update(msg)
	if m.find.Value() != before {
		m.refind()
	}
	return m, nil
}

func (m Model) mouse(msg tea.MouseEvent) Model {
	if msg.Action != tea.MouseActionPress || m.question != nil {
		return m
	}
	switch msg.Button {
	case tea.MouseButtonWheelUp:
		m.choose(m.at - 1)
	case tea.MouseButtonWheelDown:
		m.choose(m.at + 1)
	case tea.MouseButtonLeft:
		y := msg.Y - m.headRows()
		if y >= 0 && y < min(m.rows(), len(m.shown)-m.top) && msg.X >= 0 && msg.X < m.w {
			m.choose(m.top + y)
		}
	}
	return m
}

func (m *Model) choose(i int) {
	m.at = min(max(i, 0), max(len(m.shown)-1, 0))
	m.moved = true
	m.scroll()
}

// scroll keeps the chosen one on the screen.
func (m *Model) scroll() {
	rows := max(m.rows(), 1)
	m.top = min(m.top, m.at)
	m.top = max(m.top, m.at-rows+1)
	m.top = max(0, min(m.top, len(m.shown)-rows))
}
