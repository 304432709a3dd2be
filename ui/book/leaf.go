package book

import (
	"cmp"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/term"
)

// Leaf is a page as it stands.
type Leaf struct {
	act.Page
	Pane  act.Pane
	Fresh bool     // it has the newest snapshot
	drawn []string // as last drawn; nil: it has to be drawn anew
}

// Show gives a page the newest snapshot.
func (l *Leaf) Show(s act.Snapshot) {
	l.Pane.SetSnapshot(s)
	l.Fresh, l.drawn = true, nil
}

// Tell hands a page a message, and gives what it answers. Stays: it has to be answered
// before another is taken in hand.
func (l *Leaf) Tell(msg tea.Msg) (out []act.Msg, stays bool) {
	l.Pane, out = l.Pane.Update(msg)
	l.drawn = nil
	for _, o := range out {
		if _, ok := o.(act.Stay); ok {
			stays = true
		}
	}
	return out, stays
}

// SetSize gives a page the room inside its frame, or the whole screen.
func (l *Leaf) SetSize(w, h int) {
	l.drawn = nil
	l.Pane.SetSize(w, h)
}

// Framed is a page in its frame of w by h cells, drawn anew where something in it has
// changed.
func (l *Leaf) Framed(w, h int, inHand bool, e layout.Edges) []string {
	if l.drawn == nil {
		title := term.Plain(cmp.Or(l.Title, l.Name))
		l.drawn = layout.Frame(w, h, title, inHand, strings.Split(l.Pane.View(), "\n"), e)
	}
	return l.drawn
}
