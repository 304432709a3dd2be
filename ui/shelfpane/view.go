package shelfpane

import (
	"fmt"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/project/shelf"
	"chape/ui/layout"
	"chape/ui/term"
)

// leastRows is how many rows of the list are left beside what is said about one.
const leastRows = 3

// View draws exactly the size that was set: what is looked for, the list, and more
// about the chosen one.
func (m Model) View() string {
	if m.w == 0 || m.h == 0 {
		return ""
	}
	lines := []string{m.head(), m.o.Styles.Quiet.Render(layout.Line(m.columns().heads(), m.w))}
	now := m.o.Clock().Round(0)
	for y := range m.rows() {
		i := m.top + y
		switch {
		case i < len(m.shown):
			lines = append(lines, m.row(m.entries[m.shown[i]], i == m.at, now))
		case y == 0:
			lines = append(lines, m.nothing())
		default:
			lines = append(lines, "")
		}
	}
	lines = append(lines, m.foot(now)...)
	return strings.Join(layout.Fit(lines, m.w, m.h), "\n")
}

func (m Model) headRows() int { return 2 }

// rows is how many projects the screen shows.
func (m Model) rows() int {
	room := m.h - m.headRows()
	return max(0, max(room-m.footRows(), min(leastRows, room)))
}

// head is the words looked for and how many projects there are.
func (m Model) head() string {
	left := ""
	switch {
	case m.finding:
		found := fmt.Sprintf("%d of %d", len(m.shown), len(m.entries))
		return layout.Ends("Find: "+m.find.View(), m.o.Styles.Quiet.Render(found), m.w)
	case m.find.Value() != "":
		left = "Find: " + term.Plain(m.find.Value())
	default:
		left = m.o.Styles.Quiet.Render("/ finds")
	}
	return layout.Ends(left, m.o.Styles.Quiet.Render(m.count()), m.w)
}

