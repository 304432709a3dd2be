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
	"chape/ui/term/ink"
)

// What the bench view asks of the root.
type (
	Leave   struct{} // back to the panes
	Quit    struct{} // end the program
	Suspend struct{} // to the shell
)

// Model is the bench view of one project; for another one take a New one.
//
// The root hands it every key and mouse event while it is on, in the order they
// came, except the key that silences an alarm: that one goes to Silenced. The commands
// that Update returns send one message each and wait for nothing, so the
// root may run them at once; then nothing can overtake a tick.
type Model struct {
	KeyMap KeyMap
	Styles ink.Styles

	now    func() time.Time
	ascii  bool
	w, h   int
	snap   act.Snapshot
	others []steps.Hold
	hand   hand
	clock  steps.WorkClock
	on     bool
	said   said
	asked  asked
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

// New returns the bench view. Now is the clock for keys and ticks (time.Now);
// ascii draws the letters with '#'.
func New(now func() time.Time, styles ink.Styles, ascii bool) Model {
	return Model{KeyMap: DefaultKeyMap(), Styles: styles, now: now, ascii: ascii}
}

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

// SetHolds gives it the holds of the other projects.
func (m *Model) SetHolds(others []steps.Hold) { m.others = others }

// SetOn tells it whether it is on the screen. Minutes are counted while it is.
func (m *Model) SetOn(on bool) {
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

// On tells whether it is on the screen.
func (m Model) On() bool { return m.on }

// Silenced takes a key or touch that silenced an alarm. It does nothing else,
// nor does it while it is held down.
func (m Model) Silenced() Model {
	now := m.now()
	m.hand = m.hand.silenced(now)
	m.clock = m.clock.Key(now)
	return m
}

// Flush keeps the minutes counted so far with the step in hand, for when the project is
// closed between two ticks.
func (m Model) Flush() (Model, tea.Cmd) {
	at := steps.Current(m.snap.Project.Steps)
	if at < 0 {
		return m, nil
	}
	now := m.now()
	m.clock = m.clock.Look(now, m.held(now))
	work, spent := m.clock.Take()
	if spent < time.Minute {
		return m, nil
	}
	m.clock = work
	return m, m.commit("minutes of", at, func(list []steps.Step) ([]steps.Step, error) {
		return steps.AddSpent(list, at, spent)
	})
}

// held tells whether the hold of the step in hand runs.
func (m Model) held(now time.Time) bool {
	list := m.snap.Project.Steps
	at := steps.Current(list)
	return at >= 0 && list[at].HoldState(now) == steps.HoldRunning
}

// Update takes a key or a mouse event, in cells of the view.
func (m Model) Update(msg tea.Msg) (Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.KeyMsg:
		return m.press(m.KeyMap.stroke(msg))
	case tea.MouseMsg:
		if msg.Action == tea.MouseActionPress && msg.Button == tea.MouseButtonLeft && m.onStep(msg.X, msg.Y) {
			return m.press(touchKey)
		}
	}
	return m, nil
}

// press does what a key means.
func (m Model) press(k stroke) (Model, tea.Cmd) {
	now := m.now()
	m.clock = m.clock.Key(now)
	var means meaning
	m.hand, means = m.hand.read(k, now)
	if means != nothing {
		m.said, m.asked = said{}, asked{}
	}
	switch means {
	case goOn:
		return m.goOn(now)
	case takeBack:
		return m, act.Send(act.Commit{Label: "take the last tick back", Do: takeLastBack})
	case armed:
		if m.held(now) {
			m.said = said{"enter ends this hold early", now.Add(armTime)}
		}
	case endHold:
		return m.endHold(now)
	case onceMore:
		m.said = said{"once more to leave the program", now.Add(twiceTime)}
		if k == suspendKey {
			m.said.text = "once more to go to the shell"
		}
	case leave:
		return m, act.Send(Leave{})
	case quit:
		return m, act.Send(Quit{})
	case suspend:
		return m, act.Send(Suspend{})
	}
	return m, nil
}

// goOn starts the hold of the step in hand, or says that it runs, or ticks.
func (m Model) goOn(now time.Time) (Model, tea.Cmd) {
	list := m.snap.Project.Steps
	at := steps.Current(list)
	if at < 0 {
		m.said = said{"every step is done", now.Add(sayTime)}
		return m, nil
	}
	switch list[at].HoldState(now) {
	case steps.HoldRunning:
		notYet := steps.NotYetError{Until: list[at].NotBefore(), Now: m.local(now)}
		m.said = said{notYet.Error(), now.Add(sayTime)}
		return m, nil
	case steps.HoldWaiting:
		m.asked = asked{step: at, at: now.Round(0)}
		return m.change("start the hold of", at, now, steps.StartHold)
	}
	return m.change("tick", at, now, steps.Tick)
}

func (m Model) endHold(now time.Time) (Model, tea.Cmd) {
	if !m.held(now) {
		m.said = said{"no hold runs here", now.Add(sayTime)}
		return m, nil
	}
	at := steps.Current(m.snap.Project.Steps)
	m.asked = asked{step: at, end: true, at: now.Round(0)}
	return m.change("end early the hold of", at, now, steps.EndEarly)
}

// change commits one of the rules together with the minutes spent until now.
func (m Model) change(what string, at int, now time.Time, rule func([]steps.Step, int, time.Time) ([]steps.Step, error)) (Model, tea.Cmd) {
	work, spent := m.clock.Take()
	m.clock = work
	return m, m.commit(what, at, func(list []steps.Step) ([]steps.Step, error) {
		list, err := rule(list, at, now.Round(0))
		if err != nil {
			return nil, err
		}
		return steps.AddSpent(list, at, spent)
	})
}

// commit sends a change of step at. It does nothing when another change got
// there first and the step is no longer the one that was on the screen.
func (m Model) commit(what string, at int, do func([]steps.Step) ([]steps.Step, error)) tea.Cmd {
	seen := m.snap.Project.Steps[at]
	return act.Send(act.Commit{
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
	})
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
func (m Model) local(now time.Time) time.Time { return now.In(m.snap.Now.Location()) }
