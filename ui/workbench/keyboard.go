package workbench

import (
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/panel"
)

// key takes one key: the alarm first, then whoever has the keyboard.
func (m *Model) key(k tea.KeyMsg) tea.Cmd {
	if m.alarm.Ringing() {
		m.silence()
		if m.mode == bench {
			m.bench = m.bench.Silenced()
			return nil
		}
		if m.mode != editing {
			m.typing.key(k, m.o.Clock())
			return nil
		}
	}
	if first, rest, several := m.letters(k); several {
		cmd := m.key(first)
		return tea.Batch(cmd, m.settle(), m.key(rest)) // to whoever has the keyboard now
	}
	if m.mode == bench { // questions wait until it is left
		next, cmd := m.bench.Update(k)
		m.bench = next
		return m.run(cmd)
	}
	if m.at != onPanes && m.mode <= editing { // those watch for readings themselves
		m.message = act.Say{}
		return m.placeKey(k)
	}
	k, drop, reading := m.typing.key(k, m.o.Clock())
	if drop {
		return nil
	}
	m.message = act.Say{}
	switch m.mode {
	case asking, helping, printing:
		return m.overKey(k, reading)
	case editing:
		return m.editKey(k, reading)
	}
	return m.freeKey(k, reading)
}

// overKey is a key while a panel lies over the panes.
func (m *Model) overKey(k tea.KeyMsg, reading bool) tea.Cmd {
	switch {
	case m.mode == asking && key.Matches(k, m.Keys.Break):
		m.closed()
		return m.quit()
	case m.mode == printing && key.Matches(k, m.Keys.Suspend):
		return m.suspend()
	}
	return m.panelKey(k, reading)
}

// letters takes the first letter off a message with more than one: on a slow line,
// or while the program was busy, letters arrive together. What is being typed stays
// whole, and a figure does: it comes from a measuring tool, or goes into a number.
func (m *Model) letters(k tea.KeyMsg) (first, rest tea.KeyMsg, several bool) {
	if k.Type != tea.KeyRunes || k.Paste || k.Alt || len(k.Runes) < 2 || strings.ContainsRune("0123456789+-.,", k.Runes[0]) {
		return k, k, false
	}
	if m.mode == editing || m.panel != nil && m.panel.Typing() {
		return k, k, false
	}
	first, rest = k, k
	first.Runes, rest.Runes = k.Runes[:1], k.Runes[1:]
	return first, rest, true
}

// typingInHand tells whether what is in hand has a text open that takes every key.
func (m *Model) typingInHand() bool {
	switch {
	case m.at == onShelf:
		return m.shelf.Typing()
	case m.at == onDrying:
		return m.dry.Typing()
	case m.focus == layout.Knife:
		return m.knife.Editing()
	case m.focus == layout.Steps:
		return m.steps.Typing()
	}
	return false
}

// editKey hands a key to the text being typed, except those that save, end or stop
// the program: what is committed can be saved while a number is refused.
func (m *Model) editKey(k tea.KeyMsg, reading bool) tea.Cmd {
	switch {
	case key.Matches(k, m.Keys.Break):
		return m.paneKey(tea.KeyMsg{Type: tea.KeyEsc}, false)
	case key.Matches(k, m.Keys.Suspend):
		return m.suspend()
	case key.Matches(k, m.Keys.Keep):
		return m.do(m.session.Keep())
	}
	m.changed = true // the pane may have found something wrong, and the plan is another's then
	return m.paneKey(k, reading)
}

// freeKey is a key while nothing is typed.
func (m *Model) freeKey(k tea.KeyMsg, reading bool) tea.Cmd {
	switch {
	case k.Paste:
		return m.paneKey(k, reading)
	case key.Matches(k, m.Keys.NextPane):
		return m.takeUp(m.focus.Next())
	case key.Matches(k, m.Keys.LastPane):
		return m.takeUp(m.focus.Back())
	case key.Matches(k, m.Keys.Bench):
		return m.showBench()
	case key.Matches(k, m.Keys.Shelf) && m.o.Shelf != nil:
		return m.goTo(onShelf)
	case key.Matches(k, m.Keys.Drying):
		return m.goTo(onDrying)
	case key.Matches(k, m.Keys.Undo):
		return m.do(m.session.Undo())
	case key.Matches(k, m.Keys.Redo):
		return m.do(m.session.Redo())
	case key.Matches(k, m.Keys.Keep):
		return m.do(m.session.Keep())
	case key.Matches(k, m.Keys.Print):
		return m.askPrint()
	case key.Matches(k, m.Keys.Help):
		m.showHelp()
		return nil
	case key.Matches(k, m.Keys.Suspend):
		return m.suspend()
	case key.Matches(k, m.Keys.Quit), key.Matches(k, m.Keys.Break):
		return m.quit()
	}
	return m.paneKey(k, reading)
}

