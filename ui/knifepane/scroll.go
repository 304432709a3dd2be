package knifepane

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"chape/ui/layout"
)

// body is how many lines there are for the rows.
func (m *Model) body() int { return max(1, m.height-namesLines-len(m.foot())) }

// leastScrolled is how many lines of rows leave one for where they lie.
const leastScrolled = 3

// scrolls tells whether there are more rows than lines: then the first line says
// what they belong to and where they lie.
func (m *Model) scrolls() bool { return len(m.rows) > m.body() && m.body() >= leastScrolled }

// window is the rows that are shown, not counting the heading in the first line.
func (m *Model) window() (from, to int) {
	n := m.body()
	from = m.top
	if m.scrolls() {
		n--
		if from < len(m.rows) && m.rows[from].Heading != "" {
			from++ // it is in the first line
		}
	}
	return from, min(from+n, len(m.rows))
}

// pageful is how far PgUp and PgDn go, a row less than is shown.
func (m *Model) pageful() int {
	from, to := m.window()
	return max(1, to-from-1)
}

// scroll keeps the row in hand in sight, with its heading if there is room.
func (m *Model) scroll() {
	n := m.body()
	if m.scrolls() {
		n--
	}
	if from, _ := m.window(); m.line < from {
		m.top = m.line
		for m.top > 0 && m.rows[m.top-1].IsHeading() && m.line-m.top < n-1 {
			m.top--
		}
	}
	if _, to := m.window(); m.line >= to {
		m.top = m.line - n + 1
	}
	m.top = max(0, min(m.top, len(m.rows)-n))
}

// headLine says what the rows under it belong to and where they lie among all.
// Where a table's own row of names is out of sight it is repeated, if there is
// room.
func (m *Model) headLine() string {
	from, to := m.window()
	where := m.Styles.Quiet.Render(m.where(m.top, to))
	title, heads := "", ""
	for i := m.top; i >= 0 && title == ""; i-- {
		if r := m.rows[i]; len(r.Heads) > 0 && i < from && r.List == m.rows[from].List {
			heads = m.headsLine(r.List, r.Heads)
		}
		title = m.rows[i].Heading
	}
	if heads != "" && ansi.StringWidth(heads)+1+ansi.StringWidth(where) <= m.width {
		return layout.Ends(heads, where, m.width)
	}
	return layout.Ends(m.Styles.Heading.Render(title), where, m.width)
}

// where says which of the rows are shown and how to come to the others.
func (m *Model) where(from, to int) string {
	var keys []string
	if from > 0 {
		keys = append(keys, "PgUp")
	}
	if to < len(m.rows) {
		keys = append(keys, "PgDn")
	}
	return fmt.Sprintf("%d-%d of %d, %s", from+1, to, len(m.rows), strings.Join(keys, " "))
}

// rowAt is the row on a line of the pane.
func (m *Model) rowAt(y int) (int, bool) {
	from, to := m.window()
	y -= namesLines
	if m.scrolls() {
		y--
	}
	return from + y, y >= 0 && from+y < to
}
