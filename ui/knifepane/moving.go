package knifepane

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/ui/act"
	"chape/ui/entry"
	"chape/ui/form"
)

// move goes by rows, over headings, and stops at either end.
func (m *Model) move(by int) []act.Msg {
	step := 1
	if by < 0 {
		step = -1
	}
	for i, left := m.line+step, by*step; i >= 0 && i < len(m.rows) && left > 0; i += step {
		left--
		if !m.rows[i].IsHeading() {
			m.line = i
		} else if left > 0 || by*step == 1 {
			left++ // a heading is no row
		}
	}
	m.clamp()
	return m.chosen()
}

// hop goes to the next number, or the one before, along the rows and columns and from
// page to page.
func (m *Model) hop(by int) []act.Msg { return m.hopTo(by, m.isNumber) }

// further is hop for a measuring tool, whose readings end with the page: what is left over of
// them would be another page's.
func (m *Model) further() []act.Msg {
	_, _, more := find(m.rows, m.line, m.column+1, 1, m.isNumber)
	if m.full = !more; m.full {
		m.spare = nil
		return []act.Msg{act.Say{Text: "the last number of the page: " + m.onward()}}
	}
	return m.hop(1)
}

// notTaken says of a reading that it came after the page's last number, with those before it.
func (m *Model) notTaken(reading string) []act.Msg {
	m.spare = append(m.spare, reading)
	return []act.Msg{act.Say{Text: "the page is full, not taken: " + strings.Join(m.spare, ", ") + "; " + m.onward(), Warn: true}}
}

func (m *Model) onward() string { return "→ leads to the " + m.page.Next(1).String() + " page" }

// stroll is hop at the pace of a hand: it stops once at each choice and each text that was
// passed over so far, so that a form that is gone through for the first time is gone through whole.
func (m *Model) stroll() []act.Msg {
	unmet := func(f project.Field) bool {
		return !form.Numeric(f) && f.Index < 0 && f.Key != form.SourceKey && !m.met[f.Key]
	}
	stop := func(f project.Field) bool { return m.isNumber(f) || unmet(f) }
	if _, _, more := find(m.rows, m.line, m.column+1, 1, stop); !more {
		if i, j, ok := find(m.rows, 0, 0, 1, unmet); ok { // before the page is left
			m.line, m.column = i, j
			m.clamp()
			return m.chosen()
		}
	}
	return m.hopTo(1, stop)
}

func (m *Model) isNumber(f project.Field) bool { return form.Numeric(f) && f.Counts(m.snap.Project) }

func (m *Model) hopTo(by int, stop func(project.Field) bool) []act.Msg {
	if i, j, ok := find(m.rows, m.line, m.column+by, by, stop); ok {
		m.line, m.column = i, j
		m.clamp()
		return m.chosen()
	}
	for p := int(m.page) + by; p >= 0 && p < form.Pages; p += by {
		rows := form.Rows(form.Page(p), m.snap.Project)
		from := 0
		if by < 0 {
			from = len(rows) - 1
		}
		if i, j, ok := find(rows, from, ends(rows, from, by), by, stop); ok {
			m.show(form.Page(p))
			m.line, m.column = i, j
			m.clamp()
			return m.chosen()
		}
	}
	return m.chosen()
}

// ends is the cell at which a row is entered.
func ends(rows []form.Row, line, by int) int {
	if by < 0 && line >= 0 && line < len(rows) {
		return len(rows[line].Cells) - 1
	}
	return 0
}

// find looks for a field from a cell on, along the rows and columns.
func find(rows []form.Row, line, column, by int, stop func(project.Field) bool) (int, int, bool) {
	for i, j := line, column; i >= 0 && i < len(rows); {
		for ; j >= 0 && j < len(rows[i].Cells); j += by {
			if stop(rows[i].Cells[j]) {
				return i, j, true
			}
		}
		i += by
		j = ends(rows, i, by)
	}
	return 0, 0, false
}

