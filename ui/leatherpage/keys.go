package leatherpage

import (
	"chape/ui/act"
	"chape/ui/part"
)

// The page's own keys that its text names.
const (
	removeKey = "x"
	upKey     = "m"
)

// keys are those while nothing is typed. None is a digit or a sign: those begin a number.
func (m *Model) keys() part.Keys {
	letters := part.Key("letters", "on a name: begin it anew; on other lines they are commands", nil, "letters")
	if m.Writing() {
		letters = letters.Foot("type it")
	}
	return append(part.Keys{
		letters,
		part.Key("Enter", "open, type, do what the line says", m.enter, "enter").Foot("open, do"),
		part.Key("Space", "take it along, or not; next choice", m.space, " ").Foot("choose"),
		part.Key("p", "place the parts: look for a good way to lay them", m.search, "p").Foot("place"),
		part.Key("→", "the next piece of the placing", func() []act.Msg { return m.turn(1) }, "right"),
		part.Key("←", "the piece before", func() []act.Msg { return m.turn(-1) }, "left"),
		part.Key("v", "the drawing large, and back", part.Quiet(func() { m.large = !m.large }), "v").Foot("larger"),
		part.Key(removeKey, "take it out, forget what was measured", m.remove, removeKey).Foot("take out"),
		part.Key(upKey, "use this leather before the one above it", m.earlier, upKey),
		part.Key("u, Ctrl+U", "undo, what was changed of the leather too", m.undo, "u", "ctrl+u").Foot("undo"),
		part.Key("U, Ctrl+R", "redo", m.redo, "U", "ctrl+r"),
		part.Key("Esc", "break the placing off; back", m.esc, "esc").Foot("back"),
	}, m.list.Keys("line")...)
}

func (m *Model) enter() []act.Msg {
	r, ok := m.row()
	switch {
	case !ok:
	case r.enter != nil:
		return r.enter()
	case r.set != nil:
		text := r.text
		if text == "" {
			text = r.value
		}
		if text == " " { // nothing stands here yet
			text = ""
		}
		m.open(text, r.number, text != "")
	case r.space != nil:
		return r.space()
	}
	return nil
}

func (m *Model) space() []act.Msg {
	r, ok := m.row()
	if !ok || r.space == nil {
		return []act.Msg{act.Say{Text: "nothing to choose here: Enter opens the line"}}
	}
	return r.space()
}

func (m *Model) remove() []act.Msg {
	r, ok := m.row()
	if !ok || r.remove == nil {
		return []act.Msg{act.Say{Text: "nothing to take out here"}}
	}
	return r.remove()
}

func (m *Model) esc() []act.Msg {
	switch {
	case m.job != nil:
		m.job.Stop()
		return nil
	case m.large:
		m.large = false
		return nil
	case m.view == viewFold || m.view == viewPull:
		m.enterView(viewPiece, m.at)
		return nil
	case m.view != viewAll:
		out := m.takeBack()
		m.home()
		return out
	}
	return []act.Msg{act.Leave{}}
}

// Keys implements act.Pane.
func (m *Model) Keys() []act.Section {
	ask := part.AskKeys()
	ask.Now = m.entry != nil
	photo := m.view == viewPhoto
	return append([]act.Section{m.keys().Section(Name, m.entry == nil && !photo), ask}, m.picker.Keys(photo)...)
}
