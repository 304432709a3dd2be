package tracepage

import (
	"chape/calc/trace/axes"
	"chape/ui/act"
	"chape/ui/part"
)

// How far a key moves a step, mm.
const (
	far  = 0.5
	near = 0.1
)

// choosingKeys are those of the page beside the picker's.
func (m *Model) choosingKeys() part.Keys { return part.Keys{sheetKey()} }

func sheetKey() part.Row {
	ask := func() []act.Msg { return []act.Msg{act.TracingSheet{}} }
	return part.Key("P", "print a sheet to trace a knife on", ask, "P").Foot("print the sheet")
}

// lookingKeys are those while what was read is looked at.
func (m *Model) lookingKeys() part.Keys {
	turn := func(do func(axes.Knife) axes.Knife) func() []act.Msg {
		return part.Quiet(func() { m.edit(do(m.reading.Knife)) })
	}
	move := func(by float64) func() []act.Msg { return part.Quiet(func() { m.moveStep(by) }) }
	step := func(by int) func() []act.Msg { return part.Quiet(func() { m.hop(by) }) }
	return part.Keys{
		part.Key("Enter", "take these marks: one change, u takes it back", m.take, "enter").Foot("take them"),
		part.Key("Esc", "leave all as it was; asks once something was turned or moved here", m.giveUp, "esc").Foot("leave"),
		part.Key("→, ↓", "next mark", step(1), "right", "down"),
		part.Key("←, ↑", "mark before", step(-1), "left", "up"),
		part.Key("e", "the point is at the other end", turn(axes.Knife.TurnEnds), "e").Foot("other end"),
		part.Key("b", "the back is the other side", turn(axes.Knife.TurnBack), "b").Foot("other back"),
		part.Key("]", "move the step towards the handle, 0.5 mm", move(far), "]").Late("move the step"),
		part.Key("[", "move the step towards the point", move(-far), "["),
		part.Key("}", "the same by 0.1 mm", move(near), "}"),
		part.Key("{", "the same by 0.1 mm", move(-near), "{"),
		part.Key("a", "add a mark behind this one", m.addMark, "a").Late("add a mark"),
		part.Key("j", "make this mark a step, as at a bolster", m.addStep, "j").Late("make a step"),
		part.Key("x", "take this mark or step out", m.drop, "x").Late("take out"),
		part.Key("r", "another picture", m.choose, "r").Late("another picture"),
	}
}

// giveUp leaves what was read, which is asked about first where work went into it.
func (m *Model) giveUp() []act.Msg {
	if !m.edited || m.parting {
		return leave()
	}
	m.parting = true
	return warn("nothing is taken yet: Enter takes these marks, Esc again drops what you turned or moved here")
}

func leave() []act.Msg { return []act.Msg{act.Leave{}} }

// edit puts another knife in the place of the one shown.
func (m *Model) edit(k axes.Knife) {
	m.reading.Knife, m.edited = k, true
	m.foresee()
}

// step is the step that the mark in hand belongs to.
func (m *Model) step() (i int, ok bool) {
	k := m.reading.Knife
	for i, s := range k.Steps {
		if m.at < len(k.Marks) && k.Marks[m.at].At == s {
			return i, true
		}
	}
	return 0, false
}

// hop goes by marks; the two of a step are one place.
func (m *Model) hop(by int) {
	marks := m.reading.Knife.Marks
	was := marks[m.at].At
	for i := m.at + by; i >= 0 && i < len(marks); i += by {
		if marks[i].At != was {
			m.goTo(marks[i].At)
			return
		}
	}
}

// goTo takes the first mark at or behind a place in hand.
func (m *Model) goTo(at float64) {
	for i, k := range m.reading.Knife.Marks {
		m.at = i
		if k.At >= at {
			return
		}
	}
}

func (m *Model) moveStep(by float64) {
	i, ok := m.step()
	if !ok {
		return
	}
	k := m.reading.Knife.MoveStep(i, m.reading.Knife.Steps[i]+by)
	m.edit(k)
	m.goTo(k.Steps[i])
}

func warn(text string) []act.Msg { return []act.Msg{act.Say{Text: text, Warn: true}} }

// addMark puts a mark half-way to the next one.
func (m *Model) addMark() []act.Msg {
	marks := m.reading.Knife.Marks
	at := marks[m.at].At
	for _, n := range marks[m.at:] {
		if n.At > at {
			if k, ok := m.reading.Knife.AddMark((at + n.At) / 2); ok {
				m.edit(k)
				m.goTo((at+n.At)/2 - 0.01)
				return nil
			}
			return warn("there is no room for another mark: choose a wider place")
		}
	}
	return warn("this is the last mark: choose one before it")
}

func (m *Model) addStep() []act.Msg {
	at := m.reading.Knife.Marks[m.at].At
	k, ok := m.reading.Knife.AddStep(at)
	if !ok {
		return warn("a step or an end is too near: choose another mark")
	}
	m.edit(k)
	m.goTo(at)
	return nil
}

// drop takes the mark in hand out, or the step.
func (m *Model) drop() []act.Msg {
	at := m.reading.Knife.Marks[m.at].At
	if i, ok := m.step(); ok {
		m.edit(m.reading.Knife.DropStep(i))
		m.goTo(at)
		return nil
	}
	k, ok := m.reading.Knife.DropMark(m.at)
	if !ok {
		return warn("the ends of the knife have a mark each: choose another")
	}
	m.edit(k)
	return nil
}

// Keys implements act.Pane.
func (m *Model) Keys() []act.Section {
	out := m.picker.Keys(m.state == choosing, sheetKey())
	out = append(out, m.lookingKeys().Section("What was read", m.state == looking))
	out = append(out, m.measureKeys().Section("The calliper's column", m.state == measuring && m.entry == nil))
	ask := part.AskKeys()
	ask.Now = m.entry != nil
	return append(out, ask)
}