// arrive notes what the cursor has come to: a choice or a text is not stopped at again, and a
// question that was left on the row is taken up.
func (m *Model) arrive() {
	defer m.scroll() // the lines at the foot may have become more or fewer
	f, ok := m.field()
	if !ok {
		return
	}
	if !form.Numeric(f) {
		m.met[f.Key] = true
	}
	if m.edit == nil && !m.full {
		m.edit = m.takeDoubt(f)
	}
}

// chosen says which mark is in hand now, if that is another one.
func (m *Model) chosen() []act.Msg {
	r := m.row()
	if r.List != "mark" || r.Index == m.snap.Mark {
		return nil
	}
	m.snap.Mark = r.Index
	return []act.Msg{act.Choose{Mark: r.Index}}
}

// sideways goes by columns in a table, elsewhere and past its ends by pages. It changes
// nothing.
func (m *Model) sideways(by int) []act.Msg {
	if to := m.column + by; to >= 0 && to < len(m.row().Cells) {
		m.column = to
		return nil
	}
	return m.turn(by)
}

// cycle commits the next choice.
func (m *Model) cycle(f project.Field, by int) []act.Msg {
	if !form.Cycles(f) {
		return []act.Msg{act.Say{Text: "Space goes through choices; " + f.NameIn(m.snap.Project) + " is typed"}}
	}
	v := form.Next(f, m.snap.Project, by)
	away := f.Key == form.SourceKey && v == project.FromOutline.String() && m.snap.Project.MarksDiffer()
	if away && !m.meant {
		m.warned = true
		return []act.Msg{act.Say{Text: marksAtRisk, Warn: true}}
	}
	name, was, is := f.NameIn(m.snap.Project), f.Show(m.snap.Project), f.Text(v, m.snap.Project)
	out := []act.Msg{act.Commit{Label: name + " " + is, Do: func(p *project.Project) error {
		if !form.InReach(f, *p) {
			return entry.ErrGone
		}
		return f.Set(p, v)
	}}, act.Say{Text: name + ": " + was + " → " + is}}
	if away {
		out = append(out, act.Say{Text: "your measured marks are put away: u brings them back"})
	}
	return out
}

const marksAtRisk = "the outline's marks would take the place of those you measured: the same key again does it, any other leaves them"

// mouse takes a press: the wheel goes by rows, a click goes to a cell.
func (m *Model) mouse(e tea.MouseMsg) []act.Msg {
	defer m.arrive()
	switch {
	case e.Action != tea.MouseActionPress:
	case e.Button == tea.MouseButtonLeft:
		return m.click(e.X, e.Y)
	case m.edit != nil:
	case e.Button == tea.MouseButtonWheelUp:
		return m.move(-1)
	case e.Button == tea.MouseButtonWheelDown:
		return m.move(1)
	}
	return nil
}

// click takes a click on a cell of the pane, counted from its upper left.
func (m *Model) click(x, y int) []act.Msg {
	m.warned, m.full = false, false
	if y < namesLines {
		if m.edit != nil {
			return m.leave(func() []act.Msg { return m.turn(int(m.pageAt(x)) - int(m.page)) })
		}
		return m.turn(int(m.pageAt(x)) - int(m.page))
	}
	i, ok := m.rowAt(y)
	if !ok || m.rows[i].IsHeading() {
		return nil
	}
	there := func() []act.Msg {
		m.line = i
		m.column = m.columnAt(x)
		m.clamp()
		return m.chosen()
	}
	if m.edit != nil {
		return m.leave(there)
	}
	return there()
}

// columnAt is the column of a table under a cell of the screen.
func (m *Model) columnAt(x int) int {
	r := m.rows[m.line]
	if len(r.Cells) < 2 {
		return 0
	}
	shown, widths := m.columns(r.List)
	right := gutter
	for n, j := range shown {
		right += widths[n]
		if x < right+1 {
			return j
		}
		right++
	}
	return m.column
}
