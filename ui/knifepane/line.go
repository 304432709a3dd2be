package knifepane

import (
	"slices"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/mattn/go-runewidth"
)

// longestLine is how many characters one value may have while it is typed.
const longestLine = 4096

// line is one line of text being typed. It never reads the clipboard of the
// desktop, which would start another program: a terminal pastes by itself.
type line struct {
	text []rune
	at   int // the cursor, before this character
}

func newLine(s string) line {
	l := line{}
	l.insert([]rune(s))
	return l
}

func (l *line) String() string { return string(l.text) }

// insert puts characters at the cursor; those that can't be seen are left out.
func (l *line) insert(runes []rune) {
	fresh := make([]rune, 0, len(runes))
	for _, r := range runes {
		if unicode.IsPrint(r) && len(l.text)+len(fresh) < longestLine {
			fresh = append(fresh, r)
		}
	}
	l.text = slices.Insert(l.text, l.at, fresh...)
	l.at += len(fresh)
}

// key takes a key and tells whether it changed the text.
func (l *line) key(k tea.KeyMsg) bool {
	before := string(l.text)
	switch k.Type {
	case tea.KeyRunes, tea.KeySpace:
		if !k.Alt {
			l.insert(k.Runes)
		}
	case tea.KeyBackspace, tea.KeyCtrlH:
		l.cut(l.at-1, l.at)
	case tea.KeyDelete, tea.KeyCtrlD:
		l.cut(l.at, l.at+1)
	case tea.KeyCtrlU:
		l.cut(0, l.at)
	case tea.KeyCtrlK:
		l.cut(l.at, len(l.text))
	case tea.KeyCtrlW:
		l.cut(l.wordBefore(), l.at)
	case tea.KeyLeft, tea.KeyCtrlB:
		l.at = max(0, l.at-1)
	case tea.KeyRight, tea.KeyCtrlF:
		l.at = min(len(l.text), l.at+1)
	case tea.KeyHome, tea.KeyCtrlA:
		l.at = 0
	case tea.KeyEnd, tea.KeyCtrlE:
		l.at = len(l.text)
	}
	return string(l.text) != before
}

func (l *line) cut(from, to int) {
	from, to = max(0, from), min(to, len(l.text))
	if from >= to {
		return
	}
	l.text = slices.Delete(slices.Clone(l.text), from, to)
	if l.at > from {
		l.at = max(from, l.at-(to-from))
	}
}

func (l *line) wordBefore() int {
	i := l.at
	for i > 0 && unicode.IsSpace(l.text[i-1]) {
		i--
	}
	for i > 0 && !unicode.IsSpace(l.text[i-1]) {
		i--
	}
	return i
}

// view shows the stretch round the cursor on at most width cells; the cursor
// itself is a cell in reverse, which shows without colour and does not blink.
func (l *line) view(width int, text, under lipgloss.Style) string {
	shown := append(slices.Clone(l.text), ' ')
	from, to := l.at, l.at+1
	room := width - runewidth.RuneWidth(shown[l.at])
	for from > 0 && room >= runewidth.RuneWidth(shown[from-1]) {
		from--
		room -= runewidth.RuneWidth(shown[from])
	}
	for to < len(shown) && room >= runewidth.RuneWidth(shown[to]) {
		room -= runewidth.RuneWidth(shown[to])
		to++
	}
	out := under.Render(string(shown[l.at]))
	if from < l.at {
		out = text.Render(string(shown[from:l.at])) + out
	}
	if to > l.at+1 {
		out += text.Render(string(shown[l.at+1 : to]))
	}
	return out
}
