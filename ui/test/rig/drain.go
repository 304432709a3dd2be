package rig

import tea "github.com/charmbracelet/bubbletea"

// Drain runs a command as Bubble Tea does, but one after the other: what it brings goes to
// send, and to quit where it ends the program.
func Drain(cmd tea.Cmd, send func(tea.Msg), quit func()) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.QuitMsg:
		quit()
	case tea.BatchMsg:
		for _, c := range msg {
			Drain(c, send, quit)
		}
	default:
		send(msg)
	}
}
