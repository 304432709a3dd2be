package shelfpane

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/plain"
	"chape/project/shelf"
	"chape/ui/act"
	"chape/ui/part"
)

// taking is the question what comes along from an earlier project. Enter at once takes
// what another knife mostly wants: all but the measurements.
type taking struct {
	earlier project.Project
	take    shelf.Take
	title   string          // of the new one
	start   project.Project // by the user's defaults
}

// project is the new one, as it is chosen so far.
func (t taking) project() project.Project { return shelf.From(t.earlier, t.title, t.start, t.take) }

// loadedMsg brings the earlier project for a new one of that title.
type loadedMsg struct {
	earlier project.Project
	title   string
	err     error
}

const (
	knifeKey  = "k"
	sheathKey = "h"
	fitsKey   = "c"
	stepsKey  = "s"
)

// takeKeys are the keys of the question.
func (m *Model) takeKeys() part.Keys {
	turn := func(which func(*shelf.Take) *bool) func() []act.Msg {
		return part.Quiet(func() {
			if m.question != nil && m.question.take != nil {
				b := which(&m.question.take.take)
				*b = !*b
			}
		})
	}
	return part.Keys{
		part.Key(knifeKey, "its measurements, or the new project's", turn(func(t *shelf.Take) *bool { return &t.Knife }), knifeKey),
		part.Key(sheathKey, "its sheath, or the new project's", turn(func(t *shelf.Take) *bool { return &t.Sheath }), sheathKey),
		part.Key(fitsKey, "its corrections, or none", turn(func(t *shelf.Take) *bool { return &t.Fits }), fitsKey),
		part.Key(stepsKey, "its steps, or the new project's", turn(func(t *shelf.Take) *bool { return &t.Steps }), stepsKey),
		m.turnLearned(),
	}
}

// lines are the choices, the chosen ones in brackets.
func (t taking) lines() []string {
	row := choiceRow
	fits := "each offered on the trial fit page (T), by landmarks"
	if t.take.Knife {
		fits = "kept as they are"
	}
	out := []string{
		row(knifeKey, "knife         ", "the same, measured there", "another, to be measured", t.take.Knife),
		row(sheathKey, "sheath        ", "as there", "the new project's", t.take.Sheath),
	}
	if n := len(t.earlier.Fits); n > 0 { // where there are none there is nothing to choose
		out = append(out, row(fitsKey, fmt.Sprintf("%-14s", plain.Many(n, "correction")), fits, "none", t.take.Fits))
	}
	return append(out, row(stepsKey, "steps         ", "as there", "the new project's", t.take.Steps))
}

// choiceRow is a row of the question: one of two.
func choiceRow(key, what, along, not string, taken bool) string {
	return key + " " + what + " " + picked(along, taken) + picked(not, !taken)
}

// load brings the earlier project from the disk.
func (m *Model) load(e shelf.Entry, title string) []act.Msg {
	s := m.o.Shelf
	return do(func() tea.Msg {
		p, err := s.Load(e.Path)
		return loadedMsg{p, title, err}
	})
}

// askTake asks what comes along.
func (m *Model) askTake(msg loadedMsg) []act.Msg {
	if msg.err != nil {
		return warn(msg.err.Error())
	}
	t := &taking{msg.earlier, shelf.Take{Sheath: true, Fits: true, Steps: true}, msg.title, m.o.Begin(msg.title)}
	q := &question{Ask: part.Confirm("What comes along from " + quoted(msg.earlier.Title) + "? Enter takes what is in brackets"), take: t}
	q.not = len(t.earlier.Fits) > 0 // its own corrections say more of it
	q.answer = func(string) ([]act.Msg, error) {
		p := t.project()
		q.learned.put(&p)
		return m.create(func() (project.Project, error) { return p, nil }), nil
	}
	return append(m.put(q), m.learn(q, t.start.Sheath.Leather, t.earlier.Sheath.Leather)...)
}
