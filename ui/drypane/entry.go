package drypane

import (
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
)

// entry is what is being typed or asked, at the foot of the page.
type entry struct {
	label  string
	input  textinput.Model
	plain  bool   // Enter alone is the answer
	fresh  bool   // the first character takes the place of the text, which is an old value
	scale  bool   // a scale may type here: its own Enter counts
	doubt  string // why the text as it stands is asked about
	err    error  // why it will not do
	answer func(m Model, text string) (answer, error)
}

// answer is what keeping an entry does.
type answer struct {
	commit act.Commit // nothing is done where Do is nil
	doubt  string     // asked once before it is done
	at     int        // the row to choose then, -1: the one chosen stays
}

const longestEntry = 60

func inputWidth(w int) int { return max(4, min(w-2, longestEntry)) }

func (m Model) ask(e entry, text string) Model {
	in := textinput.New()
	in.Prompt = ""
	in.CharLimit = longestEntry
	in.Cursor.SetMode(cursor.CursorStatic)
	in.Width = inputWidth(m.w)
	in.Focus()
	in.SetValue(text)
	in.CursorEnd()
	e.input = in
	m.entry = &e
	return m
}

// begins tells whether a key is the beginning of a number.
func begins(msg tea.KeyMsg) bool {
	return msg.Type == tea.KeyRunes && !msg.Alt && len(msg.Runes) > 0 && strings.ContainsRune("0123456789.,+-", msg.Runes[0])
}

// reply takes a key while there is an entry.
func (m Model) reply(msg tea.KeyMsg, by hand) (Model, tea.Cmd) {
	e := *m.entry
	switch {
	case key.Matches(msg, m.KeyMap.Drop):
		m.entry = nil
		return m, nil
	case key.Matches(msg, m.KeyMap.Keep):
		if by == again || by == tool && !e.scale {
			return m, nil
		}
		return m.keep(by)
	case e.plain:
		m.entry = nil
		if begins(msg) { // a scale goes on typing
			return m.command(msg)
		}
		return m, nil
	}
	if e.fresh && (msg.Type == tea.KeyRunes || msg.Type == tea.KeyBackspace || msg.Type == tea.KeyDelete) {
		e.input.SetValue("")
	}
	e.input, _ = e.input.Update(msg)
	e.fresh, e.doubt, e.err = false, "", nil
	m.entry = &e
	return m, nil
}

// keep does what was typed, or says why not. What is in doubt needs a second
// Enter, and that by hand.
func (m Model) keep(by hand) (Model, tea.Cmd) {
	e := *m.entry
	a, err := e.answer(m, e.input.Value())
	e.fresh = by == tool // its next reading is another one, not more of this
	switch {
	case err != nil:
		e.err, e.doubt = err, ""
	case a.doubt != "" && (e.doubt == "" || by == tool):
		e.doubt, e.err = a.doubt, nil
	default:
		m.entry = nil
		if a.commit.Do == nil {
			return m, nil
		}
		if a.at >= 0 {
			m.at = a.at // the snapshot that follows has it
		}
		return m, act.Send(a.commit)
	}
	m.entry = &e
	return m, nil
}

// hand is who pressed a key, as far as its pace tells.
type hand uint8

const (
	slow  hand = iota
	tool       // it ends a reading that no hand types so fast
	again      // an Enter on the heels of another: an LF after a CR, or a held key
)

// The gaps that tell a tool's reading from a hand.
const (
	breath  = 150 * time.Millisecond
	toolGap = 50 * time.Millisecond
)

// pace watches how fast keys come.
type pace struct {
	char, enter time.Time // when the last of them came
	run         int       // characters with no more than toolGap between
}

func (p pace) key(msg tea.KeyMsg, now time.Time) (pace, hand) {
	near := func(t time.Time, d time.Duration) bool {
		gap := now.Sub(t)
		return !t.IsZero() && gap >= 0 && gap <= d
	}
	switch msg.Type {
	case tea.KeyEnter, tea.KeyCtrlJ:
		by := slow
		if near(p.enter, breath) && !p.char.After(p.enter) {
			by = again
		} else if p.run >= 3 && near(p.char, toolGap) {
			by = tool
		}
		p.enter = now
		return p, by
	case tea.KeyRunes, tea.KeySpace:
		if !near(p.char, toolGap) {
			p.run = 0
		}
		p.run += len(msg.Runes)
		p.char = now
	}
	return p, slow
}
