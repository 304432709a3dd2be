// Package drypane is the page of the weighings: what the sheath weighed while
// it dried, and when it will be dry.
package drypane

import (
	"slices"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/project/weigh"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/term/ink"
)

// Model is the page. It never changes the project: it sends act.Commit.
type Model struct {
	KeyMap KeyMap
	Styles ink.Styles

	now    func() time.Time
	w, h   int
	snap   act.Snapshot
	dry    weigh.Drying // what the snapshot's weighings say
	rows   []int        // the weighings as shown, by time
	at     int          // the chosen row
	top    int          // the first one shown
	curve  bool         // where table and curve do not both fit: the curve
	entry  *entry
	pace   pace
	glyphs canvas.Glyphs
	c      *canvas.Canvas // kept between frames
	pens   []canvas.Style
}

// New returns the page. Now is the clock that weighings are noted by (time.Now).
func New(now func() time.Time, styles ink.Styles) Model {
	return Model{
		KeyMap: DefaultKeyMap(), Styles: styles, now: now,
		dry: weigh.DryingOf(nil, 0), c: canvas.New(0, 0, canvas.Braille), pens: styles.Pens(),
	}
}

// SetSize sets the cells inside the page's edge.
func (m *Model) SetSize(w, h int) {
	m.w, m.h = max(w, 0), max(h, 0)
	if m.entry != nil {
		e := *m.entry
		e.input.Width = inputWidth(m.w)
		m.entry = &e
	}
	m.scroll()
}

// SetGlyphs chooses the characters of the curve; aspect is the height of a cell
// in cell widths.
func (m *Model) SetGlyphs(g canvas.Glyphs, aspect float64) {
	m.glyphs = g
	m.c.SetAspect(aspect)
}

// SetSnapshot shows the page the project as it is now.
func (m *Model) SetSnapshot(s act.Snapshot) {
	first := m.snap.Now.IsZero()
	same := slices.EqualFunc(m.snap.Project.Weigh, s.Project.Weigh, equal)
	m.snap = s
	if !same {
		m.dry = weigh.DryingOf(s.Project.Weigh, s.Scale)
		m.rows = slices.Clone(m.dry.Earlier)
		if m.dry.Before >= 0 {
			m.rows = append(m.rows, m.dry.Before)
		}
		m.rows = append(m.rows, m.dry.Rows...)
	}
	if first {
		m.at = len(m.rows) - 1 // the latest
	}
	m.scroll()
}

func equal(a, b weigh.Weighing) bool {
	return a.When.Equal(b.When) && a.Grams == b.Grams && a.State == b.State
}

// Typing tells whether keys go into a text or answer a question; the root then
// keeps its own keys back.
func (m Model) Typing() bool { return m.entry != nil }

// Close gives up what is being typed, when the page is left.
func (m *Model) Close() { m.entry = nil }

// wall is the time to note, in the location of the screen's clock.
func (m Model) wall() time.Time { return m.now().Round(0).In(m.snap.Now.Location()) }

// weighing is the chosen one and its place in the project.
func (m Model) weighing() (weigh.Weighing, int, bool) {
	if len(m.rows) == 0 {
		return weigh.Weighing{}, -1, false
	}
	i := m.rows[min(m.at, len(m.rows)-1)]
	return m.snap.Project.Weigh[i], i, true
}

// Update takes a key, or a mouse event in cells of the page's inside.
func (m Model) Update(msg tea.Msg) (Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.KeyMsg:
		var by hand
		m.pace, by = m.pace.key(msg, m.now())
		if m.entry != nil {
			return m.reply(msg, by)
		}
		return m.command(msg)
	case tea.MouseMsg:
		return m.mouse(tea.MouseEvent(msg)), nil
	}
	return m, nil
}

func (m Model) mouse(msg tea.MouseEvent) Model {
	if msg.Action != tea.MouseActionPress || m.entry != nil {
		return m
	}
	switch msg.Button {
	case tea.MouseButtonWheelUp:
		m.choose(m.at - 1)
	case tea.MouseButtonWheelDown:
		m.choose(m.at + 1)
	case tea.MouseButtonLeft:
		t := m.arrange().table
		if row := m.top + msg.Y - t.Y - 1; t.Contains(msg.X, msg.Y) && msg.Y > t.Y && row < len(m.rows) {
			m.choose(row)
		}
	}
	return m
}

// command carries out a key while nothing is being typed.
func (m Model) command(msg tea.KeyMsg) (Model, tea.Cmd) {
	if begins(msg) {
		return m.askWeight(string(msg.Runes), msg.Paste), nil
	}
	if msg.Paste {
		return m, nil
	}
	k, page := m.KeyMap, max(m.arrange().table.H-1, 1)
	for _, move := range []struct {
		key key.Binding
		to  int
	}{
		{k.Up, m.at - 1}, {k.Down, m.at + 1}, {k.PageUp, m.at - page}, {k.PageDown, m.at + page}, {k.First, 0}, {k.Last, len(m.rows) - 1},
	} {
		if key.Matches(msg, move.key) {
			m.choose(move.to)
			return m, nil
		}
	}
	for _, c := range []struct {
		key   key.Binding
		do    func(Model) (Model, tea.Cmd)
		ofRow bool
	}{
		{k.Before, Model.askBefore, false}, {k.Temperature, Model.askTemperature, false}, {k.Humidity, Model.askHumidity, false},
		{k.Curve, Model.turn, false}, {k.Grams, Model.askGrams, true}, {k.Time, Model.askTime, true}, {k.State, Model.turnState, true},
		{k.Remove, Model.askRemove, true},
	} {
		if key.Matches(msg, c.key) && (len(m.rows) > 0 || !c.ofRow) {
			return c.do(m)
		}
	}
	return m, nil
}

func (m Model) turn() (Model, tea.Cmd) {
	m.curve = !m.curve
	return m, nil
}

func (m *Model) choose(i int) {
	m.at = i
	m.scroll()
}

// scroll keeps the chosen row there and in sight.
func (m *Model) scroll() {
	m.at = max(0, min(m.at, len(m.rows)-1))
	rows := max(m.arrange().table.H-1, 1)
	m.top = max(min(m.top, m.at), m.at-rows+1)
	m.top = max(0, min(m.top, len(m.rows)-rows))
}
