// Package drypane is the page of the weighings: what the sheath weighed while
// it dried, and when it will be dry.
package drypane

import (
	"slices"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/weigh"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/part"
	"chape/ui/term/ink"
)

// Model is the page. It never changes the project: it sends act.Commit.
type Model struct {
	Styles ink.Styles

	now    func() time.Time
	w, h   int
	snap   act.Snapshot
	dry    weigh.Drying // what the snapshot's weighings say
	rows   []int        // the weighings as shown, by time
	list   part.List
	toLast bool // the next snapshot brings the row to choose
	curve  bool // where table and curve do not both fit: the curve
	entry  *entry
	glyphs canvas.Glyphs
	c      *canvas.Canvas // kept between frames
	pens   []canvas.Style
}

// New returns the page. Now is the clock that weighings are noted by (time.Now).
func New(now func() time.Time, styles ink.Styles) *Model {
	return &Model{
		Styles: styles, now: now,
		dry: weigh.DryingOf(nil, 0), c: canvas.New(0, 0, canvas.Braille), pens: styles.Pens(),
	}
}

// SetSize sets the cells inside the page's edge.
func (m *Model) SetSize(w, h int) {
	m.w, m.h = max(w, 0), max(h, 0)
	if m.entry != nil {
		m.entry.SetWidth(m.w)
	}
	m.scroll()
}

// SetSnapshot shows the page the project as it is now.
func (m *Model) SetSnapshot(s act.Snapshot) {
	first := m.snap.Now.IsZero()
	same := slices.EqualFunc(m.snap.Project.Weigh, s.Project.Weigh, equal)
	_, chosen, _ := m.weighing()
	amended := len(m.snap.Project.Weigh) == len(s.Project.Weigh) // none came, none went
	m.snap = s
	m.glyphs = s.Font.Glyphs
	m.c.SetAspect(s.Font.Aspect)
	if !same {
		m.dry = weigh.DryingOf(s.Project.Weigh, s.Scale)
		m.rows = slices.Clone(m.dry.Earlier)
		if m.dry.Before >= 0 {
			m.rows = append(m.rows, m.dry.Before)
		}
		m.rows = append(m.rows, m.dry.Rows...)
	}
	switch {
	case first, m.toLast && !same:
		m.toLast = false
		m.list.At = len(m.rows) - 1 // the latest
	case !same && amended: // the one in hand may stand elsewhere by its new time
		m.list.At = max(slices.Index(m.rows, chosen), 0)
	}
	m.scroll()
}

func equal(a, b weigh.Weighing) bool {
	return a.When.Equal(b.When) && a.Grams == b.Grams && a.State == b.State
}

// wall is the time to note, in the location of the screen's clock.
func (m *Model) wall() time.Time { return m.now().Round(0).In(m.snap.Now.Location()) }

// weighing is the chosen one and its place in the project.
func (m *Model) weighing() (weigh.Weighing, int, bool) {
	if len(m.rows) == 0 {
		return weigh.Weighing{}, -1, false
	}
	i := m.rows[min(m.list.At, len(m.rows)-1)]
	return m.snap.Project.Weigh[i], i, true
}

// Update implements act.Pane.
func (m *Model) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	defer m.scroll()
	switch msg := msg.(type) {
	case part.Press:
		if m.entry != nil {
			return m, m.reply(msg)
		}
		return m, m.command(msg)
	case tea.MouseMsg:
		m.mouse(msg)
	case act.InHand:
		if !msg.Is {
			m.entry = nil
		}
	}
	return m, nil
}

func (m *Model) mouse(msg tea.MouseMsg) {
	t := m.arrange().table
	switch {
	case msg.Action != tea.MouseActionPress || m.entry != nil || m.list.Wheel(msg):
	case msg.Button == tea.MouseButtonLeft && t.Contains(msg.X, msg.Y):
		m.list.Click(msg.Y - t.Y - 1) // below the table's head
	}
}

// command carries out a key while nothing is being typed.
func (m *Model) command(p part.Press) []act.Msg {
	if part.StartsNumber(p.KeyMsg) {
		text := string(p.Runes)
		if p.Paste {
			text = part.FirstLine(text)
		}
		return m.askWeight(text)
	}
	out, _ := m.keys().Take(p)
	return out
}

func (m *Model) turn() { m.curve = !m.curve }

// scroll keeps the chosen row there and in sight.
func (m *Model) scroll() { m.list.Set(len(m.rows), max(m.arrange().table.H-1, 1)) }
