package stepspane

import (
	"cmp"
	"fmt"
	"strings"
	"time"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"

	"chape/project/clock"
	"chape/project/steps"
	"chape/ui/layout"
	"chape/ui/term"
)

const (
	wideEnough = 44 // from this width on a row has room for the times of what is done
	leastTitle = 16 // letters that a title needs to be told from others; else the short name
)

// leastRows is how many rows of the list are left beside a long caution.
const leastRows = 3

// View draws exactly the size that was set: the list, and the chosen step below.
func (m *Model) View() string {
	if m.w == 0 || m.h == 0 {
		return ""
	}
	if len(m.steps()) == 0 {
		lines := layout.Wrap("No steps yet: a adds one.", m.w)
		if q := m.questionLines(); len(q) > 0 {
			q[0] = m.rule()
			lines = append(lines, q...)
		}
		return strings.Join(layout.Fit(lines, m.w, m.h), "\n")
	}
	var lines []string
	for y := range m.listRows() {
		if i := m.list.Top + y; i < len(m.steps()) {
			lines = append(lines, m.row(i))
		} else {
			lines = append(lines, "")
		}
	}
	if detail := m.detail(); len(detail) > 0 {
		detail[0] = m.rule()
		lines = append(lines, detail...)
	}
	return strings.Join(layout.Fit(lines, m.w, m.h), "\n")
}

// listRows is how many rows the list gets: what the chosen step leaves.
func (m *Model) listRows() int {
	if len(m.steps()) == 0 {
		return 0
	}
	return min(max(m.h-len(m.detail()), min(leastRows, m.h)), len(m.steps())+1)
}

// scroll keeps the chosen step in sight.
func (m *Model) scroll() {
	m.list.Set(max(len(m.steps()), len(m.mine)), m.listRows()) // a step that was added is chosen already
}

// row is one line: chosen, state, name, hold. States are told by character.
func (m *Model) row(i int) string {
	s := m.steps()[i]
	chosen := i == m.list.At
	lead := " "
	if chosen {
		lead = ">"
	}
	lead += m.mark(i) + " "
	hold := m.rowHold(i)
	room := m.w - ansi.StringWidth(lead)
	if dry := m.dryText(i); dry != "" && hold != "" && room-ansi.StringWidth(dry+", "+hold) > leastTitle {
		hold = dry + ", " + hold
	}
	if hold != "" {
		hold = " " + hold
		room -= ansi.StringWidth(hold)
	}
	name := term.Plain(s.Title)
	if room < leastTitle && ansi.StringWidth(name) > room {
		name = s.ShortName()
	}
	line := lead + layout.Line(name, max(room, 0)) + hold
	line = layout.Line(line, m.w)
	return m.rowStyle(s, chosen, i).Render(line)
}

func (m *Model) rowStyle(s steps.Step, chosen bool, i int) lipgloss.Style {
	switch state := s.HoldState(m.snap.Now); {
	case chosen && m.focus:
		return m.Styles.Chosen
	case state == steps.HoldDue || state == steps.HoldLate:
		return m.Styles.Note
	case i == steps.Current(m.steps()):
		return m.Styles.Strong
	case !s.Done.IsZero() || s.Skipped:
		return m.Styles.Quiet
	}
	return m.Styles.Text
}

// mark is the state in one character.
func (m *Model) mark(i int) string {
	switch s := m.steps()[i]; {
	case !s.Done.IsZero():
		return "x"
	case s.Skipped:
		return "-"
	case i == steps.Current(m.steps()):
		return "*"
	}
	return " "
}

// rowHold is where the hold stands, with a clock time, or when the step was done. In a
// narrow row what the mark or the step's own lines say too is left to them.
func (m *Model) rowHold(i int) string {
	s, now := m.steps()[i], m.snap.Now
	state := s.HoldState(now)
	switch narrow := m.w < wideEnough; {
	case narrow && state == steps.HoldRunning:
		return clock.Time(s.NotBefore(), now)
	case narrow && (state == steps.NoHold || state == steps.HoldWaiting || state == steps.HoldUnset):
		return ""
	}
	switch state {
	case steps.HoldWaiting:
		return "hold " + clock.Span(cmp.Or(s.Hold, s.Latest))
	case steps.HoldUnset:
		return "by data sheet"
	case steps.HoldRunning:
		return "till " + clock.Time(s.NotBefore(), now)
	case steps.HoldDue:
		if !s.Ended.IsZero() {
			return "ended " + clock.Time(s.Ended, now)
		}
		return "due " + clock.Time(s.NotBefore(), now)
	case steps.HoldLate:
		return "late " + clock.Time(s.LookBy(), now)
	}
	switch {
	case !s.Done.IsZero():
		return clock.Time(s.Done, now)
	case s.Skipped:
		return "skipped"
	}
	return ""
}

