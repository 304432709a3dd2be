package knifepane

import (
	"unicode"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/ui/act"
	"chape/ui/entry"
	"chape/ui/form"
	"chape/ui/part"
)

// editKey is a key while a value is typed.
func (m *Model) editKey(p part.Press) []act.Msg {
	e := m.edit
	switch {
	case p.Figure() && e.Field.Kind == project.Date:
		return append(m.restore(), act.Say{Text: e.Name() + " stays: that came as from a measuring tool", Warn: true})
	case p.Figure() && e.Words():
		return []act.Msg{act.Say{Text: part.NoText, Warn: true}}
	case p.Type == tea.KeyEnter && !p.Alt:
		return m.keep(p)
	case p.Paste && form.Numeric(e.Field) && len(entry.Figures(string(p.Runes))) > 1:
		m.edit = nil
		return append([]act.Msg{act.Drop{}}, m.paste(p)...)
	}
	if r, known := m.editKeys().Find(p.KeyMsg); known {
		return r.Do()
	}
	switch {
	case e.Asking && part.StartsNumber(p.KeyMsg):
		return m.another(p)
	case e.Asking:
		return nil // the question wants Enter, Esc or another number
	case e.Released() && e.Line.Fresh && p.Type == tea.KeyRunes && unicode.IsLetter(p.Runes[0]):
		return nil // no part of a number, and no command either while one is meant
	}
	return e.Key(p)
}

// another begins a number over one that is asked about: a hand's takes its place, a
// measuring tool's is the next row's, as its Enter will tell.
func (m *Model) another(p part.Press) []act.Msg {
	asked := m.edit
	m.edit = entry.New(asked.Field, asked.Base, "", m.snap.Now)
	m.edit.Before = asked
	return append([]act.Msg{act.Drop{}}, m.edit.Key(p)...)
}

// restore puts the old value back.
func (m *Model) restore() []act.Msg {
	m.edit = nil
	return []act.Msg{act.Drop{}}
}

// keep is Enter: what was typed is kept and the next number is in hand. What will not do
// stays, with its error; what is far from the old value asks first, and a measuring tool
// answers nothing: its question stays on the row.
func (m *Model) keep(by part.Press) []act.Msg {
	e := m.edit
	on := m.stroll
	if by.Tool() || by.Held {
		on = m.further
	}
	switch {
	case e.Before != nil && by.Tool():
		return m.onTheNext(e, by)
	case m.full && by.Tool():
		return append(m.restore(), m.notTaken(e.Line.Text())...)
	case e.Asking && (by.Tool() || by.Held):
		return nil
	case e.Asking:
		m.edit = nil
		return append(on(), e.Commit()...)
	case e.Err != nil && !e.Unchanged():
		e.Refuse(m.snap.Project)
		return []act.Msg{act.Unfit{Err: e.Problem()}}
	case e.Far() && !e.Unchanged():
		if by.Tool() {
			return append(m.doubt(), on()...)
		}
		e.Asking = true
		e.Line.Fresh = true
		return nil
	}
	return m.leave(on)
}

// onTheNext puts a tool's reading on the row after the one that is asked about.
func (m *Model) onTheNext(e *entry.Entry, by part.Press) []act.Msg {
	m.edit = e.Before
	out := append(m.doubt(), m.further()...)
	f, ok := m.field()
	if m.full || !ok {
		return append(out, m.notTaken(e.Line.Text())...)
	}
	if m.takeDoubt(f); form.Numeric(f) {
		m.edit = entry.New(f, m.snap.Project, e.Line.Text(), m.snap.Now)
		out = append(out, m.keep(by)...)
	}
	return out
}

// doubt leaves the question about what was typed on its row; the old value stands until
// it is answered.
func (m *Model) doubt() []act.Msg {
	e := m.edit
	e.Asking, m.edit = true, nil
	m.takeDoubt(e.Field)
	m.doubts = append(m.doubts, e)
	return []act.Msg{act.Drop{}, act.Say{Text: e.Name() + " waits, " + e.Question(), Warn: true}}
}

// doubted is what is asked about on a row that was left.
func (m *Model) doubted(f project.Field) *entry.Entry {
	for _, e := range m.doubts {
		if e.Field.Key == f.Key && e.Field.Index == f.Index {
			return e
		}
	}
	return nil
}

// takeDoubt takes up the question that was left on a row.
func (m *Model) takeDoubt(f project.Field) *entry.Entry {
	e := m.doubted(f)
	if e == nil {
		return nil
	}
	for i, d := range m.doubts {
		if d == e {
			m.doubts = append(m.doubts[:i:i], m.doubts[i+1:]...)
			break
		}
	}
	e.Base = m.snap.Project
	e.Read()
	e.Asking = e.Err == nil && e.Far()
	e.Line.Fresh = true
	return e
}

// leave goes from the row in hand: what was typed is kept, what will not do gives way to
// the old value, which is said, and what is asked about stays on its row.
func (m *Model) leave(then func() []act.Msg) []act.Msg {
	e := m.edit
	switch {
	case e.Unchanged():
		m.edit = nil
		return append([]act.Msg{act.Drop{}}, then()...)
	case e.Err != nil:
		return append(m.giveUp(), then()...)
	case e.Far():
		return append(m.doubt(), then()...)
	}
	m.edit = nil
	return append(then(), e.Commit()...) // the mark first: what is shown follows the cursor
}

// giveUp drops what will not do and says that the old value stands.
func (m *Model) giveUp() []act.Msg {
	e := m.edit
	e.Line.Fresh, m.edit = false, nil
	return []act.Msg{act.Drop{}, act.Say{Text: e.Name() + " stays " + e.Field.Show(e.Base) + ": " + e.Complaint(), Warn: true}}
}

// left ends an edit because another pane is taken in hand.
func (m *Model) left() []act.Msg {
	if m.edit == nil {
		return nil
	}
	return m.leave(func() []act.Msg { return nil })
}
