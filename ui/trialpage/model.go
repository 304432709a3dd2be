// Package trialpage is the page of a trial fit: where the fold was tight or loose, by
// how much, and what that would change, before it is kept.
package trialpage

import (
	"math"
	"reflect"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/carry"
	"chape/project/places"
	"chape/project/shelf"
	"chape/project/value"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/part"
	"chape/ui/term/ink"
)

// Model is the page. It never changes the project: it sends act.Commit. What is being
// put together is the page's own until then.
type Model struct {
	Styles ink.Styles

	shelf  *shelf.Shelf
	w, h   int
	snap   act.Snapshot
	places []places.Place
	offers []project.Fit // what is offered from elsewhere, at its place here
	draft  draft
	made   made
	list   part.List // the lines of the draft, then the corrections
	entry  *part.Ask // a number or a note being typed, of the line in hand
	zoom   int
	begun  bool
	mark   int // the one in hand when the cursor was last put on it

	pressed string // the last key
	took    bool   // it kept an offer, let one go or took a correction out

	glyphs canvas.Glyphs
	c      *canvas.Canvas // kept between frames
	pens   []canvas.Style
}

// draft is a correction that is not kept yet, as it was found at the knife.
type draft struct {
	at      length.Length
	by      length.Length // how much too tight or too loose, never below 0
	loose   bool
	round   bool // by is all round, not a side
	reach   length.Length
	with    string
	note    string
	instead int // the correction it takes the place of; -1: it is a new one
}

// made is what the draft would make of the pattern.
type made struct {
	plan *calc.Plan // nil: no draft, or one that will not do
	err  error
}

// New returns the page. The shelf may be nil.
func New(styles ink.Styles, s *shelf.Shelf) *Model {
	m := &Model{Styles: styles, shelf: s, c: canvas.New(0, 0, canvas.Braille), pens: styles.Pens()}
	m.draft = m.fresh(draft{with: "same thickness"})
	m.list.At = lineBy
	return m
}

// fresh is an empty draft at the place, and of the stock, of another.
func (m *Model) fresh(d draft) draft {
	return draft{at: d.at, reach: project.UsualReach(m.snap.Unit), with: d.with, instead: -1}
}

// fit is the draft as a correction.
func (d draft) fit() project.Fit {
	by := d.by
	if d.round {
		by /= 2
	}
	if d.loose {
		by = -by
	}
	return project.Fit{Fit: calc.Fit{At: d.at, By: by, Reach: d.reach}, With: d.with, Note: d.note}
}

// taken is a correction as a draft, to be changed.
func taken(f project.Fit, i int) draft {
	return draft{at: f.At, by: length.Length(math.Abs(f.By.MM())), loose: f.By < 0, reach: f.Reach, with: f.With, note: f.Note, instead: i}
}

// put puts the draft among the corrections.
func (d draft) put(p *project.Project) {
	fits := p.Clone().Fits
	if d.instead >= 0 && d.instead < len(fits) {
		fits[d.instead] = d.fit()
	} else {
		fits = append(fits, d.fit())
	}
	p.Fits = fits
}

// drawn tells whether the draft changes anything.
func (d draft) drawn() bool { return d.by != 0 || d.instead >= 0 }

// SetSize sets the cells inside the page's edge.
func (m *Model) SetSize(w, h int) {
	m.w, m.h = max(w, 0), max(h, 0)
	m.scroll()
}

// SetSnapshot shows the page the project as it is now.
func (m *Model) SetSnapshot(s act.Snapshot) {
	other := !reflect.DeepEqual(m.snap.Project.Fits, s.Project.Fits)
	was := m.snap.Project
	m.offers = placed(s.Project)
	m.snap = s
	m.glyphs = s.Font.Glyphs
	m.c.SetAspect(s.Font.Aspect)
	m.places = places.Of(s.Project)
	if stations := s.Project.Knife.Stations; len(stations) > 0 && (!m.begun || s.Mark != m.mark && !m.draft.drawn()) {
		if !m.begun {
			m.draft.reach = project.UsualReach(s.Unit)
		}
		m.standAt(stations[min(s.Mark, len(stations)-1)].At.MM())
		if s.Mark == 0 && !m.begun { // nobody has chosen: where sheaths are tight
			m.standAt(m.front())
		}
		m.begun, m.mark = true, s.Mark
	}
	m.draft.at = length.Length(m.within(m.draft.at.MM()))
	if i := m.draft.instead; other && i >= 0 && (i >= len(s.Project.Fits) || i >= len(was.Fits) || s.Project.Fits[i] != was.Fits[i]) { // another one by now
		m.draft = m.fresh(m.draft)
	}
	m.scroll()
	m.propose()
}

