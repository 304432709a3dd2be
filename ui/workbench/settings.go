package workbench

import tea "github.com/charmbracelet/bubbletea"

// rereadMsg is the answer of a look at the settings.
type rereadMsg struct{ news *Settings }

// reread gives the command that looks whether the settings have changed.
func (m *Model) reread() tea.Cmd {
	look := m.o.Reread
	if look == nil || m.rereading {
		return nil
	}
	m.rereading = true
	return func() tea.Msg { return rereadMsg{look()} }
}

// putSettings takes settings read again on: the open project is planned by them.
func (m *Model) putSettings(msg rereadMsg) tea.Cmd {
	m.rereading = false
	if msg.news == nil {
		return nil
	}
	m.message = msg.news.Say
	if msg.news.Put != nil {
		msg.news.Put(&m.o)
		m.session.Doc().SetLimits(msg.news.Limits)
		m.changed = true
	}
	return nil
}
