package stepspane

import (
	"slices"
	"strings"
	"time"

	"chape/project/clock"
	"chape/project/steps"
	"chape/ui/act"
)

// wall is the time to note, shown in the location of the screen's clock.
func (m *Model) wall() time.Time { return m.now().Round(0).In(m.snap.Now.Location()) }

func (m *Model) step() steps.Step { return m.steps()[m.Chosen()] }

func (m *Model) tick() []act.Msg {
	at, now := m.Chosen(), m.wall()
	if !m.step().Done.IsZero() {
		return m.attempt("take back the tick of", func(s []steps.Step) ([]steps.Step, error) { return steps.Untick(s, at) })
	}
	do := func(s []steps.Step) ([]steps.Step, error) { return steps.Tick(s, at, now) }
	switch m.step().HoldState(now) {
	case steps.HoldUnset:
		return m.askTimes(true)
	case steps.HoldWaiting:
		label := "Its hold of " + clock.Window(m.step().Hold, m.step().Latest) + " was not started: " + startKey + " starts it. Enter ticks the step without it"
		m.confirm(label, func() ([]act.Msg, error) { return m.change("tick", do) })
		m.question.starts = true
		return nil
	}
	return m.attempt("tick", do)
}

func (m *Model) skip() []act.Msg {
	at, skip, what := m.Chosen(), !m.step().Skipped, "skip"
	if !skip {
		what = "undo the skip of"
	}
	return m.attempt(what, func(s []steps.Step) ([]steps.Step, error) { return steps.Skip(s, at, skip) })
}

// start starts the hold; how long one by the data sheet takes is asked first.
func (m *Model) start() []act.Msg {
	at, now := m.Chosen(), m.wall()
	if m.step().HoldState(now) == steps.HoldUnset {
		return m.askTimes(false)
	}
	do := func(s []steps.Step) ([]steps.Step, error) { return steps.StartHold(s, at, now) }
	if m.step().Started.IsZero() || m.step().HoldState(now) == steps.NoHold {
		return m.attempt("start the hold of", do)
	}
	return m.confirm("Its hold was started before. Enter starts it anew, and keeps on record when it was first", func() ([]act.Msg, error) {
		return m.change("start anew the hold of", do)
	})
}

func (m *Model) askEnd() []act.Msg {
	at := m.Chosen()
	if m.step().HoldState(m.wall()) != steps.HoldRunning {
		return warn("no hold runs here: there is nothing to end")
	}
	return m.confirm("Enter ends this hold early, and keeps that on record", func() ([]act.Msg, error) {
		now := m.wall()
		return m.change("end early the hold of", func(s []steps.Step) ([]steps.Step, error) { return steps.EndEarly(s, at, now) })
	})
}

func (m *Model) askLater() []act.Msg {
	at := m.Chosen()
	switch m.step().HoldState(m.wall()) {
	case steps.HoldRunning, steps.HoldDue, steps.HoldLate:
	default:
		return warn("no hold runs here: there is nothing to put off")
	}
	return m.askSpan("Put the hold off by", "15 min", 40, func(text string) ([]act.Msg, error) {
		d, err := minutesText(text)
		if err != nil {
			return nil, err
		}
		now := m.wall()
		return m.change("put off the hold of", func(s []steps.Step) ([]steps.Step, error) { return steps.Extend(s, at, now, d) })
	})
}

// askTimes asks how long the hold is. Where it was to be ticked, one that there is none
// of ticks it.
func (m *Model) askTimes(tick bool) []act.Msg {
	at := m.Chosen()
	label, was := "How long is the hold? 2 h or 1:30; 24 h - 48 h with a look-by; 0 for none", clock.Window(m.step().Hold, m.step().Latest)
	unset := m.step().HoldState(m.snap.Now) == steps.HoldUnset
	if unset {
		label, was = "How long does the data sheet say it has to wait? 2 h or 1:30, or 24 h - 48 h; 0 for not at all", ""
	}
	return m.askSpan(label, was, 60,
		func(text string) ([]act.Msg, error) {
			if text == was && !unset { // what is shown is rounded: nothing typed changes nothing
				return nil, nil
			}
			hold, latest, err := windowText(text)
			if err != nil {
				return nil, err
			}
			do := func(s []steps.Step) ([]steps.Step, error) { return steps.SetHold(s, at, hold, latest) }
			if tick && hold == 0 && latest == 0 {
				return m.tickWithout(at, do)
			}
			return m.change("hold times of", do)
		})
}

