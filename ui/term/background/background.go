// Package background settles lipgloss's idea of the terminal's background
// before anything can ask the terminal for it.
//
// bubbletea v1 asks in its own init, in every command of the program, and waits
// five seconds for a terminal that does not answer. Packages are initialised in
// the order of their import paths as soon as what they import is ready, so this
// one must import lipgloss only and sort before github.com/charmbracelet/bubbletea.
// Import it for its effect wherever bubbletea is imported.
package background

import "github.com/charmbracelet/lipgloss"

func init() {
	// The value matters to nobody: chape's colours are chosen by ui/term/ink,
	// which never asks.
	lipgloss.SetHasDarkBackground(true)
}
