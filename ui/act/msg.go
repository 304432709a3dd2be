package act

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/project/shop"
)

// Msg is one value that a pane, or a room of the root's, answers with. The root
// takes them one after the other, at once, so that no key can overtake the change
// that the one before it made.
type Msg any

// Do has a command run: work that takes time.
type Do tea.Cmd

// Question is asked over the panes, as soon as they are to be seen, and takes every
// key until it is answered.
type Question struct {
	Title   string
	Text    []string
	Choices []Choice
	Stays   bool // Esc does not take it away
}

// Choice is one answer to a question.
type Choice struct {
	Key  string // one letter
	Does string
	Do   func() []Msg // nil: nothing
}

// Priced has the shop's prices hold as they stand in the settings by now.
type Priced struct{ Shop shop.Shop }

// PrintOrder has a quote of the project printed for the customer, by its place.
type PrintOrder struct{ Quote int }
