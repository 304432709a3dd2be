package bench

import (
	"errors"
	"strings"
	"time"

	"chape/project"
	"chape/project/clock"
	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/term"
)

// press does what a key means.
func (m *Model) press(k stroke, near bool) []act.Msg {
	now := m.now()
	m.clock = m.clock.Key(now)
	var means meaning
	m.hand, means = m.hand.read(k, near, now)
	if means != nothing {
		m.said, m.hopes = said{}, nil
	}
	switch means {
	case later:
		return []act.Msg{act.Do(m.wait(quietTime, quietMsg{m, k, now}))}
	case armed:
		m.arm(now)
	case onceMore:
		m.said = said{"press again to quit", now.Add(twiceTime)}
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
	return m.work(means, now)
}

// quiet does what was put off, as of when the key was pressed.
func (m *Model) quiet(msg quietMsg) []act.Msg {
	var means meaning
	m.hand, means = m.hand.quiet(msg.stroke, msg.pressed, m.now())
	return m.work(means, msg.pressed)
}

// work does what changes the steps.
func (m *Model) work(means meaning, now time.Time) []act.Msg {
	switch means {
	case goOn:
		return m.goOn(now)
	case takeBack:
		return m.takeBack()
	case endHold:
		return m.endHold(now)
	case tooLate:
		m.say("too late: h, then Enter within 3 s")
	}
	return nil
}

// arm says which hold Enter will end.
func (m *Model) arm(now time.Time) {
	h, can := m.ending(now)
	m.aims = h.Begun()
	text := "Enter ends this hold early"
	switch {
	case !can:
		text = m.noEnd(now)
	case !h.own:
		text = "Enter ends the hold of " + term.Plain(h.Short) + " early"
	}
	m.said = said{text, now.Add(armTime)}
}

// goOn starts the hold of the step in hand, or says that it runs, or ticks.
func (m *Model) goOn(now time.Time) []act.Msg {
	list := m.snap.Project.Steps
	at := steps.Current(list)
	if at < 0 {
		m.say("every step is done")
		return nil
	}
	switch list[at].HoldState(now) {
	case steps.HoldUnset:
		m.say("the data sheet says how long: set the time in Steps")
		return nil
	case steps.HoldRunning:
		m.say(steps.NotYetError{Until: list[at].NotBefore(), Now: m.local(now)}.Error())
		return nil
	case steps.HoldWaiting:
		m.hopes = func(list []steps.Step) string { return m.runsNow(list, at) }
		return m.change("start the hold of", at, now, steps.StartHold)
	}
	m.hopes = func(list []steps.Step) string { return m.startedWith(list, at) }
	return m.change("tick", at, now, steps.Tick)
}

// runsNow says that the hold of step at runs, "" while it does not.
func (m *Model) runsNow(list []steps.Step, at int) string {
	if at >= len(list) || list[at].Started.IsZero() {
		return ""
	}
	if s := list[at]; s.Hold <= 0 {
		return "hold started: look by " + clock.Time(s.LookBy(), m.snap.Now)
	}
	return "hold started: not before " + clock.Time(list[at].NotBefore(), m.snap.Now)
}

// startedWith says which holds the tick of step at has started; "" for none.
func (m *Model) startedWith(list []steps.Step, at int) string {
	if at >= len(list) || list[at].Done.IsZero() {
		return ""
	}
	var names []string
	for _, s := range list {
		if s.From == list[at].Short && s.Started.Equal(list[at].Done) && s.HasHold() {
			names = append(names, s.ShortName()+" till "+clock.Time(s.NotBefore(), m.snap.Now))
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "started: " + strings.Join(names, ", ")
}

func (m *Model) endHold(now time.Time) []act.Msg {
	h, can := m.ending(now)
	if !can || h.Begun() != m.aims { // it has fallen due since: what stands large now was not meant
		m.say(m.noEnd(now))
		return nil
	}
	at := h.Step
	m.hopes = func(list []steps.Step) string {
		if at >= len(list) || list[at].Ended.IsZero() {
			return ""
		}
		return "hold ended early, kept on record"
	}
	return m.change("end early the hold of", at, now, steps.EndEarly)
}

// takeBack takes back the start of the hold of the step in hand, else the last tick.
func (m *Model) takeBack() []act.Msg {
	list := m.snap.Project.Steps
	if at := steps.Current(list); at >= 0 && list[at].StartedByHand(list) {
		was := list[at].Started
		m.hopes = func(list []steps.Step) string {
			switch {
			case at >= len(list) || list[at].Started.Equal(was):
				return ""
			case !list[at].Started.IsZero():
				return "taken back: the hold counts from its first start, " + clock.Time(list[at].Started, m.snap.Now)
			}
			return "the start of the hold is taken back; Esc, u undoes that"
		}
		return m.commit("take back the start of", at, func(list []steps.Step) ([]steps.Step, error) { return steps.DropStart(list, at) })
	}
	last := steps.LastTick(list)
	if last < 0 {
		m.say("no step is ticked: there is nothing to take back")
		return nil
	}
	seen := list[last]
	m.hopes = func(list []steps.Step) string {
		if last >= len(list) || !list[last].Done.IsZero() {
			return ""
		}
		return "the tick of " + seen.ShortName() + " is taken back"
	}
	return []act.Msg{act.Commit{Label: "take back the tick of " + seen.ShortName(), Do: func(p *project.Project) error {
		if at := steps.LastTick(p.Steps); at != last || p.Steps[at].Title != seen.Title {
			return errChanged
		}
		list, err := steps.Untick(p.Steps, last)
		if err == nil {
			p.Steps = list
		}
		return err
	}}}
}

// change commits one of the rules together with the minutes spent until now, which are of
// the step in hand.
func (m *Model) change(what string, at int, now time.Time, rule func([]steps.Step, int, time.Time) ([]steps.Step, error)) []act.Msg {
	work, spent := m.clock.Take()
	m.clock = work
	in := steps.Current(m.snap.Project.Steps)
	return m.commit(what, at, func(list []steps.Step) ([]steps.Step, error) {
		list, err := rule(list, at, now.Round(0))
		if err != nil {
			return nil, err
		}
		return steps.AddWorked(list, in, spent)
	})
}

// commit sends a change of step at. It does nothing when another change got
// there first and the step, or the one in hand, is no longer the one that was on the screen.
func (m *Model) commit(what string, at int, do func([]steps.Step) ([]steps.Step, error)) []act.Msg {
	seen, in := m.snap.Project.Steps[at], steps.Current(m.snap.Project.Steps)
	return []act.Msg{act.Commit{
		Label: what + " " + seen.ShortName(),
		Do: func(p *project.Project) error {
			if steps.Current(p.Steps) != in || at >= len(p.Steps) || p.Steps[at].Title != seen.Title || !p.Steps[at].Started.Equal(seen.Started) {
				return errChanged
			}
			list, err := do(p.Steps)
			if err == nil {
				p.Steps = list
			}
			return err
		},
	}}
}

var errChanged = errors.New("the steps have changed meanwhile: look and press again")

// local gives now in the location that times are shown in.
func (m *Model) local(now time.Time) time.Time { return now.In(m.snap.Now.Location()) }
