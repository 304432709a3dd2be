// Package stepspane is the checklist with its holds.
package stepspane

import (
	"errors"
	"slices"
	"sync"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/steps"
	"chape/project/weigh"
	"chape/ui/act"
	"chape/ui/part"
	"chape/ui/term/ink"
)

// Model is the Steps pane. It never changes the project: it answers with act.Commit or
// act.Say.
type Model struct {
	Styles ink.Styles

	now      func() time.Time
	w, h     int
	focus    bool
	snap     act.Snapshot
	seen     bool // a snapshot has come
	list     part.List
	question *question
	boxed    struct { // the box that was pressed last
		step int
		when time.Time
	}
	mine   []steps.Step        // what the pane's own change makes of the list
	drying func() weigh.Drying // what the snapshot's weighings say
}

// New returns the pane. Now is the clock that ticks and holds are noted by (time.Now).
func New(now func() time.Time, styles ink.Styles) *Model {
	return &Model{Styles: styles, now: now}
}

// SetSize sets the cells inside the pane's edge.
func (m *Model) SetSize(w, h int) {
	m.w, m.h = max(w, 0), max(h, 0)
	if m.question != nil {
		m.question.SetWidth(m.w)
	}
	m.scroll()
}

// SetSnapshot shows it the project as it is now. Where the steps were changed elsewhere
// (at the bench, by undo, by another program) the chosen one follows.
func (m *Model) SetSnapshot(s act.Snapshot) {
	if !m.seen || !slices.Equal(s.Project.Weigh, m.snap.Project.Weigh) {
		m.drying = sync.OnceValue(func() weigh.Drying { return weigh.DryingOf(s.Project.Weigh, s.Scale) })
		go m.drying() // it takes some milliseconds: they are waited for where it is drawn
	}
	was, is := m.snap.Project.Steps, s.Project.Steps
	if changed := !slices.Equal(was, is); !m.seen || changed {
		own := m.mine != nil && slices.Equal(m.mine, is)
		at := follow(was, is)
		if has, had := s.Project.Parts(), m.snap.Project.Parts(); m.seen && has != had && slices.Equal(steps.Refit(was, had, has), is) {
			at = stays(was, is, m.Chosen())
		}
		if !own && m.question == nil && at >= 0 {
			m.list.At = at
		}
		m.mine = nil
	}
	m.snap, m.seen = s, true
	m.scroll()
}

// follow is the step to look at after a change made elsewhere, -1 for none: the one in
// hand where another is now, else the one that was changed.
func follow(was, is []steps.Step) int {
	current := steps.Current(is)
	if current >= 0 && current != steps.Current(was) || len(was) == 0 {
		return current
	}
	first, end := 0, 0 // how much is alike at the beginning, and at the end
	for shorter := min(len(was), len(is)); first < shorter && was[first] == is[first]; {
		first++
	}
	for shorter := min(len(was), len(is)) - first; end < shorter && was[len(was)-1-end] == is[len(is)-1-end]; {
		end++
	}
	if max(len(was), len(is))-first-end > mostAtOnce && current >= 0 {
		return current // another project, or another list
	}
	return min(first, len(is)-1)
}

// stays is where the chosen step is in a list that only follows what the sheath has come
// to have: a strap or a guard more is no reason to look at another step, and Space would
// tick the wrong one.
func stays(was, is []steps.Step, chosen int) int {
	if chosen < 0 || chosen == steps.Current(was) {
		return steps.Current(is)
	}
	same := func(s steps.Step) bool { return s.Title == was[chosen].Title }
	if at := slices.IndexFunc(is, same); at >= 0 {
		return at
	}
	return min(chosen, len(is)-1) // worded anew, or gone
}

// mostAtOnce is how many neighbouring steps one change touches: two that change places.
const mostAtOnce = 2

// Chosen returns the chosen step's place, -1 for an empty list.
func (m *Model) Chosen() int {
	if len(m.steps()) == 0 {
		return -1
	}
	return min(m.list.At, len(m.steps())-1)
}

func (m *Model) steps() []steps.Step { return m.snap.Project.Steps }

// Update implements act.Pane.
func (m *Model) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	switch msg := msg.(type) {
	case part.Press:
		if m.question != nil {
			return m, m.reply(msg)
		}
		top := m.list.Top
		out, _ := m.keys().Take(msg)
		m.list.Top = top // another step leaves the list another room
		m.scroll()
		return m, out
	case tea.MouseMsg:
		return m, m.mouse(msg)
	case act.InHand:
		m.focus = msg.Is
		if !msg.Is {
			m.question = nil
			m.scroll()
		}
	}
	return m, nil
}

// box is how many cells at the beginning of a row are its box, the mark in the middle.
const box = 3

// twice is how soon after the box of a step was pressed another press of it is the same
// one: a double click does not take back what it ticked.
const twice = 600 * time.Millisecond

// mouse chooses by wheel and click; a press on a step's box is the key that ticks.
func (m *Model) mouse(msg tea.MouseMsg) (out []act.Msg) {
	if msg.Action != tea.MouseActionPress || m.question != nil {
		return nil
	}
	defer m.scroll()
	if m.list.Wheel(msg) || msg.Button != tea.MouseButtonLeft || msg.Y >= m.listRows() || msg.X < 0 || msg.X >= m.w {
		return nil
	}
	at, ok := m.list.Click(msg.Y)
	if !ok || msg.X >= box {
		return nil
	}
	if since := m.now().Sub(m.boxed.when); m.boxed.step == at && 0 <= since && since < twice {
		return nil
	}
	m.boxed.step, m.boxed.when = at, m.now()
	return m.tick()
}

// rule is one of the project's rules with everything but the list filled in.
type rule func([]steps.Step) ([]steps.Step, error)

// change tries a rule on the list that is shown and, when it will do, sends it. The
// root's list may have changed meanwhile; then nothing happens to it.
func (m *Model) change(what string, do rule) ([]act.Msg, error) {
	at := m.Chosen()
	list, err := do(m.steps())
	if err != nil {
		return nil, err
	}
	m.mine = list
	label, title := what, ""
	if at >= 0 {
		label, title = what+" "+m.steps()[at].ShortName(), m.steps()[at].Title
	}
	return []act.Msg{act.Commit{Label: label, Do: func(p *project.Project) error {
		if at >= 0 && (at >= len(p.Steps) || p.Steps[at].Title != title) {
			return errors.New("the steps have changed meanwhile: choose again")
		}
		list, err := do(p.Steps)
		if err == nil {
			p.Steps = list
		}
		return err
	}}}, nil
}

// attempt is change for keys that ask nothing: what will not do is said.
func (m *Model) attempt(what string, do rule) []act.Msg {
	out, err := m.change(what, do)
	if err != nil {
		return warn(err.Error())
	}
	return out
}

func warn(text string) []act.Msg { return []act.Msg{act.Say{Text: text, Warn: true}} }
