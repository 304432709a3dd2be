// Package planpane is the pane that shows what follows from the numbers: the
// pattern, the section, the figures, the checks, and the tables to work from.
package planpane

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/calc/curve"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/term/ink"
)

// Page is one of the pane's pages.
type Page uint8

// The pages, in their order.
const (
	Drawing Page = iota
	HalfWidths
	Holes
	Section
	pages = 4
)

// String is the page's name in the pane's first line.
func (p Page) String() string {
	return [...]string{"drawing", "half-widths", "holes", "section"}[p%pages]
}

// closest is how many steps of zoom there are, each half as large again.
const closest = 6

// Model is the pane. It shows the last Snapshot it was given.
type Model struct {
	Keys   KeyMap
	Styles ink.Styles

	snap     act.Snapshot
	rates    calc.Rates
	currency string
	glyphs   canvas.Glyphs
	aspect   float64 // of a cell, its height in its widths
	width    int
	height   int

	page   Page
	scroll [pages]int // first line of the text shown
	shape  int        // steps from the shape that suits the room, see shapes
	zoom   int        // 0: all of it
	centre *curve.Vec // where the drawing was moved to; nil: it follows the mark

	frame      int            // changes with whatever is shown
	last       *frame         // shared by all copies
	c          *canvas.Canvas // kept between frames
	pens, worn []canvas.Style // of a plan that follows, and of one that does not
}

// New gives the pane; it shows nothing before it has a snapshot and a size.
func New(styles ink.Styles) Model {
	m := Model{Keys: DefaultKeys(), Styles: styles, c: canvas.New(0, 0, canvas.Braille), last: &frame{}}
	m.touch()
	m.rates.Offcut = calc.DefaultOffcut
	m.pens = styles.Pens()
	m.worn = make([]canvas.Style, len(m.pens))
	for i := range m.worn {
		m.worn[i] = m.pens[ink.PenQuiet]
	}
	m.worn[ink.PenMark] = m.pens[ink.PenMark]
	return m
}

// SetSize sets the room inside the frame, in cells.
func (m *Model) SetSize(width, height int) {
	if width == m.width && height == m.height {
		return
	}
	m.width, m.height = max(0, width), max(0, height)
	m.clamp()
	m.touch()
}

// SetSnapshot shows another state of the project.
func (m *Model) SetSnapshot(s act.Snapshot) {
	if s.Mark != m.snap.Mark {
		m.centre = nil
	}
	same := m.looksLike(s)
	m.snap = s
	if same {
		return
	}
	m.clamp()
	m.touch()
}

// SetGlyphs chooses the characters of the drawings; aspect is the height of a
// cell in cell widths.
func (m *Model) SetGlyphs(g canvas.Glyphs, aspect float64) {
	if g == m.glyphs && aspect == m.aspect {
		return
	}
	m.glyphs, m.aspect = g, aspect
	m.c.SetAspect(aspect)
	m.touch()
}

// SetRates gives what leather, thread and work cost, in a currency.
func (m *Model) SetRates(r calc.Rates, currency string) {
	if r == m.rates && currency == m.currency {
		return
	}
	m.rates, m.currency = r, currency
	m.touch()
}

// Page is the page shown.
func (m Model) Page() Page { return m.page }

// Update takes a key, or a mouse event whose place is counted from the pane's
// upper left.
func (m Model) Update(msg tea.Msg) (Model, tea.Cmd) {
	m.touch()
	switch msg := msg.(type) {
	case tea.KeyMsg:
		if msg.Paste {
			return m, nil
		}
		return m.key(msg)
	case tea.MouseMsg:
		return m.mouse(msg)
	}
	return m, nil
}

func (m Model) key(k tea.KeyMsg) (Model, tea.Cmd) {
	table := m.page == HalfWidths || m.page == Holes
	switch {
	case key.Matches(k, m.Keys.NextPage):
		m.page = (m.page + 1) % pages
	case key.Matches(k, m.Keys.PreviousPage):
		m.page = (m.page + pages - 1) % pages
	case key.Matches(k, m.Keys.NextMark), !table && key.Matches(k, m.Keys.Down):
		return m.choose(m.snap.Mark + 1)
	case key.Matches(k, m.Keys.PreviousMark), !table && key.Matches(k, m.Keys.Up):
		return m.choose(m.snap.Mark - 1)
	case key.Matches(k, m.Keys.Down):
		m.scroll[m.page]++
	case key.Matches(k, m.Keys.Up):
		m.scroll[m.page]--
	case key.Matches(k, m.Keys.PageDown):
		m.scroll[m.page] += m.pageful()
	case key.Matches(k, m.Keys.PageUp):
		m.scroll[m.page] -= m.pageful()
	case key.Matches(k, m.Keys.First):
		m.scroll[m.page] = 0
	case key.Matches(k, m.Keys.Last):
		m.scroll[m.page] = 1 << 30
	case m.page != Drawing && key.Matches(k, m.Keys.Closer, m.Keys.Further, m.Keys.All, m.Keys.Shape,
		m.Keys.PanLeft, m.Keys.PanRight, m.Keys.PanUp, m.Keys.PanDown):
		return m, act.Send(act.Say{Text: "that key is for the drawing: " + m.Keys.PreviousPage.Help().Key + " or " + m.Keys.NextPage.Help().Key + " turns to it"})
	default:
		m.look(k)
	}
	m.clamp()
	return m, nil
}

// look changes how the drawing is seen.
func (m *Model) look(k tea.KeyMsg) {
	switch {
	case key.Matches(k, m.Keys.Closer):
		m.zoom = min(m.zoom+1, closest)
	case key.Matches(k, m.Keys.Further):
		m.zoom = max(m.zoom-1, 0)
	case key.Matches(k, m.Keys.All):
		m.zoom, m.centre = 0, nil
	case key.Matches(k, m.Keys.Shape):
		m.shape = (m.shape + 1) % shapes
		m.centre = nil
	case key.Matches(k, m.Keys.PanLeft):
		m.pan(-0.25, 0)
	case key.Matches(k, m.Keys.PanRight):
		m.pan(0.25, 0)
	case key.Matches(k, m.Keys.PanUp):
		m.pan(0, -0.25)
	case key.Matches(k, m.Keys.PanDown):
		m.pan(0, 0.25)
	}
}

// pan moves the drawing by shares of its window.
func (m *Model) pan(right, down float64) {
	if m.zoom == 0 || m.snap.Plan == nil {
		return
	}
	_, sheet := m.arrange()
	at := sheet.Beside(right, down)
	m.centre = &at
}
