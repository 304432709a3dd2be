// Package backpage is a look back over the shelf: what each sheath and each step took, and
// what was quoted against it.
package backpage

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/length"
	"chape/project/lookback"
	"chape/project/shelf"
	"chape/project/shop"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/part"
	"chape/ui/term/ink"
)

// Options are what the page needs from outside.
type Options struct {
	Shelf  *shelf.Shelf
	Styles ink.Styles
}

// batch is how many sheaths are read at a time: a plan of each is made.
const batch = 50

// Model is the page. It reads the shelf and changes nothing.
type Model struct {
	o     Options
	w, h  int
	shop  shop.Shop
	unit  length.Unit
	run   int // the newest look; what an older one brings is dropped
	left  int // sheaths still to be read
	err   error
	all   []lookback.Sheath
	steps bool // steps in place of sheaths
	past  int  // so many columns behind the name are turned past
	ascii bool
	list  part.List
}

// New returns the page; taken in hand it reads the shelf.
func New(o Options) *Model { return &Model{o: o} }

// SetSize sets the cells inside the page's edge.
func (m *Model) SetSize(w, h int) {
	m.w, m.h = max(w, 0), max(h, 0)
	m.scroll()
}

// SetSnapshot implements act.Pane: prices, unit and font are all that it takes of it.
func (m *Model) SetSnapshot(s act.Snapshot) {
	m.shop, m.unit, m.ascii = s.Shop, s.Unit, s.Font.Glyphs == canvas.ASCII
}

type (
	begunMsg struct {
		run  int
		look *lookback.Look
		err  error
	}
	readMsg struct {
		run  int
		look *lookback.Look
		some []lookback.Sheath
	}
)

// look has the shelf read anew.
func (m *Model) look() []act.Msg {
	m.run++
	m.all, m.err, m.left = nil, nil, 0
	run, o, sh := m.run, m.o, m.shop
	return []act.Msg{act.Do(func() tea.Msg {
		l, err := lookback.Over(o.Shelf, sh)
		return begunMsg{run, l, err}
	})}
}

func more(run int, l *lookback.Look) []act.Msg {
	return []act.Msg{act.Do(func() tea.Msg { return readMsg{run, l, l.Next(batch)} })}
}

// Update implements act.Pane.
func (m *Model) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	defer m.scroll()
	switch msg := msg.(type) {
	case part.Press:
		out, _ := m.keys().Take(msg)
		return m, out
	case tea.MouseMsg:
		m.list.Wheel(msg)
	case act.InHand:
		if msg.Is {
			return m, m.look()
		}
		m.run++ // a look that is under way is broken off
	case begunMsg:
		if m.err = msg.err; msg.run != m.run || msg.err != nil {
			return m, nil
		}
		m.left = msg.look.Left()
		return m, more(msg.run, msg.look)
	case readMsg:
		if msg.run != m.run {
			return m, nil
		}
		m.all = append(m.all, msg.some...)
		if m.left = msg.look.Left(); m.left > 0 {
			return m, more(msg.run, msg.look)
		}
	}
	return m, nil
}

// keys are those of the page.
func (m *Model) keys() part.Keys {
	turn := func(by int) func() []act.Msg { return part.Quiet(func() { m.turn(by) }) }
	return append(m.list.Keys("row"), part.Keys{
		part.Key("→", "the columns further on, where they have no room", turn(1), "right"),
		part.Key("←", "the columns before", turn(-1), "left"),
		part.Key("v", "by sheath, or by step", part.Quiet(func() { m.steps, m.past = !m.steps, 0 }), "v").Foot("sheaths, steps"),
		part.Key("g", "read the shelf again", m.look, "g").Foot("again"),
		part.Key("Esc", "back; breaks off what is being read", func() []act.Msg { return []act.Msg{act.Leave{}} }, "esc").Foot("back"),
	}...)
}

// Keys implements act.Pane.
func (m *Model) Keys() []act.Section {
	return []act.Section{m.keys().Section("A look back", true)}
}
