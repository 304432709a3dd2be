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
	"chape/ui/book"
	"chape/ui/form"
	"chape/ui/guard"
	"chape/ui/layout"
	"chape/ui/panel"
	"chape/ui/part"
	"chape/ui/session"
)

// Model is the root of the screen. Its methods have a pointer receiver, so that
// no change is made to a copy and lost.
type Model struct {
	o       Options
	session *session.Session
	alarm   *alarm.Alarm

	width, height int
	lay           layout.Layout
	frame         string   // the whole screen; "": the same
	running       []string // the lines that say the holds

	book book.Book
	bare bool // no project is open yet: only the shelf is shown

	mode      mode
	panel     panel.Panel   // of the modes that have one
	waiting   *act.Question // asked while the bench view is on
	reading   part.Reading
	message   act.Say
	warned    time.Time // that no bell rings in the shell
	unfit     error     // what is being typed will not do: the plan is of the last value that did
	rereading bool      // a look at the settings is under way
	noting    bool      // how drawings are made is being remembered
	changed   bool      // the pages have to be shown the project anew

	concern form.Watch // what warns, as far as it has been said
}

// New gives the workbench for a document.
func New(o Options) *Model {
	m := &Model{o: o.filled()}
	m.session, m.alarm = session.New(&m.o.Options), alarm.New(&m.o.Alarm)
	m.makePages()
	if o.OnShelf {
		m.book.Cover, m.bare = m.book.Named("Shelf"), true
	}
	m.concern.Begin(m.session.Doc().Plan())
	m.message = act.Say{Text: o.Greeting}
	m.refresh()
	return m
}

// Init implements tea.Model.
func (m *Model) Init() tea.Cmd {
	m.say(m.o.Alarm.Voice.Title(m.title()))
	cmd, _ := m.tell(m.book.InHand(), act.InHand{Is: true})
	if m.book.Cover != nil { // the shelf's holds are looked at with the first tick: the list comes first
		return tea.Batch(m.nextTick(), cmd)
	}
	return tea.Batch(m.nextTick(), m.look(), m.observe(), cmd)
}

// Update implements tea.Model: it says who deals with what. However much a message
// changes, the pages are shown the project once.
func (m *Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	m.frame = ""
	cmd := m.route(msg)
	return m, tea.Batch(cmd, m.settle())
}

func (m *Model) route(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		return m.resize(msg.Width, msg.Height)
	case tea.KeyMsg:
		return m.key(msg)
	case tea.MouseMsg:
		return m.mouse(msg)
	case tickMsg:
		return m.tick()
	case rememberedMsg:
		return m.remembered(msg)
	case rereadMsg:
		return m.putSettings(msg)
	case tea.ResumeMsg:
		m.say(m.o.Alarm.Voice.Title(m.title()))
		return tea.Batch(tea.ClearScreen, m.look())
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
	return m.tellAll(msg)
}

// settle shows the pages what has changed, and saves it.
func (m *Model) settle() tea.Cmd {
	defer m.settleMode()
	m.say(m.o.Alarm.Voice.Title(m.title())) // sends nothing while it is the same
	if !m.changed {
		return nil
	}
	m.changed = false
	m.announce()
	m.refresh()
	return m.do(m.session.Save())
}

// snapshot is the state of the document, and of what else the panes show.
func (m *Model) snapshot() act.Snapshot {
	s := m.session.Snapshot()
	s.Others = m.alarm.Others()
	s.Font = m.o.Font
	s.Shop = m.o.Shop
	if m.unfit != nil {
		s.Stale, s.Err = true, m.unfit
	}
	s.Scale = m.o.Scale
	s.Path, s.Prints = store.FullPath(m.session.Doc().Path()), m.session.PrintFolder()
	return s
}

// refresh shows the pages that are seen the state of the document; the others are shown
// it when they are seen.
func (m *Model) refresh() {
	doc := m.session.Doc()
	m.alarm.SetProject(doc.Committed(), m.session.Key(), store.FullPath(doc.Path()))
	m.book.Stale()
	m.relayout()
	s := m.snapshot()
	for _, l := range m.book.Leaves {
		if m.book.Seen(l, m.lay) || l == m.book.InHand() {
			l.Show(s)
		}
	}
}

// refreshTime shows the time to those it matters to: once a second nothing else
// changes, and drawing the plan anew is most of the work.
func (m *Model) refreshTime(s act.Snapshot) {
	m.relayout()
	for _, l := range m.book.Leaves {
		if m.book.Seen(l, m.lay) && (l.Ticks || !l.Fresh) {
			l.Show(s)
		}
	}
}

// now is the wall clock without the monotonic reading.
func (m *Model) now() time.Time { return m.o.Clock().Round(0) }

// The largest screen that is filled; whatever a terminal claims, no more is drawn.
const widest, highest = 1000, 500

func (m *Model) resize(w, h int) tea.Cmd {
	first := m.width == 0
	m.width, m.height = min(w, widest), min(h, highest)
	m.relayout()
	m.changed = true
	if first && m.session.Doc().Path() == "" && !m.bare && !m.lay.Abreast {
		return m.takeUp(m.book.Standing[layout.Plan]) // the example is there to be looked at
	}
	return nil
}

// relayout gives every page its room; the number of holds changes it too.
func (m *Model) relayout() {
	m.running = m.alarm.Lines(m.width)
	lay := layout.Screen(m.width, m.height, m.book.Focus, len(m.running))
	if lay == m.lay {
		return
	}
	m.lay = lay
	room := m.overlay()
	if m.panel != nil {
		m.panel.SetSize(room.W, room.H)
	}
	for _, l := range m.book.Leaves {
		if l.Room == act.Screen {
			l.SetSize(m.width, m.height)
			continue
		}
		r := m.rect(l).Inner()
		l.SetSize(r.W, r.H)
	}
}

// rect is where a page stands, its frame included.
func (m *Model) rect(l *book.Leaf) layout.Rect {
	switch l.Room {
	case act.Screen:
		return layout.Rect{W: m.width, H: m.height}
	case act.Whole:
		return m.overlay()
	}
	return m.lay.Panes[l.Room]
}

// Finish puts what is not on the disk there, after the screen is closed; see
// session.Finish.
func (m *Model) Finish(c *guard.Crash) error {
	if c == nil {
		return m.session.Finish(nil)
	}
	return m.session.Finish(c)
}
