package shelfpane

import (
	"chape/project/shelf"
	"chape/ui/act"
	"chape/ui/part"
)

// keys are those of the list. None is a digit or a sign: a calliper types those wherever
// the cursor is.
func (m *Model) keys() part.Keys {
	return append(m.list.Keys("project"), part.Keys{
		part.Key("Enter", "open the project", m.ofChosen(m.open), "enter").Foot("open the project"),
		part.Key("/", "find by title or customer", part.Quiet(m.seek), "/").Foot("find"),
		part.Key("g", "look at the folder again", m.look, "g"),
		part.Key("Esc", "back; after finding, first show all again", m.leave, "esc"),
		part.Key("n", "new project", m.askNew, "n").Foot("new"),
		part.Key("f", "new one from this one", m.ofChosen(m.askFrom), "f").Foot("new from this"),
		part.Key("r", "rename", m.ofChosen(m.askTitle), "r").Foot("rename"),
		part.Key("p", "put away, or back on the shelf", m.ofChosen(m.putAway), "p").Foot("put away"),
		part.Key("u", "undo the last change made here", m.undo, "u").Late("undo"),
	}...)
}

// ofChosen is done with the chosen project; where there is none it is said what would do.
func (m *Model) ofChosen(do func(shelf.Entry) []act.Msg) func() []act.Msg {
	return func() []act.Msg {
		e, ok := m.Chosen()
		if !ok {
			return say(m.nothing())
		}
		return do(e)
	}
}

// Keys implements act.Pane.
func (m *Model) Keys() []act.Section {
	q := m.question
	ask, begin := part.AskKeys(), m.beginKeys().Section("While a new project is begun", q != nil && q.begin != nil)
	ask.Now, ask.Plain = q != nil || m.finding, q != nil && q.Plain
	take := m.takeKeys().Section("While it is asked what comes along", q != nil && q.take != nil)
	begin.Text, take.Text = true, true
	return []act.Section{m.keys().Section("Shelf", !ask.Now), begin, take, ask}
}
