package workbench

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/panel"
	"chape/ui/part"
)

// key takes one key: the alarm first, then whoever has the keyboard. A key that silences
// does nothing else, but a figure is no command anywhere, and half of it a wrong one: it
// goes where it was meant. What Enter alone answers stays open: it may take something out.
func (m *Model) key(k tea.KeyMsg) tea.Cmd {
	typing := m.mode == editing || m.panel != nil && act.Typing(m.panel)
	if m.alarm.Ringing() {
		m.alarm.Silence()
		if act.Confirming(m.book.InHand().Pane) || !typing && (m.mode == bench || !part.IsFigure(k)) {
			m.reading.Take(k, m.o.Clock())
			cmd, _ := m.tell(m.book.InHand(), act.Silenced{})
			return cmd
		}
	}
	if m.unseen() && !leaves(k, m.mode) {
		m.reading.Take(k, m.o.Clock())
		return nil
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
	own := m.modeKey
	if m.mode == browsing {
		own = m.rootKey
	}
	if cmd, known := own(p); known {
		return cmd
	}
	if m.panel != nil {
		return m.panelKey(p)
	}
	return m.pageKey(p)
}

// unseen tells whether there is too little room to show anything that a key could change.
func (m *Model) unseen() bool {
	if m.width <= 0 { // no size yet: what is typed ahead counts
		return false
	}
	if m.mode == bench {
		return layout.Bench(m.width, m.height) != ""
	}
	return m.lay.TooSmall != ""
}

// leaves tells whether a key leads out, of the program or of the bench view: such keys are
// alive where nothing is to be seen.
func leaves(k tea.KeyMsg, in mode) bool {
	switch k.String() {
	case "ctrl+c":
		return true
	case "q":
		return in == browsing
	case "esc":
		return in == bench
	}
	return false
}

// pageKey hands a key to the page in hand.
func (m *Model) pageKey(p part.Press) tea.Cmd {
	cmd, _ := m.tell(m.book.InHand(), p)
	return cmd
}

// quit ends the program as soon as everything is on the disk.
func (m *Model) quit() tea.Cmd {
	var cmd tea.Cmd
	if m.mode == bench { // it has minutes to keep, and questions wait until it is left
		cmd = m.leave()
	}
	return tea.Batch(cmd, m.do(m.session.Quit()))
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
func (m *Model) askPrint() {
	why, ok := m.session.Printable()
	if !ok {
		m.message = why
		return
	}
	m.said() // the panel says what was printed last
	m.put(printing, m.printPanel().Counted(m.session.SheetsTaken))
}

func (m *Model) printPanel() *panel.Print {
	return panel.NewPrint(m.o.Print, m.session.PrintFolder, m.session.Doc().Unit(), m.panelStyle(), m.quitKey().Binding).Written(m.session.Written())
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
			m.put(helping, panel.NewExplain(title, body, m.panelStyle(), m.helpKey().Binding, m.quitKey().Binding))
			return
		}
	}
	m.showHelp()
}

// showHelp lists the keys, those of what is in hand first.
func (m *Model) showHelp() {
	m.put(helping, panel.NewHelp(m.sections(), m.panelStyle(), m.helpKey().Binding, m.quitKey().Binding))
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
