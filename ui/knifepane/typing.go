package knifepane

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
)

func (m *Model) editKey(k tea.KeyMsg, reading bool) tea.Cmd {
	switch {
	case key.Matches(k, m.Keys.Restore):
		m.edit = nil
		return act.Send(act.Drop{})
	case m.edit.asking && !key.Matches(k, m.Keys.KeepNext) && !beginsNumber(k):
		return nil // the question wants Enter, Esc or another number
	case key.Matches(k, m.Keys.KeepNext):
		if m.edit.asking && reading {
			return nil // a second reading does not answer for the maker
		}
		return m.leave(func() tea.Cmd { return m.hop(1) })
	case key.Matches(k, m.Keys.KeepBack):
		return m.leave(func() tea.Cmd { return m.hop(-1) })
	case key.Matches(k, m.Keys.KeepUp):
		return m.leave(func() tea.Cmd { return m.move(-1) })
	case key.Matches(k, m.Keys.KeepDown):
		return m.leave(func() tea.Cmd { return m.move(1) })
	}
	return m.edit.key(k, m.Keys.NewLine)
}

// leave keeps what was typed and moves on. What will not do stays open with its
// error; what is far from the old value asks first.
func (m *Model) leave(then func() tea.Cmd) tea.Cmd {
	e := m.edit
	switch {
	case e.unchanged():
		m.edit = nil
		return tea.Batch(act.Send(act.Drop{}), then())
	case e.err != nil:
		e.refuse()
		return nil
	case e.far() && !e.asking:
		e.asking = true
		e.refuse()
		return nil
	}
	m.edit = nil
	return tea.Batch(then(), e.commit()) // the mark first: what is shown follows the cursor
}

// Leave ends an edit because another pane is taken in hand: what will do is
// kept, what will not is dropped and said. It gives false when a question has
// to be answered first.
func (m *Model) Leave() (cmd tea.Cmd, ok bool) {
	e := m.edit
	switch {
	case e == nil:
		return nil, true
	case e.err != nil && !e.unchanged():
		m.edit = nil
		return tea.Batch(act.Send(act.Drop{}), act.Send(act.Say{
			Text: e.name() + " stays " + e.field.Show(e.base) + ": " + e.complaint(), Warn: true,
		})), true
	}
	cmd = m.leave(func() tea.Cmd { return nil })
	return cmd, m.edit == nil
}
