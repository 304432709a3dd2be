// Package workbench is the screen: the panes side by side or one at a time, the
// holds above them, who has the keyboard, and what passes between the panes, the
// session, the alarm and the panels.
package workbench

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/store"
	"chape/ui/act"
	"chape/ui/alarm"
	benchview "chape/ui/bench"
	"chape/ui/drypane"
	"chape/ui/knifepane"
	"chape/ui/layout"
	"chape/ui/panel"
	"chape/ui/planpane"
	"chape/ui/session"
	"chape/ui/shelfpane"
	"chape/ui/stepspane"
)

// Model is the root of the screen. Its methods have a pointer receiver, so that
// no change is made to a copy and lost.
type Model struct {
	Keys    KeyMap
	o       Options
	session *session.Session
	alarm   *alarm.Alarm

	width, height int
	lay           layout.Layout
	drawn         [layout.Panes][]string // each pane as last drawn; nil: it has to be drawn anew
	frame         string                 // the whole screen; "": the same
	running       []string               // the lines that say the holds

	mode    mode
	panel   panel.Panel   // of the modes that have one
	waiting *act.Question // asked while the bench view is on
	typing  typing
	message act.Say
	warned  time.Time // that no bell rings in the shell
	changed bool      // the panes have to be shown the project anew

	focus layout.Pane
	at    place
	bare  bool // no project is open yet: only the shelf is shown
	shelf shelfpane.Model
	dry   drypane.Model
	knife knifepane.Model
	plan  planpane.Model
	steps stepspane.Model
	bench benchview.Model
}

// New gives the workbench for a document.
func New(o Options) *Model {
	o = o.filled()
	m := &Model{Keys: DefaultKeys(o.Suspends), o: o}
	m.session, m.alarm = session.New(&m.o.Options), alarm.New(&m.o.Alarm)
	m.makePanes()
	m.shelf = shelfpane.New(shelfpane.Options{Shelf: o.Shelf, Begin: o.Begin, Clock: o.Clock, Styles: o.Styles})
	if o.OnShelf {
		m.at, m.bare = onShelf, true
	}
	m.message = act.Say{Text: o.Greeting}
	if o.Ask {
		m.ask(panel.FontQuestion(o.Font))
	}
	m.refresh()
	return m
}

// makePanes makes the panes anew, for a document that has just been opened.
func (m *Model) makePanes() {
	o := m.o
	m.knife = knifepane.New(o.Styles)
	m.plan = planpane.New(o.Styles)
	m.plan.SetRates(o.Rates, o.Currency)
	m.steps = stepspane.New(o.Clock, o.Styles)
	m.bench = benchview.New(o.Clock, o.Styles, o.ascii())
	m.dry = drypane.New(o.Clock, o.Styles)
	m.lay = layout.Layout{} // so that all hear their size
	m.showFont()
}

// Init implements tea.Model.
func (m *Model) Init() tea.Cmd {
	m.say(m.o.Alarm.Voice.Title(m.title()))
	if m.at == onShelf { // its holds are looked at with the first tick: the list comes first
		return tea.Batch(m.nextTick(), m.shelf.Init())
	}
	return tea.Batch(m.nextTick(), m.look(), m.observe())
}

// Update implements tea.Model: it says who deals with what. However much a message
// changes, the panes are shown the project once.
func (m *Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	m.frame = ""
	cmd := m.route(msg)
	return m, tea.Batch(cmd, m.settle())
}

func (m *Model) route(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.resize(msg.Width, msg.Height)
		return nil
	case tea.KeyMsg:
		return m.key(msg)
	case tea.MouseMsg:
		return m.mouse(msg)
	case tickMsg:
		return m.tick()
	case tea.ResumeMsg:
		m.say(m.o.Alarm.Voice.Title(m.title()))
		return tea.Batch(tea.ClearScreen, m.look())
	case shelfpane.OpenMsg:
		return m.open(msg.Path)
	case shelfpane.LeaveMsg:
		return m.leaveShelf()
	}
	if out, ok := m.session.Take(msg); ok {
		return m.do(out)
	}
	if out, others, ok := m.alarm.Take(msg); ok {
		if others {
			m.refreshTime(m.snapshot())
		}
		return m.do(out)
	}
	if cmd, _, known := m.take(msg); known {
		return cmd
	}
	next, cmd := m.shelf.Update(msg) // what it found on the disk
	m.shelf = next
	return cmd
}

