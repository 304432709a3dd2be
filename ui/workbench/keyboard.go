package workbench

import (
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/layout"
)

// key takes one key: the alarm first, then whoever has the keyboard.
func (m *Model) key(k tea.KeyMsg) tea.Cmd {
	if m.alarm.ringing() {
		m.hush()
		if m.bench.On() {
			m.bench = m.bench.Silenced()
			return nil
		}
		if !m.editing() && !m.placeTyping() {
			m.typing.key(k, m.o.Clock())
			return nil
		}
	}
	if first, rest, several := m.letters(k); several {
		cmd := m.key(first)
		return tea.Batch(cmd, m.key(rest)) // to whoever has the keyboard now
	}
	if m.bench.On() { // questions wait until it is left
		next, cmd := m.bench.Update(k)
		m.bench = next
		return m.run(cmd)
	}
	if m.at != onPanes && m.question == nil && m.help == nil { // those watch for readings themselves
		m.message = act.Say{}
		return m.placeKey(k)
	}
	k, drop, reading := m.typing.key(k, m.o.Clock())
	if drop {
		return nil
	}
	m.message = act.Say{}
	switch {
	case m.question != nil:
		return m.answer(k, reading)
	case m.help != nil:
		return m.helpKey(k)
	case m.sheets != nil:
		return m.sheetsKey(k, reading)
	case m.editing():
		return m.editKey(k, reading)
	}
	return m.freeKey(k, reading)
}

// letters takes the first letter off a message with more than one: on a slow line,
// or while the program was busy, letters arrive together. What is being typed stays
// whole, and a figure does: it comes from a measuring tool, or goes into a number.
func (m *Model) letters(k tea.KeyMsg) (first, rest tea.KeyMsg, several bool) {
	if k.Type != tea.KeyRunes || k.Paste || k.Alt || len(k.Runes) < 2 || strings.ContainsRune("0123456789+-.,", k.Runes[0]) {
		return k, k, false
	}
	if !m.bench.On() && (m.placeTyping() || m.sheets != nil && m.sheets.asked != noField || m.at == onPanes && m.question == nil && m.help == nil && m.editing()) {
		return k, k, false
	}
	first, rest = k, k
	first.Runes, rest.Runes = k.Runes[:1], k.Runes[1:]
	return first, rest, true
}

// editing tells whether a pane has a text open that takes every key.
func (m *Model) editing() bool {
	switch m.focus {
	case layout.Knife:
		return m.knife.Editing()
	case layout.Steps:
		return m.steps.Typing()
	}
	return false
}

// placeTyping tells whether the shelf or the page of weighings has a text open.
func (m *Model) placeTyping() bool {
	return m.at == onShelf && m.shelf.Typing() || m.at == onDrying && m.dry.Typing()
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
		return m.keep()
	}
	cmd := m.paneKey(k, reading)
	m.refresh()
	return cmd
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
		return m.showBench(true)
	case key.Matches(k, m.Keys.Shelf) && m.o.Shelf != nil:
		return m.goTo(onShelf)
	case key.Matches(k, m.Keys.Drying):
		return m.goTo(onDrying)
	case key.Matches(k, m.Keys.Undo):
		return m.undo()
	case key.Matches(k, m.Keys.Redo):
		return m.redo()
	case key.Matches(k, m.Keys.Keep):
		return m.keep()
	case key.Matches(k, m.Keys.Print):
		return m.askPrint()
	case key.Matches(k, m.Keys.Help):
		m.help = &help{}
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
	m.refresh()
	return cmd
}

// showBench opens or leaves the bench view.
func (m *Model) showBench(on bool) tea.Cmd {
	if on {
		if why := layout.Bench(m.width, m.height); why != "" {
			m.message = act.Say{Text: "the bench view " + why, Warn: true}
			return nil
		}
	}
	m.bench.SetOn(on)
	if on {
		return nil
	}
	next, cmd := m.bench.Flush()
	m.bench = next
	return m.run(cmd)
}

func (m *Model) undo() tea.Cmd {
	return m.back("undone", "nothing to undo", m.doc.Undo)
}

func (m *Model) redo() tea.Cmd {
	return m.back("done again", "nothing to do again", m.doc.Redo)
}

func (m *Model) back(done, none string, step func() (string, bool)) tea.Cmd {
	label, ok := step()
	if !ok {
		m.message = act.Say{Text: none}
		return nil
	}
	m.message = act.Say{Text: done + ": " + label}
	m.refresh()
	return m.save()
}

func (m *Model) suspend() tea.Cmd {
	if !m.o.Suspends {
		return nil
	}
	if runs := m.runningHold(); runs != "" && !within(m.now(), m.warned, sayTwice) {
		m.warned = m.now()
		m.message = act.Say{Text: "no bell rings in the shell, and " + runs + ": Ctrl+Z once more goes there", Warn: true}
		return nil
	}
	m.warned = time.Time{}
	m.voice(m.o.Voice.Close()) // the shell's own title
	return tea.Suspend
}

// sayTwice is how soon a key must be pressed again to be meant.
const sayTwice = 10 * time.Second

// runningHold says a hold that will ring; "" when there is none.
func (m *Model) runningHold() string {
	h, ok := steps.Nearest(m.allHolds(), m.now())
	if !ok || h.State(m.now()) != steps.HoldRunning {
		return ""
	}
	return h.Line(m.now())
}

// mouse hands a click or the wheel to the pane under it and takes that in hand.
func (m *Model) mouse(e tea.MouseMsg) tea.Cmd {
	pressed := e.Action == tea.MouseActionPress
	if pressed && m.alarm.ringing() && !tea.MouseEvent(e).IsWheel() {
		m.hush()
		if m.bench.On() {
			m.bench = m.bench.Silenced()
		}
		return nil
	}
	if m.bench.On() {
		next, cmd := m.bench.Update(e)
		m.bench = next
		return m.run(cmd)
	}
	if m.question != nil || m.help != nil || m.sheets != nil || !pressed {
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
