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
	return m.attempt("tick", func(s []steps.Step) ([]steps.Step, error) { return steps.Tick(s, at, now) })
}

func (m *Model) skip() []act.Msg {
	at, skip, what := m.Chosen(), !m.step().Skipped, "skip"
	if !skip {
		what = "take in again"
	}
	return m.attempt(what, func(s []steps.Step) ([]steps.Step, error) { return steps.Skip(s, at, skip) })
}

func (m *Model) start() []act.Msg {
	at, now := m.Chosen(), m.wall()
	do := func(s []steps.Step) ([]steps.Step, error) { return steps.StartHold(s, at, now) }
	if m.step().Started.IsZero() || m.step().HoldState(now) == steps.NoHold {
		return m.attempt("start the hold of", do)
	}
	return m.confirm("Its hold was started before. Enter starts it anew", func() ([]act.Msg, error) {
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
	return m.ask("Put the hold off by", "15 min", 40, func(text string) ([]act.Msg, error) {
		d, err := minutesText(text)
		if err != nil {
			return nil, err
		}
		now := m.wall()
		return m.change("put off the hold of", func(s []steps.Step) ([]steps.Step, error) { return steps.Extend(s, at, now, d) })
	})
}

func (m *Model) askTimes() []act.Msg {
	at := m.Chosen()
	was := clock.Window(m.step().Hold, m.step().Latest)
	return m.ask("Hold: 2 h or 1:30, or not before - look by: 24 h - 48 h; 0 for none", was, 60,
		func(text string) ([]act.Msg, error) {
			if text == was { // what is shown is rounded: nothing typed changes nothing
				return nil, nil
			}
			hold, latest, err := windowText(text)
			if err != nil {
				return nil, err
			}
			return m.change("hold times of", func(s []steps.Step) ([]steps.Step, error) { return steps.SetHold(s, at, hold, latest) })
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
	return m.confirm("Enter takes this step out of the list", func() ([]act.Msg, error) {
		return m.change("take out", do)
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
	at, was := m.Chosen(), ""
	if m.step().Spent > 0 {
		was = spentText(m.step().Spent)
	}
	return m.ask("Time spent on it, in minutes, or as 1 h 20 min", was, 40,
		func(text string) ([]act.Msg, error) {
			if text == was {
				return nil, nil
			}
			d, err := minutesText(text)
			if err != nil {
				return nil, err
			}
			return m.change("minutes of", func(s []steps.Step) ([]steps.Step, error) { return steps.SetSpent(s, at, d) })
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
