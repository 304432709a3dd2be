package shelfpane

import (
	"fmt"
	"strconv"
	"strings"

	"chape/project/plain"
	"chape/project/shelf"
	"chape/ui/layout"
	"chape/ui/term"
)

// leastRows is how many rows of the list are left beside what is said about one.
const leastRows = 3

// View draws exactly the size that was set: what is looked for, the list, and more
// about the chosen one.
func (m *Model) View() string {
	if m.w == 0 || m.h == 0 {
		return ""
	}
	lines := []string{m.head(), m.o.Styles.Quiet.Render(layout.Line(m.columns().heads(), m.w))}
	now := m.o.Clock().Round(0)
	for y := range m.rows() {
		i := m.list.Top + y
		switch {
		case i < len(m.shown):
			lines = append(lines, m.row(m.entries[m.shown[i]], i == m.list.At, now))
		case y == 0:
			lines = append(lines, m.nothing())
		default:
			lines = append(lines, "")
		}
	}
	lines = append(lines, m.foot(now)...)
	return strings.Join(layout.Fit(lines, m.w, m.h), "\n")
}

func (m *Model) headRows() int { return 2 }

// rows is how many projects the screen shows.
func (m *Model) rows() int {
	room := m.h - m.headRows()
	return max(0, max(room-m.footRows(), min(leastRows, room)))
}

// head is the words looked for and how many projects there are.
func (m *Model) head() string {
	left := ""
	switch {
	case m.finding:
		found := fmt.Sprintf("%d of %d", len(m.shown), len(m.entries))
		return layout.Ends("Find: "+m.find.Line(max(5, m.w-23), m.o.Styles), m.o.Styles.Quiet.Render(found), m.w)
	case m.find.Text() != "":
		left = "Find: " + term.Plain(m.find.Text())
	default:
		if left = "/ find by title or customer"; m.w < 56 {
			left = "/ find"
		}
		left = m.o.Styles.Quiet.Render(left)
	}
	return layout.Ends(left, m.o.Styles.Quiet.Render(m.count()), m.w)
}

func (m *Model) count() string {
	if !m.scan.seen {
		return "looking"
	}
	broken := 0
	for i := range m.entries {
		if m.entries[i].State == shelf.Broken {
			broken++
		}
	}
	text := plain.Many(len(m.entries), "project")
	if len(m.shown) != len(m.entries) {
		text = strconv.Itoa(len(m.shown)) + " of " + text
	}
	if broken > 0 {
		text += fmt.Sprintf(", %d can't be loaded", broken)
	}
	if m.scan.left > 0 {
		text += fmt.Sprintf(", %d to read", m.scan.left)
	}
	return text
}

// nothing says why the list is empty.
func (m *Model) nothing() string {
	switch {
	case m.scan.err != nil:
		return m.o.Styles.Warning(term.Plain(m.scan.err.Error()))
	case !m.scan.seen:
		return ""
	case len(m.entries) == 0:
		return "No projects yet: n begins one."
	}
	return "None found: Esc shows all again."
}
