package part

import (
	"errors"
	"slices"
	"strings"
	"unicode"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"

	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/term"
	"chape/ui/term/ink"
)

// Ask is one line being typed, or a question that Enter alone answers, with what is
// said about it. It is the only editor of lines. Whoever asks looks at what Take says,
// and after Kept either drops the Ask or has it say why it stays: Refuse, Doubt.
type Ask struct {
	Label  string
	Number bool // a measuring tool may type here, and its Enter counts
	Plain  bool // nothing is typed: Enter alone is the answer, any other key is no
	Fresh  bool // the first character takes the place of the text, which is an old value

	input textinput.Model
	doubt string
	err   error
}

// Reply is what a key was to an Ask.
type Reply uint8

// What a key was.
const (
	Nothing Reply = iota
	Typed         // the text is another one
	Kept          // Enter: the text is to be kept
	Dropped       // Esc, or in a plain question any key but Enter
)

// NewAsk gives the line with a text to begin from, of at most limit characters.
func NewAsk(label, text string, limit int) *Ask {
	in := textinput.New()
	in.Prompt = ""
	in.CharLimit = limit
	in.Cursor.SetMode(cursor.CursorStatic)
	in.KeyMap.Paste.SetEnabled(false) // the desktop's clipboard would be read by another program: terminals paste by themselves
	in.Focus()
	in.SetValue(text)
	in.CursorEnd()
	return &Ask{Label: label, input: in}
}

// Confirm gives a question that Enter alone answers.
func Confirm(label string) *Ask {
	a := NewAsk(label, "", 0)
	a.Plain = true
	return a
}

// SetWidth sets the cells that the line may fill.
func (a *Ask) SetWidth(w int) { a.input.Width = max(4, w-2) }

// Text is what is typed.
func (a *Ask) Text() string { return a.input.Value() }

// SetText puts another text in, the cursor behind it.
func (a *Ask) SetText(s string) {
	a.input.SetValue(s)
	a.input.CursorEnd()
}

// Asked tells whether a doubt stands.
func (a *Ask) Asked() bool { return a.doubt != "" }

// Err is why the text will not do, as last said.
func (a *Ask) Err() error { return a.err }

// Take takes a key.
func (a *Ask) Take(p Press) Reply {
	switch {
	case p.Echo:
		return Nothing
	case p.Type == tea.KeyEsc:
		return Dropped
	case p.Type == tea.KeyEnter && !p.Alt:
		return a.enter(p)
	case a.Plain:
		return Dropped
	}
	if a.Fresh && (p.Type == tea.KeyRunes || p.Type == tea.KeySpace || p.Type == tea.KeyBackspace || p.Type == tea.KeyDelete) {
		a.input.SetValue("")
	}
	a.Fresh, a.doubt, a.err = false, "", nil
	if p.Paste {
		p.Runes = []rune(FirstLine(string(p.Runes)))
	}
	p.Runes = slices.DeleteFunc(slices.Clone(p.Runes), func(r rune) bool { return !unicode.IsPrint(r) })
	before := a.input.Value()
	a.input, _ = a.input.Update(p.KeyMsg)
	if a.input.Value() == before {
		return Nothing
	}
	return Typed
}

// enter is Enter: no text is a figure that comes at a tool's pace, and a tool answers
// no question.
func (a *Ask) enter(p Press) Reply {
	switch {
	case a.Plain && (p.Tool() || p.Held):
		return Nothing
	case !a.Number && p.Figure():
		a.err = errFigure
		return Nothing
	}
	return Kept
}

// NoText is said of a figure that a measuring tool has typed where a text is asked.
const NoText = "this came as fast as from a measuring tool: Enter keeps it all the same"

var errFigure = errors.New(NoText)

// Refuse says why the text will not do. After a tool's Enter its next reading takes the
// place of this one.
func (a *Ask) Refuse(err error, by Press) {
	a.err, a.doubt, a.Fresh = err, "", by.Tool()
}

// Doubt asks whether the text is meant; it gives true where that was asked before and
// a hand has answered by a second Enter.
func (a *Ask) Doubt(why string, by Press) (meant bool) {
	if a.doubt != "" && !by.Tool() && !by.Held {
		return true
	}
	a.doubt, a.err, a.Fresh = why, nil, by.Tool()
	return false
}

// Say says something about the text before it is kept; "": nothing.
func (a *Ask) Say(doubt string, err error) { a.doubt, a.err = doubt, err }

// Lines are the label, the line and what is said of it, at most w cells wide.
func (a *Ask) Lines(w int, st ink.Styles) []string {
	lines := layout.Paragraph(a.Label, w, 3, st.Strong)
	if !a.Plain {
		lines = append(lines, a.Line(w, st))
	}
	return append(lines, a.Said(w, st)...)
}

// Said is what is said of the text: a doubt, or why it will not do.
func (a *Ask) Said(w int, st ink.Styles) []string {
	var lines []string
	if a.doubt != "" {
		lines = append(lines, layout.Paragraph("* "+a.doubt, w, 2, st.Note)...)
	}
	if a.err != nil {
		lines = append(lines, layout.Paragraph("! "+term.Plain(a.err.Error()), w, 4, st.Warn)...)
	}
	return lines
}

// Line is the line that is typed.
func (a *Ask) Line(w int, st ink.Styles) string {
	if a.Fresh {
		return layout.Line(st.Chosen.Render(a.Text()+" "), w)
	}
	return layout.Line(a.input.View(), w)
}

// Short is the stretch of the line round the cursor, in a style, on at most w cells, no
// wider than it is long; the cursor is a cell in reverse, which shows without colour and
// does not blink.
func (a *Ask) Short(w int, style lipgloss.Style) string {
	in := a.input
	in.TextStyle = style
	in.Width = max(1, min(w-1, ansi.StringWidth(a.Text())))
	in.SetCursor(in.Position()) // what is in sight depends on the width
	return in.View()
}

// AskKeys are the keys of a line being typed, for the foot and the help; an Ask goes by
// them itself. The help shows sections of one title once.
func AskKeys() act.Section {
	s := Keys{
		Key("Enter", "keep it", nil, "enter").Foot("keep it"),
		Key("Esc", "leave it as it was", nil, "esc").Foot("leave it as it was"),
	}.Section("In a question", true)
	s.Text = true
	return s
}

// ConfirmKeys are those of a question that Enter alone answers: where it takes something
// out, "keep it" would promise the opposite.
func ConfirmKeys() act.Section {
	s := Keys{
		Key("Enter", "do it", nil, "enter").Foot("do it"),
		Key("Esc", "leave it as it was; so does any other key", nil, "esc").Foot("leave it as it was"),
	}.Section("In a question that Enter alone answers", true)
	s.Text, s.Plain = true, true
	return s
}

// FirstLine is what of a pasted text goes into one line.
func FirstLine(text string) string {
	text = strings.TrimSpace(text)
	if i := strings.IndexAny(text, "\r\n"); i >= 0 {
		text = text[:i]
	}
	return strings.ReplaceAll(text, "\t", " ")
}