// paneKey hands a key to the pane in hand.
func (m *Model) paneKey(k tea.KeyMsg, reading bool) tea.Cmd {
	m.drawn[m.focus] = nil
	switch m.focus {
	case layout.Knife:
		return m.run(m.knife.Key(k, reading))
	case layout.Plan:
		next, cmd := m.plan.Update(k)
		m.plan = next
		return m.run(cmd)
	}
	next, cmd := m.steps.Update(k)
	m.steps = next
	return m.run(cmd)
}

// takeUp takes a pane in hand.
func (m *Model) takeUp(p layout.Pane) tea.Cmd {
	var cmd tea.Cmd
	if m.focus == layout.Knife && p != layout.Knife {
		left, ok := m.knife.Leave()
		cmd = m.run(left)
		if !ok {
			return cmd
		}
	}
	m.focus = p
	m.steps.SetFocus(p == layout.Steps)
	m.changed = true
	return cmd
}

// showBench opens the bench view.
func (m *Model) showBench() tea.Cmd {
	if why := layout.Bench(m.width, m.height); why != "" {
		m.message = act.Say{Text: "the bench view " + why, Warn: true}
		return nil
	}
	m.mode = bench
	m.bench.SetOn(true)
	return nil
}

// leaveBench closes it, and keeps the minutes that were spent at it.
func (m *Model) leaveBench() tea.Cmd {
	if m.mode != bench {
		return nil
	}
	m.bench.SetOn(false)
	m.closed()
	next, cmd := m.bench.Flush()
	m.bench = next
	return m.run(cmd)
}

// quit ends the program as soon as everything is on the disk.
func (m *Model) quit() tea.Cmd {
	cmd := m.leaveBench()
	return tea.Batch(cmd, m.do(m.session.Quit()))
}

// askPrint opens the panel, if there is something to print.
func (m *Model) askPrint() tea.Cmd {
	why, ok := m.session.Printable()
	if !ok {
		m.message = why
		return nil
	}
	m.over(printing, panel.NewPrint(m.o.Print, m.session.Doc().Unit(), m.panelStyle(), m.Keys.Break, m.Keys.Quit))
	return nil
}

// showHelp lists the keys, those of what is in hand first.
func (m *Model) showHelp() {
	m.over(helping, panel.NewHelp(m.inHand(m.sections()), m.panelStyle(), m.Keys.Help, m.Keys.Quit))
}

func (m *Model) suspend() tea.Cmd {
	if !m.o.Suspends {
		return nil
	}
	if line, runs := m.alarm.Nearest(); runs && !within(m.now(), m.warned, sayTwice) {
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

// mouse hands a click or the wheel to the pane under it and takes that in hand.
func (m *Model) mouse(e tea.MouseMsg) tea.Cmd {
	pressed := e.Action == tea.MouseActionPress
	if pressed && m.alarm.Ringing() && !tea.MouseEvent(e).IsWheel() {
		m.silence()
		if m.mode == bench {
			m.bench = m.bench.Silenced()
		}
		return nil
	}
	if m.mode == bench {
		next, cmd := m.bench.Update(e)
		m.bench = next
		return m.run(cmd)
	}
	if m.panel != nil || !pressed {
		return nil
	}
	if m.at != onPanes {
		in := m.overlay().Inner()
		e.X, e.Y = e.X-in.X, e.Y-in.Y
		return m.toPlace(e)
	}
	for i, r := range m.lay.Panes {
		if r.Contains(e.X, e.Y) {
			return m.paneMouse(layout.Pane(i), e, r.Inner())
		}
	}
	return nil
}

func (m *Model) paneMouse(p layout.Pane, e tea.MouseMsg, in layout.Rect) tea.Cmd {
	wheel := tea.MouseEvent(e).IsWheel()
	if !wheel && e.Button != tea.MouseButtonLeft {
		return nil
	}
	var cmd tea.Cmd
	if !wheel && p != m.focus {
		if cmd = m.takeUp(p); m.focus != p {
			return cmd // a question has to be answered first
		}
	}
	m.drawn[p] = nil
	e.X, e.Y = e.X-in.X, e.Y-in.Y
	var next tea.Cmd
	switch p {
	case layout.Knife:
		next = m.knifeMouse(e)
	case layout.Plan:
		m.plan, next = m.plan.Update(e)
	default:
		m.steps, next = m.steps.Update(e)
	}
	return tea.Batch(cmd, m.run(next))
}

func (m *Model) knifeMouse(e tea.MouseMsg) tea.Cmd {
	switch e.Button {
	case tea.MouseButtonWheelUp:
		return m.knife.Wheel(-1)
	case tea.MouseButtonWheelDown:
		return m.knife.Wheel(1)
	}
	return m.knife.Click(e.X, e.Y)
}
