// Package comparepage is the page of a project's patterns: any two laid over each other,
// and a table of how they differ.
package comparepage

import (
	"reflect"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/project"
	"chape/project/versions"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/part"
	"chape/ui/term/ink"
)

// Model is the page. It changes nothing.
type Model struct {
	Styles ink.Styles

	w, h    int
	snap    act.Snapshot
	all     []versions.Version
	was, is int // places in all
	pair    versions.Pair
	err     error
	lines   []string // of the tables
	top     int      // the line of them that leads
	curve   bool     // the difference is drawn in place of the patterns
	glyphs  canvas.Glyphs
	c       *canvas.Canvas
	pens    []canvas.Style
}

// New returns the page.
func New(styles ink.Styles) *Model {
	return &Model{Styles: styles, c: canvas.New(0, 0, canvas.Braille), pens: styles.Pens(), was: -1, is: -1}
}

// SetSize sets the cells inside the page's edge.
func (m *Model) SetSize(w, h int) {
	m.w, m.h = max(w, 0), max(h, 0)
	m.scroll()
}

// SetSnapshot shows the page the project as it is now.
func (m *Model) SetSnapshot(s act.Snapshot) {
	same := m.all != nil && alike(m.snap.Project, s.Project) && m.snap.Unit == s.Unit && (m.snap.Plan == nil) == (s.Plan == nil)
	m.snap = s
	m.glyphs = s.Font.Glyphs
	m.c.SetAspect(s.Font.Aspect)
	if same {
		return
	}
	number := -1
	if m.was >= 0 && m.was < len(m.all) && m.was != m.is {
		number = m.all[m.was].Number
	}
	m.all = versions.Of(s.Project)
	m.is, m.was = len(m.all)-1, max(len(m.all)-2, 0)
	for i, v := range m.all[:m.is] {
		if v.Number == number {
			m.was = i
		}
	}
	m.lay()
}

// alike tells whether two states have the same patterns.
func alike(a, b project.Project) bool {
	return a.Revision == b.Revision && reflect.DeepEqual(a.Patterns, b.Patterns) && reflect.DeepEqual(a.Input(calc.Limits{}), b.Input(calc.Limits{})) && a.Customer == b.Customer
}

// lay lays the chosen two over each other.
func (m *Model) lay() {
	m.pair, m.err, m.lines = versions.Pair{}, nil, nil
	limits := calc.DefaultLimits()
	if m.snap.Plan != nil {
		limits = m.snap.Plan.Input.Limits
	}
	if m.pair, m.err = versions.Between(m.all[m.was], m.all[m.is], limits); m.err != nil {
		m.pair = versions.Pair{}
		return
	}
	m.lines = m.tables()
	m.scroll()
}

// laid tells whether there are two to be seen.
func (m *Model) laid() bool { return m.pair.IsPlan != nil && m.was != m.is }

// Update implements act.Pane.
func (m *Model) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	switch msg := msg.(type) {
	case part.Press:
		out, _ := m.keys().Take(msg)
		return m, out
	case tea.MouseMsg:
		switch {
		case msg.Action != tea.MouseActionPress:
		case msg.Button == tea.MouseButtonWheelUp:
			m.roll(-1)
		case msg.Button == tea.MouseButtonWheelDown:
			m.roll(1)
		}
	}
	return m, nil
}

func (m *Model) keys() part.Keys {
	turn := func(which *int, by int) func() []act.Msg {
		return part.Quiet(func() {
			*which = (*which + by + len(m.all)) % len(m.all)
			m.lay()
		})
	}
	roll := func(by int) func() []act.Msg { return part.Quiet(func() { m.roll(by) }) }
	const end = 1 << 20
	back := part.Key("Esc", "back", func() []act.Msg { return []act.Msg{act.Leave{}} }, "esc").Foot("back")
	if len(m.all) < 2 { // the others would do nothing
		return part.Keys{back}
	}
	return part.Keys{
		part.Key("→", "the thin one: the next number", turn(&m.was, 1), "right").Foot("other thin one"),
		part.Key("←", "the thin one: the number before", turn(&m.was, -1), "left"),
		part.Key("]", "the heavy one: the next number", turn(&m.is, 1), "]").Foot("other heavy one"),
		part.Key("[", "the heavy one: the number before", turn(&m.is, -1), "["),
		part.Key("p", "print both on a page, with the table", m.print, "p").Foot("print both"),
		part.Key("v", "the difference as a curve, or the patterns", part.Quiet(func() { m.curve = !m.curve }), "v").Foot("curve"),
		back,
		part.Key("↑", "table up", roll(-1), "up"),
		part.Key("↓", "table down", roll(1), "down"),
		part.Key("PgUp", "a page up", part.Quiet(func() { m.roll(-m.pageful()) }), "pgup"),
		part.Key("PgDn", "a page down", part.Quiet(func() { m.roll(m.pageful()) }), "pgdown"),
		part.Key("Home", "top of the tables", roll(-end), "home"),
		part.Key("End", "their end", roll(end), "end"),
	}
}

func (m *Model) print() []act.Msg {
	if !m.laid() {
		return []act.Msg{act.Say{Text: "twice the same pattern: ← or → takes another one"}}
	}
	return []act.Msg{act.PrintPair{Pair: m.pair}}
}

// Keys implements act.Pane.
func (m *Model) Keys() []act.Section { return []act.Section{m.keys().Section("Patterns", true)} }
