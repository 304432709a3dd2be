// Package knifepane is the pane with the numbers: the knife, its marks, the
// sheath, the belt and the stitches, each with its name, unit and error.
package knifepane

import (
	"errors"
	"strconv"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/ui/act"
	"chape/ui/term/ink"
)

// Model is the pane. It shows the last Snapshot it was given.
type Model struct {
	Keys   KeyMap
	Styles ink.Styles
	ASCII  bool // the terminal has plain characters only

	snap   act.Snapshot
	rows   []row
	line   int // the row in hand, never a heading
	column int // the cell in hand
	top    int // the first row shown
	width  int
	height int
	edit   *edit
	placed bool // the cursor has been put on its first row
	wanted *place
	warned bool // the last key would have put measured marks away, and was not obeyed
	again  bool // the key before this one was
}

// New gives the pane; it shows nothing before it has a snapshot and a size.
func New(styles ink.Styles) Model {
	return Model{Keys: DefaultKeys(), Styles: styles}
}

// SetSize sets the room inside the frame, in cells.
func (m *Model) SetSize(width, height int) {
	if width != m.width || height != m.height {
		m.top = 0 // as much as fits above the row in hand
	}
	m.width, m.height = max(0, width), max(0, height)
	m.scroll()
}

// SetSnapshot shows another state of the project.
func (m *Model) SetSnapshot(s act.Snapshot) {
	was := m.cell()
	m.snap = s
	m.rows = rowsOf(s.Project)
	if !m.placed && len(m.rows) > 0 {
		m.placed = true
		m.line, m.column = m.findNumber(-1, 0, 1)
	}
	if f, ok := m.field(); was != nil && (!ok || f.Key != was.Key || f.Index != was.Index) {
		m.goTo(was.Key, was.Index) // the rows above have moved
	}
	if w := m.wanted; w != nil && m.goTo(w.key, w.index) {
		m.wanted = nil
	}
	m.clamp()
	if m.edit == nil {
		m.followMark()
	}
}

// followMark keeps to the mark that was chosen elsewhere.
func (m *Model) followMark() {
	if r := m.row(); r.list == "mark" && r.index != m.snap.Mark {
		for i, other := range m.rows {
			if other.list == "mark" && other.index == m.snap.Mark && !other.isHeading() {
				m.line = i
			}
		}
		m.clamp()
	}
}

func (m *Model) row() row {
	if m.line < 0 || m.line >= len(m.rows) {
		return row{}
	}
	return m.rows[m.line]
}

// field is the field in hand.
func (m *Model) field() (project.Field, bool) {
	r := m.row()
	if m.column < 0 || m.column >= len(r.cells) {
		return project.Field{}, false
	}
	return r.cells[m.column], true
}

func (m *Model) cell() *project.Field {
	if f, ok := m.field(); ok {
		return &f
	}
	return nil
}

// goTo puts the cursor on a field, if it is there.
func (m *Model) goTo(key string, index int) bool {
	for i, r := range m.rows {
		for j, f := range r.cells {
			if f.Key == key && f.Index == index {
				m.line, m.column = i, j
				m.scroll()
				return true
			}
		}
	}
	return false
}

// clamp puts the cursor back onto a field after the rows have changed.
func (m *Model) clamp() {
	if len(m.rows) == 0 {
		return
	}
	m.line = max(0, min(m.line, len(m.rows)-1))
	for m.line+1 < len(m.rows) && m.rows[m.line].isHeading() {
		m.line++
	}
	m.column = max(0, min(m.column, len(m.rows[m.line].cells)-1))
	m.scroll()
}

// Editing tells whether a value is being typed: then every key belongs to it.
func (m *Model) Editing() bool { return m.edit != nil }

// Problem is why what is being typed will not do, in the words of the screen; nil
// otherwise.
func (m *Model) Problem() error {
	if m.edit == nil || m.edit.empty() || m.edit.err == nil {
		return nil
	}
	return errors.New(m.edit.name() + ": " + m.edit.why())
}

