// Package leatherpage is the page of the leather: which pieces there are, how the parts of
// one or several sheaths lie on them, and how a hide bends and gives.
package leatherpage

import (
	"cmp"
	"reflect"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/bend"
	"chape/calc/nest"
	"chape/calc/trace"
	"chape/project/leather"
	"chape/project/print/layout"
	"chape/project/shelf"
	"chape/ui/act"
	"chape/ui/leatherpage/drawing"
	"chape/ui/leatherpage/jobs"
	"chape/ui/part"
	"chape/ui/term/ink"
	"chape/ui/tracing"
)

// Options are what the page needs from outside.
type Options struct {
	Rack   *leather.File         // where the leather is kept; nil: nowhere, for this time only
	Shelf  *shelf.Shelf          // other projects to cut from the same hide; nil: none
	Print  func() layout.Options // how paper is printed
	Trace  func() tracing.Settings
	Styles ink.Styles
}

// view is what the page shows.
type view uint8

const (
	viewAll   view = iota
	viewPiece      // the form of a piece
	viewPart       // the form of an added part
	viewFold       // a strip folded over a bar
	viewPull       // a strip pulled
	viewPhoto      // a photograph of the piece, to be read
)

// Model is the page. It never changes the project: it sends act.Commit.
type Model struct {
	o    Options
	w, h int
	snap act.Snapshot

	rack   *jobs.Rack
	others jobs.Others

	view  view
	at    int // the piece or the added part in hand
	list  part.List
	back  int // the row of viewAll to come back to
	field int // that of the piece's form
	entry *part.Ask
	fold  bend.Fold
	pull  bend.Strip

	picker *tracing.Picker
	job    *jobs.Search
	laid   *leather.Laid // as last placed; nil: not, or something has changed since
	shown  int           // which of the pieces used is drawn
	large  bool          // the drawing takes the whole page
	place  jobs.Place
	added  int    // how much was done when the piece in hand was added; 0: it was not
	done   []kind // what was changed on this page, the last one last

	pen *drawing.Drawing
}

// New gives the page.
func New(o Options) *Model {
	if o.Rack == nil {
		o.Rack = &leather.File{}
	}
	if o.Trace == nil {
		o.Trace = func() tracing.Settings { return tracing.Settings{} }
	}
	return &Model{o: o, rack: jobs.NewRack(o.Rack), place: nest.Place,
		picker: tracing.New(trace.Leather, o.Trace, o.Styles),
		pen:    drawing.New(o.Styles)}
}

// SetSize sets the cells inside the page's edge.
func (m *Model) SetSize(w, h int) {
	m.w, m.h = max(w, 0), max(h, 0)
	m.picker.SetWidth(m.w)
	m.scroll()
}

// SetSnapshot shows the page the project as it is now. A placing of other parts is none
// of this project.
func (m *Model) SetSnapshot(s act.Snapshot) {
	other := s.Plan != m.snap.Plan || !reflect.DeepEqual(s.Project.Added, m.snap.Project.Added)
	m.snap = s
	m.pen.Set(s.Font, s.Unit)
	if other {
		m.review()
	}
	if m.view == viewPart && m.at >= len(s.Project.Added) {
		m.home()
	}
	m.scroll()
}

// review drops a placing of what is not to be cut any more.
func (m *Model) review() {
	if m.laid == nil {
		return
	}
	if now, err := m.ask(); err != nil || !reflect.DeepEqual(now.Task, m.laid.Task) {
		m.laid = nil
	}
}

// Update implements act.Pane.
func (m *Model) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	defer m.scroll()
	switch msg := msg.(type) {
	case part.Press:
		switch {
		case m.view == viewPhoto:
			return m, m.toPicker(msg)
		case m.entry != nil:
			return m, m.reply(msg)
		}
		return m, m.command(msg)
	case tea.MouseMsg:
		m.mouse(msg)
	case act.InHand:
		if !msg.Is {
			m.entry = nil
			m.picker.Stop()
			return m, nil
		}
		return m, m.rack.Look(m.o.Shelf) // each time it is opened
	case jobs.Read:
		return m, m.read(msg)
	case jobs.Kept:
		return m, m.rack.Kept(msg)
	case jobs.Planned:
		return m, m.worked(msg)
	case jobs.Found:
		return m, m.news(msg)
	case jobs.Printed:
		return m, msg.Say()
	}
	return m, m.toPicker(msg)
}

