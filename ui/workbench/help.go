package workbench

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/layout"
)

// help is the overlay that lists the keys.
type help struct{ top int }

// section is the keys of one part of the screen.
type section struct {
	title string
	keys  []key.Binding
}

// sections collects every key from the tables that the parts themselves go by.
func (m *Model) sections() []section {
	return []section{
		{"Everywhere, while nothing is typed", m.Keys.Bindings()},
		{"Knife", m.knife.Keys.Bindings()},
		{"While a value is typed", m.knife.Keys.Typing()},
		{"Plan", m.plan.Keys.Bindings()},
		{"Steps", slices.Concat(m.steps.KeyMap.FullHelp()...)},
		{"Bench view", slices.Concat(m.bench.KeyMap.FullHelp()...)},
	}
}

// helpKey scrolls the overlay; any other key closes it, but not a measuring
// tool, whose next reading would then go astray.
func (m *Model) helpKey(k tea.KeyMsg, reading bool) tea.Cmd {
	if reading || k.Type == tea.KeyRunes && strings.ContainsAny(string(k.Runes), "0123456789") {
		return nil
	}
	room := m.overlay().Inner().H
	most := max(0, len(m.helpLines())-room)
	switch k.Type {
	case tea.KeyUp:
		m.help.top = max(0, m.help.top-1)
	case tea.KeyDown:
		m.help.top = min(most, m.help.top+1)
	case tea.KeyPgUp:
		m.help.top = max(0, m.help.top-room)
	case tea.KeyPgDown, tea.KeySpace:
		m.help.top = min(most, m.help.top+room)
	default:
		m.help = nil
	}
	return nil
}

const keyWidth = 16

func (m *Model) helpLines() []string {
	var lines []string
	for i, s := range m.sections() {
		if i > 0 {
			lines = append(lines, "")
		}
		lines = append(lines, m.o.Styles.Heading.Render(s.title))
		for _, b := range s.keys {
			if h := b.Help(); b.Enabled() && h.Key != "" {
				lines = append(lines, layout.Line(" "+m.plainKeys(h.Key), keyWidth)+" "+h.Desc)
			}
		}
	}
	return lines
}

// plainKeys writes the arrows in words where the font may lack them.
func (m *Model) plainKeys(s string) string {
	if !m.o.ascii() {
		return s
	}
	switch s {
	case "↑":
		return "Up"
	case "↓":
		return "Down"
	case "←":
		return "Left"
	case "→":
		return "Right"
	}
	return s
}
