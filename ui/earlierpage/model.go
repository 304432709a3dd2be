// Package earlierpage is the page of an earlier sheath laid flat: its half-widths, typed
// or read, against the plan, and what of the difference is taken over.
package earlierpage

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/calc/trace"
	"chape/project"
	"chape/project/earlier"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/part"
	"chape/ui/term/ink"
	"chape/ui/tracing"
)

// Model is the page. It never changes the project: it sends act.Commit.
type Model struct {
	Styles ink.Styles

	w, h  int
	snap  act.Snapshot
	rows  []earlier.Row
	list  part.List
	entry *entry
	made  *calc.Plan // with what is being taken over; nil: nothing is
	photo *photo     // being chosen or read; nil: none is

	settings func() tracing.Settings // of the moment, for photographs
	reader   tracing.Reader          // nil: the usual one
	glyphs   canvas.Glyphs
	c        *canvas.Canvas
	pens     []canvas.Style
}

// Halves are half-widths that something has read for this project, as from a photograph of
// the sheath or its paper: they take the place of those there are.
type Halves struct {
	Halves []project.Half
	From   string // in words, for undo
}

// New returns the page.
func New(styles ink.Styles) *Model {
	none := func() tracing.Settings { return tracing.Settings{} }
	return &Model{Styles: styles, settings: none, c: canvas.New(0, 0, canvas.Braille), pens: styles.Pens()}
}

// SetSize sets the cells inside the page's edge.
func (m *Model) SetSize(w, h int) {
	m.w, m.h = max(w, 0), max(h, 0)
	if m.photo != nil {
		m.photo.SetWidth(m.w)
	}
	m.scroll()
}

// SetSnapshot shows the page the project as it is now.
func (m *Model) SetSnapshot(s act.Snapshot) {
	m.snap = s
	m.glyphs = s.Font.Glyphs
	m.c.SetAspect(s.Font.Aspect)
	m.rows = nil
	if s.Plan != nil {
		m.rows = earlier.Rows(s.Project, s.Plan)
	}
	m.scroll()
}

// Update implements act.Pane.
func (m *Model) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	defer m.scroll()
	switch msg := msg.(type) {
	case part.Press:
		if m.entry != nil {
			return m, m.reply(msg)
		}
		if m.photo != nil {
			return m, m.toPhoto(msg)
		}
		if part.StartsNumber(msg.KeyMsg) {
			text := string(msg.Runes)
			if msg.Paste {
				text = part.FirstLine(text)
			}
			return m, m.askAt(text)
		}
		out, _ := m.keys().Take(msg)
		return m, out
	case tea.MouseMsg:
		if m.entry == nil {
			m.list.Wheel(msg)
		}
	case Halves:
		return m, []act.Msg{act.Commit{Label: msg.From, Do: func(p *project.Project) error {
			p.Earlier = append([]project.Half(nil), msg.Halves...)
			return p.Validate()
		}}}
	case act.InHand:
		if !msg.Is {
			m.drop()
			m.closePhoto()
		}
	default:
		return m, m.toPhoto(msg)
	}
	return m, nil
}

const (
	takeKey   = "t"
	lineKey   = "l"
	removeKey = "x"
)

// keys are those while nothing is typed. None is a digit: those begin a half-width.
func (m *Model) keys() part.Keys {
	keys := part.Keys{
		part.Key("digits", "a half-width: where, then how wide", nil, "digits").Foot("a half-width"),
		part.Key(lineKey, "it was measured to the finished edge, or the stitch line", m.ofRow(m.turnLine), lineKey).Foot("edge, stitches"),
		part.Key(removeKey, "take the half-width out", m.ofRow(m.remove), removeKey).Foot("take out"),
		part.Key(takeKey, "take the difference over as corrections, all or a part", m.askTake, takeKey).Foot("take over"),
		part.Key("Esc", "back", func() []act.Msg { return []act.Msg{act.Leave{}} }, "esc").Foot("back"),
	}
	return append(append(keys, m.photoKeys()...), m.list.Keys("half-width")...)
}

// ofRow does nothing where there is no half-width.
func (m *Model) ofRow(do func(earlier.Row) []act.Msg) func() []act.Msg {
	return func() []act.Msg {
		if len(m.rows) == 0 {
			return nil
		}
		return do(m.rows[min(m.list.At, len(m.rows)-1)])
	}
}

// Keys implements act.Pane.
func (m *Model) Keys() []act.Section {
	ask := part.AskKeys()
	ask.Now = m.entry != nil
	picking := m.photo
	if picking == nil { // for the help
		picking = &photo{Picker: tracing.New(trace.Pattern, m.settings, m.Styles)}
	}
	out := []act.Section{m.keys().Section("Earlier sheath", m.entry == nil && m.photo == nil)}
	return append(append(out, picking.Keys(m.photo != nil)...), ask)
}

// scroll keeps the chosen row in sight.
func (m *Model) scroll() { m.list.Set(len(m.rows), max(m.tableRows()-1, 1)) }
