package knifepane

import (
	"fmt"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/ui/act"
	"chape/ui/entry"
	"chape/ui/form"
	"chape/ui/part"
)

// readings are the figures of a pasted text: one a line, or parted by tabs.
func readings(text string) []string {
	var out []string
	for _, s := range strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\r' || r == '\t' || r == ';' }) {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, s)
		}
	}
	return out
}

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
	if all := readings(string(p.Runes)); len(all) > 1 && startsNumber(all[1]) {
		return m.pasteAll(all)
	}
	return m.begin("", p)
}

func startsNumber(text string) bool {
	return part.StartsNumber(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text)})
}

// pasteAll fills as many numbers as there are figures, as one change: down the column of
// a table, elsewhere along the numbers of the page. One that will not do leaves all as
// they were.
func (m *Model) pasteAll(all []string) []act.Msg {
	fields := m.below(len(all))
	q := m.snap.Project
	for i, f := range fields {
		v, err := f.Parse(all[i], q)
		if err == nil {
			err = f.Set(&q, v)
		}
		if err != nil {
			return []act.Msg{act.Say{Text: fmt.Sprintf("nothing was pasted: %s: %s", f.NameIn(q), form.Words(err)), Warn: true}}
		}
	}
	texts := all[:len(fields)]
	said := fmt.Sprintf("%d numbers pasted, %s to %s", len(fields), fields[0].NameIn(q), fields[len(fields)-1].NameIn(q))
	if more := len(all) - len(fields); more > 0 {
		said += fmt.Sprintf("; %d more had no row", more)
	}
	return []act.Msg{act.Commit{Label: fmt.Sprintf("%d pasted numbers", len(fields)), Do: func(p *project.Project) error {
		for i, f := range fields {
			if !form.InReach(f, *p) {
				return entry.ErrGone
			}
			v, err := f.Parse(texts[i], *p)
			if err == nil {
				err = f.Set(p, v)
			}
			if err != nil {
				return err
			}
		}
		return nil
	}}, act.Say{Text: said}}
}

// below are up to n numbers from the one in hand on.
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
