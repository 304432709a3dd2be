// Package lookpage is the page that shows what drawings can be made of, side by side: no
// program can tell what a font shows, the eye can. What is moved to is taken at once.
package lookpage

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/part"
	"chape/ui/term/ink"
)

// samples are the sets of characters, the finest first, by names for a person.
var samples = []struct {
	glyphs canvas.Glyphs
	name   string
}{{canvas.Braille, "dots"}, {canvas.Blocks, "blocks"}, {canvas.ASCII, "plain characters"}}

// step is by how much a key stretches the cell.
const step = 1.05

// Model is the page. What is chosen stands in the snapshot; it answers with act.Look.
type Model struct {
	Styles ink.Styles

	w, h int
	font act.Font
	c    *canvas.Canvas
	pens []canvas.Style
}

// New gives the page.
func New(styles ink.Styles) *Model {
	return &Model{Styles: styles, font: act.Font{Aspect: canvas.DefaultAspect}, c: canvas.New(0, 0, canvas.Braille), pens: styles.Pens()}
}

// SetSize sets the cells inside the page's edge.
func (m *Model) SetSize(w, h int) { m.w, m.h = max(w, 0), max(h, 0) }

// SetSnapshot implements act.Pane.
func (m *Model) SetSnapshot(s act.Snapshot) {
	m.font = s.Font
	m.c.SetAspect(s.Font.Aspect)
}

// Update implements act.Pane.
func (m *Model) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	switch msg := msg.(type) {
	case part.Press:
		out, _ := m.keys().Take(msg)
		return m, out
	case tea.MouseMsg:
		if msg.Button == tea.MouseButtonLeft && msg.Action == tea.MouseActionPress {
			if i, ok := m.sampleAt(msg.X, msg.Y); ok {
				return m, m.take(i)
			}
		}
	}
	return m, nil
}

// chosen is the place of what drawings are made of now.
func (m *Model) chosen() int {
	for i, s := range samples {
		if s.glyphs == m.font.Glyphs {
			return i
		}
	}
	return 0
}

// take has drawings made of a sample.
func (m *Model) take(i int) []act.Msg {
	f := m.font
	f.Glyphs = samples[max(0, min(i, len(samples)-1))].glyphs
	return look(m.font, f)
}

func (m *Model) move(by int) func() []act.Msg {
	return func() []act.Msg { return m.take(m.chosen() + by) }
}

// stretch says that a cell is so many times as high as was thought.
func (m *Model) stretch(by float64) func() []act.Msg {
	return func() []act.Msg {
		f := m.font
		f.Aspect = max(1, min(4, f.Aspect*by))
		return look(m.font, f)
	}
}

func look(old, f act.Font) []act.Msg {
	if f == old {
		return nil
	}
	return []act.Msg{act.Look{Font: f}}
}

func leave() []act.Msg { return []act.Msg{act.Leave{}} }

// keys are all of the page's. No character that a measuring tool types is among them.
func (m *Model) keys() part.Keys {
	return part.Keys{
		part.Key("→", "the sample to the right", m.move(1), "right").Foot("next"),
		part.Key("←", "the sample to the left", m.move(-1), "left").Foot("before"),
		part.Key("↓", "flatter, if the ring stands too tall", m.stretch(step), "down").Foot("flatter"),
		part.Key("↑", "taller, if the ring lies too flat", m.stretch(1/step), "up").Foot("taller"),
		part.Key("Enter, Esc", "back", leave, "enter", "esc").Foot("back"),
	}
}

// Keys implements act.Pane.
func (m *Model) Keys() []act.Section {
	return []act.Section{m.keys().Section("How drawings look", true)}
}
