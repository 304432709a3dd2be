package guard

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"
)

// faulty panics where it is told to.
type faulty struct{ where string }

func (f faulty) Init() tea.Cmd {
	if f.where == "init" {
		panic(f.where)
	}
	return nil
}

func (f faulty) Update(tea.Msg) (tea.Model, tea.Cmd) {
	bad := func() tea.Msg { panic(f.where) }
	switch f.where {
	case "update":
		panic(f.where)
	case "command":
		return f, bad
	case "batch":
		return f, tea.Batch(func() tea.Msg { return nil }, tea.Batch(bad, bad))
	}
	return f, nil
}

func (f faulty) View() string {
	if f.where == "view" {
		var none []int
		return string(rune(none[len(f.where)]))
	}
	return "fine"
}

// run does what Bubble Tea does with a command, without its goroutines.
func runAll(g *Guard, cmd tea.Cmd) (quit bool) {
	if cmd == nil {
		return false
	}
	switch msg := cmd().(type) {
	case tea.QuitMsg:
		return true
	case tea.BatchMsg:
		for _, c := range msg {
			quit = runAll(g, c) || quit
		}
		return quit
	case nil:
		return false
	default:
		_, next := g.Update(msg)
		return runAll(g, next)
	}
}

func TestGuard(t *testing.T) {
	for _, where := range []string{"init", "update", "command", "batch", "view"} {
		stopped := make(chan bool, 1)
		g := &Guard{Inner: faulty{where}, Quit: func() { stopped <- true }}
		quit := runAll(g, g.Init())
		if !quit {
			_, cmd := g.Update("anything")
			quit = runAll(g, cmd)
		}
		g.View()
		if where == "view" {
			quit = <-stopped
		}
		if g.Crashed() == nil || !quit {
			t.Errorf("%s: crash %v, quit %v", where, g.Crashed(), quit)
		}
	}
	g := &Guard{Inner: faulty{"nowhere"}}
	if _, cmd := g.Update("anything"); cmd != nil || g.View() != "fine" || g.Crashed() != nil {
		t.Errorf("a sound model is disturbed: %v", g.Crashed())
	}
}
