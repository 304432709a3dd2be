// Package layout is where things stand on the screen: pure functions from a
// size to rectangles and lines.
package layout

import "fmt"

// Rect is a rectangle of character cells; X and Y count from the upper left.
type Rect struct{ X, Y, W, H int }

// Empty says whether nothing fits in.
func (r Rect) Empty() bool { return r.W <= 0 || r.H <= 0 }

// Contains says whether the cell lies in r.
func (r Rect) Contains(x, y int) bool {
	return x >= r.X && x < r.X+r.W && y >= r.Y && y < r.Y+r.H
}

// Inner is what a frame leaves for content.
func (r Rect) Inner() Rect {
	return Rect{r.X + 1, r.Y + 1, max(r.W-2, 0), max(r.H-2, 0)}
}

// Pane is one of the three parts of the bench top.
type Pane uint8

// The panes from left to right.
const (
	Knife Pane = iota
	Plan
	Steps
	Panes = 3
)

// String is the pane's title.
func (p Pane) String() string {
	return [...]string{"Knife", "Plan", "Steps"}[p%Panes]
}

// Next and Back go round the panes.
func (p Pane) Next() Pane { return (p + 1) % Panes }

// Back is the pane to the left, or the last.
func (p Pane) Back() Pane { return (p + Panes - 1) % Panes }

// The smallest screens: for the workbench, for three panes, and for the bench
// view.
const (
	LeastW, LeastH           = 40, 12
	AbreastW, AbreastH       = 118, 20
	LeastBenchW, LeastBenchH = 60, 20
)

// MostHolds is how many lines holds take at most.
const MostHolds = 2

// Layout is the screen divided up. A pane that is not shown has an empty
// rectangle. When TooSmall is not empty it is to be shown and nothing else is.
type Layout struct {
	W, H     int
	TooSmall string
	Head     Rect // one line: title, saved
	Holds    Rect // none to two lines
	Panes    [Panes]Rect
	Foot     Rect // one line: help
	Abreast  bool // all three panes are shown
}

// Screen divides a screen of w×h cells; focus is the pane in hand and holds
// the number of lines wanted for running holds.
func Screen(w, h int, focus Pane, holds int) Layout {
	l := Layout{W: w, H: h}
	if w < LeastW || h < LeastH {
		l.TooSmall = needs(w, h, LeastW, LeastH)
		return l
	}
	holds = min(max(holds, 0), MostHolds)
	l.Head = Rect{0, 0, w, 1}
	l.Holds = Rect{0, 1, w, holds}
	l.Foot = Rect{0, h - 1, w, 1}
	body := Rect{0, 1 + holds, w, h - 2 - holds}
	if w < AbreastW || h < AbreastH {
		l.Panes[focus%Panes] = body
		return l
	}
	l.Abreast = true
	knife, steps := sides(w)
	l.Panes[Knife] = Rect{0, body.Y, knife, body.H}
	l.Panes[Plan] = Rect{knife, body.Y, w - knife - steps, body.H}
	l.Panes[Steps] = Rect{w - steps, body.Y, steps, body.H}
	return l
}

// sides are the widths of Knife and Steps: the drawing gets what they can
// spare, they grow a little on wide screens.
func sides(w int) (knife, steps int) {
	extra := max(w-120, 0)
	return min(42+extra/6, 56), min(28+extra/5, 48)
}

// Bench says whether the bench view fits; otherwise what it needs.
func Bench(w, h int) (tooSmall string) {
	if w < LeastBenchW || h < LeastBenchH {
		return needs(w, h, LeastBenchW, LeastBenchH)
	}
	return ""
}

// needs says what size would do, in words short enough for a small screen.
func needs(w, h, leastW, leastH int) string {
	return fmt.Sprintf("needs %d×%d, has %d×%d", leastW, leastH, max(w, 0), max(h, 0))
}

// Message returns exactly h lines of w cells that show the text from the upper
// left, broken at the width; for a screen that is too small.
func Message(text string, w, h int) []string {
	return Fit(Wrap(text, w), w, h)
}
