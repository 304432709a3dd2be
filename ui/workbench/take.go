package workbench

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/project/print/order"
	"chape/ui/act"
	"chape/ui/form"
	"chape/ui/layout"
	"chape/ui/panel"
	"chape/ui/session"
)

// do does what values say, at once and one after the other, so that no key can overtake
// the change that the one before it made; it stops at the first that is refused.
func (m *Model) do(out []act.Msg) tea.Cmd {
	var all []tea.Cmd
	for _, msg := range out {
		cmd, ok, _ := m.take(msg)
		all = append(all, cmd)
		if !ok {
			break
		}
	}
	return tea.Batch(all...)
}

// take does what a value says; ok is false for a change that was refused. Known tells
// whether it is one that the root knows.
func (m *Model) take(msg act.Msg) (cmd tea.Cmd, ok, known bool) {
	switch msg := msg.(type) {
	case nil, act.Stay:
	case act.Do:
		return tea.Cmd(msg), true, true
	case act.Say:
		m.message = msg
	case act.Question:
		m.ask(msg)
	case act.Commit:
		return nil, m.commit(msg), true
	case act.Undo:
		if msg.Redo {
			return m.do(m.session.Redo()), true, true
		}
		return m.do(m.session.Undo()), true, true
	case act.Seek:
		m.seek(msg)
	case act.Help:
		m.showHelp()
	case act.Look:
		return m.setLook(msg.Font), true, true
	case act.Open:
		return m.open(msg.Path), true, true
	case act.Go:
		return m.takeUp(m.book.Named(msg.Page)), true, true
	case act.Leave:
		return m.leave(), true, true
	case act.Quit:
		return m.quit(), true, true
	case act.Suspend:
		return m.suspend(), true, true
	case session.Moved:
		m.alarm.Moved(msg.From, msg.To)
	case session.Opened:
		return m.opened(), true, true
	default:
		if m.takeChange(msg) {
			return nil, true, true
		}
		cmd, known = m.takePrint(msg)
		return cmd, true, known
	}
	return nil, true, true
}

// takeChange does what a value says of the project as it is shown: nothing of it can be
// refused. Known is false for others.
func (m *Model) takeChange(msg act.Msg) (known bool) {
	doc := m.session.Doc()
	switch msg := msg.(type) {
	case act.Preview:
		doc.Preview(msg.Do)
		m.unfit = nil
	case act.Drop:
		doc.Drop()
		m.unfit = nil
	case act.Unfit:
		m.unfit = msg.Err
	case act.Choose:
		doc.Choose(msg.Mark)
	case act.Record:
		doc.Record(msg.Do)
	case act.Priced:
		m.o.Shop = msg.Shop
	case session.Changed:
		m.unfit = nil
	default:
		return false
	}
	m.changed = true
	return true
}

// takePrint does what a value says about printing; known is false for others.
func (m *Model) takePrint(msg act.Msg) (cmd tea.Cmd, known bool) {
	switch msg := msg.(type) {
	case panel.PrintMsg:
		if msg.Tracing {
			return m.do(m.session.PrintTracing(msg.Options)), true
		}
		return m.do(m.session.PrintPattern(msg.Options)), true
	case session.Numbered:
		return m.do(m.session.Print(msg.Options)), true
	case act.PrintPair:
		return m.do(m.session.PrintPair(msg.Pair, m.o.Print)), true
	case act.PrintOrder:
		o := order.Options{Paper: m.o.Print.Paper, Correction: m.o.Print.Correction, Maker: m.o.Shop.Maker()}
		return m.do(m.session.PrintOrder(msg.Quote, o)), true
	case act.TracingSheet:
		m.askTracing()
		return nil, true
	case panel.FolderSeenMsg:
		if p, ok := m.panel.(*panel.Print); ok {
			return m.do(p.Seen(msg)), true
		}
		return nil, true
	case panel.FolderMsg:
		return m.do(m.session.SetPrints(msg.Folder)), true
	case panel.PaperMsg:
		m.o.Print.Paper = msg.Paper
		return m.do(m.session.KeepPaper(msg.Paper)), true
	case panel.MeasuredMsg:
		m.o.Print.Correction = msg.Correction
		return m.do(m.session.KeepPrinter(msg.Correction)), true
	}
	return nil, false
}

// commit makes a change for good, or says why not.
func (m *Model) commit(c act.Commit) bool {
	m.unfit, m.changed = nil, true
	was := m.session.Doc().Committed()
	err := m.session.Doc().Commit(c.Label, c.Do)
	if err == nil {
		m.said()
		if words := session.Outgrown(was, m.session.Doc().Committed(), m.raiseKey().Help().Key); words != "" {
			m.message = act.Say{Text: words}
		}
		return true
	}
	m.message = act.Say{Text: c.Label + ": " + form.Words(err), Warn: true}
	m.session.Doc().Drop()
	return false
}

// open goes over to another project.
func (m *Model) open(path string) tea.Cmd {
	if m.session.Has(path) {
		return m.takeUp(m.book.Standing[m.book.Focus])
	}
	return m.do(m.session.Open(path))
}

// opened shows the project that has taken the place of the one before.
func (m *Model) opened() tea.Cmd {
	m.bare, m.book.Cover, m.book.Focus, m.unfit = false, nil, layout.Knife, nil
	m.concern.Begin(m.session.Doc().Plan())
	m.makePages()
	m.refresh()
	cmd, _ := m.tell(m.book.InHand(), act.InHand{Is: true})
	m.say(m.o.Alarm.Voice.Title(m.title()))
	return tea.Batch(cmd, m.look())
}
