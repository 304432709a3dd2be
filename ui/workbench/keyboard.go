package workbench

import (
	"slices"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/panel"
	"chape/ui/part"
)

// key takes one key: the alarm first, then whoever has the keyboard. A key that silences
// does nothing else, but a figure is no command anywhere, and half of it a wrong one: it
// goes where it was meant.
func (m *Model) key(k tea.KeyMsg) tea.Cmd {
	typing := m.mode == editing || m.panel != nil && act.Typing(m.panel)
	if m.alarm.Ringing() {
		m.alarm.Silence()
		if !typing && (m.mode == bench || !part.IsFigure(k)) {
			m.reading.Take(k, m.o.Clock())
			cmd, _ := m.tell(m.book.InHand(), act.Silenced{})
			return cmd
		}
	}
	if first, rest, several := part.Letters(k); several && !typing {
		cmd := m.key(first)
		return tea.Batch(cmd, m.settle(), m.key(rest)) // to whoever has the keyboard now
	}
	p := m.reading.Take(k, m.o.Clock())
	if p.Echo {
		return nil
	}
	if !m.message.Lasts || m.mode == bench {
		m.message = act.Say{}
	}
	if m.mode == bench {
		return m.pageKey(p)
	}
	if l := m.book.Taker(k); l != nil && m.mode == browsing && !p.AfterFigure() {
		opened := m.takeUp(l)
		if m.book.InHand() != l { // what was in hand has to be answered first
			return opened
		}
		return tea.Batch(opened, m.pageKey(p))
	}
	switch m.mode {
	case asking, helping, printing:
		return m.panelKey(p)
	case editing:
		return m.editKey(p)
	}
	if cmd, known := m.rootKey(p); known {
		return cmd
	}
	return m.pageKey(p)
}

// pageKey hands a key to the page in hand.
func (m *Model) pageKey(p part.Press) tea.Cmd {
	cmd, _ := m.tell(m.book.InHand(), p)
	return cmd
}

// editKey hands a key to the text being typed, except those that save, end or stop
// the program: what is committed can be saved while a number is refused.
func (m *Model) editKey(p part.Press) tea.Cmd {
	k := p.KeyMsg
	switch {
	case key.Matches(k, m.Keys.Break): // first what is typed, then the program
		return m.pageKey(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyEsc}})
	case key.Matches(k, m.Keys.Suspend):
		return m.suspend()
	case key.Matches(k, m.Keys.Keep):
		return m.do(m.session.Keep())
	}
	return m.pageKey(p)
}

// rootKey does what a key means to the root where it is alive on the page in hand.
func (m *Model) rootKey(p part.Press) (cmd tea.Cmd, known bool) {
	all, _ := m.rootKeys(act.AllKeys)
	switch own := m.book.InHand().Pane; {
	case act.Writes(own, p.KeyMsg):
		return nil, false
	case p.Hasty() && (m.owns(p.KeyMsg) || key.Matches(p.KeyMsg, all...)):
		m.message = act.Say{Text: p.Ignored()}
		return nil, true
	case !p.Command():
		return nil, false
	}
	k, alive := p.KeyMsg, m.book.InHand().Root
	is := func(on act.RootKeys, b ...key.Binding) bool { return alive&on == on && key.Matches(k, b...) }
	opens := m.book.Opener(func(b ...key.Binding) bool { return is(act.Openers, b...) })
	switch {
	case opens != nil:
		m.reading.Done()
		return m.takeUp(opens), true
	case is(act.Turn, m.Keys.NextPane):
		return m.takeUp(m.book.Standing[m.book.Focus.Next()]), true
	case is(act.Turn, m.Keys.LastPane):
		return m.takeUp(m.book.Standing[m.book.Focus.Back()]), true
	case is(act.Changes, m.Keys.Undo):
		return m.do(m.session.Undo()), true
	case is(act.Changes, m.Keys.Redo):
		return m.do(m.session.Redo()), true
	case is(act.Saving, m.Keys.Keep):
		return m.do(m.session.Keep()), true
	case is(act.Printing, m.Keys.Raise):
		return m.do(m.session.Raise()), true
	case is(act.Printing, m.Keys.Print):
		return m.askPrint(), true
	case is(0, m.Keys.New) && !m.owns(k):
		return m.begin(), true
	case is(act.Openers, m.Keys.Concern):
		return m.toConcern(), true
	case is(0, m.Keys.Help):
		m.explain()
		return nil, true
	case is(0, m.Keys.Suspend):
		return m.suspend(), true
	case is(0, m.Keys.Quit, m.Keys.Break):
		return m.quit(), true
	case !key.Matches(k, all...) || m.owns(k):
	case m.bare: // it is of a project, and none is open
		return m.leave(), true
	default:
		m.message = act.Say{Text: p.String() + " is a key of Knife, Plan and Steps: Esc leads back to them"}
		return nil, true
	}
	return nil, false
}

