package stepspane

import (
	"slices"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/clock"
	"chape/project/steps"
	"chape/ui/act"
)

// wall is the time to note, shown in the location of the screen's clock.
func (m Model) wall() time.Time { return m.now().Round(0).In(m.snap.Now.Location()) }

func (m Model) step() steps.Step { return m.steps()[m.Chosen()] }

func (m Model) tick() (Model, tea.Cmd) {
	at, now := m.Chosen(), m.wall()
	if !m.step().Done.IsZero() {
		return m.attempt("take back the tick of", func(s []steps.Step) ([]steps.Step, error) { return steps.Untick(s, at) })
	}
	return m.attempt("tick", func(s []steps.Step) ([]steps.Step, error) { return steps.Tick(s, at, now) })
}

func (m Model) skip() (Model, tea.Cmd) {
	at, skip, what := m.Chosen(), !m.step().Skipped, "skip"
	if !skip {
		what = "take in again"
	}
	return m.attempt(what, func(s []steps.Step) ([]steps.Step, error) { return steps.Skip(s, at, skip) })
}

func (m Model) start() (Model, tea.Cmd) {
	at, now := m.Chosen(), m.wall()
	do := func(s []steps.Step) ([]steps.Step, error) { return steps.StartHold(s, at, now) }
	if m.step().Started.IsZero() || m.step().HoldState(now) == steps.NoHold {
		return m.attempt("start the hold of", do)
	}
	return m.confirm("Its hold was started before. Enter starts it anew", func(m Model) (Model, tea.Cmd, error) {
		cmd, err := m.change("start anew the hold of", do)
		return m, cmd, err
	}), nil
}

func (m Model) askEnd() (Model, tea.Cmd) {
	at := m.Chosen()
	if m.step().HoldState(m.wall()) != steps.HoldRunning {
		return m, act.Send(act.Say{Text: "no hold runs here: there is nothing to end", Warn: true})
	}
	return m.confirm("Enter ends this hold early, and keeps that on record", func(m Model) (Model, tea.Cmd, error) {
		now := m.wall()
		cmd, err := m.change("end early the hold of", func(s []steps.Step) ([]steps.Step, error) { return steps.EndEarly(s, at, now) })
		return m, cmd, err
	}), nil
}

func (m Model) askLater() (Model, tea.Cmd) {
	at := m.Chosen()
	return m.ask("Put the hold off by", "15 min", 40, func(m Model, text string) (Model, tea.Cmd, error) {
		d, err := minutesText(text)
		if err != nil {
			return m, nil, err
		}
		now := m.wall()
		cmd, err := m.change("put off the hold of", func(s []steps.Step) ([]steps.Step, error) { return steps.Extend(s, at, now, d) })
		return m, cmd, err
	}), nil
}

func (m Model) askTimes() (Model, tea.Cmd) {
	at := m.Chosen()
	was := clock.Window(m.step().Hold, m.step().Latest)
	return m.ask("Hold: 2 h or 1:30, or not before - look by: 24 h - 48 h; 0 for none", was, 60,
		func(m Model, text string) (Model, tea.Cmd, error) {
			if text == was { // what is shown is rounded: nothing typed changes nothing
				return m, nil, nil
			}
			hold, latest, err := windowText(text)
			if err != nil {
				return m, nil, err
			}
			cmd, err := m.change("hold times of", func(s []steps.Step) ([]steps.Step, error) { return steps.SetHold(s, at, hold, latest) })
			return m, cmd, err
		}), nil
}

func (m Model) askNew() Model {
	at := m.Chosen()
	return m.ask("New step: what is done in it", "", longestTitle, func(m Model, text string) (Model, tea.Cmd, error) {
		cmd, err := m.change("add a step after", func(s []steps.Step) ([]steps.Step, error) {
			return steps.Add(s, at, steps.Step{Title: text})
		})
		if err == nil {
			m.at = at + 1
		}
		return m, cmd, err
	})
}

// askTitle asks for the title and then for the short name.
func (m Model) askTitle() (Model, tea.Cmd) {
	at, step := m.Chosen(), m.step()
	return m.ask("Title", step.Title, longestTitle, func(m Model, title string) (Model, tea.Cmd, error) {
		if _, err := steps.Rename(m.steps(), at, title, ""); err != nil {
			return m, nil, err
		}
		return m.ask("Short name for the bench view, at most 9 letters", step.ShortName(), steps.MaxShort,
			func(m Model, short string) (Model, tea.Cmd, error) {
				cmd, err := m.change("rename", func(s []steps.Step) ([]steps.Step, error) {
					return steps.Rename(s, at, title, short)
				})
				return m, cmd, err
			}), nil, nil
	}), nil
}

func (m Model) askRemove() (Model, tea.Cmd) {
	at := m.Chosen()
	do := func(s []steps.Step) ([]steps.Step, error) { return steps.Remove(s, at) }
	if _, err := do(m.steps()); err != nil {
		return m, act.Send(act.Say{Text: err.Error(), Warn: true})
	}
	return m.confirm("Enter takes this step out of the list", func(m Model) (Model, tea.Cmd, error) {
		cmd, err := m.change("take out", do)
		return m, cmd, err
	}), nil
}

func (m Model) askNote() (Model, tea.Cmd) {
	at, was := m.Chosen(), m.step().Note
	return m.ask("Note", was, longestNote, func(m Model, text string) (Model, tea.Cmd, error) {
		if text == was {
			return m, nil, nil
		}
		cmd, err := m.change("note on", func(s []steps.Step) ([]steps.Step, error) { return steps.SetNote(s, at, text) })
		return m, cmd, err
	}), nil
}

// askCaution changes what the step warns of. An empty answer takes it out.
func (m Model) askCaution() (Model, tea.Cmd) {
	at, was := m.Chosen(), m.step().Caution
	return m.ask("Caution: what can hurt in this step, and what keeps it from you", was, longestNote,
		func(m Model, text string) (Model, tea.Cmd, error) {
			if text == was {
				return m, nil, nil
			}
			cmd, err := m.change("caution of", func(s []steps.Step) ([]steps.Step, error) {
				out := slices.Clone(s)
				out[at].Caution = strings.TrimSpace(text)
				return out, nil
			})
			return m, cmd, err
		}), nil
}

func (m Model) askMinutes() (Model, tea.Cmd) {
	at, was := m.Chosen(), ""
	if m.step().Spent > 0 {
		was = spentText(m.step().Spent)
	}
	return m.ask("Time spent on it, in minutes, or as 1 h 20 min", was, 40,
		func(m Model, text string) (Model, tea.Cmd, error) {
			if text == was {
				return m, nil, nil
			}
			d, err := minutesText(text)
			if err != nil {
				return m, nil, err
			}
			cmd, err := m.change("minutes of", func(s []steps.Step) ([]steps.Step, error) { return steps.SetSpent(s, at, d) })
			return m, cmd, err
		}), nil
}

func (m Model) moveUp() (Model, tea.Cmd)   { return m.move(-1) }
func (m Model) moveDown() (Model, tea.Cmd) { return m.move(1) }

func (m Model) move(places int) (Model, tea.Cmd) {
	at := m.Chosen()
	_, to, err := steps.Move(m.steps(), at, places)
	if err != nil || to == at {
		return m, nil
	}
	next, cmd := m.attempt("move", func(s []steps.Step) ([]steps.Step, error) {
		out, _, err := steps.Move(s, at, places)
		return out, err
	})
	next.choose(to)
	return next, cmd
}
