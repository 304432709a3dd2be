// Package bench is the bench view: one step and one hold, large enough to be
// read from two metres, worked with a knuckle.
package bench

import (
	"slices"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/steps"
	"chape/project/weigh"
	"chape/ui/act"
	"chape/ui/part"
	"chape/ui/term/ink"
)

// Model is the bench view of one project; for another one take a New one.
//
// The root hands it every key and mouse event while it is on, in the order they came,
// except the key that silences an alarm: that is act.Silenced.
type Model struct {
	Styles ink.Styles

	now    func() time.Time
	wait   Wait
	w, h   int
	snap   act.Snapshot
	drying weigh.Drying // what the snapshot's weighings say
	hand   hand
	near   bool        // the key in hand came in one breath with a character
	goKey  stroke      // and if it is to go on: which of the two keys for it
	aims   steps.Begun // the hold that stood large when h was pressed
	helps  bool        // the keys are shown
	clock  steps.WorkClock
	on     bool
	runs   int // how often it was on: whose turn it is to save the minutes
	said   said
	hopes  func([]steps.Step) string // what was sent and is not seen yet: what to say once it is
}

// Wait gives a command that brings a message after a time.
type Wait func(time.Duration, tea.Msg) tea.Cmd

// said is a line that answers a key.
type said struct {
	text  string
	until time.Time
}

const sayTime = 10 * time.Second

// minutesPause is how often the minutes spent are saved while the view is on.
const minutesPause = 5 * time.Minute

type (
	// quietMsg comes when a key may have been let go.
	quietMsg struct {
		of      *Model
		stroke  stroke
		pressed time.Time
	}
	// minutesMsg comes when the minutes are to be saved.
	minutesMsg struct {
		of  *Model
		run int
	}
)

// New returns the bench view. Now is the clock for keys and ticks (time.Now).
func New(now func() time.Time, wait Wait, styles ink.Styles) *Model {
	return &Model{Styles: styles, now: now, wait: wait, drying: weigh.DryingOf(nil, 0)}
}

// SetSize sets the cells it may fill.
func (m *Model) SetSize(w, h int) { m.w, m.h = w, h }

// SetSnapshot shows it the project as it is now; to be called after each change
// and every second, which counts the minutes too.
func (m *Model) SetSnapshot(s act.Snapshot) {
	if !slices.Equal(s.Project.Weigh, m.snap.Project.Weigh) || s.Scale != m.snap.Scale {
		m.drying = weigh.DryingOf(s.Project.Weigh, s.Scale)
	}
	m.snap = s
	m.answer()
	if now := m.now(); now.After(m.said.until) || m.said.until.Sub(now) > sayTime {
		m.said = said{}
	}
	m.clock = m.clock.Look(s.Now, m.held(s.Now))
}

// answer says that what was asked has happened.
func (m *Model) answer() {
	if m.hopes == nil {
		return
	}
	if text := m.hopes(m.snap.Project.Steps); text != "" {
		m.hopes = nil
		m.say(text)
	}
}

func (m *Model) say(text string) { m.said = said{text, m.now().Add(sayTime)} }

// setOn tells it whether it is on the screen. Minutes are counted while it is.
func (m *Model) setOn(on bool) []act.Msg {
	if on == m.on {
		return nil
	}
	now := m.now()
	m.on, m.said, m.hopes, m.hand, m.helps = on, said{}, nil, hand{}, false
	if !on {
		m.clock = m.clock.Off(now)
		return m.flush()
	}
	m.clock = m.clock.On(now).Look(now, m.held(now))
	m.runs++
	return m.nextMinutes()
}

func (m *Model) nextMinutes() []act.Msg {
	return []act.Msg{act.Do(m.wait(minutesPause, minutesMsg{m, m.runs}))}
}

// silenced takes a key or touch that silenced an alarm. It does nothing else,
// nor does it while it is held down.
func (m *Model) silenced() {
	now := m.now()
	m.hand = m.hand.silenced(now)
	m.clock = m.clock.Key(now)
}

// flush keeps the minutes counted so far with the step in hand: every few minutes, and
// when the view is left or the project closed. Undo does not take them back.
func (m *Model) flush() []act.Msg {
	at := steps.Current(m.snap.Project.Steps)
	if at < 0 {
		return nil
	}
	now := m.now()
	m.clock = m.clock.Look(now, m.held(now))
	clock, spent := m.clock.Take()
	if spent < time.Minute {
		return nil
	}
	m.clock = clock
	title := m.snap.Project.Steps[at].Title
	return []act.Msg{act.Record{Do: func(p *project.Project) {
		at := slices.IndexFunc(p.Steps, func(s steps.Step) bool { return s.Title == title })
		if list, err := steps.AddSpent(p.Steps, at, spent); err == nil {
			p.Steps = list
		}
	}}}
}

// held tells whether the hold of the step in hand runs.
func (m *Model) held(now time.Time) bool {
	list := m.snap.Project.Steps
	at := steps.Current(list)
	return at >= 0 && list[at].HoldState(now) == steps.HoldRunning
}

// Update implements act.Pane.
func (m *Model) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	switch msg := msg.(type) {
	case part.Press:
		return m, m.key(msg)
	case act.Silenced:
		m.silenced()
	case act.InHand:
		return m, m.setOn(msg.Is)
	case quietMsg:
		if msg.of == m {
			return m, m.quiet(msg)
		}
	case minutesMsg:
		if msg.of == m && m.on && msg.run == m.runs {
			return m, append(m.flush(), m.nextMinutes()...)
		}
	case tea.MouseMsg:
		if m.helps && msg.Action == tea.MouseActionPress {
			m.putAway()
			return m, nil
		}
		if msg.Action == tea.MouseActionPress && msg.Button == tea.MouseButtonLeft && m.onStep(msg.X, msg.Y) {
			return m, m.press(touchKey, false)
		}
	}
	return m, nil
}
