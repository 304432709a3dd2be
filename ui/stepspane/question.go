package stepspane

import (
	"fmt"
	"regexp"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"chape/project/clock"
)

// question stands at the foot of the pane until it is answered. Where it has no
// input, Enter alone is the answer.
type question struct {
	label string
	input *textinput.Model
	err   error // why the last answer will not do
	// answer gives the command, or an error to be shown; the question then stays.
	answer func(m Model, text string) (Model, tea.Cmd, error)
}

const (
	longestTitle = 200
	longestNote  = 2000
)

// ask opens a question with text to begin from.
func (m Model) ask(label, text string, limit int, answer func(Model, string) (Model, tea.Cmd, error)) Model {
	in := textinput.New()
	in.Prompt = ""
	in.CharLimit = limit
	in.Cursor.SetMode(cursor.CursorStatic)
	in.Width = max(4, m.w-2)
	in.Focus()
	in.SetValue(text)
	in.CursorEnd()
	m.question = &question{label: label, input: &in, answer: answer}
	return m
}

// confirm asks for Enter alone.
func (m Model) confirm(label string, do func(Model) (Model, tea.Cmd, error)) Model {
	m.question = &question{label: label, answer: func(m Model, _ string) (Model, tea.Cmd, error) { return do(m) }}
	return m
}

// Typing tells whether keys go into a text; the root then keeps its own keys back.
func (m Model) Typing() bool { return m.question != nil }

// reply takes a key while a question stands. Any key but Enter answers a question
// that has no input with no.
func (m Model) reply(msg tea.KeyMsg, tool bool) (Model, tea.Cmd) {
	q := *m.question
	switch {
	case key.Matches(msg, m.KeyMap.Drop):
		m.question = nil
		return m, nil
	case key.Matches(msg, m.KeyMap.Keep) && tool:
		return m, nil
	case key.Matches(msg, m.KeyMap.Keep):
		text := ""
		if q.input != nil {
			text = q.input.Value()
		}
		m.question = nil
		next, cmd, err := q.answer(m, text)
		if err != nil {
			q.err = err
			next.question = &q
		}
		return next, cmd
	case q.input == nil:
		m.question = nil
		return m, nil
	}
	in, _ := q.input.Update(msg)
	q.input, q.err = &in, nil
	m.question = &q
	return m, nil
}

// The gaps that tell a tool's reading from a hand.
const (
	breath  = 150 * time.Millisecond // a command this close after a digit is part of a reading
	toolGap = 50 * time.Millisecond  // keys this close together come from no hand
)

// tool watches for the readings of a calliper.
type tool struct {
	last    time.Time
	reading bool // digits, and what follows them in one breath
	run     int  // characters with no more than toolGap between
}

// key takes one key and tells whether it belongs to a reading, and whether no hand can have
// typed it so fast.
func (t tool) key(msg tea.KeyMsg, now time.Time) (next tool, reading, fast bool) {
	gap := now.Sub(t.last)
	near := func(d time.Duration) bool { return !t.last.IsZero() && gap >= 0 && gap <= d }
	reading, fast = t.reading && near(breath), t.run >= 3 && near(toolGap)
	if msg.Type != tea.KeyRunes && msg.Type != tea.KeySpace {
		return t, reading, fast
	}
	if !near(toolGap) {
		t.run = 0
	}
	t.run += len(msg.Runes)
	t.last = now
	t.reading = reading
	for _, r := range msg.Runes {
		if '0' <= r && r <= '9' {
			t.reading = true
		}
	}
	return t, reading, fast
}

// windowText reads hold times, and h:mm for them too. A bare number could be minutes
// or hours, and a hold that is 60 times too short spoils the work: it is asked about.
func windowText(text string) (hold, latest time.Duration, err error) {
	if plain := strings.TrimSpace(text); bare.MatchString(plain) && strings.Trim(plain, "0") != "" {
		return 0, 0, fmt.Errorf("%q: give the unit: %s min, 2 h", text, plain)
	}
	return clock.ParseWindow(clockSpan.ReplaceAllString(text, "$1 h $2 min"))
}

var (
	bare      = regexp.MustCompile(`^[0-9]+([.,][0-9]+)?$`)
	clockSpan = regexp.MustCompile(`\b([0-9]{1,4}):([0-5][0-9])\b`)
)

// minutesText reads minutes where no unit is given.
func minutesText(text string) (time.Duration, error) {
	text = clockSpan.ReplaceAllString(text, "$1 h $2 min")
	if d, err := clock.ParseSpan(text + " min"); err == nil {
		return d, nil
	}
	return clock.ParseSpan(text)
}