// settle shows the panes what has changed, and saves it.
func (m *Model) settle() tea.Cmd {
	defer m.settleMode()
	if !m.changed {
		return nil
	}
	m.changed = false
	m.refresh()
	return m.do(m.session.Save())
}

// snapshot is the state of the document, and of what else the panes show.
func (m *Model) snapshot() act.Snapshot {
	s := m.session.Snapshot()
	s.Others = m.alarm.Others()
	s.Font = m.o.Font
	s.Prices = act.Prices{Rates: m.o.Rates, Currency: m.o.Currency}
	return s
}

// refresh shows every pane the state of the document.
func (m *Model) refresh() {
	s := m.snapshot()
	m.knife.SetSnapshot(s)
	if err := m.knife.Problem(); err != nil { // the plan is of the last figure that would do
		s.Stale, s.Err = true, err
	}
	m.plan.SetSnapshot(s)
	m.dry.SetSnapshot(s)
	m.forget()
	doc := m.session.Doc()
	m.alarm.SetProject(doc.Committed(), m.session.Key(), store.FullPath(doc.Path()))
	m.refreshTime(s)
}

// refreshTime shows the time to those it matters to: once a second nothing else
// changes, and drawing the plan anew is most of the work.
func (m *Model) refreshTime(s act.Snapshot) {
	m.steps.SetSnapshot(s)
	m.bench.SetSnapshot(s)
	m.bench.SetHolds(m.alarm.Others())
	m.drawn[layout.Steps] = nil
	m.relayout()
}

// forget has every pane drawn anew.
func (m *Model) forget() { m.drawn = [layout.Panes][]string{} }

// showFont tells every part which characters the font has.
func (m *Model) showFont() {
	m.knife.ASCII = m.o.ascii()
	m.plan.SetGlyphs(m.o.Font.Glyphs, m.o.Font.Aspect)
	m.dry.SetGlyphs(m.o.Font.Glyphs, m.o.Font.Aspect)
	m.forget()
}

// now is the wall clock without the monotonic reading.
func (m *Model) now() time.Time { return m.o.Clock().Round(0) }

// The largest screen that is filled, in cells. A terminal may say anything of its size.
const widest, highest = 1000, 500

func (m *Model) resize(w, h int) {
	first := m.width == 0
	m.width, m.height = min(w, widest), min(h, highest)
	m.relayout()
	if first && m.session.Doc().Path() == "" && !m.bare && !m.lay.Abreast {
		m.takeUp(layout.Plan) // the example is there to be looked at
	}
}

// relayout gives every part its room; the number of holds changes it too.
func (m *Model) relayout() {
	m.running = m.alarm.Lines(m.width)
	lay := layout.Screen(m.width, m.height, m.focus, len(m.running))
	if lay == m.lay {
		return
	}
	m.lay = lay
	m.forget()
	inner := func(p layout.Pane) (int, int) {
		r := m.lay.Panes[p].Inner()
		return r.W, r.H
	}
	m.knife.SetSize(inner(layout.Knife))
	m.plan.SetSize(inner(layout.Plan))
	m.steps.SetSize(inner(layout.Steps))
	m.bench.SetSize(m.width, m.height)
	room := m.overlay()
	if m.panel != nil {
		m.panel.SetSize(room.W, room.H)
	}
	in := room.Inner()
	m.shelf.SetSize(in.W, in.H)
	m.dry.SetSize(in.W, in.H)
}

// Finish puts what is not on the disk there, after the screen is closed; see
// session.Finish.
func (m *Model) Finish(c *Crash) error {
	if c == nil {
		return m.session.Finish(nil)
	}
	return m.session.Finish(c)
}
