package workbench

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
)

// place is what stands between the head and the foot.
type place uint8

const (
	onPanes  place = iota // knife, plan and steps
	onShelf               // every project of the folder
	onDrying              // the weighings
)

// goTo shows another place; a number being typed is kept or dropped first.
func (m *Model) goTo(p place) tea.Cmd {
	var cmd tea.Cmd
	if m.at == onPanes {
		left, ok := m.knife.Leave()
		if cmd = m.run(left); !ok {
			return cmd
		}
	}
	m.dry.Close()
	m.at = p
	m.changed = true
	if p == onShelf {
		return tea.Batch(cmd, m.shelf.Look())
	}
	return cmd
}

// placeKey takes a key on the shelf or the page of weighings. Only those keys of
// the root are alive there that make sense.
func (m *Model) placeKey(k tea.KeyMsg) tea.Cmd {
	if m.typingInHand() {
		switch {
		case key.Matches(k, m.Keys.Break): // as in an edit: first what is typed, then the program
			return m.toPlace(tea.KeyMsg{Type: tea.KeyEsc})
		case key.Matches(k, m.Keys.Suspend):
			return m.suspend()
		}
	} else {
		switch {
		case key.Matches(k, m.Keys.Quit), key.Matches(k, m.Keys.Break):
			return m.quit()
		case key.Matches(k, m.Keys.Help):
			m.showHelp()
			return nil
		case key.Matches(k, m.Keys.Suspend):
			return m.suspend()
		case m.at == onDrying && key.Matches(k, m.Keys.Undo):
			return m.do(m.session.Undo())
		case m.at == onDrying && key.Matches(k, m.Keys.Redo):
			return m.do(m.session.Redo())
		case m.at == onDrying && key.Matches(k, m.dry.KeyMap.Leave):
			return m.goTo(onPanes)
		}
	}
	return m.toPlace(k)
}

// toPlace hands a message to what is shown. The shelf's commands do disk work and
// are left to the program; the weighings' are done at once.
func (m *Model) toPlace(msg tea.Msg) tea.Cmd {
	var cmd tea.Cmd
	if m.at == onShelf {
		m.shelf, cmd = m.shelf.Update(msg)
		return cmd
	}
	m.dry, cmd = m.dry.Update(msg)
	return m.run(cmd)
}

// leaveShelf goes back to the project, if one is open.
func (m *Model) leaveShelf() tea.Cmd {
	if m.bare {
		m.message = act.Say{Text: "Enter opens a project, n begins one, q quits"}
		return nil
	}
	return m.goTo(onPanes)
}
