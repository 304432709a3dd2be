// Package guard stands between Bubble Tea and the workbench, and lets no fault take the
// work along.
package guard

import (
	"fmt"
	"runtime/debug"
	"sync"

	tea "github.com/charmbracelet/bubbletea"
)

// Crash is a panic that was caught.
type Crash struct {
	Value any
	Stack []byte
}

func (c *Crash) Error() string { return fmt.Sprintf("chape has a fault: %v", c.Value) }

// Trace is where in the program it was.
func (c *Crash) Trace() []byte { return c.Stack }

// Guard is a model around another. A panic in any of its methods or commands ends the
// program in the ordinary way, so that the terminal is restored and what is in memory
// can be put on the disk; Bubble Tea's own net would restore the terminal but lose the
// document.
type Guard struct {
	Inner tea.Model
	Quit  func() // ends the program from outside an Update

	mu    sync.Mutex
	crash *Crash
}

type crashMsg struct{ crash *Crash }

// catch notes a running panic. It must be deferred itself.
func (g *Guard) catch() {
	if v := recover(); v != nil {
		g.note(&Crash{Value: v, Stack: debug.Stack()})
	}
}

func (g *Guard) note(c *Crash) {
	g.mu.Lock()
	defer g.mu.Unlock()
	if g.crash == nil {
		g.crash = c
	}
}

// Crashed gives the first panic, or nil.
func (g *Guard) Crashed() *Crash {
	g.mu.Lock()
	defer g.mu.Unlock()
	return g.crash
}

// Init implements tea.Model.
func (g *Guard) Init() (cmd tea.Cmd) {
	defer func() {
		if g.Crashed() != nil {
			cmd = tea.Quit
		}
	}()
	defer g.catch()
	return g.Wrap(g.Inner.Init())
}

// Update implements tea.Model.
func (g *Guard) Update(msg tea.Msg) (_ tea.Model, cmd tea.Cmd) {
	if c, ok := msg.(crashMsg); ok {
		g.note(c.crash)
	}
	if g.Crashed() != nil {
		return g, tea.Quit
	}
	defer func() {
		if g.Crashed() != nil {
			cmd = tea.Quit
		}
	}()
	defer g.catch()
	next, cmd := g.Inner.Update(msg)
	g.Inner = next
	return g, g.Wrap(cmd)
}

// View implements tea.Model.
func (g *Guard) View() (s string) {
	if g.Crashed() != nil {
		return ""
	}
	defer func() {
		if g.Crashed() != nil && g.Quit != nil {
			go g.Quit()
		}
	}()
	defer g.catch()
	return g.Inner.View()
}

// Wrap catches panics in a command, and in those it hands on in a batch.
func (g *Guard) Wrap(cmd tea.Cmd) tea.Cmd {
	if cmd == nil {
		return nil
	}
	return func() (msg tea.Msg) {
		defer func() {
			if v := recover(); v != nil {
				msg = crashMsg{&Crash{Value: v, Stack: debug.Stack()}}
			}
		}()
		msg = cmd()
		if batch, ok := msg.(tea.BatchMsg); ok {
			for i := range batch {
				batch[i] = g.Wrap(batch[i])
			}
		}
		return msg
	}
}
