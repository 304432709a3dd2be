// Package entry is a value of the form while it is typed: what it would make of the
// project, and what is said of it when it will not do or looks like a slip.
package entry

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
	"chape/ui/form"
	"chape/ui/part"
)

// Entry is a value being typed.
type Entry struct {
	Field  project.Field
	Base   project.Project // as it was when the edit began
	Line   *part.Ask
	value  any             // what stands in the input, where err is nil
	Err    error           // why it will not do
	told   bool            // it was refused, and that stands beside it
	Shown  project.Project // what was shown then
	Asking bool            // whether the value is meant, since it is so far from the old one
	Before *Entry          // asked about on this row while a number began that may be the next row's
	now    time.Time
}

// New opens it with a text in it, the cursor behind.
func New(f project.Field, p project.Project, text string, now time.Time) *Entry {
	if f.Kind == project.Lines {
		text = strings.ReplaceAll(text, "\n", lineEnd)
	}
	e := &Entry{Field: f, Base: p, now: now, Line: part.NewAsk("", text, longestLine)}
	e.Read()
	return e
}

// lineEnd stands for the end of a line in a text of several, which is typed on one.
const lineEnd = "↵"

// Text is what is typed.
func (e *Entry) Text() string {
	if e.Field.Kind == project.Lines {
		return strings.ReplaceAll(e.Line.Text(), lineEnd, "\n")
	}
	return e.Line.Text()
}

// Read works out whether the text will do.
func (e *Entry) Read() {
	e.Asking, e.told = false, false
	text := e.Text()
	if e.Field.Kind == project.Date {
		text = clock.Day(text, e.now)
	}
	e.value, e.Err = e.Field.Parse(text, e.Base)
	if e.Err == nil {
		q := e.Base
		e.Err = e.Field.Set(&q, e.value)
	}
}

func (e *Entry) Empty() bool { return strings.TrimSpace(e.Line.Text()) == "" }

// Key puts a key into the text and gives the preview that follows from it.
func (e *Entry) Key(p part.Press) []act.Msg {
	if p.Paste && e.Field.Kind == project.Lines {
		p.Runes = []rune(strings.ReplaceAll(strings.ReplaceAll(string(p.Runes), "\r", ""), "\n", lineEnd))
	}
	if p.Type != tea.KeyRunes && p.Type != tea.KeySpace {
		e.Line.Fresh = false // it is mended where the cursor stands
	}
	if e.Line.Take(p) != part.Typed {
		return nil
	}
	e.Read()
	return e.Preview()
}

// NewLine begins another line, in a text of several.
func (e *Entry) NewLine() []act.Msg {
	if e.Field.Kind != project.Lines {
		return nil
	}
	return e.Key(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(lineEnd)}})
}

// Refuse marks the text as refused. Words are not put at risk: they are mended.
func (e *Entry) Refuse(shown project.Project) {
	e.told, e.Shown = true, shown
	e.Line.Fresh = !e.Words()
}

// Released tells whether a number was refused: it holds nobody up, and the keys that are
// no part of a number mean what they mean elsewhere.
func (e *Entry) Released() bool { return e.told && form.Numeric(e.Field) }

// hopeless tells whether no more keys would make a number of the text.
func (e *Entry) hopeless() bool {
	return form.Numeric(e.Field) && strings.Trim(strings.ToLower(e.Line.Text()), "0123456789.,+-−/ ½⅓⅔¼¾⅛⅜⅝⅞\"″'%mcinoz") != ""
}

// Preview shows the value in the plan. A text that will not do leaves the last
// one that did, and is complained of once it can't become right; an emptied field shows
// the old value.
func (e *Entry) Preview() []act.Msg {
	switch {
	case e.Empty():
		return []act.Msg{act.Drop{}}
	case e.Wrong():
		return []act.Msg{act.Unfit{Err: e.Problem()}}
	case e.Err != nil:
		return nil
	}
	set := e.setter()
	return []act.Msg{act.Preview{Do: func(p *project.Project) { _ = set(p) }}} // it did for the base
}

func (e *Entry) setter() func(*project.Project) error {
	f, v := e.Field, e.value
	return func(p *project.Project) error {
		if !form.InReach(f, *p) {
			return ErrGone
		}
		return f.Set(p, v)
	}
}

// LongestLabel is how much of a text an undo is named by.
const LongestLabel = 30

var ErrGone = errors.New("this row is gone: the file was changed meanwhile")

