package workbench

import (
	"fmt"
	"math"
	"path/filepath"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/canvas"
)

// question is a plain choice over the panes.
type question struct {
	title   string
	text    []string
	choices []choice
	stays   bool // Esc does not take it away
	font    bool // it is about the font: alarms from before the start wait for its answer
}

type choice struct {
	key  string // one letter
	does string
	do   func() tea.Cmd
}

// answer takes a key as the answer to the question, if it is one of its
// letters. A measuring tool types none.
func (m *Model) answer(k tea.KeyMsg, _ bool) tea.Cmd {
	if k.Type == tea.KeyEsc && !m.question.stays {
		m.question = nil
		return nil
	}
	if key.Matches(k, m.Keys.Break) {
		m.question = nil
		return m.quit()
	}
	if k.Type != tea.KeyRunes || k.Paste {
		return nil
	}
	for _, c := range m.question.choices {
		if string(k.Runes) == c.key {
			m.question = nil
			return c.do()
		}
	}
	return nil
}

// asking tells whether it is still open how drawings are to be made.
func (m *Model) asking() bool { return m.question != nil && m.question.font }

// sidesQuestion asks after a change on both sides.
func (m *Model) sidesQuestion() *question {
	theirs, ours, readable := m.doc.Sides()
	q := &question{
		title: "Changed on both sides",
		text: []string{
			"Another program has changed this project while it was changed here. Both are kept:",
			"theirs in " + filepath.Base(theirs),
			"yours in  " + filepath.Base(ours),
		},
		stays: true,
	}
	if readable {
		q.choices = append(q.choices, choice{"t", "go on with theirs; yours stays beside it", func() tea.Cmd {
			m.o.Notices = m.doc.Theirs()
			m.refresh()
			return m.save()
		}})
	} else {
		q.text[0] = "Another program has damaged this project's file. Both are kept:"
		q.text = append(q.text, "Theirs can't be loaded; it is left as it is.")
	}
	q.choices = append(q.choices, choice{"y", "go on with yours, in its own file; theirs stays as it is", func() tea.Cmd {
		m.moving(m.doc.Ours)
		m.refresh()
		return m.save()
	}})
	return q
}

// lossQuestion asks before the program ends with something that can't be saved.
func (m *Model) lossQuestion() *question {
	why := "it has not been saved yet"
	if err := m.doc.Failure(); err != nil {
		why = err.Error()
	}
	return &question{
		title: "Not saved",
		text:  []string{why, "", "Quitting puts your work into a file of its own, beside it or in your home folder, and says where."},
		choices: []choice{
			{"q", "quit, and put it there", func() tea.Cmd { return tea.Quit }},
			{"s", "try to save again", func() tea.Cmd { return m.quit() }},
		},
	}
}

// elsewhereQuestion offers another file where the document's own can't be
// written.
func (m *Model) elsewhereQuestion() *question {
	return &question{
		title: "Not saved",
		text:  []string{m.doc.Failure().Error()},
		choices: []choice{
			{"s", "try again", func() tea.Cmd { return m.saveNow() }},
			{"k", "go on in another file, on the shelf in " + m.o.Shelf.Dir(), func() tea.Cmd { return m.keepOnShelf() }},
		},
	}
}

// looseQuestion asks before a changed copy, which has no file, is left.
func (m *Model) looseQuestion() *question {
	return &question{
		title: "This copy is not kept",
		text:  []string{"You have changed it, and it has no file yet."},
		choices: []choice{
			{"k", "keep it as a project, and quit", func() tea.Cmd {
				cmd := m.keep()
				m.quitting = m.keeping
				return cmd
			}},
			{"d", "drop it, and quit", func() tea.Cmd {
				m.dropped = true
				return tea.Quit
			}},
		},
	}
}

// glyphQuestion asks what the font can show: no program can tell.
func (m *Model) glyphQuestion() *question {
	looks := &m.o.Looks
	pick := func(key, does string, g canvas.Glyphs) choice {
		return choice{key, does, func() tea.Cmd {
			looks.Glyphs = g
			return m.setLooks(*looks)
		}}
	}
	stretch := func(key, does string, by float64) choice {
		return choice{key, does, func() tea.Cmd {
			looks.Aspect = max(1, min(4, looks.Aspect*by))
			m.question = m.glyphQuestion()
			return nil
		}}
	}
	return &question{
		title: "Before the first drawing",
		font:  true,
		text: append([]string{
			"Is this a ring of dots, whole and round? Some fonts lack them.", "",
		}, ring(*looks)...),
		choices: []choice{
			pick("y", "yes, a ring of dots", canvas.Braille),
			pick("n", "no: make drawings of blocks", canvas.Blocks),
			pick("x", "neither: plain characters only", canvas.ASCII),
			stretch("t", "it stands too tall", 1.05),
			stretch("f", "it lies too flat", 1/1.05),
		},
	}
}

// ring is the sample: a circle of dots as the font would show it.
func ring(l Looks) []string {
	const w, h = 24, 8
	c := canvas.New(w, h, canvas.Braille)
	c.SetAspect(l.Aspect)
	across, down := canvas.Braille.Dots()
	tall := l.Aspect * float64(across) / float64(down) // height of a dot in dot widths
	for i := range 360 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 180)
		const r = 14.0
		c.Dot(w*float64(across)/2+r*cos, h*float64(down)/2+r*sin/tall, 0)
	}
	return c.Rows()
}

// setLooks takes the answer on and has it remembered.
func (m *Model) setLooks(l Looks) tea.Cmd {
	m.o.Looks = l
	m.showLooks()
	m.refresh()
	if m.o.Remember == nil {
		return nil
	}
	remember := m.o.Remember
	return func() tea.Msg {
		if err := remember(l); err != nil {
			return act.Say{Text: fmt.Sprintf("this answer can't be kept: %v", err), Warn: true}
		}
		return nil
	}
}
