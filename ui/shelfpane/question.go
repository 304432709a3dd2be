package shelfpane

import (
	"time"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
)

// question stands at the foot of the screen until it is answered.
type question struct {
	label  string
	input  textinput.Model
	err    string // why the last answer will not do
	answer func(m Model, text string) (Model, tea.Cmd, error)
}

const longestTitle = 200

func newInput(text string, limit int) textinput.Model {
	in := textinput.New()
	in.Prompt = ""
	in.CharLimit = limit
	in.Cursor.SetMode(cursor.CursorStatic)
	in.SetValue(text)
	in.CursorEnd()
	return in
}

// ask opens a question with text to begin from.
func (m Model) ask(label, text string, answer func(Model, string) (Model, tea.Cmd, error)) Model {
	in := newInput(text, longestTitle)
	in.Width = max(4, m.w-2)
	in.Focus()
	m.question = &question{label: label, input: in, answer: answer}
	m.scroll()
	return m
}

func (m Model) reply(msg tea.KeyMsg) (Model, tea.Cmd) {
	q := *m.question
	switch {
	case key.Matches(msg, m.KeyMap.Drop):
		m.question = nil
		m.scroll()
		return m, nil
	case key.Matches(msg, m.KeyMap.Keep):
		m.question = nil
		next, cmd, err := q.answer(m, q.input.Value())
		if err != nil {
			q.err = err.Error()
			next.question = &q
		}
		next.scroll()
		return next, cmd
	}
	q.input, _ = q.input.Update(msg)
	q.err = ""
	m.question = &q
	return m, nil
}

const (
	breath  = 150 * time.Millisecond // an Enter this close after a character is a tool's
	endings = 50 * time.Millisecond  // a line feed this close after a return is part of it
)

// hand tells a hand at the keys from a measuring tool, which types a reading and Enter
// in one breath, wherever the cursor is.
type hand struct {
	typed time.Time // the last character, of any kind
	cr    time.Time
}

// key takes one key and tells whether it is an Enter that no hand has typed.
func (h hand) key(msg tea.KeyMsg, now time.Time) (next hand, tool bool) {
	near := func(t time.Time, d time.Duration) bool {
		gap := now.Sub(t)
		return !t.IsZero() && gap >= 0 && gap <= d
	}
	switch msg.Type {
	case tea.KeyRunes, tea.KeySpace:
		h.typed = now
	case tea.KeyEnter:
		h.cr = now
		return h, near(h.typed, breath)
	case tea.KeyCtrlJ:
		return h, near(h.typed, breath) || near(h.cr, endings)
	}
	return h, false
}