// quit ends the program as soon as everything is on the disk.
func (m *Model) quit() tea.Cmd {
	var cmd tea.Cmd
	if m.mode == bench { // it has minutes to keep, and questions wait until it is left
		cmd = m.leave()
	}
	return tea.Batch(cmd, m.do(m.session.Quit()))
}

// owns tells whether a key is one of the page in hand: that goes before the root's.
func (m *Model) owns(k tea.KeyMsg) bool {
	return slices.ContainsFunc(act.Alive(m.book.InHand().Pane), func(own act.Key) bool { return key.Matches(k, own.Binding) })
}

// begin asks on the shelf for a new project.
func (m *Model) begin() tea.Cmd {
	shelf := m.book.Named("Shelf")
	if shelf == nil {
		m.message = act.Say{Text: "there is no folder for a shelf: chape new FILE begins a project", Warn: true}
		return nil
	}
	cmd := m.takeUp(shelf)
	if m.book.InHand() != shelf {
		return cmd // a question has to be answered first
	}
	asked, _ := m.tell(shelf, act.Begin{})
	m.settleMode()
	return tea.Batch(cmd, asked)
}

// askPrint opens the panel, if there is something to print.
func (m *Model) askPrint() tea.Cmd {
	why, ok := m.session.Printable()
	if !ok {
		m.message = why
		return nil
	}
	m.said() // the panel says what was printed last
	m.put(printing, m.printPanel().Counted(m.session.SheetsTaken))
	return nil
}

func (m *Model) printPanel() *panel.Print {
	return panel.NewPrint(m.o.Print, m.session.PrintFolder, m.session.Doc().Unit(), m.panelStyle(), m.Keys.Break, m.Keys.Quit).Written(m.session.Written())
}

// askTracing opens the same panel for a sheet to trace a knife on, which needs no plan.
func (m *Model) askTracing() {
	if why, ok := m.session.Idle(); !ok {
		m.message = why
		return
	}
	m.put(printing, m.printPanel().Tracing())
}

// explain says what the row in hand is, where there is one; else, and where the key is
// pressed again, it lists the keys.
func (m *Model) explain() {
	if e, can := m.book.InHand().Pane.(act.Explainer); can {
		if title, body, ok := e.Explain(); ok {
			m.put(helping, panel.NewExplain(title, body, m.panelStyle(), m.Keys.Help, m.Keys.Quit, m.Keys.Break))
			return
		}
	}
	m.showHelp()
}

// showHelp lists the keys, those of what is in hand first.
func (m *Model) showHelp() {
	m.put(helping, panel.NewHelp(m.sections(), m.panelStyle(), m.Keys.Help, m.Keys.Quit, m.Keys.Break))
}

func (m *Model) suspend() tea.Cmd {
	if !m.o.Suspends {
		return nil
	}
	if line, runs := m.alarm.Nearest(); runs && !part.Within(m.warned, m.now(), sayTwice) {
		m.warned = m.now()
		m.message = act.Say{Text: "no bell rings in the shell, and " + line + ": press Ctrl+Z again to go there", Warn: true}
		return nil
	}
	m.warned = time.Time{}
	m.say(m.o.Alarm.Voice.Close()) // the shell's own title
	return tea.Suspend
}

// sayTwice is how soon a key must be pressed again to be meant.
const sayTwice = 10 * time.Second
