// Package workbench is the screen: the panes side by side or one at a time, the
// holds above them, and what passes between the panes, the document and the
// disk.
package workbench

import (
	"cmp"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/steps"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/bench"
	"chape/ui/drypane"
	"chape/ui/knifepane"
	"chape/ui/layout"
	"chape/ui/planpane"
	"chape/ui/session"
	"chape/ui/shelfpane"
	"chape/ui/stepspane"
)

// Model is the root of the screen. Its methods have a pointer receiver, so that
// no change is made to a copy and lost.
type Model struct {
	Keys KeyMap
	o    Options
	doc  *session.Doc

	width, height int
	lay           layout.Layout
	drawn         [layout.Panes][]string // each pane as last drawn; nil: it has to be drawn anew
	frame         string                 // the whole screen; "": the same
	focus         layout.Pane
	at            place
	bare          bool // no project is open yet: only the shelf is shown
	shelf         shelfpane.Model
	dry           drypane.Model
	knife         knifepane.Model
	plan          planpane.Model
	steps         stepspane.Model
	bench         bench.Model

	typing   typing
	message  act.Say
	question *question // takes every key until it is answered
	help     *help
	sheets   *sheets
	printing bool   // sheets are being drawn
	quitting bool   // as soon as the running save has ended
	next     string // the project to be opened then
	dropped  bool   // a loose copy that nobody wants
	bringing bool   // another project is on its way from the disk
	keeping  bool   // a file is being made for the document
	asked    bool   // a key asked for the save: say when it is done

	left    []*session.Doc // projects that were open before, the last one first
	others  []steps.Hold   // of the other projects of the shelf
	running []string       // the lines that say the holds
	watch   steps.Watch
	began   time.Time     // when the program was started
	missed  []steps.Event // before that, and not told yet
	read    bool          // every file of the shelf was looked at once
	alarm   alarm
	flight  *flight     // the newest save
	warned  time.Time   // that no bell rings in the shell
	polling bool        // a look at the file is under way
	looking bool        // a look at the shelf is under way
	refused store.Stamp // what another program made of the file and can't be loaded
}

// New gives the workbench for a document.
func New(o Options) *Model {
	o = o.filled()
	m := &Model{Keys: DefaultKeys(o.Suspends), o: o, doc: o.Doc}
	m.makePanes()
	m.shelf = shelfpane.New(shelfpane.Options{Shelf: o.Shelf, Begin: o.Begin, Clock: o.Clock, Styles: o.Styles})
	if o.OnShelf {
		m.at, m.bare = onShelf, true
	}
	m.message = act.Say{Text: o.Greeting}
	m.began = m.now()
	m.watch.Began(m.began)
	if o.Ask {
		m.question = m.glyphQuestion()
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
	m.bench = bench.New(o.Clock, o.Styles, o.ascii())
	m.dry = drypane.New(o.Clock, o.Styles)
	m.lay = layout.Layout{} // so that all hear their size
	m.showLooks()
}

// Init implements tea.Model.
func (m *Model) Init() tea.Cmd {
	m.voice(m.o.Voice.Title(m.title()))
	if m.at == onShelf { // its holds are looked at with the first tick: the list comes first
		return tea.Batch(m.nextTick(), m.shelf.Init())
	}
	return tea.Batch(m.nextTick(), m.look(), m.observe())
}

// Update implements tea.Model: it says who deals with what.
func (m *Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	m.frame = ""
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.resize(msg.Width, msg.Height)
		return m, nil
	case tea.KeyMsg:
		return m, m.key(msg)
	case tea.MouseMsg:
		return m, m.mouse(msg)
	case tickMsg:
		return m, m.tick()
	case tea.ResumeMsg:
		m.voice(m.o.Voice.Title(m.title()))
		return m, tea.Batch(tea.ClearScreen, m.look())
	}
	if cmd, ok := m.disk(msg); ok {
		return m, cmd
	}
	if cmd, ok := m.shelfMessage(msg); ok {
		return m, cmd
	}
	if cmd, _, known := m.takeKnown(msg); known {
		return m, cmd
	}
	next, cmd := m.shelf.Update(msg) // what it found on the disk
	m.shelf = next
	return m, cmd
}

// run does at once what a pane asks for. Panes' commands only hand over a
// message of package act and wait for nothing; run one after the other, no key
// can overtake the change that the one before it made.
func (m *Model) run(cmd tea.Cmd) tea.Cmd {
	out, _ := m.runAll(cmd)
	return out
}

