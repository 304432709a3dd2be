package panel

import (
	"slices"
	"strings"
	"unicode"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/x/ansi"

	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/part"
)

// Section is the keys of one part of the screen.
type Section struct {
	Title string
	Keys  []key.Binding
}

// Sections are the keys of a pane, or of a panel, those alive now first. Those without a
// title are said in the foot alone.
func Sections(of act.Keyed) []Section {
	var all []Section
	keys := slices.Clone(of.Keys())
	slices.SortStableFunc(keys, func(a, b act.Section) int {
		switch {
		case a.Now == b.Now:
			return 0
		case a.Now:
			return -1
		}
		return 1
	})
	for _, s := range keys {
		if s.Title == "" {
			continue
		}
		section := Section{Title: s.Title}
		for _, k := range s.Keys {
			section.Keys = append(section.Keys, k.Binding)
		}
		all = append(all, section)
	}
	return all
}

// Help lists the keys.
type Help struct {
	frame
	sections []Section
	close    []key.Binding
	top      int
}

// once leaves of the sections of one title the first: many pages ask in the same way.
func once(sections []Section) []Section {
	var out []Section
	for _, s := range sections {
		if !slices.ContainsFunc(out, func(o Section) bool { return o.Title == s.Title }) {
			out = append(out, s)
		}
	}
	return out
}

// NewHelp gives the list of the sections' keys; those of close take it away, as Esc
// does.
func NewHelp(sections []Section, s Style, close ...key.Binding) *Help {
	return &Help{frame: frame{style: s}, sections: once(sections), close: close}
}

func (p *Help) keys() part.Keys {
	room := p.inner().H
	most := max(0, len(p.lines())-room)
	to := func(at func(top int) int) func() []act.Msg {
		return part.Quiet(func() { p.top = max(0, min(at(min(p.top, most)), most)) })
	}
	by := func(n int) func() []act.Msg { return to(func(top int) int { return top + n }) }
	return part.Keys{
		part.Key("↑", "a line up", by(-1), "up"),
		part.Key("↓", "a line down", by(1), "down"),
		part.Key("PgUp", "a page up", by(-room), "pgup"),
		part.Key("PgDn, Space", "a page down", by(room), "pgdown", " ").Foot("a page down"),
		part.Key("Home", "the first line", to(func(int) int { return 0 }), "home"),
		part.Key("End", "the last line", to(func(int) int { return most }), "end"),
		p.leaving("close the list of keys", p.close).Foot("closes this"),
	}
}

// Take scrolls the list, or closes it; a measuring tool does neither.
func (p *Help) Take(k part.Press) (out []act.Msg, done bool) { return p.take(p.keys(), k) }

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
	var heads []int // the lines of the headings
	for i, s := range p.sections {
		if i > 0 {
			lines = append(lines, "")
		}
		heads = append(heads, len(lines))
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
	left, right := p.columns(lines, heads)
	tall := max(len(left), len(right))
	return layout.Beside(layout.Fit(left, w/2, tall), layout.Fit(right, w-w/2, tall))
}

// columns parts the list, whose sections begin at heads, in two: between two sections, or
// where none ends near the middle in one, whose heading then stands over both parts.
func (p *Help) columns(lines []string, heads []int) (left, right []string) {
	half := (len(lines) + 1) / 2
	at, in := 0, 0
	for i, h := range heads {
		if abs(h-half) < abs(at-half) {
			at = h
		}
		if h < half {
			in = i
		}
	}
	if abs(at-half) <= len(lines)/6 {
		return lines[:at], lines[at:]
	}
	if len(p.sections) == 0 {
		return lines, nil
	}
	again := p.style.Heading.Render(p.sections[in].Title + ", more")
	return lines[:half], append([]string{again}, lines[half:]...)
}

func abs(n int) int { return max(n, -n) }

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

// Keys implements Panel.
func (p *Help) Keys() []act.Section {
	return []act.Section{p.keys().Section("The list of keys", true)}
}

// KeyLine names as many keys as fit into w cells, those in front first, and always the last
// two: the help, and the way out; where a page has one, Esc, which leads back, goes last.
func KeyLine(keys []key.Binding, w int, ascii bool) string {
	kept := slices.DeleteFunc(slices.Clone(keys), func(b key.Binding) bool { return !b.Enabled() })
	for {
		var parts []string
		for _, b := range kept {
			parts = append(parts, KeyName(b.Help().Key, ascii)+" "+b.Help().Desc)
		}
		line, last := strings.Join(parts, "  "), len(kept)-3
		if last < 0 || ansi.StringWidth(line) <= w {
			return line
		}
		if last > 0 && slices.Contains(kept[last].Keys(), "esc") {
			last--
		}
		kept = slices.Delete(kept, last, last+1)
	}
}

// WithoutLetters are the keys that can be pressed where letters are typed: of those with
// other names as well, by these.
func WithoutLetters(keys []key.Binding) []key.Binding {
	var out []key.Binding
	for _, b := range keys {
		names := slices.DeleteFunc(slices.Clone(b.Keys()), func(name string) bool {
			r := []rune(name)
			return len(r) == 1 && unicode.IsLetter(r[0])
		})
		if n := len(names); n > 0 && n < len(b.Keys()) {
			b.SetHelp(names[0], b.Help().Desc)
		}
		if len(names) > 0 {
			out = append(out, b)
		}
	}
	return out
}

// keyNames brings the parts' ways of writing keys to one.
var keyNames = map[string]string{
	"up": "↑", "down": "↓", "left": "←", "right": "→", "pgup": "PgUp", "pgdn": "PgDn", "home": "Home", "end": "End",
	"space": "Space", "enter": "Enter", "esc": "Esc", "backspace": "Backspace", "ctrl+c": "Ctrl+C", "ctrl+z": "Ctrl+Z",
	"ctrl+u": "Ctrl+U", "ctrl+r": "Ctrl+R",
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