// detail is the chosen step in full, or the question about it, in what the least
// of the list leaves; the caution is what is kept when there is no room.
func (m *Model) detail() []string {
	if m.Chosen() < 0 {
		return nil
	}
	if m.question != nil {
		return m.questionLines()
	}
	s := m.step()
	room := m.h - leastRows - 1
	var title, caution, hold, note, spent []string
	take := func(text string, lines int, style lipgloss.Style) []string {
		out := layout.Paragraph(text, m.w, min(lines, room), style)
		room -= len(out)
		return out
	}
	if s.Caution != "" {
		caution = take("! "+term.Plain(s.Caution), room, m.Styles.Warn)
	}
	hold = append(take(m.holdText(s), 3, m.Styles.Text), take(m.dryText(m.Chosen()), 2, m.Styles.Text)...)
	if m.w < wideEnough || ansi.StringWidth(s.Title) > m.w-20 {
		title = take(term.Plain(s.Title), 3, m.Styles.Strong)
	}
	if s.Note != "" {
		note = take("* "+term.Plain(s.Note), 4, m.Styles.Note)
	}
	spent = take(m.workText(s), 2, m.Styles.Quiet)
	lines := []string{""} // the rule
	for _, part := range [][]string{title, hold, caution, note, spent} {
		lines = append(lines, part...)
	}
	if len(lines) == 1 && len(m.steps()) <= m.h {
		return nil
	}
	return lines
}

// rule parts the list from the chosen step, and says which of a longer list are shown.
func (m *Model) rule() string {
	text, rows, n := "", m.listRows(), len(m.steps())
	if rows < n {
		text = fmt.Sprintf(" %d-%d of %d", m.list.Top+1, min(m.list.Top+rows, n), n)
	}
	return m.Styles.Quiet.Render(layout.Line(strings.Repeat("-", max(0, m.w-ansi.StringWidth(text)))+text, m.w))
}

// dryText is what the scale or the room says beside the drying step, till that is done.
func (m *Model) dryText(i int) string {
	if s := m.steps()[i]; s.ShortName() != steps.Drying || !s.Done.IsZero() {
		return ""
	}
	text, _ := m.drying().By(m.snap.Project.Room, m.snap.Project.Weigh, m.snap.Now)
	return text
}

// holdText says everything about the hold of a step.
func (m *Model) holdText(s steps.Step) string {
	now := m.snap.Now
	switch {
	case s.HoldState(now) == steps.HoldUnset:
		return "hold by data sheet: d sets how long"
	case !s.HasHold():
		return ""
	}
	text := "hold " + clock.Window(s.Hold, s.Latest)
	if s.Started.IsZero() {
		return text
	}
	text += ", started " + clock.Time(s.Started, now)
	if !s.First.IsZero() {
		text += " (anew; first " + clock.Time(s.First, now) + ")"
	}
	if !s.Ended.IsZero() {
		early := s.Started.Add(s.Hold).Sub(s.Ended)
		return text + ", ended " + clock.Time(s.Ended, now) + ", " + clock.Span(early) + " early"
	}
	text += ", not before " + clock.Time(s.NotBefore(), now)
	if by := s.LookBy(); !by.IsZero() {
		text += ", look by " + clock.Time(by, now)
	}
	return text
}

func (m *Model) questionLines() []string {
	q := m.question
	if q == nil {
		return nil
	}
	return append([]string{""}, q.Lines(m.w, m.Styles)...) // below the rule
}

// workText says how long the step takes at the bench, as expected and as it was, each
// beside all steps together.
func (m *Model) workText(s steps.Step) string {
	var parts []string
	if s.Expect > 0 {
		parts = append(parts, "expected "+spentText(s.Expect)+" of "+spentText(steps.TotalExpected(m.steps()))+" in all")
	}
	if s.Spent > 0 {
		parts = append(parts, "spent "+spentText(s.Spent)+", all steps "+spentText(steps.TotalSpent(m.steps())))
	}
	return strings.Join(parts, "; ")
}

// spentText says minutes, rounded: they are added up by the second.
func spentText(d time.Duration) string {
	return clock.Span(max(d.Round(time.Minute), 0))
}
