package stepspane

import (
	"chape/ui/act"
	"chape/ui/part"
)

const startKey = "t" // named in a question

// keys are those of the list. None is a digit or a sign: a calliper types those wherever
// the cursor is.
func (m *Model) keys() part.Keys {
	return append(m.list.Keys("step"), part.Keys{
		part.Key("Space", "tick, or take the tick back; on the bench Space goes on instead", m.ofStep(m.tick), " ").Foot("tick"),
		part.Key("s", "skip, or undo the skip", m.ofStep(m.skip), "s"),
		part.Key(startKey, "start the hold's time", m.ofStep(m.start), startKey).Foot("start hold"),
		part.Key("e", "end the hold early", m.ofStep(m.askEnd), "e"),
		part.Key("l", "put the hold off", m.ofStep(m.askLater), "l"),
		part.Key("d", "how long the hold is", m.ofStep(func() []act.Msg { return m.askTimes(false) }), "d"),
		part.Key("a", "add a step after this one", m.askNew, "a").Late("add"),
		part.Key("r", "rename", m.ofStep(m.askTitle), "r"),
		part.Key("x", "remove the step", m.ofStep(m.askRemove), "x"),
		part.Key("K", "move up", m.ofStep(m.moveUp), "K", "shift+up", "alt+up"),
		part.Key("J", "move down", m.ofStep(m.moveDown), "J", "shift+down", "alt+down"),
		part.Key("i", "note", m.ofStep(m.askNote), "i"),
		part.Key("c", "caution: what can hurt here", m.ofStep(m.askCaution), "c"),
		part.Key("m", "minutes spent", m.ofStep(m.askMinutes), "m").Late("minutes"),
		part.Key("M", "minutes expected", m.ofStep(m.askExpected), "M"),
	}...)
}

// ofStep does nothing where no step is chosen.
func (m *Model) ofStep(do func() []act.Msg) func() []act.Msg {
	return func() []act.Msg {
		if m.Chosen() < 0 {
			return nil
		}
		return do()
	}
}

// Keys implements act.Pane.
func (m *Model) Keys() []act.Section {
	ask := part.AskKeys()
	if m.question != nil && m.question.Plain {
		ask = part.ConfirmKeys()
	}
	ask.Now = m.question != nil
	return []act.Section{m.keys().Section("Steps", m.question == nil), ask}
}
