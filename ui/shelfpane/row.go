package shelfpane

import (
	"path/filepath"
	"strings"
	"time"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"

	"chape/project/clock"
	"chape/project/shelf"
	"chape/project/steps"
	"chape/ui/layout"
	"chape/ui/term"
)

// columns are the widths of the list's columns, 0 for one that has no room.
type columns struct{ title, step, hold, due int }

const leadWidth = 2

func (m *Model) columns() columns {
	room := m.w - leadWidth
	switch {
	case room >= 94:
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
	hold := "hold"
	if c.step == 0 {
		hold = "hold, or step"
	}
	return strings.Repeat(" ", leadWidth) + c.join("knife", "step in hand", hold, "promised")
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
func (m *Model) row(e shelf.Entry, chosen bool, now time.Time) string {
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
	line := lead + c.join(m.name(e, c.title), step, hold, m.dueText(e, now))
	if ansi.StringWidth(line) != m.w {
		line = layout.Line(line, m.w)
	}
	return m.rowStyle(e, chosen, now).Render(line)
}

// name is the title or, where another project has the same, the file's name too: its
// end tells a copy from the project.
func (m *Model) name(e shelf.Entry, w int) string {
	title := term.Plain(e.Title)
	if !m.twice[e.Title] {
		return title
	}
	file := term.Plain(strings.TrimSuffix(filepath.Base(e.Path), filepath.Ext(e.Path)))
	if !strings.HasPrefix(strings.ToLower(file), strings.ToLower(title)) {
		file = title + ": " + file
	}
	over := ansi.StringWidth(file) - w
	if over <= 0 || w < 4 {
		return file
	}
	head := w / 3
	return ansi.Truncate(file, head, "") + ansi.TruncateLeft(file, head+over+1, "…")
}

func mark(e shelf.Entry, now time.Time) string {
	switch hold, ok := e.NextDue(); {
	case e.State == shelf.Broken:
		return "!"
	case ok && hold.State(now) != steps.HoldRunning:
		return "*"
	case e.PutAway:
		return "-"
	}
	return " "
}

func (m *Model) rowStyle(e shelf.Entry, chosen bool, now time.Time) lipgloss.Style {
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
	case e.State == shelf.Finished && e.Steps == 0:
		return "no steps"
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
	case steps.HoldLate:
		return "late " + clock.Time(h.LookBy, now)
	case steps.HoldDue:
		return "due " + clock.Time(h.Due, now)
	}
	return "till " + clock.Time(h.Due, now)
}

// dueText is the day it is promised for, with a sign when that has passed or comes before
// it can be ready.
func (m *Model) dueText(e shelf.Entry, now time.Time) string {
	if e.Due.IsZero() {
		return ""
	}
	y, mon, d := now.Date()
	layout := "2 Jan"
	if e.Due.Year() != y {
		layout = "2 Jan 2006"
	}
	text := e.Due.Format(layout)
	if e.State == shelf.InHand && (e.Due.Before(time.Date(y, mon, d, 0, 0, 0, 0, time.UTC)) || m.ready(e, now).Short) {
		text += " !"
	}
	return text
}
