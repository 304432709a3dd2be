package workbench

import (
	"errors"
	"fmt"
	"os"
	"os/signal"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/document"
	"chape/ui/guard"
	"chape/ui/term"
)

// framesPerSecond is plenty for a screen that changes with the keys and once a
// second.
const framesPerSecond = 30

// Run shows the workbench until it is left. The error, for people, says what
// could not be kept and where it was put instead.
func Run(o Options) error {
	out := term.Open(os.Stdout)
	o.Alarm.Voice = out
	m := New(o)
	g := &guard.Guard{Inner: m}
	p := tea.NewProgram(g, tea.WithOutput(out), tea.WithAltScreen(), tea.WithMouseCellMotion(), tea.WithFPS(framesPerSecond))
	g.Quit = p.Quit

	// The terminal going away must not take the program before its last save; nor may a
	// signal for which the runtime would print its stacks over a screen left as it is.
	gone := make(chan os.Signal, 1)
	signal.Notify(gone, syscall.SIGHUP, syscall.SIGQUIT, syscall.SIGABRT)
	defer signal.Stop(gone)
	stop := make(chan struct{})
	defer close(stop)
	go func() {
		select {
		case <-gone:
			p.Quit()
		case <-stop:
		}
	}()

	defer func() { // another window may open the project when its last save is done
		m.session.Release()
	}()
	_, err := p.Run()
	out.Close()
	for _, line := range m.unrung() {
		fmt.Println(line)
	}
	if errors.Is(err, tea.ErrInterrupted) {
		err = nil // as good as quitting
	}
	return errors.Join(err, m.Finish(g.Crashed()))
}

// unrung says, to whoever has quit, which holds run on without a bell.
func (m *Model) unrung() []string {
	lines := m.alarm.Running(m.session.Doc().State() == document.Loose)
	if len(lines) == 0 {
		return nil
	}
	return append([]string{"Nothing rings while chape is closed. Still running:"}, lines...)
}
