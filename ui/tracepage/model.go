// Package tracepage is the page that turns a photograph of a traced knife into marks: which
// picture, what was read and what it would change, and then the thicknesses that are left
// for the calliper.
package tracepage

import (
	"path/filepath"
	"slices"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/trace"
	"chape/project"
	"chape/project/traced"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/part"
	"chape/ui/term/ink"
	"chape/ui/tracing"
)

// state is what the page is at.
type state uint8

const (
	choosing  state = iota // which picture; it is read
	looking                // what was read is looked at, nothing is taken yet
	measuring              // the calliper's column
)

// Model is the page. It never changes the project: it sends act.Commit.
type Model struct {
	Styles ink.Styles

	now    func() time.Time
	w, h   int
	snap   act.Snapshot
	state  state
	picker *tracing.Picker
	c      *canvas.Canvas // kept between frames
	pens   []canvas.Style

	// looking
	picture string
	reading trace.Reading // as read; its knife as turned and moved since
	at      int           // the mark in hand
	after   project.Project
	problem error // why the marks can't be taken
	taking  bool  // the next snapshot shows whether they were
	edited  bool  // work went into what was read
	parting bool  // Esc was pressed, and asked about that

	// measuring
	grinds bool // grind heights, too
	cell   cell // the one in hand
	total  int  // cells when the column was begun
	entry  *part.Ask
}

// New returns the page. Now is the clock that readings are dated by; set gives the settings.
func New(now func() time.Time, set func() tracing.Settings, styles ink.Styles) *Model {
	return &Model{
		Styles: styles, now: now, picker: tracing.New(trace.Knife, set, styles),
		c: canvas.New(0, 0, canvas.Braille), pens: styles.Pens(),
	}
}

// SetSize sets the cells inside the page's edge.
func (m *Model) SetSize(w, h int) {
	m.w, m.h = max(w, 0), max(h, 0)
	m.picker.SetWidth(m.w)
	if m.entry != nil {
		m.entry.SetWidth(m.w)
	}
}

// SetSnapshot shows the page the project as it is now.
func (m *Model) SetSnapshot(s act.Snapshot) {
	m.snap = s
	m.c.SetAspect(s.Font.Aspect)
	if m.taking && !slices.Equal(s.Project.Knife.Stations, m.after.Knife.Stations) {
		m.state = looking // it was refused, and said
	}
	m.taking = false
	switch m.state {
	case looking:
		m.foresee()
	case measuring:
		m.keepCell()
	}
}

// Update implements act.Pane.
func (m *Model) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	switch msg := msg.(type) {
	case act.InHand:
		return m, m.inHand(msg.Is)
	case part.Press:
		return m, m.press(msg)
	}
	return m, m.toPicker(msg)
}

// inHand begins with what was left to measure, or else with the choice of a picture.
func (m *Model) inHand(is bool) []act.Msg {
	m.picker.Stop()
	m.entry = nil
	if !is {
		m.state = choosing
		return nil
	}
	if len(m.snap.Project.Unmeasured()) > 0 {
		return m.measure()
	}
	return m.choose()
}

func (m *Model) choose() []act.Msg {
	m.state = choosing
	return m.picker.Look()
}

// press is a key; a picture may be dropped whatever the page is at.
func (m *Model) press(p part.Press) []act.Msg {
	if m.state != choosing && m.entry == nil && dropped(p.KeyMsg) {
		m.state = choosing
	}
	switch m.state {
	case choosing:
		if !m.picker.Typing() && !m.picker.Busy() {
			if out, known := m.choosingKeys().Take(p); known {
				return out
			}
		}
		return m.toPicker(p)
	case looking:
		if p.Held || p.Tool() {
			return nil
		}
		m.parting = m.parting && p.Type == tea.KeyEsc
		out, _ := m.lookingKeys().Take(p)
		return out
	}
	return m.measureKey(p)
}

// toPicker hands a message to the picker.
func (m *Model) toPicker(msg tea.Msg) []act.Msg {
	out, event := m.picker.Update(msg)
	switch event {
	case tracing.Left:
		out = append(out, act.Leave{})
	case tracing.Got:
		m.look()
	}
	return out
}

// look shows what was read.
func (m *Model) look() {
	r, path := m.picker.Reading()
	m.state, m.reading, m.picture, m.at, m.edited = looking, r, filepath.Base(path), 0, false
	m.foresee()
}

// foresee works out what taking the marks would make of the project.
func (m *Model) foresee() {
	m.after, m.problem = traced.Take(m.snap.Project, m.reading, m.picture, m.now())
	m.at = max(0, min(m.at, len(m.reading.Knife.Marks)-1))
}

// take has the marks put into the project, and goes on to the calliper's column.
func (m *Model) take() []act.Msg {
	if m.problem != nil {
		return nil
	}
	r, picture, day := m.reading, m.picture, m.now()
	m.state, m.grinds, m.cell, m.total, m.taking = measuring, false, cell{}, 0, true
	return []act.Msg{act.Commit{Label: "marks from " + picture, Do: func(p *project.Project) error {
		q, err := traced.Take(*p, r, picture, day)
		if err == nil {
			*p = q
		}
		return err
	}}}
}
