package bench

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chape/project/steps"
	"chape/ui/layout"
)

// rest are the holds beside that of the digits and that of the step in hand: those that
// are due or late, the late ones first, and the nearest of those that run.
func (m *Model) rest() (due []steps.Hold, next steps.Hold, runs bool) {
	large, now := m.hold(), m.snap.Now
	var running []steps.Hold
	sort := func(h steps.Hold) {
		switch {
		case h == large.Hold:
		case h.State(now) == steps.HoldRunning:
			running = append(running, h)
		default:
			due = append(due, h)
		}
	}
	for _, h := range steps.Holds(m.snap.Project.Steps, "") {
		sort(h)
	}
	for _, h := range m.snap.Others {
		sort(h)
	}
	steps.SortHolds(due)
	slices.SortStableFunc(due, func(a, b steps.Hold) int { return cmp.Compare(b.State(now), a.State(now)) })
	next, runs = steps.Nearest(running, now)
	return due, next, runs
}

// dueText is one of the rest as it is said.
func (m *Model) dueText(h steps.Hold) string {
	text := m.line(h)
	if h.Project == "" {
		if dry := m.byWeight(h.Short); dry != "" {
			text += ", " + dry
		}
	}
	return text
}

// pageTime is how long a page of the holds that are due stands, where there are more
// than have room: time to read it from afar.
const pageTime = 4 * time.Second

// dueLines say every hold of the rest that is due or late on at most room lines, where
// they have no room on page after page.
func (m *Model) dueLines(due []steps.Hold, room int) []string {
	if len(due) == 0 || room < 1 {
		return nil
	}
	texts := make([]string, len(due))
	for i, h := range due {
		texts[i] = m.dueText(h)
	}
	lines := beside(texts, m.textWidth())
	if len(lines) <= room {
		return lines
	}
	head := func(page, pages int) string { return fmt.Sprintf("%d due, page %d of %d: ", len(due), page, pages) }
	lines = beside(texts, m.textWidth()-len(head(len(due), len(due))))
	pages := (len(lines) + room - 1) / room
	page := int(m.snap.Now.Unix()/int64(pageTime/time.Second)) % pages
	lines = lines[page*room : min((page+1)*room, len(lines))]
	lines[0] = head(page+1, pages) + lines[0]
	return lines
}

// beside puts texts one behind the other on lines of at most width columns, one that is
// longer on several.
func beside(texts []string, width int) []string {
	var lines []string
	left := 0
	for _, text := range texts {
		if wide := ansi.StringWidth(text) + len(gapText); len(lines) > 0 && wide <= left {
			lines[len(lines)-1] += gapText + text
			left -= wide
			continue
		}
		lines = append(lines, layout.Wrap(text, width)...)
		left = width - ansi.StringWidth(lines[len(lines)-1])
	}
	return lines
}

const gapText = "   "
