// Bare is a program on the same libraries as chape that does nothing but show a
// screen of text, the last key and the time: what chape is measured beside.
package main

import (
	"fmt"
	"os"
	"strings"
	"time"

	_ "chape/ui/term/background" // as chape does; without it a terminal that is silent delays the start by 5 s

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
)

type model struct {
	width, height int
	last          string
	now           time.Time
}

type tickMsg time.Time

var (
	quit  = key.NewBinding(key.WithKeys("q"))
	style = lipgloss.NewStyle().Bold(true)
)

func tick() tea.Cmd {
	return tea.Tick(time.Second, func(t time.Time) tea.Msg { return tickMsg(t) })
}

func (m model) Init() tea.Cmd { return tick() }

func (m model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.width, m.height = msg.Width, msg.Height
	case tea.KeyMsg:
		if key.Matches(msg, quit) || strings.HasSuffix(msg.String(), "q") { // it may come behind another letter
			return m, tea.Quit
		}
		m.last = msg.String()
	case tickMsg:
		m.now = time.Time(msg)
		return m, tick()
	}
	return m, nil
}

func (m model) View() string {
	if m.width == 0 {
		return ""
	}
	lines := []string{style.Render("bare") + fmt.Sprintf("  last %s  %s", m.last, m.now.Format("15:04"))}
	for len(lines) < m.height-1 {
		lines = append(lines, strings.Repeat("-", m.width))
	}
	return strings.Join(append(lines, "q quit"), "\n")
}

func main() {
	p := tea.NewProgram(model{}, tea.WithAltScreen(), tea.WithMouseCellMotion(), tea.WithFPS(30))
	if _, err := p.Run(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