// tickWithout ticks a step whose hold does not stand in the way any more after do.
func (m *Model) tickWithout(at int, do rule) ([]act.Msg, error) {
	now := m.wall()
	return m.change("tick", func(s []steps.Step) ([]steps.Step, error) {
		s, err := do(s)
		if err != nil {
			return nil, err
		}
		return steps.Tick(s, at, now)
	})
}

func (m *Model) askNew() []act.Msg {
	at := m.Chosen()
	return m.ask("New step: what is done in it", "", longestTitle, func(text string) ([]act.Msg, error) {
		out, err := m.change("add a step after", func(s []steps.Step) ([]steps.Step, error) {
			return steps.Add(s, at, steps.Step{Title: text})
		})
		if err == nil {
			m.list.At = at + 1
		}
		return out, err
	})
}

// askTitle asks for the title and then for the short name.
func (m *Model) askTitle() []act.Msg {
	at, step := m.Chosen(), m.step()
	return m.ask("Title", step.Title, longestTitle, func(title string) ([]act.Msg, error) {
		if _, err := steps.Rename(m.steps(), at, title, ""); err != nil {
			return nil, err
		}
		return m.ask("Short name for the bench view, at most 9 letters", step.ShortName(), steps.MaxShort,
			func(short string) ([]act.Msg, error) {
				return m.change("rename", func(s []steps.Step) ([]steps.Step, error) {
					return steps.Rename(s, at, title, short)
				})
			}), nil
	})
}

func (m *Model) askRemove() []act.Msg {
	at := m.Chosen()
	do := func(s []steps.Step) ([]steps.Step, error) { return steps.Remove(s, at) }
	if _, err := do(m.steps()); err != nil {
		return warn(err.Error())
	}
	return m.confirm("Enter removes this step from the list", func() ([]act.Msg, error) {
		return m.change("remove", do)
	})
}

func (m *Model) askNote() []act.Msg {
	at, was := m.Chosen(), m.step().Note
	return m.ask("Note", was, longestNote, func(text string) ([]act.Msg, error) {
		if text == was {
			return nil, nil
		}
		return m.change("note on", func(s []steps.Step) ([]steps.Step, error) { return steps.SetNote(s, at, text) })
	})
}

// askCaution changes what the step warns of. An empty answer takes it out.
func (m *Model) askCaution() []act.Msg {
	at, was := m.Chosen(), m.step().Caution
	return m.ask("Caution: what can hurt in this step, and what keeps it from you", was, longestNote,
		func(text string) ([]act.Msg, error) {
			if text == was {
				return nil, nil
			}
			return m.change("caution of", func(s []steps.Step) ([]steps.Step, error) {
				out := slices.Clone(s)
				out[at].Caution = strings.TrimSpace(text)
				return out, nil
			})
		})
}

func (m *Model) askMinutes() []act.Msg {
	return m.askWork("Time spent on it, in minutes, or as 1 h 20 min", "minutes of", m.step().Spent, steps.SetSpent)
}

func (m *Model) askExpected() []act.Msg {
	return m.askWork("How long the work takes you, in minutes, or as 1 h 20 min", "minutes expected of", m.step().Expect, steps.SetExpected)
}

// askWork asks for a time at the bench.
func (m *Model) askWork(label, what string, now time.Duration, set func([]steps.Step, int, time.Duration) ([]steps.Step, error)) []act.Msg {
	at, was := m.Chosen(), ""
	if now > 0 {
		was = spentText(now)
	}
	return m.askSpan(label, was, 40, func(text string) ([]act.Msg, error) {
		if text == was {
			return nil, nil
		}
		d, err := minutesText(text)
		if err != nil {
			return nil, err
		}
		return m.change(what, func(s []steps.Step) ([]steps.Step, error) { return set(s, at, d) })
	})
}

func (m *Model) moveUp() []act.Msg   { return m.move(-1) }
func (m *Model) moveDown() []act.Msg { return m.move(1) }

func (m *Model) move(places int) []act.Msg {
	at := m.Chosen()
	_, to, err := steps.Move(m.steps(), at, places)
	if err != nil || to == at {
		return nil
	}
	out := m.attempt("move", func(s []steps.Step) ([]steps.Step, error) {
		out, _, err := steps.Move(s, at, places)
		return out, err
	})
	m.list.Choose(to)
	return out
}
