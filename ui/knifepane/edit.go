package knifepane

import (
	"errors"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
)

// edit is a value being typed.
type edit struct {
	field  project.Field
	base   project.Project // as it was when the edit began
	input  line
	value  any   // what stands in the input, where err is nil
	err    error // why it will not do
	asking bool  // whether the value is meant, since it is so far from the old one

	// The text was refused: the next character takes the place of all of it, so
	// that a tool's next reading is not added to this one.
	refused bool
}

// begin opens an edit with a text in it, the cursor behind.
func begin(f project.Field, p project.Project, text string) *edit {
	if f.Kind == project.Lines {
		text = strings.ReplaceAll(text, "\n", lineEnd)
	}
	e := &edit{field: f, base: p, input: newLine(text)}
	e.read()
	return e
}

// lineEnd stands for the end of a line in a text of several, which is typed on one.
const lineEnd = "↵"

// text is what is typed.
func (e *edit) text() string {
	if e.field.Kind == project.Lines {
		return strings.ReplaceAll(e.input.String(), lineEnd, "\n")
	}
	return e.input.String()
}

// read works out whether the text will do.
func (e *edit) read() {
	e.asking = false
	e.value, e.err = e.field.Parse(e.text(), e.base)
	if e.err == nil {
		q := e.base
		e.err = e.field.Set(&q, e.value)
	}
}

func (e *edit) empty() bool { return strings.TrimSpace(e.input.String()) == "" }

// key puts a key into the text and gives the preview that follows from it.
func (e *edit) key(k tea.KeyMsg, newLine key.Binding) tea.Cmd {
	switch {
	case k.Paste && e.field.Kind == project.Lines:
		k.Runes = []rune(strings.ReplaceAll(strings.ReplaceAll(string(k.Runes), "\r", ""), "\n", lineEnd))
	case k.Paste:
		k.Runes = firstLine(k.Runes)
	case key.Matches(k, newLine) && e.field.Kind == project.Lines:
		k = tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(lineEnd)}
	}
	if e.refused && types(k) {
		e.input = line{}
	}
	e.refused = false
	if !e.input.key(k) {
		return nil
	}
	e.read()
	return e.preview()
}

// types tells whether a key puts characters into the text.
func types(k tea.KeyMsg) bool {
	return (k.Type == tea.KeyRunes || k.Type == tea.KeySpace) && !k.Alt && len(k.Runes) > 0
}

// refuse marks the text as refused. Words are not put at risk: they are mended.
func (e *edit) refuse() {
	e.refused = e.field.Kind != project.Text && e.field.Kind != project.Lines
}

// preview shows the value in the plan. A text that will not do leaves the last
// one that did; an emptied field shows the old value.
func (e *edit) preview() tea.Cmd {
	switch {
	case e.empty():
		return act.Send(act.Drop{})
	case e.err != nil:
		return nil
	}
	set := e.setter()
	return act.Send(act.Preview{Do: func(p *project.Project) { _ = set(p) }}) // it did for the base
}

func (e *edit) setter() func(*project.Project) error {
	f, v := e.field, e.value
	return func(p *project.Project) error {
		if !inReach(f, *p) {
			return errGone
		}
		return f.Set(p, v)
	}
}

// longestLabel is how much of a text an undo is named by.
const longestLabel = 30

var errGone = errors.New("this row is not there any more: the file was changed meanwhile")

// commit keeps the value.
func (e *edit) commit() tea.Cmd {
	label := e.name() + " " + ansi.Truncate(strings.TrimSpace(e.input.String()), longestLabel, "…")
	return act.Send(act.Commit{Label: label, Do: e.setter()})
}

func (e *edit) name() string { return e.field.NameIn(e.base) }

// unchanged tells whether the text says what stood there before.
func (e *edit) unchanged() bool {
	return e.text() == e.field.Show(e.base) || e.empty() && e.field.Auto == ""
}

// far tells whether a length is under a tenth or over ten times what it was:
// then the calliper may be set to inches, or to millimetres.
func (e *edit) far() bool {
	was, ok := e.field.Get(e.base).(length.Length)
	is, err := length.ParseLeather(e.input.String(), e.base.Units)
	if !ok || err != nil || was == 0 || is == 0 {
		return false
	}
	ratio := float64(is / was)
	return ratio < 0.1 || ratio > 10
}

// question is what far asks.
func (e *edit) question() string {
	return "far from " + e.field.Show(e.base) + ": " + e.calliper() + " Enter: it is right; Esc: take it back; the next number replaces it"
}

func (e *edit) calliper() string {
	if e.base.Units == length.Inches {
		return "is the calliper in millimetres?"
	}
	return "is the calliper in inches?"
}

// why is why the text will not do, as the screen says it.
func (e *edit) why() string {
	var own project.Problem
	if errors.As(e.err, &own) && own.Key == e.field.Key && own.Index == e.field.Index {
		return own.Typed(e.text())
	}
	return Words(e.err)
}

// complaint is why the text will not do, what comes next and what may be behind
// that.
func (e *edit) complaint() string {
	words := e.why() + e.next()
	if e.far() {
		return words + "; " + e.calliper()
	}
	return words
}

// next says what becomes of a text that was refused.
func (e *edit) next() string {
	switch {
	case !e.refused:
		return ""
	case numeric(e.field):
		return "; the next number replaces it"
	}
	return "; what you type next replaces it"
}

// firstLine is what of a pasted text goes into one field.
func firstLine(runes []rune) []rune {
	s := strings.TrimSpace(string(runes))
	s, _, _ = strings.Cut(s, "\n")
	s, _, _ = strings.Cut(s, "\r")
	return []rune(strings.ReplaceAll(s, "\t", " "))
}