// placed are the offers at their places here; where no place can be found they stay where
// they were.
func placed(p project.Project) []project.Fit {
	var out []project.Fit
	for _, c := range p.Carried {
		f, err := carry.Placed(c, p)
		if err != nil {
			f = c.Fit
		}
		out = append(out, f)
	}
	return out
}

// front is where the handle begins; the mouth, where it is before that.
func (m *Model) front() float64 {
	landmarks, _ := m.snap.Project.Input(calc.Limits{}).Landmarks()
	for _, l := range landmarks {
		if l.Kind == calc.FrontMark {
			return m.within(l.At)
		}
	}
	return m.snap.Project.Sheath.Mouth.MM()
}

// propose works out what the draft would make of the pattern.
func (m *Model) propose() {
	m.made = made{}
	i, offer := m.offered()
	if m.snap.Plan == nil || m.snap.Stale || !offer && !m.draft.drawn() {
		return
	}
	p := m.snap.Project.Clone()
	if offer {
		p.Fits = append(p.Fits, m.offers[i])
	} else {
		m.draft.put(&p)
	}
	m.made.plan, m.made.err = calc.Compute(p.Input(m.snap.Plan.Input.Limits))
}

// within keeps a place between the point and the mouth.
func (m *Model) within(x float64) float64 {
	return math.Min(math.Max(x, 0), m.snap.Project.Sheath.Mouth.MM())
}

// Update implements act.Pane.
func (m *Model) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	was := m.list.At
	defer func() {
		m.scroll()
		if m.list.At != was && m.entry == nil { // an offer is drawn while it is in hand
			m.propose()
		}
	}()
	switch msg := msg.(type) {
	case part.Press:
		if m.entry != nil {
			return m, m.reply(msg)
		}
		return m, m.command(msg)
	case tea.MouseMsg:
		m.mouse(msg)
	case pastMsg:
		return m, m.offerPast(msg)
	case act.InHand:
		if !msg.Is {
			m.entry = nil
		}
	}
	return m, nil
}

// command carries out a key while nothing is being typed.
func (m *Model) command(p part.Press) []act.Msg {
	if act.Writes(m, p.KeyMsg) && (p.Hasty() || p.Command()) {
		m.open(lineNote, string(p.Runes), false)
		return nil
	}
	if part.StartsNumber(p.KeyMsg) {
		text := string(p.Runes)
		if p.Paste {
			text = part.FirstLine(text)
		}
		return m.typeNumber(text)
	}
	if p.Type == tea.KeyEnter && p.Held { // it would keep what nobody looked at
		return nil
	}
	same := m.pressed == p.String()
	m.pressed = p.String()
	if m.took && same { // a key held down
		return []act.Msg{act.Say{Text: "one at a time: ↑ or ↓ to the next one, then " + p.String()}}
	}
	m.took = false
	out, _ := m.keys().Take(p)
	return out
}

// Writing implements act.Writer: on the note letters are its beginning, and no commands.
func (m *Model) Writing() bool { return m.list.At == lineNote && m.entry == nil }

// mouse moves the cursor on the drawing, and chooses lines.
func (m *Model) mouse(msg tea.MouseMsg) {
	pl := m.arrange()
	switch {
	case msg.Action != tea.MouseActionPress || m.entry != nil || m.list.Wheel(msg):
	case msg.Button != tea.MouseButtonLeft:
	case pl.drawing.Contains(msg.X, msg.Y) && m.snap.Plan != nil:
		m.moveTo(m.sheet(pl.drawing.W, pl.drawing.H).At(msg.X-pl.drawing.X, msg.Y-pl.drawing.Y).X)
	case pl.form.Contains(msg.X, msg.Y):
		if i := pl.formTop + msg.Y - pl.form.Y; i < lines {
			m.list.Choose(i)
		}
	case pl.kept.Contains(msg.X, msg.Y):
		if i := pl.keptTop + msg.Y - pl.kept.Y; i < len(pl.rows) && pl.rows[i].line >= 0 {
			m.list.Choose(pl.rows[i].line)
		}
	}
}

// moveTo moves the cursor.
func (m *Model) moveTo(x float64) {
	m.standAt(x)
	m.propose()
}

// standAt has the draft at the nearest place that a rule shows: nobody finds 104.28 mm on
// leather. It still is the mark or landmark that it was, see places.At.
func (m *Model) standAt(x float64) {
	parts := 2.0
	if m.snap.Unit == length.Inches {
		parts = 64 / length.Inch.MM()
	}
	m.draft.at = length.Length(m.within(value.Tidy(length.Length(math.Round(x*parts) / parts)).MM()))
}

// scroll keeps the chosen line there.
func (m *Model) scroll() { m.list.Set(lines+len(m.snap.Project.Fits)+len(m.offers), lines) }
