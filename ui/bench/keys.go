package bench

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/part"
)

// keys is every key the bench view knows; no other does anything. What they do depends
// on the order and the times they come in, see hand.
func (m *Model) keys() part.Keys {
	stroke := func(k stroke) func() []act.Msg { return func() []act.Msg { return m.press(k, m.near) } }
	goOn := func() []act.Msg { return m.press(m.goKey, m.near) }
	end := part.Key("h Enter", "end early the hold that stands large", stroke(endKey), "h", "H")
	if _, can := m.ending(m.snap.Now); can {
		end = end.Foot("end hold")
	}
	return part.Keys{
		part.Key("Space or Enter", "start the hold, or tick", goOn, " ", "enter").Foot("go on"),
		part.Key("Backspace", "take back the start of a hold, or a tick", stroke(backKey), "backspace", "ctrl+h").Foot("back"),
		end,
		part.Key("Esc", "leave", stroke(leaveKey), "esc").Foot("leave"),
		part.Key("?", "these keys; any key puts them away", part.Quiet(m.explain), "?").Foot("keys"),
		part.Key("Ctrl+C twice", "quit", stroke(quitKey), "ctrl+c"),
		part.Key("Ctrl+Z twice", "to the shell", stroke(suspendKey), "ctrl+z"),
	}
}

// key takes a key that may be one of them, or anything that is pressed.
func (m *Model) key(p part.Press) []act.Msg {
	if p.Echo {
		return nil
	}
	if m.helps {
		m.putAway()
		return nil
	}
	if m.near, m.goKey = p.Near, spaceKey; p.Type == tea.KeyEnter {
		m.goKey = returnKey
	}
	r, known := m.keys().Find(p.KeyMsg)
	letter := p.Type == tea.KeyRunes
	switch {
	case known && (!letter || p.Command()):
		return r.Do()
	case letter || p.Type == tea.KeySpace:
		return m.press(charKey, p.Near)
	}
	return m.press(otherKey, p.Near)
}

// Keys implements act.Pane.
func (m *Model) Keys() []act.Section { return []act.Section{m.keys().Section("Bench view", true)} }
