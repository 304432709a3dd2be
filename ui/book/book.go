// Package book holds the panes and pages as they stand: which there are, which of them
// are seen, which is in hand, and what opens the others.
package book

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/layout"
)

// Book is all of them.
type Book struct {
	Leaves   []*Leaf
	Standing [layout.Panes]*Leaf // what stands side by side, or one at a time
	Focus    layout.Pane         // which of them is in hand
	Cover    *Leaf               // what is in hand instead, and fills the room; nil: nothing
}

// New gives a book of the pages of a list; those that are not there now are left out.
func New(pages []act.Page) Book {
	var b Book
	for _, p := range pages {
		if p.New != nil {
			b.Leaves = append(b.Leaves, &Leaf{Page: p})
		}
	}
	return b
}

// Begin makes the pages anew, for a project that has just been opened, but for those
// that last. Those that stand from the start are shown it.
func (b *Book) Begin(s act.Snapshot) {
	b.Standing = [layout.Panes]*Leaf{}
	for _, l := range b.Leaves {
		if l.Pane == nil || !l.Lasts {
			l.Pane = l.New()
		}
		if l.Room < act.Whole && b.Standing[l.Room] == nil {
			b.Standing[l.Room] = l
		}
	}
	for _, l := range b.Standing {
		l.Show(s) // before its size: what is in hand comes to stand first
	}
	b.Stale()
}

// Stale has every page shown the project anew when it is seen.
func (b *Book) Stale() {
	for _, l := range b.Leaves {
		l.Fresh, l.drawn = false, nil
	}
}

// Named is the page of a name; nil: there is none.
func (b *Book) Named(name string) *Leaf {
	return b.first(func(l *Leaf) bool { return l.Name == name })
}

// Front is the page that stands in a room from the start.
func (b *Book) Front(r act.Room) *Leaf {
	return b.first(func(l *Leaf) bool { return l.Room == r })
}

// InHand is the page that the keyboard belongs to.
func (b *Book) InHand() *Leaf {
	if b.Cover != nil {
		return b.Cover
	}
	return b.Standing[b.Focus]
}

// Take takes a page in hand: it comes to stand in its room.
func (b *Book) Take(l *Leaf) {
	if l.Room < act.Whole {
		b.Cover, b.Focus, b.Standing[l.Room] = nil, layout.Pane(l.Room), l
	} else {
		b.Cover = l
	}
}

// Behind is where leaving the page in hand leads.
func (b *Book) Behind() *Leaf {
	switch l := b.InHand(); {
	case l.Back != "":
		return b.Named(l.Back)
	case l.Room < act.Whole:
		return b.Front(l.Room)
	}
	return b.Standing[b.Focus]
}

// Seen tells whether a page is on the screen.
func (b *Book) Seen(l *Leaf, lay layout.Layout) bool {
	if b.Cover != nil {
		return l == b.Cover
	}
	return l.Room < act.Whole && b.Standing[l.Room] == l && !lay.Panes[l.Room].Empty()
}

// Openers are the pages that a key opens, but for the one in hand.
func (b *Book) Openers() []*Leaf {
	var all []*Leaf
	for _, l := range b.Leaves {
		if l != b.InHand() && len(l.Open.Keys()) > 0 {
			all = append(all, l)
		}
	}
	return all
}

// Taker is the page that a key opens and goes to.
func (b *Book) Taker(k tea.KeyMsg) *Leaf {
	if b.InHand().Room >= act.Whole { // it may have another use for it
		return nil
	}
	return b.first(func(l *Leaf) bool { return l.Takes != nil && l.Takes(k) })
}

// first is the first page that is so; nil: none is.
func (b *Book) first(is func(*Leaf) bool) *Leaf {
	if i := slices.IndexFunc(b.Leaves, is); i >= 0 {
		return b.Leaves[i]
	}
	return nil
}
