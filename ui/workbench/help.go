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
		{"Shelf", slices.Concat(m.shelf.KeyMap.FullHelp()...)},
		{"Weighings", slices.Concat(m.dry.KeyMap.FullHelp()...)},
	}
}

// inHand puts the keys of what is in hand first.
func (m *Model) inHand(all []section) []section {
	first := m.focus.String()
	switch m.at {
	case onShelf:
		first = "Shelf"
	case onDrying:
		first = "Weighings"
	}
	i := slices.IndexFunc(all, func(s section) bool { return s.title == first })
	if i < 0 {
		return all
	}
	return append([]section{all[i]}, slices.Delete(slices.Clone(all), i, i+1)...)
}

// helpKey scrolls the overlay, or closes it; a measuring tool does neither.
func (m *Model) helpKey(k tea.KeyMsg) tea.Cmd {
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
	case tea.KeyHome:
		m.help.top = 0
	case tea.KeyEnd:
		m.help.top = most
	case tea.KeyEsc, tea.KeyCtrlC:
		m.help = nil
	}
	if key.Matches(k, m.Keys.Help, m.Keys.Quit) {
		m.help = nil
	}
	return nil
}

// The widths of the list of keys.
const (
	keyWidth   = 16
	twoAbreast = 116 // from here on the list stands in two columns
)

// helpLines is the list of keys.
func (m *Model) helpLines() []string {
	var lines []string
	for i, s := range m.inHand(m.sections()) {
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
	w := m.overlay().Inner().W
	if w < twoAbreast {
		return lines
	}
	half := (len(lines) + 1) / 2
	left := layout.Fit(lines[:half], w/2, half)
	return layout.Beside(left, layout.Fit(lines[half:], w-w/2, half))
}

// keyNames brings the parts' ways of writing keys to one.
var keyNames = map[string]string{
	"up": "↑", "down": "↓", "left": "←", "right": "→", "pgup": "PgUp", "pgdn": "PgDn", "home": "Home", "end": "End",
	"space": "Space", "enter": "Enter", "esc": "Esc", "backspace": "Backspace", "ctrl+c": "Ctrl+C", "ctrl+z": "Ctrl+Z",
}

// arrows are written in words where the font may lack them.
var arrows = strings.NewReplacer("↑", "Up", "↓", "Down", "←", "Left", "→", "Right")

func (m *Model) plainKeys(s string) string {
	words := strings.Split(s, " ")
	for i, w := range words {
		if name, ok := keyNames[w]; ok {
			words[i] = name
		}
	}
	s = strings.Join(words, " ")
	if m.o.ascii() {
		return arrows.Replace(s)
	}
	return s
}