// command carries out a key while nothing is typed.
func (m *Model) command(p part.Press) []act.Msg {
	if act.Writes(m, p.KeyMsg) && (p.Hasty() || p.Command()) {
		m.open(string(p.Runes), false, false)
		return nil
	}
	if part.StartsNumber(p.KeyMsg) {
		return m.number(p)
	}
	if p.Type == tea.KeyEnter && p.Held { // it would do what nobody looked at
		return nil
	}
	out, _ := m.keys().Take(p)
	return out
}

// number begins a number, or a list of places, on the row in hand.
func (m *Model) number(p part.Press) []act.Msg {
	r, ok := m.row()
	if ok && r.below {
		m.list.Move(1)
		r, ok = m.row()
	}
	if !ok || r.set == nil || !r.number && !r.places {
		return []act.Msg{act.Say{Text: cmp.Or(r.why, "no number stands here: ↑ or ↓ goes to a line with one")}}
	}
	text := string(p.Runes)
	if p.Paste {
		text = part.FirstLine(text)
	}
	m.open(text, r.number, false)
	return nil
}

// Writing implements act.Writer: on a name letters are its beginning, and no commands.
func (m *Model) Writing() bool {
	r, ok := m.row()
	return ok && r.words && m.entry == nil && !m.large
}

// open begins to type on the row in hand.
func (m *Model) open(text string, number, fresh bool) {
	const longest = 3000
	m.entry = part.NewAsk("", text, longest)
	m.entry.Number, m.entry.Fresh = number, fresh
}

// reply takes a key while a row is typed.
func (m *Model) reply(p part.Press) []act.Msg {
	switch m.entry.Take(p) {
	case part.Dropped:
		m.entry = nil
	case part.Kept:
		if p.Held {
			return nil
		}
		r, ok := m.row()
		if !ok {
			m.entry = nil
			return nil
		}
		out, err := r.set(m.entry.Text())
		if err != nil {
			m.entry.Refuse(err, p)
			return nil
		}
		m.entry = nil
		m.after(r)
		return out
	}
	return nil
}

// after goes on to the row after one that was typed; rows may have come or gone by it.
func (m *Model) after(r row) {
	rows := m.rows()
	m.list.Set(len(rows), m.listRows())
	if i := slices.IndexFunc(rows, func(o row) bool { return o.group == r.group && o.name == r.name }); i >= 0 {
		m.list.Choose(i)
	}
	if !r.stays {
		m.list.Move(1)
	}
}

// mouse chooses rows.
func (m *Model) mouse(msg tea.MouseMsg) {
	l := m.arrange().list
	switch {
	case msg.Action != tea.MouseActionPress || m.entry != nil || m.list.Wheel(msg):
	case msg.Button == tea.MouseButtonLeft && l.Contains(msg.X, msg.Y):
		m.list.Click(msg.Y - l.Y)
	}
}

// scroll keeps the row in hand there and in sight.
func (m *Model) scroll() { m.list.Set(len(m.rows()), m.listRows()) }

// listRows are those that have room; where that is not all of them a line says so.
func (m *Model) listRows() int {
	h := m.arrange().list.H
	if m.hides(h) {
		h--
	}
	return max(h, 1)
}

// hides tells whether rows are left out in so many lines, and there is one to say so.
func (m *Model) hides(h int) bool { return h > 2 && len(m.rows()) > h }

// home goes back to the whole of it.
func (m *Model) home() {
	m.view, m.added = viewAll, 0
	m.scroll()
	m.list.Choose(m.back)
}

// enterView goes to a form. Back in that of a piece the row is as it was.
func (m *Model) enterView(v view, at int) {
	row := 0
	switch m.view {
	case viewAll:
		m.back = m.list.At
	case viewPiece:
		m.field = m.list.At
	default:
		row = m.field
	}
	m.view, m.at = v, at
	m.list = part.List{}
	m.scroll()
	m.list.Choose(row)
}
