package knifepane

import (
	"chape/ui/act"
	"chape/ui/form"
	"chape/ui/part"
)

// keys are those while nothing is typed. A number's digits begin an edit.
func (m *Model) keys() part.Keys {
	by := func(do func(int) []act.Msg, n int) func() []act.Msg { return func() []act.Msg { return do(n) } }
	page := func(n int) func() []act.Msg { return func() []act.Msg { return m.move(n * m.pageful()) } }
	aside := "next page"
	if m.column+1 < len(m.row().Cells) {
		aside = "next column"
	}
	enter := part.Key("Enter", "on to the next number; opens a text", m.enter, "enter").Foot("next number")
	change := part.Key("Space", "change a choice", by(m.turnChoice, 1), " ")
	if f, ok := m.field(); ok && form.Cycles(f) {
		change = change.Foot("next choice")
	}
	letters := part.Key("letters", "on a row of text: begin it anew, in notes on a new line; on other rows they are commands", nil, "letters")
	if m.Writing() {
		enter, letters = enter.Foot("open it"), letters.Foot("type it")
	}
	return part.Keys{
		letters,
		enter,
		part.Key("Alt+Enter", "back to the number before", by(m.hop, -1), "alt+enter"),
		part.Key("↑", "row above", by(m.move, -1), "up"),
		part.Key("↓", "row below", by(m.move, 1), "down"),
		part.Key("→", "next page: knife, sheath, loop, seam, trial, order; in a table a column on", by(m.sideways, 1), "right").Foot(aside),
		part.Key("←", "page before; in a table a column back", by(m.sideways, -1), "left"),
		part.Key("PgUp", "a page up", page(-1), "pgup"),
		part.Key("PgDn", "a page down", page(1), "pgdown"),
		part.Key("Home", "first row", by(m.move, -len(m.rows)), "home"),
		part.Key("End", "last row", by(m.move, len(m.rows)), "end"),
		change,
		part.Key("e", "change the number that stands", m.open, "e"),
		part.Key("Backspace", "empty the value and type", m.empty, "backspace", "ctrl+h"),
		part.Key("m", "marks from the outline, or as measured", m.turnSource, "m").Late("marks"),
		part.Key("a", "add a mark behind this one", m.addMark, "a").Late("add a mark"),
		part.Key("j", "make this mark a pair: a step, as at a bolster", m.addStep, "j").Late("make a step"),
		part.Key("f", "trial fit, at this mark: tight or loose, by how much", func() []act.Msg { return []act.Msg{act.Go{Page: "Trial fit"}} }, "f").Late("trial fit"),
		part.Key("x", "take this mark or correction out", m.remove, "x"),
	}
}

// editKeys are those while a value is typed; every other key goes into it.
func (m *Model) editKeys() part.Keys {
	keep := func(move func(int) []act.Msg, n int) func() []act.Msg {
		return func() []act.Msg { return m.leave(func() []act.Msg { return move(n) }) }
	}
	on := func() []act.Msg { return m.keep(part.Press{}) }
	return part.Keys{
		part.Key("Enter", "keep it, on to the next number", on, "enter").Foot("keep it, on to the next number"),
		part.Key("Tab", "the same; what will not do is left as it was", keep(m.hop, 1), "tab"),
		part.Key("Shift+Tab", "keep it, back to the number before", keep(m.hop, -1), "shift+tab"),
		part.Key("↑", "keep it, row above", keep(m.move, -1), "up"),
		part.Key("↓", "keep it, row below", keep(m.move, 1), "down"),
		part.Key("Esc", "put the old value back", m.restore, "esc").Foot("put the old value back"),
		part.Key("Alt+Enter", "a new line, in notes", func() []act.Msg { return m.edit.NewLine() }, "alt+enter"),
	}
}

// Keys implements act.Pane.
func (m *Model) Keys() []act.Section {
	typing := m.editKeys().Section("While a value is typed", m.edit != nil)
	typing.Text = m.edit == nil || !m.edit.Released()
	return []act.Section{m.keys().Section("Knife", m.edit == nil), typing}
}
