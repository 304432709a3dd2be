package knifepane

import (
	"strconv"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/ui/act"
	"chape/ui/entry"
	"chape/ui/form"
	"chape/ui/part"
)

// paste takes a pasted text: one figure is typed into the row in hand, several fill as
// many numbers from there on.
func (m *Model) paste(p part.Press) []act.Msg {
	f, ok := m.field()
	runes := []rune(part.FirstLine(string(p.Runes)))
	name := f.NameIn(m.snap.Project)
	switch {
	case !ok || len(runes) == 0:
		return nil
	case form.Cycles(f):
		return []act.Msg{act.Say{Text: name + " takes no text: Space goes through the choices", Warn: true}}
	case !form.Numeric(f):
		return []act.Msg{act.Say{Text: "Enter opens the text, then paste"}}
	case !startsNumber(string(runes)):
		text := strconv.Quote(ansi.Truncate(string(runes), entry.LongestLabel, "…"))
		return []act.Msg{act.Say{Text: text + " is not a number: paste a figure, with its unit or without; " + name + " stays", Warn: true}}
	}
	if all := entry.Figures(string(p.Runes)); len(all) > 1 && startsNumber(all[1]) {
		return entry.Several(m.below(len(all)), m.snap.Project, all)
	}
	return m.begin("", p)
}

func startsNumber(text string) bool {
	return part.StartsNumber(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text)})
}

// below are up to n numbers from the one in hand on: down the column of a table, elsewhere
// along the numbers of the page.
func (m *Model) below(n int) []project.Field {
	var out []project.Field
	inTable := m.row().List
	for i := m.line; i < len(m.rows) && len(out) < n; i++ {
		r := m.rows[i]
		switch {
		case inTable != "" && r.List != inTable:
			return out
		case inTable != "" && m.column < len(r.Cells):
			out = append(out, r.Cells[m.column])
		case inTable == "" && r.List == "" && len(r.Cells) == 1 && m.isNumber(r.Cells[0]):
			out = append(out, r.Cells[0])
		}
	}
	return out
}
