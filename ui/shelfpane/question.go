package shelfpane

import (
	"strings"
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
	begin  *beginning // instead of the input
	err    string     // why the last answer will not do
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
		if q.begin != nil {
			m.scroll()
			return m, m.create(q.begin.project)
		}
		next, cmd, err := q.answer(m, q.input.Value())
		if err != nil {
			q.err = err.Error()
			next.question = &q
		}
		next.scroll()
		return next, cmd
	case q.begin != nil:
		b := q.begin.key(msg, m.KeyMap)
		q.begin = &b
		m.question = &q
		return m, nil
	}
	q.input, _ = q.input.Update(msg)
	q.err = ""
	m.question = &q
	return m, nil
}

const (
	breath  = 150 * time.Millisecond // an Enter this close after a character may be a tool's
	toolGap = 50 * time.Millisecond  // characters this close together come from no hand
	endings = 50 * time.Millisecond  // a line feed this close after a return is part of it
)

// leastRun is how many characters on end tell a tool's reading.
const leastRun = 3

// hand tells a hand at the keys from a measuring tool, which types a reading and Enter
// in one breath, wherever the cursor is.
type hand struct {
	typed time.Time // the last character, of any kind
	cr    time.Time
	run   int  // characters with no more than toolGap between
	digit bool // one of them is a digit
}

// reading tells whether what was typed last, or all of the text, looks like a
// measuring tool's. A hand that types a word and Enter fast is no tool.
func (h hand) reading(text string) bool {
	if h.digit && h.run >= leastRun {
		return true
	}
	return strings.ContainsAny(text, "0123456789") && strings.Trim(strings.TrimRight(text, " minMIN\""), "0123456789.,+- ") == ""
}

// key takes one key and tells whether it is an Enter that no hand has typed into a text,
// or on the list.
func (h hand) key(msg tea.KeyMsg, now time.Time, text string, typing bool) (next hand, tool bool) {
	near := func(t time.Time, d time.Duration) bool {
		gap := now.Sub(t)
		return !t.IsZero() && gap >= 0 && gap <= d
	}
	switch msg.Type {
	case tea.KeyRunes, tea.KeySpace:
		if !near(h.typed, toolGap) {
			h.run, h.digit = 0, false
		}
		h.run += len(msg.Runes)
		h.digit = h.digit || strings.ContainsAny(string(msg.Runes), "0123456789")
		h.typed = now
	case tea.KeyEnter:
		h.cr = now
		return h, near(h.typed, breath) && (!typing || h.reading(text))
	case tea.KeyCtrlJ:
		return h, near(h.typed, breath) && (!typing || h.reading(text)) || near(h.cr, endings)
	}
	return h, false
}
