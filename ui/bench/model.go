// Package bench is the bench view: one step and one hold, large enough to be
// read from two metres, worked with a knuckle.
package bench

import (
	"errors"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/clock"
	"chape/project/steps"
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

	now   func() time.Time
	w, h  int
	snap  act.Snapshot
	hand  hand
	near  bool // the key in hand came in one breath with a character
	clock steps.WorkClock
	on    bool
	said  said
	asked asked
}

// asked is a change of a hold that was sent and has not been seen to happen yet.
type asked struct {
	step int
	end  bool      // to end it; else to start it
	at   time.Time // zero: nothing is
}

// said is a line that answers a key.
type said struct {
	text  string
	until time.Time
}

const sayTime = 10 * time.Second

// New returns the bench view. Now is the clock for keys and ticks (time.Now).
func New(now func() time.Time, styles ink.Styles) *Model { return &Model{Styles: styles, now: now} }

// SetSize sets the cells it may fill.
func (m *Model) SetSize(w, h int) { m.w, m.h = w, h }

// SetSnapshot shows it the project as it is now; to be called after each change
// and every second, which keeps the minutes too.
func (m *Model) SetSnapshot(s act.Snapshot) {
	m.snap = s
	m.answer()
	if now := m.now(); now.After(m.said.until) || m.said.until.Sub(now) > sayTime {
		m.said = said{}
	}
	m.clock = m.clock.Look(s.Now, m.held(s.Now))
}

// answer says that what was asked has happened.
func (m *Model) answer() {
	a, list := m.asked, m.snap.Project.Steps
	if a.at.IsZero() || a.step >= len(list) {
		return
	}
	step, now := list[a.step], m.local(a.at)
	second := a.at.Truncate(time.Second)
	switch {
	case a.end && step.Ended.Equal(second):
		m.said.text = "hold ended early, kept on record"
	case a.end || !step.Started.Equal(second):
		return
	case step.Hold > 0:
		m.said.text = "hold started: not before " + clock.Time(step.NotBefore(), now)
	default:
		m.said.text = "hold started: look by " + clock.Time(step.LookBy(), now)
	}
	m.said.until, m.asked = m.now().Add(sayTime), asked{}
}

// setOn tells it whether it is on the screen. Minutes are counted while it is.
func (m *Model) setOn(on bool) {
	if on == m.on {
		return
	}
	now := m.now()
	m.on, m.said, m.asked = on, said{}, asked{}
	if on {
		m.hand = hand{}
		m.clock = m.clock.On(now).Look(now, m.held(now))
		return
	}
	m.clock = m.clock.Off(now)
}

// silenced takes a key or touch that silenced an alarm. It does nothing else,
// nor does it while it is held down.
func (m *Model) silenced() {
	now := m.now()
	m.hand = m.hand.silenced(now)
	m.clock = m.clock.Key(now)
}

// flush keeps the minutes counted so far with the step in hand, for when the view is
// left or the project closed.
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
	return m.commit("minutes of", at, func(list []steps.Step) ([]steps.Step, error) {
		return steps.AddSpent(list, at, spent)
	})
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
		m.setOn(msg.Is)
		if !msg.Is {
			return m, m.flush()
		}
	case tea.MouseMsg:
		if msg.Action == tea.MouseActionPress && msg.Button == tea.MouseButtonLeft && m.onStep(msg.X, msg.Y) {
			return m, m.press(touchKey, false)
		}
	}
	return m, nil
}

// press does what a key means.
func (m *Model) press(k stroke, near bool) []act.Msg {
	now := m.now()
	m.clock = m.clock.Key(now)
	var means meaning
	m.hand, means = m.hand.read(k, near, now)
	if means != nothing {
		m.said, m.asked = said{}, asked{}
	}
	switch means {
	case goOn:
		return m.goOn(now)
	case takeBack:
		return []act.Msg{act.Commit{Label: "take the last tick back", Do: takeLastBack}}
	case armed:
		if m.held(now) {
			m.said = said{"enter ends this hold early", now.Add(armTime)}
		}
	case endHold:
		return m.endHold(now)
	case onceMore:
		m.said = said{"press again to leave the program", now.Add(twiceTime)}
		if k == suspendKey {
			m.said.text = "press again to go to the shell"
		}
	case leave:
		return []act.Msg{act.Leave{}}
	case quit:
		return []act.Msg{act.Quit{}}
	case suspend:
		return []act.Msg{act.Suspend{}}
	}
	return nil
}

// goOn starts the hold of the step in hand, or says that it runs, or ticks.
func (m *Model) goOn(now time.Time) []act.Msg {
	list := m.snap.Project.Steps
	at := steps.Current(list)
	if at < 0 {
		m.said = said{"every step is done", now.Add(sayTime)}
		return nil
	}
	switch list[at].HoldState(now) {
	case steps.HoldRunning:
		notYet := steps.NotYetError{Until: list[at].NotBefore(), Now: m.local(now)}
		m.said = said{notYet.Error(), now.Add(sayTime)}
		return nil
	case steps.HoldWaiting:
		m.asked = asked{step: at, at: now.Round(0)}
		return m.change("start the hold of", at, now, steps.StartHold)
	}
	return m.change("tick", at, now, steps.Tick)
}

func (m *Model) endHold(now time.Time) []act.Msg {
	if !m.held(now) {
		m.said = said{"no hold runs here", now.Add(sayTime)}
		return nil
	}
	at := steps.Current(m.snap.Project.Steps)
	m.asked = asked{step: at, end: true, at: now.Round(0)}
	return m.change("end early the hold of", at, now, steps.EndEarly)
}

// change commits one of the rules together with the minutes spent until now.
func (m *Model) change(what string, at int, now time.Time, rule func([]steps.Step, int, time.Time) ([]steps.Step, error)) []act.Msg {
	work, spent := m.clock.Take()
	m.clock = work
	return m.commit(what, at, func(list []steps.Step) ([]steps.Step, error) {
		list, err := rule(list, at, now.Round(0))
		if err != nil {
			return nil, err
		}
		return steps.AddSpent(list, at, spent)
	})
}

// commit sends a change of step at. It does nothing when another change got
// there first and the step is no longer the one that was on the screen.
func (m *Model) commit(what string, at int, do func([]steps.Step) ([]steps.Step, error)) []act.Msg {
	seen := m.snap.Project.Steps[at]
	return []act.Msg{act.Commit{
		Label: what + " " + seen.ShortName(),
		Do: func(p *project.Project) error {
			if steps.Current(p.Steps) != at || p.Steps[at].Title != seen.Title || !p.Steps[at].Started.Equal(seen.Started) {
				return errors.New("the steps have changed meanwhile: look and press again")
			}
			list, err := do(p.Steps)
			if err == nil {
				p.Steps = list
			}
			return err
		},
	}}
}

func takeLastBack(p *project.Project) error {
	last := steps.LastTick(p.Steps)
	if last < 0 {
		return errors.New("no step is ticked: there is nothing to take back")
	}
	list, err := steps.Untick(p.Steps, last)
	if err == nil {
		p.Steps = list
	}
	return err
}

// local gives now in the location that times are shown in.
func (m *Model) local(now time.Time) time.Time { return now.In(m.snap.Now.Location()) }
