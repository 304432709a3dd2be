package workbench

import (
	"fmt"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/clock"
	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/term"
)

// again is the pause between two bells.
const again = 20 * time.Second

// alarm rings for the holds that have fallen due until a key is pressed.
type alarm struct {
	text string   // the banner; "" while it is silent
	list []string // what fell due before the start, where it is more than one
	rang time.Time
}

func (a alarm) ringing() bool { return a.text != "" }

type tickMsg struct{}

// nextTick waits for the next full second of the clock, so that what is shown
// changes with it.
func (m *Model) nextTick() tea.Cmd {
	now := m.o.Clock()
	wait := now.Truncate(time.Second).Add(time.Second).Sub(now)
	return m.o.Tick(wait, func(time.Time) tea.Msg { return tickMsg{} })
}

// tick is once a second: holds, the disk, and saves to be tried again.
func (m *Model) tick() tea.Cmd {
	due := m.observe()
	m.voice(m.o.Voice.Title(m.title())) // sends nothing while it is the same
	m.refreshTime(m.snapshot())
	return tea.Batch(m.nextTick(), m.save(), m.look(), due)
}

// observe asks which holds have fallen due and rings; the command is the user's
// own, if there is one. What fell due before the program was started is told apart.
func (m *Model) observe() tea.Cmd {
	now := m.now()
	var texts []string
	for _, e := range m.watch.Observe(m.watched(), now) {
		if e.At.Before(m.began) {
			m.missed = append(m.missed, e)
			continue
		}
		texts = append(texts, eventText(e, m.pathKey(), now))
	}
	if m.tellMissed(now); len(texts) > 0 {
		m.ring(alarm{text: andMore(texts)}, now)
		return m.onDue(texts)
	}
	// A clock set back must not keep the bell silent for hours.
	if m.alarm.ringing() && (now.Sub(m.alarm.rang) >= again || now.Before(m.alarm.rang)) {
		m.alarm.rang = now
		m.bell()
	}
	return nil
}

func andMore(texts []string) string {
	text := texts[len(texts)-1]
	if n := len(texts) - 1; n > 0 {
		text = fmt.Sprintf("%s (and %d more)", text, n)
	}
	return text
}

func (m *Model) ring(a alarm, now time.Time) {
	a.rang = now
	m.alarm = a
	m.bell()
	m.voice(m.o.Voice.Title(m.title()))
	m.voice(m.o.Voice.Notice(m.o.Notice, "chape", m.alarm.text))
}

func (m *Model) bell() {
	if !m.o.NoBell {
		m.voice(m.o.Voice.Bell())
	}
}

// onDue runs the user's own command, without a shell. What was due stands in its
// environment, one a line. A failure is shown and does no more.
func (m *Model) onDue(texts []string) tea.Cmd {
	if len(m.o.OnDue) == 0 {
		return nil
	}
	words, text := m.o.OnDue, strings.Join(texts, "\n")
	return func() tea.Msg {
		if err := term.Call(words, text); err != nil {
			return act.Say{Text: err.Error(), Warn: true}
		}
		return nil
	}
}

// hush is the key that only silences.
func (m *Model) hush() {
	m.alarm = alarm{}
	m.voice(m.o.Voice.Title(m.title()))
}

// voice shows that the terminal could not be written to; the program goes on.
func (m *Model) voice(err error) {
	if err != nil {
		m.message = act.Say{Text: "the alarm could not be sounded: " + err.Error(), Warn: true}
	}
}

// title is the window's title.
func (m *Model) title() string {
	if m.alarm.ringing() {
		return "! " + m.alarm.text
	}
	if m.bare {
		return "chape"
	}
	name := m.doc.Committed().Title
	if name == "" {
		name = "no title yet"
	}
	return "chape: " + term.Plain(name)
}

// eventText says what has fallen due, and when if nobody was watching. The own
// project is not named.
func eventText(e steps.Event, own string, now time.Time) string {
	what := eventName(e, own)
	switch {
	case e.Kind == steps.GoesLate:
		return fmt.Sprintf("%s: look at it, it was due by %s", what, clock.Time(e.At, now))
	case e.Meanwhile:
		return fmt.Sprintf("%s fell due meanwhile, at %s", what, clock.Time(e.At, now))
	}
	return fmt.Sprintf("%s is due, %s", what, clock.Time(e.At, now))
}

func eventName(e steps.Event, own string) string {
	what := e.Hold.Short
	if e.Hold.Key != own {
		what = e.Hold.Project + " " + what
	}
	return term.Plain(what)
}
