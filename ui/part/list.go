package part

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
)

// List is the cursor of a list that may be longer than its room: what is chosen, and
// what of it is shown. The zero List is empty.
type List struct {
	At  int // the chosen one; 0 in an empty list
	Top int // the first one shown

	n, rows int
}

// Set tells how many there are and how many have room. The chosen one stays, and
// stays in sight.
func (l *List) Set(n, rows int) {
	l.n, l.rows = max(n, 0), max(rows, 1)
	l.Choose(l.At)
}

// Choose goes to one of them, as near as there is.
func (l *List) Choose(at int) {
	l.At = max(0, min(at, l.n-1))
	l.Top = max(min(l.Top, l.At), l.At-l.rows+1)
	l.Top = max(0, min(l.Top, l.n-l.rows))
}

// Move goes by so many.
func (l *List) Move(by int) { l.Choose(l.At + by) }

// Shown is what is in sight: from one up to before the other.
func (l *List) Shown() (from, to int) { return l.Top, min(l.Top+l.rows, l.n) }

// Wheel moves by a notch of the wheel; known is false for other events.
func (l *List) Wheel(e tea.MouseMsg) (known bool) {
	switch {
	case e.Action != tea.MouseActionPress:
	case e.Button == tea.MouseButtonWheelUp:
		l.Move(-1)
		return true
	case e.Button == tea.MouseButtonWheelDown:
		l.Move(1)
		return true
	}
	return false
}

// Click tells which one a press on line y of the list meets, and chooses it.
func (l *List) Click(y int) (at int, ok bool) {
	from, to := l.Shown()
	if at = from + y; y < 0 || at >= to {
		return 0, false
	}
	l.Choose(at)
	return at, true
}

// Keys are the keys that choose, in the words of what is listed ("step").
func (l *List) Keys(what string) Keys {
	move := func(by func() int) func() []act.Msg { return Quiet(func() { l.Move(by()) }) }
	at := func(by int) func() int { return func() int { return by } }
	return Keys{
		Key("↑", what+" above", move(at(-1)), "up"),
		Key("↓", what+" below", move(at(1)), "down"),
		Key("PgUp", "a page up", move(func() int { return -l.rows }), "pgup"),
		Key("PgDn", "a page down", move(func() int { return l.rows }), "pgdown"),
		Key("Home", "first "+what, move(func() int { return -l.n }), "home"),
		Key("End", "last "+what, move(func() int { return l.n }), "end"),
	}
}