func (m Model) count() string {
	if !m.scan.seen {
		return "looking"
	}
	broken := 0
	for i := range m.entries {
		if m.entries[i].State == shelf.Broken {
			broken++
		}
	}
	text := many(len(m.entries), "project")
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

func many(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}

// nothing says why the list is empty.
func (m Model) nothing() string {
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

// columns are the widths of the list's columns, 0 for one that has no room.
type columns struct{ title, step, hold, due int }

const leadWidth = 2

func (m Model) columns() columns {
	room := m.w - leadWidth
	switch {
	case room >= 110:
		c := columns{title: (room - 34) * 2 / 5, hold: 20, due: 11}
		c.step = room - c.title - c.hold - c.due - 3
		return c
	case room >= 60:
		c := columns{step: 20, hold: 17, due: 11}
		c.title = room - c.step - c.hold - c.due - 3
		return c
	case room >= 36:
		return columns{title: room - 18, hold: 17}
	}
	return columns{title: room}
}

func (c columns) heads() string {
	return strings.Repeat(" ", leadWidth) + c.join("knife", "step in hand", "hold", "promised")
}

// join sets the four texts in their columns.
func (c columns) join(title, step, hold, due string) string {
	var cells []string
	for _, cell := range []struct {
		text  string
		width int
	}{{title, c.title}, {step, c.step}, {hold, c.hold}, {due, c.due}} {
		if cell.width > 0 {
			cells = append(cells, layout.Line(cell.text, cell.width))
		}
	}
	return strings.Join(cells, " ")
}

// row is one project. What colour says a character or a word says too.
func (m Model) row(e shelf.Entry, chosen bool, now time.Time) string {
	c := m.columns()
	lead, hold := " ", holdText(e, now)
	if chosen {
		lead = ">"
	}
	lead += mark(e, now)
	step := stepText(e, c.step > 30)
	if c.step == 0 && hold == "" {
		hold = step
	}
	line := lead + c.join(term.Plain(e.Title), step, hold, dueText(e, now))
	if ansi.StringWidth(line) != m.w {
		line = layout.Line(line, m.w)
	}
	return m.rowStyle(e, chosen, now).Render(line)
}

func mark(e shelf.Entry, now time.Time) string {
	switch hold, ok := e.NextDue(); {
	case e.State == shelf.Broken:
		return "!"
	case ok && hold.State(now) != project.HoldRunning:
		return "*"
	case e.PutAway:
		return "-"
	}
	return " "
}

func (m Model) rowStyle(e shelf.Entry, chosen bool, now time.Time) lipgloss.Style {
	s := m.o.Styles
	switch mark(e, now) {
	case "!":
		if !chosen {
			return s.Warn
		}
	case "*":
		if !chosen {
			return s.Note
		}
	}
	switch {
	case chosen:
		return s.Chosen
	case e.PutAway || e.State == shelf.Finished || e.State == shelf.Unread:
		return s.Quiet
	}
	return s.Text
}

func stepText(e shelf.Entry, wide bool) string {
	switch {
	case e.State == shelf.Broken:
		return "can't be loaded"
	case e.PutAway:
		return "put away"
	case e.State == shelf.Finished:
		return "finished"
	case wide:
		return term.Plain(e.Step)
	}
	return term.Plain(e.Short)
}

// holdText is where the hold stands that needs attention first.
func holdText(e shelf.Entry, now time.Time) string {
	h, ok := e.NextDue()
	if !ok {
		return ""
	}
	switch h.State(now) {
	case project.HoldLate:
		return "late " + project.ClockTime(h.LookBy, now)
	case project.HoldDue:
		return "due " + project.ClockTime(h.Due, now)
	}
	return "till " + project.ClockTime(h.Due, now)
}

// dueText is the day it is promised for, with a sign when that has passed.
func dueText(e shelf.Entry, now time.Time) string {
	if e.Due.IsZero() {
		return ""
	}
	y, mon, d := now.Date()
	layout := "2 Jan"
	if e.Due.Year() != y {
		layout = "2 Jan 2006"
	}
	text := e.Due.Format(layout)
	if e.State == shelf.InHand && e.Due.Before(time.Date(y, mon, d, 0, 0, 0, 0, time.UTC)) {
		text += " !"
	}
	return text
}

// foot is the question, or more about the chosen project.
func (m Model) foot(now time.Time) []string {
	room := m.h - m.headRows() - leastRows
	if room <= 0 {
		room = min(2, m.h-m.headRows())
	}
	var lines []string
	if m.question != nil {
		lines = m.questionLines()
	} else {
		lines = m.about(now)
	}
	if len(lines) > room && room >= 0 {
		lines = lines[len(lines)-room:]
	}
	return lines
}

func (m Model) footRows() int { return len(m.foot(time.Time{})) }

func (m Model) questionLines() []string {
	q := m.question
	lines := layout.Wrap(q.label, m.w)
	for i := range lines {
		lines[i] = m.o.Styles.Strong.Render(lines[i])
	}
	if q.err != "" {
		lines = append(lines, m.o.Styles.Warning(term.Plain(q.err)))
	}
	return append(lines, q.input.View())
}

// about is the chosen project's file, step and customer, or why it can't be loaded. It
// takes as many lines for every project, so that the list does not jump.
func (m Model) about(now time.Time) []string {
	lines := []string{m.o.Styles.Quiet.Render(strings.Repeat("-", m.w)), "", "", ""}
	e, ok := m.Chosen()
	if !ok {
		return lines
	}
	name := filepath.Base(e.Path)
	if e.PutAway {
		name = filepath.Join(shelf.Away, name)
	}
	changed := ""
	if !e.Modified.IsZero() {
		changed = "changed " + e.Modified.In(now.Location()).Format("2 Jan 2006 15:04")
	}
	lines[1] = m.o.Styles.Quiet.Render(layout.Ends(term.Plain(name), changed, m.w))
	if e.State == shelf.Broken {
		for i, text := range m.whyBroken(e) {
			lines[2+i] = m.o.Styles.Warn.Render(text)
		}
		return lines
	}
	lines[2] = term.Plain(e.Step)
	if e.Customer != "" {
		lines[3] = "for " + term.Plain(e.Customer)
	}
	return lines
}

// whyBroken is the error in two lines.
func (m Model) whyBroken(e shelf.Entry) []string {
	text := "! " + term.Plain(e.Err)
	lines := layout.Wrap(text, m.w)
	if len(lines) > 2 {
		rest := strings.TrimSpace(strings.TrimPrefix(text, lines[0]))
		lines = []string{lines[0], layout.Line(rest, m.w)}
	}
	return lines
}
