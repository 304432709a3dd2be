package workbench

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	benchview "chape/ui/bench"
	"chape/ui/knifepane"
	"chape/ui/layout"
	"chape/ui/panel"
	"chape/ui/session"
)

// run does at once what a pane asks for. Panes' commands only hand over a
// message of package act and wait for nothing; run one after the other, no key
// can overtake the change that the one before it made.
func (m *Model) run(cmd tea.Cmd) tea.Cmd {
	out, _ := m.runAll(cmd)
	return out
}

// runAll stops a batch at the first message that is refused.
func (m *Model) runAll(cmd tea.Cmd) (out tea.Cmd, ok bool) {
	if cmd == nil {
		return nil, true
	}
	msg := cmd()
	batch, isBatch := msg.(tea.BatchMsg)
	if !isBatch {
		out, ok, _ = m.take(msg)
		return out, ok
	}
	var all []tea.Cmd
	for _, c := range batch {
		next, ok := m.runAll(c)
		all = append(all, next)
		if !ok {
			return tea.Batch(all...), false
		}
	}
	return tea.Batch(all...), true
}

// do does what values say, one after the other, up to the first that is refused.
func (m *Model) do(out []act.Msg) tea.Cmd {
	var all []tea.Cmd
	for _, msg := range out {
		cmd, ok, _ := m.take(msg)
		all = append(all, cmd)
		if !ok {
			break
		}
	}
	return tea.Batch(all...)
}

// take does what a value says; ok is false for a change that was refused. Known tells
// whether it is one that the root knows.
func (m *Model) take(msg act.Msg) (cmd tea.Cmd, ok, known bool) {
	switch msg := msg.(type) {
	case nil:
	case act.Do:
		return tea.Cmd(msg), true, true
	case act.Say:
		m.message = msg
	case act.Question:
		m.ask(msg)
	case act.Preview:
		m.session.Doc().Preview(msg.Do)
		m.changed = true
	case act.Drop:
		m.session.Doc().Drop()
		m.changed = true
	case act.Choose:
		m.session.Doc().Choose(msg.Mark)
		m.changed = true
	case act.Commit:
		return nil, m.commit(msg), true
	case session.Changed:
		m.changed = true
	case session.Moved:
		m.alarm.Moved(msg.From, msg.To)
	case session.Opened:
		return m.opened(), true, true
	case panel.PrintMsg:
		return m.do(m.session.Print(msg.Options)), true, true
	case panel.MeasuredMsg:
		m.o.Print.Correction = msg.Correction
		return m.do(m.session.KeepPrinter(msg.Correction)), true, true
	case panel.FontMsg:
		return m.setFont(msg.Font), true, true
	case benchview.Leave:
		return m.leaveBench(), true, true
	case benchview.Quit:
		return m.quit(), true, true
	case benchview.Suspend:
		return m.suspend(), true, true
	default:
		return nil, true, false
	}
	return nil, true, true
}

// commit makes a change for good, or says why not.
func (m *Model) commit(c act.Commit) bool {
	m.changed = true
	err := m.session.Doc().Commit(c.Label, c.Do)
	if err == nil {
		return true
	}
	m.message = act.Say{Text: c.Label + ": " + knifepane.Words(err), Warn: true}
	m.session.Doc().Drop()
	return false
}

// open goes over to another project.
func (m *Model) open(path string) tea.Cmd {
	if m.session.Has(path) {
		return m.goTo(onPanes)
	}
	return m.do(m.session.Open(path))
}

// opened shows the project that has taken the place of the one before.
func (m *Model) opened() tea.Cmd {
	m.bare = false
	m.makePanes()
	m.at, m.focus = onPanes, layout.Knife
	m.refresh()
	m.say(m.o.Alarm.Voice.Title(m.title()))
	return m.look()
}

// setFont takes the answer on and has it remembered.
func (m *Model) setFont(f act.Font) tea.Cmd {
	m.o.Font = f
	m.showFont()
	m.changed = true
	if m.o.Remember == nil {
		return nil
	}
	remember := m.o.Remember
	return func() tea.Msg {
		if err := remember(f); err != nil {
			return act.Say{Text: fmt.Sprintf("this answer can't be kept: %v", err), Warn: true}
		}
		return nil
	}
}
