// Package earlierpage is the page of an earlier sheath laid flat: its half-widths, typed
// or read, against the plan, and what of the difference is taken over.
package earlierpage

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/trace"
	"chape/project"
	"chape/project/earlier"
	"chape/project/shelf"
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
	fits  []project.Fit
	photo *photo // being chosen or read; nil: none is
	pick  *pick  // the knife that it was made for is being chosen; nil: it is not
	asked bool   // the shelf is being listed for that
	curve bool   // the difference is drawn in place of the pattern

	knife  earlier.Knife // that it was made for
	of     project.MadeFor
	wrong  error       // why that knife can't be planned
	toTake curve.Graph // over this knife's fold
	offer  [2]float64  // the stretch of it that is offered, mm from the point
	shelf  *shelf.Shelf

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
	m.compare()
	m.scroll()
}

// compare sets the half-widths against the knife that they were made for.
func (m *Model) compare() {
	m.rows, m.toTake = nil, curve.Graph{}
	s := &m.snap
	if s.Plan == nil {
		return
	}
	switch made := s.Project.MadeFor; {
	case made.Inputs == "":
		m.knife, m.wrong = earlier.Own(s.Project, s.Plan), nil
	case made != m.of:
		m.knife, m.wrong = earlier.KnifeOf(made, s.Plan.Input.Limits)
	}
	m.of = s.Project.MadeFor
	if m.wrong == nil {
		m.rows = earlier.Rows(s.Project.Earlier, m.knife)
		m.toTake, m.wrong = earlier.ToTake(m.rows, m.knife, s.Project)
	}
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
		if m.pick != nil {
			out, _ := m.pickKeys().Take(msg)
			return m, out
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
		switch {
		case m.pick != nil:
			m.pick.list.Wheel(msg)
		case m.entry == nil:
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
			m.pick, m.asked = nil, false
		}
	case listedMsg:
		return m, m.listed(msg)
	case pickedMsg:
		return m, m.picked(msg)
	default:
		return m, m.toPhoto(msg)
	}
	return m, nil
}

const (
	takeKey   = "t"
	lineKey   = "l"
	knifeKey  = "k"
	curveKey  = "v"
	removeKey = "x"
)

// keys are those while nothing is typed. None is a digit: those begin a half-width.
func (m *Model) keys() part.Keys {
	keys := part.Keys{
		part.Key("digits", "a half-width: where, then how wide", nil, "digits").Foot("a half-width"),
		part.Key(takeKey, "take the difference over as corrections, all or a part", m.askTake, takeKey).Foot("take over"),
		part.Key(curveKey, "the difference as a curve, or the pattern", part.Quiet(func() { m.curve = !m.curve }), curveKey).Foot("curve"),
		part.Key(knifeKey, "the knife it was made for: this one, or another of the shelf", m.askKnife, knifeKey).Foot("made for"),
		part.Key(lineKey, "it was measured to the finished edge, or the stitch line", m.ofRow(m.turnLine), lineKey).Foot("edge, stitches"),
		part.Key(removeKey, "take the half-width out", m.ofRow(m.remove), removeKey).Foot("take out"),
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
	out := []act.Section{m.keys().Section("Earlier sheath", m.entry == nil && m.photo == nil && m.pick == nil)}
	out = append(append(out, picking.Keys(m.photo != nil)...), ask)
	return append(out, m.pickKeys().Section("Made for", m.pick != nil))
}

// scroll keeps the chosen row in sight.
func (m *Model) scroll() {
	m.list.Set(len(m.rows), max(m.tableRows()-1, 1))
	if m.pick != nil {
		m.pick.list.Set(len(m.pick.entries)+1, m.tableRows())
	}
}
