// Package planpane is the pane that shows what follows from the numbers: the
// pattern, the section, the figures, the checks, and the tables to work from.
package planpane

import (
	tea "github.com/charmbracelet/bubbletea"
	"reflect"

	"chape/calc/curve"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/part"
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
	Checks
	pages = 5
)

// String is the page's name in the pane's first line.
func (p Page) String() string {
	return [...]string{"drawing", "half-widths", "holes", "section", "checks"}[p%pages]
}

// closest is how many steps of zoom there are, each half as large again.
const closest = 6

// Model is the pane. It shows the last Snapshot it was given.
type Model struct {
	Styles ink.Styles

	snap   act.Snapshot
	glyphs canvas.Glyphs
	aspect float64 // of a cell, its height in its widths
	width  int
	height int

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
func New(styles ink.Styles) *Model {
	m := &Model{Styles: styles, c: canvas.New(0, 0, canvas.Braille), last: &frame{}}
	m.touch()
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
	same := !m.setLook(s.Font) && m.looksLike(s) && reflect.DeepEqual(s.Shop, m.snap.Shop)
	m.snap = s
	if same {
		return
	}
	m.clamp()
	m.touch()
}

// setLook takes over how it is drawn; false: as before.
func (m *Model) setLook(f act.Font) (changed bool) {
	changed = f != (act.Font{Glyphs: m.glyphs, Aspect: m.aspect})
	m.glyphs, m.aspect = f.Glyphs, f.Aspect
	if changed {
		m.c.SetAspect(f.Aspect)
	}
	return changed
}

// Page is the page shown.
func (m *Model) Page() Page { return m.page }

// Update implements act.Pane.
func (m *Model) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	switch msg := msg.(type) {
	case part.Press:
		m.touch()
		out, _ := m.keys().Take(msg)
		m.clamp()
		return m, out
	case tea.MouseMsg:
		m.touch()
		return m, m.mouse(msg)
	}
	return m, nil
}

// turn goes to a page so many further on.
func (m *Model) turn(by int) func() []act.Msg {
	return part.Quiet(func() { m.page = Page((int(m.page) + by + pages) % pages) })
}

// to chooses the mark so many further on.
func (m *Model) to(by int) func() []act.Msg {
	return func() []act.Msg { return m.choose(m.snap.Mark + by) }
}

// line goes by marks or, in a table or list, by lines.
func (m *Model) line(by int) func() []act.Msg {
	if m.page == HalfWidths || m.page == Holes || m.page == Checks {
		return m.roll(by)
	}
	return m.to(by)
}

// roll scrolls the page's text by lines.
func (m *Model) roll(by int) func() []act.Msg { return part.Quiet(func() { m.scroll[m.page] += by }) }

// rollPage scrolls it by what is seen of it.
func (m *Model) rollPage(by int) func() []act.Msg {
	return part.Quiet(func() { m.scroll[m.page] += by * m.pageful() })
}

// see changes how the drawing is seen, on its page.
func (m *Model) see(do func()) func() []act.Msg {
	return func() []act.Msg {
		if m.page != Drawing {
			return []act.Msg{act.Say{Text: "that key is for the drawing: ← or → turns to it"}}
		}
		do()
		return nil
	}
}

func (m *Model) closer()    { m.zoom = min(m.zoom+1, closest) }
func (m *Model) further()   { m.zoom = max(m.zoom-1, 0) }
func (m *Model) all()       { m.zoom, m.centre = 0, nil }
func (m *Model) nextShape() { m.shape, m.centre = (m.shape+1)%shapes, nil }

// pan moves the drawing by shares of its window.
func (m *Model) pan(right, down float64) func() {
	return func() {
		if m.zoom == 0 || m.snap.Plan == nil {
			return
		}
		_, sheet := m.arrange()
		at := sheet.Beside(right, down)
		m.centre = &at
	}
}
