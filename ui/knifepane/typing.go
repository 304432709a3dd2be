package knifepane

import (
	"chape/ui/act"
	"chape/ui/part"
)

// editKey is a key while a value is typed.
func (m *Model) editKey(p part.Press) []act.Msg {
	if p.Figure() && m.edit.words() {
		return []act.Msg{act.Say{Text: part.NoText, Warn: true}}
	}
	if r, known := m.editKeys().Find(p.KeyMsg); known {
		switch {
		case m.edit.asking && p.String() == "esc":
		case m.edit.asking && (p.String() != "enter" && p.String() != "tab" || p.Tool() || p.Held):
			return nil // the question wants Enter, Esc or another number, and a tool's Enter is no answer
		}
		return r.Do()
	}
	if m.edit.asking && !part.StartsNumber(p.KeyMsg) {
		return nil
	}
	return m.edit.key(p)
}

// restore puts the old value back.
func (m *Model) restore() []act.Msg {
	m.edit = nil
	return []act.Msg{act.Drop{}}
}

// leave keeps what was typed and moves on. What will not do stays open with its
// error; what is far from the old value asks first.
func (m *Model) leave(then func() []act.Msg) []act.Msg {
	e := m.edit
	switch {
	case e.unchanged():
		m.edit = nil
		return append([]act.Msg{act.Drop{}}, then()...)
	case e.err != nil:
		e.refuse()
		return []act.Msg{act.Unfit{Err: e.problem()}}
	case e.far() && !e.asking:
		e.asking = true
		e.refuse()
		return nil
	}
	m.edit = nil
	return append(then(), e.commit()...) // the mark first: what is shown follows the cursor
}

// left ends an edit because another pane is taken in hand: what will do is kept, what
// will not is dropped and said. It says Stay when a question has to be answered first.
func (m *Model) left() []act.Msg {
	e := m.edit
	switch {
	case e == nil:
		return nil
	case e.err != nil && !e.unchanged():
		m.edit = nil
		return []act.Msg{act.Drop{}, act.Say{
			Text: e.name() + " stays " + e.field.Show(e.base) + ": " + e.complaint(), Warn: true,
		}}
	}
	out := m.leave(func() []act.Msg { return nil })
	if m.edit != nil {
		out = append(out, act.Stay{})
	}
	return out
}