// Commit keeps the value.
func (e *Entry) Commit() []act.Msg {
	label := e.Name() + " " + ansi.Truncate(strings.TrimSpace(e.Line.Text()), LongestLabel, "…")
	commit := act.Commit{Label: label, Do: e.setter()}
	if as := e.ReadAs(); as != "" { // before it: what warns then is the better word
		return []act.Msg{act.Say{Text: e.Name() + ": " + strings.TrimSpace(e.Line.Text()) + ", " + as}, commit}
	}
	if day := e.over(); day != "" {
		return []act.Msg{act.Say{Text: e.Name() + ": " + day + " is over already; kept all the same", Warn: true}, commit}
	}
	return []act.Msg{commit}
}

// over is the day typed, where a sheath can't be ready by it any more; else "".
func (e *Entry) over() string {
	day, is := e.value.(time.Time)
	if !is || e.Field.Key != "customer.due" || day.IsZero() || day.Format(time.DateOnly) >= e.now.Format(time.DateOnly) {
		return ""
	}
	return day.Format("2 Jan 2006")
}

func (e *Entry) Name() string { return e.Field.NameIn(e.Base) }

// Unchanged tells whether the text says what stood there before.
func (e *Entry) Unchanged() bool {
	if e.Field.IsUntouched(e.Base) && !e.Empty() {
		return false // the same figure, but given now
	}
	return e.Text() == e.Field.Show(e.Base) || e.Empty() && e.Field.Auto == ""
}

// Far tells whether a length is a tenth or less, or ten times or more, of what it was:
// then a point may be missing, or the calliper be set to inches; or whether it is out of
// line by whole inches.
func (e *Entry) Far() bool {
	ratio := e.ratio()
	return ratio > 0 && (ratio <= 0.1 || ratio >= 10) || e.wholeInches() != 0
}

// ratio is how many times the old value is typed; 0 where they can't be compared.
func (e *Entry) ratio() float64 {
	was, ok := e.Field.Get(e.Base).(length.Length)
	is, err := length.ParseLeather(e.Line.Text(), e.Base.Units)
	if !ok || err != nil || was == 0 || is == 0 {
		return 0
	}
	return float64(is / was)
}

// Question is what far asks.
func (e *Entry) Question() string {
	return strings.TrimSpace(e.Line.Text()) + ": " + e.slip() + " Enter keeps it, Esc puts " + e.Field.Show(e.Base) + " back"
}

// slip is what may be behind a value so far from the old one.
func (e *Entry) slip() string {
	inches, large := e.Base.Units == length.Inches, e.ratio() >= 10
	k := e.wholeInches()
	switch {
	case k != 0:
		return e.inchSlip(k)
	case strings.Contains(e.Line.Text(), "/"):
		return "is the fraction right?"
	case large && inches && e.ratio() > 20:
		return "is the calliper in millimetres?"
	case large && !strings.ContainsAny(e.Line.Text(), ".,"):
		return "is the point missing?"
	case !large && !inches && e.ratio() < 0.06:
		return "is the calliper in inches?"
	}
	return "is the point in its place?"
}

// why is why the text will not do, as the screen says it.
func (e *Entry) why() string {
	var own project.Problem
	if errors.As(e.Err, &own) && own.Key == e.Field.Key && own.Index == e.Field.Index {
		return own.Typed(e.Text())
	}
	return form.Words(e.Err)
}

// Complaint is why the text will not do, what comes next and what may be behind
// that.
func (e *Entry) Complaint() string {
	words := e.why() + e.next()
	if e.Far() {
		return words + "; " + e.slip()
	}
	return words
}

// next says what becomes of a text that was refused.
func (e *Entry) next() string {
	switch {
	case !e.Line.Fresh:
		return ""
	case form.Numeric(e.Field):
		return "; the next number replaces it"
	}
	return "; what you type next replaces it"
}

// Words tells whether it is a text, not a value.
func (e *Entry) Words() bool { return e.Field.Kind == project.Text || e.Field.Kind == project.Lines }

// Wrong tells whether there is a text that will not do, and that is to be said: not while
// it can still become right.
func (e *Entry) Wrong() bool { return !e.Empty() && e.Err != nil && (e.told || e.hopeless()) }

// Problem is why the text will not do, in the words of the screen.
func (e *Entry) Problem() error { return errors.New(e.Name() + ": " + e.why()) }

// longestLine is how many characters one value may have while it is typed.
const longestLine = 4096
