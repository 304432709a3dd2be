// Package panel is what lies over the panes for a moment and has the keyboard while it
// does: a question, the list of keys, how to print.
package panel

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/term/ink"
)

// Panel is one of them.
type Panel interface {
	// Key takes a key; reading: it is the Enter at the end of a measuring tool's
	// reading. Done: the panel goes away, before what it answers with is taken.
	Key(k tea.KeyMsg, reading bool) (out []act.Msg, done bool)
	// SetSize gives the room between head and foot, all of which View fills.
	SetSize(w, h int)
	View() []string
	// Foot names the keys for the lowest line; none: they stand in the panel itself.
	Foot() []key.Binding
	// Typing tells whether a text is open that takes every key.
	Typing() bool
}

// Style is how panels are drawn.
type Style struct {
	ink.Styles
	Edges layout.Edges
}

// frame is what all panels have in common.
type frame struct {
	style Style
	w, h  int
}

func (f *frame) SetSize(w, h int) { f.w, f.h = w, h }

// inner is the room for content.
func (f *frame) inner() layout.Rect { return layout.Rect{W: f.w, H: f.h}.Inner() }

// framed puts lines, each with a space before it, into the frame.
func (f *frame) framed(title string, lines []string) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = " " + l
	}
	return layout.Frame(f.w, f.h, title, true, out, f.style.Edges)
}
