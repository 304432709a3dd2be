// Package panel is what lies over the panes for a moment and has the keyboard while it
// does: a question, the list of keys, how to print.
package panel

import (
	"github.com/charmbracelet/bubbles/key"

	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/part"
	"chape/ui/term/ink"
)

// Panel is one of them.
type Panel interface {
	// Take takes a key. Done: the panel goes away, before what it answers with is taken.
	Take(p part.Press) (out []act.Msg, done bool)
	// SetSize gives the room between head and foot, all of which View fills.
	SetSize(w, h int)
	View() []string
	// Keys are all its keys, as a pane gives them; those with brief words stand in the
	// lowest line, the others in the panel itself.
	Keys() []act.Section
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
	over  bool // a key has ended it
}

func (f *frame) SetSize(w, h int) { f.w, f.h = w, h }

// ends gives what a key does that takes the panel away, with what it answers.
func (f *frame) ends(out func() []act.Msg) func() []act.Msg {
	return func() []act.Msg {
		f.over = true
		if out == nil {
			return nil
		}
		return out()
	}
}

// take has the rows take a key.
func (f *frame) take(keys part.Keys, p part.Press) (out []act.Msg, done bool) {
	out, _ = keys.Take(p)
	return out, f.over
}

// leaving is the row of the keys that take the panel away: Esc, and those of close.
func (f *frame) leaving(does string, close []key.Binding) part.Row {
	keys := []string{"esc"}
	for _, b := range close {
		keys = append(keys, b.Keys()...)
	}
	return part.Key("Esc", does, f.ends(nil), keys...)
}

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