// runAll stops a batch at the first message that is refused.
func (m *Model) runAll(cmd tea.Cmd) (out tea.Cmd, ok bool) {
	if cmd == nil {
		return nil, true
	}
	msg := cmd()
	batch, isBatch := msg.(tea.BatchMsg)
	if !isBatch {
		return m.take(msg)
	}
	var all []tea.Cmd
	for _, c := range batch {
		next, ok := m.runAll(c)
		all = append(all, next)
		if !ok {
			return tea.Batch(all...), false
		}
	}
	return tea.Batch(all...), true
}

// take does what a message of a pane says; ok is false for a change that was
// refused.
func (m *Model) take(msg tea.Msg) (cmd tea.Cmd, ok bool) {
	cmd, ok, _ = m.takeKnown(msg)
	return cmd, ok
}

// takeKnown also tells whether it knows the message.
func (m *Model) takeKnown(msg tea.Msg) (cmd tea.Cmd, ok, known bool) {
	switch msg := msg.(type) {
	case nil:
		return nil, true, true
	case act.Preview:
		m.doc.Preview(msg.Do)
	case act.Drop:
		m.doc.Drop()
	case act.Choose:
		m.doc.Choose(msg.Mark)
	case act.Say:
		m.message = msg
		return nil, true, true
	case act.Commit:
		if err := m.doc.Commit(msg.Label, msg.Do); err != nil {
			m.message = act.Say{Text: msg.Label + ": " + knifepane.Words(err), Warn: true}
			m.doc.Drop()
			m.refresh()
			return nil, false, true
		}
	case bench.Leave:
		return m.showBench(false), true, true
	case bench.Quit:
		return m.quit(), true, true
	case bench.Suspend:
		return m.suspend(), true, true
	default:
		return nil, true, false
	}
	m.refresh()
	return m.save(), true, true
}

// snapshot is the state of the document, and of what else the panes show.
func (m *Model) snapshot() act.Snapshot {
	s := m.doc.Snapshot(m.o.Clock())
	s.Others = m.others
	s.Font = act.Font(m.o.Looks)
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
	m.refreshTime(s)
}

// refreshTime shows the time to those it matters to: once a second nothing else
// changes, and drawing the plan anew is most of the work.
func (m *Model) refreshTime(s act.Snapshot) {
	m.steps.SetSnapshot(s)
	m.bench.SetSnapshot(s)
	m.bench.SetHolds(m.others)
	m.drawn[layout.Steps] = nil
	m.relayout()
}

// forget has every pane drawn anew.
func (m *Model) forget() { m.drawn = [layout.Panes][]string{} }

// showLooks tells every part which characters the font has.
func (m *Model) showLooks() {
	m.knife.ASCII = m.o.ascii()
	m.plan.SetGlyphs(m.o.Looks.Glyphs, m.o.Looks.Aspect)
	m.dry.SetGlyphs(m.o.Looks.Glyphs, m.o.Looks.Aspect)
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
	if first && m.doc.Path() == "" && !m.bare && !m.lay.Abreast {
		m.takeUp(layout.Plan) // the example is there to be looked at
	}
}

// relayout gives every part its room; the number of holds changes it too.
func (m *Model) relayout() {
	m.running = steps.HoldLines(m.allHolds(), m.now(), m.width)
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
	in := m.overlay().Inner()
	m.shelf.SetSize(in.W, in.H)
	m.dry.SetSize(in.W, in.H)
}

// allHolds are those of this project and of the others on the shelf.
func (m *Model) allHolds() []steps.Hold {
	return append(steps.Holds(m.doc.Committed().Steps, ""), m.others...)
}

// watched are the same under the names that the shelf has for them, so that going over
// to another project announces nothing twice.
func (m *Model) watched() []steps.Hold {
	p := m.doc.Committed()
	holds := steps.Holds(p.Steps, p.Title)
	for i := range holds {
		holds[i].Key = m.pathKey()
	}
	if m.o.Shelf != nil && !m.read {
		return holds // those of the shelf are told of together
	}
	return append(holds, m.others...)
}

// pathKey is what the holds of the document are known by: its file, also while there
// are two of it.
func (m *Model) pathKey() string {
	path := m.doc.Path()
	if m.doc.State() == session.Divided {
		path, _, _ = m.doc.Sides()
	}
	return wholePath(path)
}

// moving does what gives the document another file: nothing of it is announced again
// for that.
func (m *Model) moving(do func()) {
	from := cmp.Or(m.pathKey(), m.doc.Committed().Title)
	do()
	m.watch.Moved(from, cmp.Or(m.pathKey(), m.doc.Committed().Title))
}
