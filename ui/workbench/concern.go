package workbench

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/ui/act"
	"chape/ui/book"
	"chape/ui/form"
	"chape/ui/layout"
)

// edgesOf are the edges of a page: in its top line stands how many checks of the plan
// warn and how many note, on the page in hand with the words of the first.
func (m *Model) edgesOf(l *book.Leaf) layout.Edges {
	e := m.edges()
	if m.bare || l.Lasts {
		return e
	}
	plan := m.session.Doc().Plan()
	text, warns := form.Counts(plan)
	e.Aside, e.AsideStyle = text, m.o.Styles.Note
	if warns {
		e.AsideStyle = m.o.Styles.Warn
	}
	if first, any := form.First(plan); any && l == m.book.InHand() {
		e.Aside += ": " + first.Text(m.session.Doc().Unit())
	}
	return e
}

// announce says a warning that a change has brought, at once.
func (m *Model) announce() {
	doc := m.session.Doc()
	if doc.Previewing() {
		return
	}
	c, isNew := m.concern.News(doc.Plan())
	if !isNew {
		return
	}
	text := c.Text(doc.Unit())
	if m.message.Text != "" {
		text = m.message.Text + "; " + text
	}
	m.message = act.Say{Text: text, Warn: true}
}

// toConcern leads to where what warns is mended, or what notes: each time to the next.
func (m *Model) toConcern() tea.Cmd {
	doc := m.session.Doc()
	c, any := m.concern.Next(doc.Plan())
	if !any {
		m.message = act.Say{Text: "nothing warns: all checks are fine"}
		return nil
	}
	at := form.PlaceOf(c, doc.Committed())
	cmd := m.takeUp(m.book.Front(act.InKnife))
	m.seek(act.Seek{Key: at.Key, Index: at.Index})
	m.message = act.Say{Text: c.Text(doc.Unit()), Warn: c.Level == calc.Warn}
	return cmd
}

// seek puts the form's cursor on a field.
func (m *Model) seek(to act.Seek) { m.tell(m.book.Front(act.InKnife), to) }