// Update takes a message as every part does; the root uses Key instead, which
// knows a tool's reading from a hand.
func (m *Model) Update(msg tea.Msg) tea.Cmd {
	if k, ok := msg.(tea.KeyMsg); ok {
		return m.Key(k, false)
	}
	return nil
}

// Key takes one key. reading says that it is the Enter of a measuring tool.
func (m *Model) Key(k tea.KeyMsg, reading bool) tea.Cmd {
	if len(m.rows) == 0 {
		return nil
	}
	m.wanted = nil
	m.again, m.warned = m.warned, false
	defer m.scroll() // the lines at the foot may have become more or fewer
	if m.edit != nil {
		return m.editKey(k, reading)
	}
	return m.browseKey(k, reading)
}

func (m *Model) browseKey(k tea.KeyMsg, reading bool) tea.Cmd {
	f, _ := m.field()
	switch {
	case k.Paste:
		return m.paste(k)
	case k.Type == tea.KeyRunes && !k.Alt && numeric(f) && startsNumber(k.Runes[0]):
		return m.begin("", k)
	case key.Matches(k, m.Keys.Next):
		if reading {
			return nil // it was typed at something that takes no number
		}
		return m.enter(f)
	case key.Matches(k, m.Keys.Edit):
		return m.open(f)
	case key.Matches(k, m.Keys.Clear):
		if numeric(f) {
			return m.begin("", tea.KeyMsg{})
		}
	case key.Matches(k, m.Keys.Cycle):
		return m.cycle(f, 1)
	default:
		return m.moveOrChange(k, f)
	}
	return nil
}

func (m *Model) moveOrChange(k tea.KeyMsg, f project.Field) tea.Cmd {
	switch {
	case key.Matches(k, m.Keys.Previous):
		return m.hop(-1)
	case key.Matches(k, m.Keys.Up):
		return m.move(-1)
	case key.Matches(k, m.Keys.Down):
		return m.move(1)
	case key.Matches(k, m.Keys.Left):
		return m.sideways(f, -1)
	case key.Matches(k, m.Keys.Right):
		return m.sideways(f, 1)
	case key.Matches(k, m.Keys.PageUp):
		return m.move(-m.page())
	case key.Matches(k, m.Keys.PageDown):
		return m.move(m.page())
	case key.Matches(k, m.Keys.First):
		return m.move(-len(m.rows))
	case key.Matches(k, m.Keys.Last):
		return m.move(len(m.rows))
	}
	return m.change(k)
}

// enter opens a text or goes on to the next number.
func (m *Model) enter(f project.Field) tea.Cmd {
	if !numeric(f) && !cycles(f) {
		return m.open(f)
	}
	return m.hop(1)
}

// open edits the value that stands.
func (m *Model) open(f project.Field) tea.Cmd {
	if cycles(f) {
		return m.cycle(f, 1)
	}
	text := f.Show(m.snap.Project)
	if f.Auto != "" && text == f.Auto {
		text = ""
	}
	return m.begin(text, tea.KeyMsg{})
}

func (m *Model) paste(k tea.KeyMsg) tea.Cmd {
	f, ok := m.field()
	runes := firstLine(k.Runes)
	name := f.NameIn(m.snap.Project)
	switch {
	case !ok || len(runes) == 0:
		return nil
	case cycles(f):
		return act.Send(act.Say{Text: name + " takes no text: Space goes through the choices", Warn: true})
	case !numeric(f):
		return act.Send(act.Say{Text: "Enter opens the text, then paste"})
	case !startsNumber(runes[0]):
		text := strconv.Quote(ansi.Truncate(string(runes), longestLabel, "…"))
		return act.Send(act.Say{Text: text + " is not a number: paste a figure, with its unit or without; " + name + " stays", Warn: true})
	}
	return m.begin("", k)
}

// begin opens an edit and gives it its first key, if there is one.
func (m *Model) begin(text string, first tea.KeyMsg) tea.Cmd {
	f, ok := m.field()
	if !ok {
		return nil
	}
	m.edit = begin(f, m.snap.Project, text)
	if len(first.Runes) == 0 {
		return nil
	}
	return m.edit.key(first, m.Keys.NewLine)
}
