// Package costpage is the page of the money: what a sheath comes to and from what, what
// was quoted for it, the minutes of its steps, and when it can be ready.
package costpage

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/money"
	"chape/project/shelf"
	"chape/project/shop"
	"chape/project/steps"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/part"
	"chape/ui/term/ink"
)

// Options are what the page needs from outside.
type Options struct {
	Shelf *shelf.Shelf     // whose finished sheaths teach; nil: none
	Clock func() time.Time // the wall clock
	// Keep puts a price into the settings, by its key, and gives the shop as it is then; nil:
	// there is nowhere to keep it.
	Keep func(key string, a money.Amount) (shop.Shop, error)
	// KeepWeek does the same with the hours at the bench, as calendar.ParseWeek reads them.
	KeepWeek func(text string) (shop.Shop, error)
	Styles   ink.Styles
}

// Model is the page. It never changes the project: it sends act.Commit.
type Model struct {
	o        Options
	w, h     int
	snap     act.Snapshot
	reckon   shop.Reckoning
	ready    shop.Ready
	promised []shop.Promise // of the shelf's other sheaths
	queue    shop.Queue
	finished [][]steps.Step // the checklists of finished sheaths of the shelf
	lessons  []shop.Lesson
	list     part.List // of the quotes
	line     int       // of today's bill: the one in hand
	top      int       // the first line shown of each column
	hours    bool      // where both columns do not fit: the minutes
	newest   bool      // the next snapshot brings the quote to choose
	entry    *entry
}

// New returns the page.
func New(o Options) *Model { return &Model{o: o} }

// SetSize sets the cells inside the page's edge.
func (m *Model) SetSize(w, h int) {
	m.w, m.h = max(w, 0), max(h, 0)
	if m.entry != nil {
		m.entry.SetWidth(m.w)
	}
	m.roll(0)
}

// SetSnapshot shows the page the project as it is now.
func (m *Model) SetSnapshot(s act.Snapshot) {
	first, grown := m.snap.Now.IsZero(), len(s.Project.Quotes) > len(m.snap.Project.Quotes)
	m.snap = s
	if s.Plan != nil {
		m.reckon = s.Shop.Reckon(s.Project, s.Plan)
	}
	if !m.queue.Fits(s.Shop, s.Now) {
		m.queue = s.Shop.Queue(m.promised, s.Now)
	}
	m.ready = m.queue.Ready(steps.StillOpen(s.Project.Steps), s.Project.Customer.Due, s.Now)
	m.lessons = shop.Lessons(s.Project.Steps, m.finished)
	n := len(s.Project.Quotes)
	m.list.Set(n, n)
	m.line = max(0, min(m.line, len(m.reckon.Price.Lines)-1))
	switch {
	case first:
		m.list.Choose(max(0, s.Project.Standing()))
	case m.newest && grown:
		m.list.Choose(n - 1)
		m.toQuote()
	}
	m.newest = m.newest && !grown
	m.roll(0)
}

// quote is the chosen one and its place; ok is false where there is none.
func (m *Model) quote() (q project.Quote, i int, ok bool) {
	if len(m.snap.Project.Quotes) == 0 {
		return q, -1, false
	}
	i = min(m.list.At, len(m.snap.Project.Quotes)-1)
	return m.snap.Project.Quotes[i], i, true
}

// Update implements act.Pane.
func (m *Model) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	switch msg := msg.(type) {
	case part.Press:
		if m.entry != nil {
			return m, m.reply(msg)
		}
		out, _ := m.keys().Take(msg)
		return m, out
	case tea.MouseMsg:
		m.wheel(msg)
	case act.InHand:
		if msg.Is {
			return m, m.study()
		}
		m.entry = nil
	case weekMsg:
		return m, m.weekKept(msg)
	case pricedMsg:
		return m, m.priced(msg)
	case studiedMsg:
		m.finished, m.promised, m.queue = msg.finished, msg.promised, shop.Queue{}
		m.SetSnapshot(m.snap)
		m.lessons = shop.Lessons(m.snap.Project.Steps, m.finished)
		m.roll(0)
	}
	return m, nil
}

func (m *Model) wheel(msg tea.MouseMsg) {
	switch {
	case msg.Action != tea.MouseActionPress || m.entry != nil:
	case msg.Button == tea.MouseButtonWheelUp:
		m.roll(-1)
	case msg.Button == tea.MouseButtonWheelDown:
		m.roll(1)
	}
}

// studiedMsg brings the finished sheaths of the shelf.
type studiedMsg struct {
	finished [][]steps.Step
	promised []shop.Promise
}

// study has the shelf read: what finished sheaths took, and what is promised of the others.
func (m *Model) study() []act.Msg {
	if m.o.Shelf == nil {
		return nil
	}
	s, own := m.o.Shelf, m.snap.Path
	return []act.Msg{act.Do(func() tea.Msg { return studied(s, own) })}
}

// studied reads the checklists that are worked off, and of those in hand, but for the file
// own, what is promised; what can't be read teaches nothing.
func studied(s *shelf.Shelf, own string) (out studiedMsg) {
	scan, err := s.Look()
	if err != nil {
		return out
	}
	for _, e := range append(scan.Entries(), scan.Next(scan.Left())...) { // those known, and those read now
		if e.State == shelf.InHand && !e.PutAway && (own == "" || store.FullPath(e.Path) != own) {
			out.promised = append(out.promised, shop.Promise{Open: e.Open, Due: e.Due})
		}
		if e.State != shelf.Finished || e.Steps == 0 {
			continue
		}
		if p, err := s.Load(e.Path); err == nil {
			out.finished = append(out.finished, p.Steps)
		}
	}
	return out
}
