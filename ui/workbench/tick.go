package workbench

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/alarm"
	"chape/ui/term"
)

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
	m.refreshTime(m.snapshot())
	return tea.Batch(m.nextTick(), m.do(m.session.Save()), m.look(), m.reread(), due)
}

// look gives the commands that look whether someone else changed the file, and at the
// other projects of the shelf.
func (m *Model) look() tea.Cmd { return tea.Batch(m.alarm.Poll(), m.session.Poll()) }

// observe has the alarm ring for what has fallen due.
func (m *Model) observe() tea.Cmd { return m.do(m.alarm.Observe()) }

// say shows that the terminal could not be written to; the program goes on.
func (m *Model) say(err error) { m.do(alarm.Said(err)) }

// title is the window's title.
func (m *Model) title() string {
	if m.alarm.Ringing() {
		return "! " + m.alarm.Text()
	}
	if m.bare {
		return "chape"
	}
	name := m.session.Doc().Committed().Title
	if name == "" {
		name = "no title yet"
	}
	return "chape: " + term.Plain(name)
}
