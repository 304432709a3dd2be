// Package knifepane is the pane with the numbers: the knife, its marks, the
// sheath, the belt and the stitches, each with its name, unit and error.
package knifepane

import (
	"reflect"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/entry"
	"chape/ui/form"
	"chape/ui/part"
	"chape/ui/term/ink"
)

// Model is the pane. It shows the last Snapshot it was given.
type Model struct {
	Styles ink.Styles

	snap    act.Snapshot
	page    form.Page
	rows    []form.Row // of the page
	line    int        // the row in hand, never a heading
	column  int        // the cell in hand
	top     int        // the first row shown
	spots   [form.Pages]spot
	width   int
	height  int
	edit    *entry.Entry
	placed  bool // the cursor has been put on its first row
	wanted  *place
	warned  bool     // the last key would have put measured marks away, and was not obeyed
	meant   bool     // the key before this one was, and this is the same again
	pressed string   // the last key
	full    bool     // a tool has typed the page's last number, and nothing else was pressed since
	spare   []string // the readings after that

	doubts []*entry.Entry  // what waits to be said to be meant, on rows that were left
	met    map[string]bool // the choices and texts that the cursor has been on

	c *canvas.Canvas // kept between frames
}

// New gives the pane; it shows nothing before it has a snapshot and a size.
func New(styles ink.Styles) *Model {
	return &Model{Styles: styles, met: map[string]bool{}, c: canvas.New(0, 0, canvas.Braille)}
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
	if e := m.edit; e != nil && e.Released() && !reflect.DeepEqual(e.Shown, s.Project) {
		m.edit = nil // undone over it
	}
	m.snap = s
	m.rows = form.Rows(m.page, s.Project)
	if !m.placed && len(m.rows) > 0 {
		m.placed = true
		m.line, m.column, _ = find(m.rows, 0, 0, 1, m.isNumber)
	}
	if f, ok := m.field(); was != nil && (!ok || f.Key != was.Key || f.Index != was.Index) {
		m.goTo(was.Key, was.Index) // the rows above have moved
	}
	if w := m.wanted; w != nil && m.goTo(w.key, w.Index) {
		m.wanted = nil
	}
	m.clamp()
	if m.edit == nil {
		m.followMark()
		if f, ok := m.field(); ok && m.full {
			m.edit = m.takeDoubt(f) // what a tool typed is shown no more
		}
	}
}

// followMark keeps to the mark that was chosen elsewhere.
func (m *Model) followMark() {
	if r := m.row(); r.List == "mark" && r.Index != m.snap.Mark {
		for i, other := range m.rows {
			if other.List == "mark" && other.Index == m.snap.Mark && !other.IsHeading() {
				m.line = i
			}
		}
		m.clamp()
	}
}

func (m *Model) row() form.Row {
	if m.line < 0 || m.line >= len(m.rows) {
		return form.Row{}
	}
	return m.rows[m.line]
}

// field is the field in hand.
func (m *Model) field() (project.Field, bool) {
	r := m.row()
	if m.column < 0 || m.column >= len(r.Cells) {
		return project.Field{}, false
	}
	return r.Cells[m.column], true
}

func (m *Model) cell() *project.Field {
	if f, ok := m.field(); ok {
		return &f
	}
	return nil
}

