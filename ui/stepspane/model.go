// Package stepspane is the checklist with its holds.
package stepspane

import (
	"errors"
	"slices"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/steps"
	"chape/project/weigh"
	"chape/ui/act"
	"chape/ui/term/ink"
)

// Model is the Steps pane. It never changes the project: its commands send one
// act.Commit or act.Say each and wait for nothing.
type Model struct {
	KeyMap KeyMap
	Styles ink.Styles

	now      func() time.Time
	w, h     int
	focus    bool
	snap     act.Snapshot
	seen     bool // a snapshot has come
	at       int  // the chosen step
	top      int  // the first one shown
	question *question
	tool     tool
	mine     []steps.Step // what the pane's own change makes of the list
	drying   weigh.Drying // what the snapshot's weighings say
}

// New returns the pane. Now is the clock that ticks and holds are noted by (time.Now).
func New(now func() time.Time, styles ink.Styles) Model {
	return Model{KeyMap: DefaultKeyMap(), Styles: styles, now: now}
}

// SetSize sets the cells inside the pane's edge.
func (m *Model) SetSize(w, h int) {
	m.w, m.h = max(w, 0), max(h, 0)
	if m.question != nil && m.question.input != nil {
		in := *m.question.input
		in.Width = max(4, m.w-2)
		q := *m.question
		q.input = &in
		m.question = &q
	}
	m.scroll()
}

// SetFocus tells whether the pane is in hand.
func (m *Model) SetFocus(focus bool) {
	m.focus = focus
	if !focus {
		m.question = nil
	}
}

// SetSnapshot shows it the project as it is now. Where the steps were changed elsewhere
// (at the bench, by undo, by another program) the chosen one follows.
func (m *Model) SetSnapshot(s act.Snapshot) {
	if !m.seen || !slices.Equal(s.Project.Weigh, m.snap.Project.Weigh) {
		m.drying = weigh.DryingOf(s.Project.Weigh, s.Scale)
	}
	was, is := m.snap.Project.Steps, s.Project.Steps
	if changed := !slices.Equal(was, is); !m.seen || changed {
		own := m.mine != nil && slices.Equal(m.mine, is)
		if at := follow(was, is); !own && m.question == nil && at >= 0 {
			m.at = at
		}
		m.mine = nil
	}
	m.snap, m.seen = s, true
	m.at = min(max(m.at, 0), max(len(m.steps())-1, 0))
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

// mostAtOnce is how many neighbouring steps one change touches: two that change places.
const mostAtOnce = 2

// Chosen returns the chosen step's place, -1 for an empty list.
func (m Model) Chosen() int {
	if len(m.steps()) == 0 {
		return -1
	}
	return min(m.at, len(m.steps())-1)
}

func (m Model) steps() []steps.Step { return m.snap.Project.Steps }

// Update takes a key, or a mouse event in cells of the pane's inside.
func (m Model) Update(msg tea.Msg) (Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.KeyMsg:
		var reading, fast bool
		m.tool, reading, fast = m.tool.key(msg, m.now())
		if m.question != nil {
			return m.reply(msg, fast)
		}
		if reading {
			return m, nil
		}
		return m.command(msg)
	case tea.MouseMsg:
		return m.mouse(tea.MouseEvent(msg)), nil
	}
	return m, nil
}

func (m Model) mouse(msg tea.MouseEvent) Model {
	if msg.Action != tea.MouseActionPress || m.question != nil {
		return m
	}
	switch msg.Button {
	case tea.MouseButtonWheelUp:
		m.choose(m.at - 1)
	case tea.MouseButtonWheelDown:
		m.choose(m.at + 1)
	case tea.MouseButtonLeft:
		rows := min(m.listRows(), len(m.steps())-m.top)
		if msg.Y >= 0 && msg.Y < rows && msg.X >= 0 && msg.X < m.w {
			m.choose(m.top + msg.Y)
		}
	}
	return m
}

// command carries out a key of the list.
func (m Model) command(msg tea.KeyMsg) (Model, tea.Cmd) {
	k := m.KeyMap
	for _, move := range []struct {
		key key.Binding
		to  int
	}{
		{k.Up, m.at - 1}, {k.Down, m.at + 1}, {k.PageUp, m.at - m.listRows()}, {k.PageDown, m.at + m.listRows()},
		{k.First, 0}, {k.Last, len(m.steps()) - 1},
	} {
		if key.Matches(msg, move.key) {
			m.choose(move.to)
			return m, nil
		}
	}
	if key.Matches(msg, k.Add) {
		return m.askNew(), nil
	}
	if m.Chosen() < 0 {
		return m, nil
	}
	for _, c := range []struct {
		key key.Binding
		do  func(Model) (Model, tea.Cmd)
	}{
		{k.Tick, Model.tick}, {k.Skip, Model.skip}, {k.Start, Model.start}, {k.End, Model.askEnd}, {k.Later, Model.askLater},
		{k.Times, Model.askTimes}, {k.Rename, Model.askTitle}, {k.Remove, Model.askRemove}, {k.Note, Model.askNote}, {k.Caution, Model.askCaution},
		{k.Minutes, Model.askMinutes}, {k.MoveUp, Model.moveUp}, {k.MoveDown, Model.moveDown},
	} {
		if key.Matches(msg, c.key) {
			return c.do(m)
		}
	}
	return m, nil
}

func (m *Model) choose(i int) {
	m.at = min(max(i, 0), max(len(m.steps())-1, 0))
	m.scroll()
}

// rule is one of the project's rules with everything but the list filled in.
type rule func([]steps.Step) ([]steps.Step, error)

// change tries a rule on the list that is shown and, when it will do, sends it. The
// root's list may have changed meanwhile; then nothing happens to it.
func (m *Model) change(what string, do rule) (tea.Cmd, error) {
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
	return act.Send(act.Commit{Label: label, Do: func(p *project.Project) error {
		if at >= 0 && (at >= len(p.Steps) || p.Steps[at].Title != title) {
			return errors.New("the steps have changed meanwhile: choose again")
		}
		list, err := do(p.Steps)
		if err == nil {
			p.Steps = list
		}
		return err
	}}), nil
}

// attempt is change for keys that ask nothing: what will not do is said.
func (m Model) attempt(what string, do rule) (Model, tea.Cmd) {
	cmd, err := m.change(what, do)
	if err != nil {
		return m, act.Send(act.Say{Text: err.Error(), Warn: true})
	}
	return m, cmd
}
