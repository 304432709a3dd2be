package knifepane

import (
	"errors"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/calc/length"
	"chape/project"
	"chape/project/clock"
	"chape/ui/act"
	"chape/ui/part"
)

// edit is a value being typed.
type edit struct {
	field  project.Field
	base   project.Project // as it was when the edit began
	line   *part.Ask
	value  any             // what stands in the input, where err is nil
	err    error           // why it will not do
	told   bool            // it was refused, and that stands beside it
	shown  project.Project // what was shown then
	asking bool            // whether the value is meant, since it is so far from the old one
	before *edit           // asked about on this row while a number began that may be the next row's
	now    time.Time
}

// begin opens an edit with a text in it, the cursor behind.
func begin(f project.Field, p project.Project, text string, now time.Time) *edit {
	if f.Kind == project.Lines {
		text = strings.ReplaceAll(text, "\n", lineEnd)
	}
	e := &edit{field: f, base: p, now: now, line: part.NewAsk("", text, longestLine)}
	e.read()
	return e
}

// lineEnd stands for the end of a line in a text of several, which is typed on one.
const lineEnd = "↵"

// text is what is typed.
func (e *edit) text() string {
	if e.field.Kind == project.Lines {
		return strings.ReplaceAll(e.line.Text(), lineEnd, "\n")
	}
	return e.line.Text()
}

// read works out whether the text will do.
func (e *edit) read() {
	e.asking, e.told = false, false
	text := e.text()
	if e.field.Kind == project.Date {
		text = clock.Day(text, e.now)
	}
	e.value, e.err = e.field.Parse(text, e.base)
	if e.err == nil {
		q := e.base
		e.err = e.field.Set(&q, e.value)
	}
}

func (e *edit) empty() bool { return strings.TrimSpace(e.line.Text()) == "" }

// key puts a key into the text and gives the preview that follows from it.
func (e *edit) key(p part.Press) []act.Msg {
	if p.Paste && e.field.Kind == project.Lines {
		p.Runes = []rune(strings.ReplaceAll(strings.ReplaceAll(string(p.Runes), "\r", ""), "\n", lineEnd))
	}
	if p.Type != tea.KeyRunes && p.Type != tea.KeySpace {
		e.line.Fresh = false // it is mended where the cursor stands
	}
	if e.line.Take(p) != part.Typed {
		return nil
	}
	e.read()
	return e.preview()
}

// newLine begins another line, in a text of several.
func (e *edit) newLine() []act.Msg {
	if e.field.Kind != project.Lines {
		return nil
	}
	return e.key(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(lineEnd)}})
}

// refuse marks the text as refused. Words are not put at risk: they are mended.
func (e *edit) refuse(shown project.Project) {
	e.told, e.shown = true, shown
	e.line.Fresh = !e.words()
}

// released tells whether a number was refused: it holds nobody up, and the keys that are
// no part of a number mean what they mean elsewhere.
func (e *edit) released() bool { return e.told && numeric(e.field) }

// hopeless tells whether no more keys would make a number of the text.
func (e *edit) hopeless() bool {
	return numeric(e.field) && strings.Trim(strings.ToLower(e.line.Text()), "0123456789.,+-−/ ½⅓⅔¼¾⅛⅜⅝⅞\"″'%mcinoz") != ""
}

// preview shows the value in the plan. A text that will not do leaves the last
// one that did, and is complained of once it can't become right; an emptied field shows
// the old value.
func (e *edit) preview() []act.Msg {
	switch {
	case e.empty():
		return []act.Msg{act.Drop{}}
	case e.wrong():
		return []act.Msg{act.Unfit{Err: e.problem()}}
	case e.err != nil:
		return nil
	}
	set := e.setter()
	return []act.Msg{act.Preview{Do: func(p *project.Project) { _ = set(p) }}} // it did for the base
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

var errGone = errors.New("this row is gone: the file was changed meanwhile")

// commit keeps the value.
func (e *edit) commit() []act.Msg {
	label := e.name() + " " + ansi.Truncate(strings.TrimSpace(e.line.Text()), longestLabel, "…")
	return []act.Msg{act.Commit{Label: label, Do: e.setter()}}
}

func (e *edit) name() string { return e.field.NameIn(e.base) }

// unchanged tells whether the text says what stood there before.
func (e *edit) unchanged() bool {
	if e.field.IsUntouched(e.base) && !e.empty() {
		return false // the same figure, but given now
	}
	return e.text() == e.field.Show(e.base) || e.empty() && e.field.Auto == ""
}

// far tells whether a length is a tenth or less, or ten times or more, of what it was:
// then a point may be missing, or the calliper be set to inches.
func (e *edit) far() bool {
	ratio := e.ratio()
	return ratio > 0 && (ratio <= 0.1 || ratio >= 10)
}

// ratio is how many times the old value is typed; 0 where they can't be compared.
func (e *edit) ratio() float64 {
	was, ok := e.field.Get(e.base).(length.Length)
	is, err := length.ParseLeather(e.line.Text(), e.base.Units)
	if !ok || err != nil || was == 0 || is == 0 {
		return 0
	}
	return float64(is / was)
}

// question is what far asks.
func (e *edit) question() string {
	return strings.TrimSpace(e.line.Text()) + ": " + e.slip() + " Enter keeps it, Esc puts " + e.field.Show(e.base) + " back"
}

// slip is what may be behind a value so far from the old one.
func (e *edit) slip() string {
	inches, large := e.base.Units == length.Inches, e.ratio() >= 10
	switch {
	case large && inches && e.ratio() > 20:
		return "is the calliper in millimetres?"
	case large && !strings.ContainsAny(e.line.Text(), ".,/"):
		return "is the point missing?"
	case !large && !inches && e.ratio() < 0.06:
		return "is the calliper in inches?"
	}
	return "is the point in its place?"
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
		return words + "; " + e.slip()
	}
	return words
}

// next says what becomes of a text that was refused.
func (e *edit) next() string {
	switch {
	case !e.line.Fresh:
		return ""
	case numeric(e.field):
		return "; the next number replaces it"
	}
	return "; what you type next replaces it"
}

// words tells whether it is a text, not a value.
func (e *edit) words() bool { return e.field.Kind == project.Text || e.field.Kind == project.Lines }

// wrong tells whether there is a text that will not do, and that is to be said: not while
// it can still become right.
func (e *edit) wrong() bool { return !e.empty() && e.err != nil && (e.told || e.hopeless()) }

// problem is why the text will not do, in the words of the screen.
func (e *edit) problem() error { return errors.New(e.name() + ": " + e.why()) }

// longestLine is how many characters one value may have while it is typed.
const longestLine = 4096
