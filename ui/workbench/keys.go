package workbench

import (
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/part"
)

// rootKey is a key of the root's, and when it is one.
type rootKey struct {
	part.Row
	on     act.RootKeys // a page has it alive that has all of these: 0, every page
	in     []mode       // where it goes before a text, or a panel; while browsing it always may
	yields bool         // to a page that has another use for it
}

// rootKeys are the root's own keys and those that open pages other than the one in hand,
// in the order of the help. No digit is among them: a measuring tool types digits wherever
// the cursor is.
func (m *Model) rootKeys() []rootKey {
	next, back := m.book.Focus.Next(), m.book.Focus.Back()
	turn := func(to layout.Pane) func() []act.Msg {
		return later(func() tea.Cmd { return m.takeUp(m.book.Standing[to]) })
	}
	keys := []rootKey{
		{Row: part.Key("Tab", "next pane: knife, plan, steps", turn(next), "tab").Foot(next.String()), on: act.Turn},
		{Row: part.Key("Shift+Tab", "pane before", turn(back), "shift+tab"), on: act.Turn},
	}
	for _, l := range m.book.Openers() {
		keys = append(keys, rootKey{Row: part.Row{Key: act.Key{Binding: l.Open, Brief: l.Brief}, Do: m.opens(l.Name)}, on: act.Openers})
	}
	stop := part.Key("Ctrl+Z", "to the shell; fg brings chape back", says(act.Suspend{}), "ctrl+z")
	stop.SetEnabled(m.o.Suspends)
	return append(keys,
		rootKey{Row: part.Key("n", "a new project: your own knife", later(m.begin), "n").Foot("your own knife"), yields: true},
		rootKey{Row: part.Key("u, Ctrl+U", "undo", m.session.Undo, "u", "ctrl+u").Foot("undo"), on: act.Changes},
		rootKey{Row: part.Key("U, Ctrl+R", "redo", m.session.Redo, "U", "ctrl+r"), on: act.Changes},
		rootKey{Row: part.Key("!", "to where what warns is mended; again: the next", later(m.toConcern), "!"), on: act.Openers},
		rootKey{Row: part.Key("Ctrl+S", "keep this copy as a project; save again at once", m.session.Keep, "ctrl+s"), on: act.Saving, in: []mode{editing}},
		rootKey{Row: part.Key("P", "print: the pattern at true size; asks how", part.Quiet(m.askPrint), "P").Foot("print"), on: act.Printing},
		m.raiseKey(),
		m.helpKey(),
		rootKey{Row: stop, in: []mode{editing, printing}},
		m.quitKey(),
		rootKey{Row: part.Key("Ctrl+C", "drop what is being typed, then quit", later(m.drop), "ctrl+c").Foot("quit"), in: []mode{editing, asking, helping, printing}},
	)
}

// These are named elsewhere, too.
func (m *Model) raiseKey() rootKey {
	return rootKey{Row: part.Key("A", "the next pattern number, once this one was printed", m.session.AskRaise, "A"), on: act.Printing}
}

func (m *Model) helpKey() rootKey {
	return rootKey{Row: part.Key("?", "what the row in hand means; again, or elsewhere: the keys", part.Quiet(m.explain), "?").Foot("keys")}
}

func (m *Model) quitKey() rootKey {
	return rootKey{Row: part.Key("q", "quit", says(act.Quit{}), "q").Foot("quit")}
}

// says gives what a key does that is said in one value.
func says(msg act.Msg) func() []act.Msg { return func() []act.Msg { return []act.Msg{msg} } }

// later gives what a key does that ends in work that takes time.
func later(do func() tea.Cmd) func() []act.Msg {
	return func() []act.Msg { return []act.Msg{act.Do(do())} }
}

// opens gives what a key does that opens a page.
func (m *Model) opens(page string) func() []act.Msg {
	return func() []act.Msg {
		m.reading.Done()
		return []act.Msg{act.Go{Page: page}}
	}
}

// alive tells whether a key of the root's is alive on the page in hand.
func (m *Model) alive(r rootKey) bool {
	l := m.book.InHand()
	if l.Root&r.on != r.on {
		return false
	}
	return !r.yields || !slices.ContainsFunc(act.Alive(l.Pane), func(o act.Key) bool { return slices.Equal(o.Keys(), r.Keys()) })
}

// rootKey does what a key means to the root where it is alive on the page in hand.
func (m *Model) rootKey(p part.Press) (cmd tea.Cmd, known bool) {
	keys := m.rootKeys()
	at := slices.IndexFunc(keys, func(r rootKey) bool { return key.Matches(p.KeyMsg, r.Binding) })
	switch own := m.owns(p.KeyMsg); {
	case act.Writes(m.book.InHand().Pane, p.KeyMsg):
	case p.Hasty() && (own || at >= 0):
		m.message = act.Say{Text: p.Ignored()}
		return nil, true
	case !p.Command() || at < 0:
	case m.alive(keys[at]):
		return m.do(keys[at].Do()), true
	case own:
	case m.bare: // it is of a project, and none is open
		return m.leave(), true
	default:
		m.message = act.Say{Text: keys[at].Name(p.String()) + " is a key of Knife, Plan and Steps: Esc leads back to them"}
		return nil, true
	}
	return nil, false
}

// modeKey does what a key means to the root while a text or a panel has the keyboard: what
// is committed can be saved while a number is refused.
func (m *Model) modeKey(p part.Press) (cmd tea.Cmd, known bool) {
	for _, r := range m.rootKeys() {
		if slices.Contains(r.in, m.mode) && key.Matches(p.KeyMsg, r.Binding) {
			return m.do(r.Do()), true
		}
	}
	return nil, false
}

// owns tells whether a key is one of the page in hand: that goes before the root's.
func (m *Model) owns(k tea.KeyMsg) bool {
	return slices.ContainsFunc(act.Alive(m.book.InHand().Pane), func(own act.Key) bool { return key.Matches(k, own.Binding) })
}

// drop takes away what is being typed, or a panel; where there is neither it quits.
func (m *Model) drop() tea.Cmd {
	esc := part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyEsc}}
	switch m.mode {
	case editing:
		return m.pageKey(esc)
	case helping, printing:
		return m.panelKey(esc)
	case asking:
		m.closed()
	}
	return m.quit()
}