// goTo puts the cursor on a field, if it is there.
func (m *Model) goTo(key string, index int) bool {
	page, ok := form.OfKey(key)
	if !ok {
		return false
	}
	rows := m.rows
	if page != m.page {
		rows = form.Rows(page, m.snap.Project)
	}
	for i, r := range rows {
		for j, f := range r.Cells {
			if f.Key == key && f.Index == index {
				m.show(page)
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
	for m.line+1 < len(m.rows) && m.rows[m.line].IsHeading() {
		m.line++
	}
	m.column = max(0, min(m.column, len(m.rows[m.line].Cells)-1))
	m.scroll()
}

// Update implements act.Pane.
func (m *Model) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	switch msg := msg.(type) {
	case part.Press:
		return m, m.key(msg)
	case tea.MouseMsg:
		return m, m.mouse(msg)
	case act.Seek:
		if m.edit == nil {
			m.goTo(msg.Key, msg.Index)
			return m, m.chosen()
		}
	case act.InHand:
		if !msg.Is {
			return m, m.left()
		}
	}
	return m, nil
}

func (m *Model) key(p part.Press) []act.Msg {
	if len(m.rows) == 0 && m.page == form.Knife || p.Echo {
		return nil
	}
	m.wanted = nil
	m.full = m.full && (p.Type == tea.KeyRunes || p.Type == tea.KeySpace || p.Tool())
	m.meant, m.warned, m.pressed = m.warned && m.pressed == p.String(), false, p.String()
	defer m.arrive()
	if m.edit != nil {
		return m.editKey(p)
	}
	f, ok := m.field()
	switch {
	case p.Paste:
		return m.paste(p)
	case ok && (form.Numeric(f) || f.Kind == project.Date) && part.StartsNumber(p.KeyMsg):
		return m.begin("", p)
	case ok && form.Cycles(f) && part.StartsNumber(p.KeyMsg):
		return m.beginNext(f, p)
	case part.StartsNumber(p.KeyMsg) && m.Writing():
		return []act.Msg{act.Say{Text: "Enter opens the text, then a figure can be typed"}}
	}
	if act.Writes(m, p.KeyMsg) && (p.Hasty() || p.Command()) {
		return m.write(f, p)
	}
	out, _ := m.keys().Take(p)
	return out
}

// beginNext begins a number that is typed on a choice: it is the next number's.
func (m *Model) beginNext(f project.Field, first part.Press) []act.Msg {
	i, j, ok := find(m.rows, m.line, m.column+1, 1, m.isNumber)
	if !ok {
		return []act.Msg{act.Say{Text: "no number here: " + f.NameIn(m.snap.Project) + " is a choice, Space changes it", Warn: true}}
	}
	m.line, m.column = i, j
	if m.arrive(); m.edit != nil { // asked about
		return m.another(first)
	}
	return append(m.chosen(), m.begin("", first)...)
}

// Writing implements act.Writer.
func (m *Model) Writing() bool {
	f, ok := m.field()
	return ok && m.edit == nil && !form.Numeric(f) && !form.Cycles(f)
}

// write begins a text with its first letter: anew, but notes go on behind what stands.
func (m *Model) write(f project.Field, first part.Press) []act.Msg {
	stands := ""
	if f.Kind == project.Lines {
		if stands = f.Show(m.snap.Project); stands != "" {
			stands += "\n"
		}
	}
	return m.begin(stands, first)
}

// enter opens a text or goes on to the next number; the first time to each choice and text, too.
func (m *Model) enter() []act.Msg {
	f, ok := m.field()
	switch {
	case ok && !form.Numeric(f) && !form.Cycles(f):
		return m.open()
	case ok && f.IsUntouched(m.snap.Project): // Enter says that it is right
		e := entry.New(f, m.snap.Project, f.Show(m.snap.Project), m.snap.Now)
		return append(m.stroll(), e.Commit()...)
	}
	return m.stroll()
}

// open edits the value that stands.
func (m *Model) open() []act.Msg {
	f, ok := m.field()
	switch {
	case !ok:
		return nil
	case form.Cycles(f):
		return m.cycle(f, 1)
	}
	text := f.Show(m.snap.Project)
	if f.Auto != "" && text == f.Auto {
		text = ""
	}
	return m.begin(text, part.Press{})
}

// empty begins a number with nothing in it.
func (m *Model) empty() []act.Msg {
	if f, ok := m.field(); !ok || !form.Numeric(f) {
		return nil
	}
	return m.begin("", part.Press{})
}

// turnChoice goes to another choice of the field in hand.
func (m *Model) turnChoice(by int) []act.Msg {
	f, ok := m.field()
	if !ok {
		return nil
	}
	return m.cycle(f, by)
}

// begin opens an edit and gives it its first key, if there is one.
func (m *Model) begin(text string, first part.Press) []act.Msg {
	f, ok := m.field()
	if !ok {
		return nil
	}
	m.edit = entry.New(f, m.snap.Project, text, m.snap.Now)
	if len(first.Runes) == 0 {
		return nil
	}
	return m.edit.Key(first)
}
