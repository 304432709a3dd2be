package workbench

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
)

// rememberedMsg tells that a look was put into the settings, or why not.
type rememberedMsg struct {
	font act.Font
	err  error
}

// setLook has drawings made so.
func (m *Model) setLook(f act.Font) tea.Cmd {
	m.o.Font = f
	m.changed = true
	return m.remember()
}

// remember puts how drawings are made into the settings, one change after the other:
// whoever tries all samples is not to meet their own writing there.
func (m *Model) remember() tea.Cmd {
	if m.o.Remember == nil || m.noting {
		return nil
	}
	m.noting = true
	f, keep := m.o.Font, m.o.Remember
	return func() tea.Msg { return rememberedMsg{f, keep(f)} }
}

func (m *Model) remembered(msg rememberedMsg) tea.Cmd {
	m.noting = false
	switch {
	case msg.err != nil:
		m.message = act.Say{Text: fmt.Sprintf("for this time only, it can't be kept: %v", msg.err), Warn: true}
	case msg.font != m.o.Font:
		return m.remember()
	}
	return nil
}
