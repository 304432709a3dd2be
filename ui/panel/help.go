package panel

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/layout"
)

// Section is the keys of one part of the screen.
type Section struct {
	Title string
	Keys  []key.Binding
}

// Help lists the keys.
type Help struct {
	frame
	sections []Section
	close    []key.Binding
	top      int
}

// NewHelp gives the list of the sections' keys; those of close take it away, as Esc
// does.
func NewHelp(sections []Section, s Style, close ...key.Binding) *Help {
	return &Help{frame: frame{style: s}, sections: sections, close: close}
}

// Key scrolls the list, or closes it; a measuring tool does neither.
func (p *Help) Key(k tea.KeyMsg, _ bool) (out []act.Msg, done bool) {
	room := p.inner().H
	most := max(0, len(p.lines())-room)
	p.top = max(0, min(p.top, most))
	switch k.Type {
	case tea.KeyUp:
		p.top = max(0, p.top-1)
	case tea.KeyDown:
		p.top = min(most, p.top+1)
	case tea.KeyPgUp:
		p.top = max(0, p.top-room)
	case tea.KeyPgDown, tea.KeySpace:
		p.top = min(most, p.top+room)
	case tea.KeyHome:
		p.top = 0
	case tea.KeyEnd:
		p.top = most
	case tea.KeyEsc, tea.KeyCtrlC:
		return nil, true
	}
	return nil, key.Matches(k, p.close...)
}

// The widths of the list of keys.
const (
	keyWidth   = 16
	twoAbreast = 116 // from here on the list stands in two columns
)

// lines is the list of keys.
func (p *Help) lines() []string {
	var lines []string
	w := p.inner().W
	column := w
	if w >= twoAbreast {
		column = w/2 - 1
	}
	for i, s := range p.sections {
		if i > 0 {
			lines = append(lines, "")
		}
		lines = append(lines, p.style.Heading.Render(s.Title))
		for _, b := range s.Keys {
			if h := b.Help(); b.Enabled() && h.Key != "" {
				name := " " + KeyName(h.Key, p.style.Edges.ASCII)
				for _, does := range layout.Wrap(h.Desc, max(column-keyWidth-1, keyWidth)) {
					lines = append(lines, layout.Line(name, keyWidth)+" "+does)
					name = ""
				}
			}
		}
	}
	if w < twoAbreast {
		return lines
	}
	half := (len(lines) + 1) / 2
	left := layout.Fit(lines[:half], w/2, half)
	return layout.Beside(left, layout.Fit(lines[half:], w-w/2, half))
}

// View is as much of the list as has room.
func (p *Help) View() []string {
	lines, room := p.lines(), p.inner().H
	top := max(0, min(p.top, len(lines)-room))
	title := "Keys"
	if len(lines) > room {
		title = "Keys: up and down for more"
	}
	return layout.Frame(p.w, p.h, title, true, lines[top:], p.style.Edges)
}

// Foot says how to move in the list.
func (p *Help) Foot() []key.Binding {
	return []key.Binding{
		key.NewBinding(key.WithHelp("↑ ↓ PgUp PgDn Home End", "move")),
		key.NewBinding(key.WithHelp("Esc", "closes this")),
	}
}

// Typing is never so.
func (p *Help) Typing() bool { return false }

// keyNames brings the parts' ways of writing keys to one.
var keyNames = map[string]string{
	"up": "↑", "down": "↓", "left": "←", "right": "→", "pgup": "PgUp", "pgdn": "PgDn", "home": "Home", "end": "End",
	"space": "Space", "enter": "Enter", "esc": "Esc", "backspace": "Backspace", "ctrl+c": "Ctrl+C", "ctrl+z": "Ctrl+Z",
}

// arrowWords replaces the arrows where the font may lack them, two by two.
var arrowWords = []string{"↑", "Up", "↓", "Down", "←", "Left", "→", "Right"}

// KeyName is how the keys of a binding are written.
func KeyName(s string, ascii bool) string {
	words := strings.Split(s, " ")
	for i, w := range words {
		if name, ok := keyNames[w]; ok {
			words[i] = name
		}
	}
	s = strings.Join(words, " ")
	if !ascii {
		return s
	}
	for i := 0; i < len(arrowWords); i += 2 {
		s = strings.ReplaceAll(s, arrowWords[i], arrowWords[i+1])
	}
	return s
}
