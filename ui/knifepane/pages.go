package knifepane

import (
	"strconv"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"chape/ui/act"
	"chape/ui/form"
	"chape/ui/layout"
)

// namesLines is the pane's first line: the names of the pages.
const namesLines = 1

// spot is where the cursor was left on a page.
type spot struct{ line, column int }

// show turns to a page, the cursor where it was left there.
func (m *Model) show(p form.Page) {
	if p == m.page {
		return
	}
	m.spots[m.page] = spot{m.line, m.column}
	m.page = p
	m.rows = form.Rows(p, m.snap.Project)
	m.line, m.column, m.top = m.spots[p].line, m.spots[p].column, 0
	m.clamp()
}

// turn goes to a page so many further on.
func (m *Model) turn(by int) []act.Msg {
	m.show(m.page.Next(by))
	return m.chosen()
}

// names is the pane's first line: the pages, the one that is shown in brackets, each with
// the warnings (!) and notes (*) that are mended there.
func (m *Model) names() string {
	for _, try := range []struct {
		name func(form.Page) string
		gap  int
	}{{form.Page.String, 1}, {form.Page.Short, 1}, {form.Page.Short, 0}} {
		if line, cells := m.namesWith(try.name, try.gap); cells[form.Pages] <= m.width {
			return line
		}
	}
	return layout.Line(m.Styles.Strong.Render("["+m.page.String()+m.concern(m.page)+"]")+" "+
		m.Styles.Quiet.Render(strconv.Itoa(int(m.page)+1)+"/"+strconv.Itoa(form.Pages)), m.width)
}

// namesWith is the line of names, and the cell at which each begins; the last is its end.
func (m *Model) namesWith(name func(form.Page) string, gap int) (string, [form.Pages + 1]int) {
	var b strings.Builder
	var cells [form.Pages + 1]int
	at := 0
	for p := range form.Page(form.Pages) {
		cells[p] = at
		text, style := name(p)+m.concern(p), m.Styles.Quiet
		open, end := " ", " "
		if p == m.page {
			open, end, style = "[", "]", m.Styles.Strong
		} else if strings.Contains(text, "!") {
			style = m.Styles.Warn
		}
		if gap == 0 && p > 0 && p != m.page {
			open = "" // the end of the one before parts them
		}
		b.WriteString(style.Render(open + text + end))
		at += ansi.StringWidth(open + text + end)
	}
	cells[form.Pages] = at
	return b.String(), cells
}

// concern says how many checks warn and note on a page.
func (m *Model) concern(p form.Page) string {
	warn, note := form.Count(m.snap.Plan, m.snap.Project, p)
	switch {
	case warn > 0 && note > 0:
		return " !" + strconv.Itoa(warn) + " *" + strconv.Itoa(note)
	case warn > 0:
		return " !" + strconv.Itoa(warn)
	case note > 0:
		return " *" + strconv.Itoa(note)
	}
	return ""
}

// pageAt is the page whose name stands at a cell of the first line.
func (m *Model) pageAt(x int) form.Page {
	for _, try := range []struct {
		name func(form.Page) string
		gap  int
	}{{form.Page.String, 1}, {form.Page.Short, 1}, {form.Page.Short, 0}} {
		_, cells := m.namesWith(try.name, try.gap)
		if cells[form.Pages] > m.width {
			continue
		}
		for p := range form.Page(form.Pages) {
			if x >= cells[p] && x < cells[p+1] {
				return p
			}
		}
		return m.page
	}
	return m.page.Next(1)
}
