package guard

import (
	"errors"
	"io"
	"os"
	"os/signal"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"
)

// framesPerSecond is plenty for a screen that changes with the keys and once a
// second.
const framesPerSecond = 30

// Run has a model on the terminal until it is left. Crash is the fault that ended it, nil
// where there was none; the error is Bubble Tea's own.
func Run(m tea.Model, out io.Writer) (crash *Crash, err error) {
	g := &Guard{Inner: m}
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

	if _, err = p.Run(); errors.Is(err, tea.ErrInterrupted) {
		err = nil // as good as quitting
	}
	return g.Crashed(), err
}
