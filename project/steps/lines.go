package steps

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chape/project/clock"
	"chape/project/plain"
)

// Line says the hold in a few words: what, how long it has to go, at what clock time.
func (h Hold) Line(now time.Time) string { return h.name() + ": " + h.stand(now) }

// name is the project, where there is one, and the step.
func (h Hold) name() string {
	if h.Project == "" {
		return plain.Safe(h.Short)
	}
	return plain.Safe(h.Project) + " " + plain.Safe(h.Short)
}

// stand says where it stands: at most 54 columns.
func (h Hold) stand(now time.Time) string {
	switch state := h.State(now); {
	case state == HoldRunning:
		return fmt.Sprintf("%s to go, %s", clock.Span(h.Due.Sub(now.Round(0))), clock.Time(h.Due, now))
	case state == HoldLate:
		return "look at it, was due by " + clock.Time(h.LookBy, now)
	case h.LookBy.IsZero():
		return "due since " + clock.Time(h.Due, now)
	case !h.Due.After(h.Started): // it has a 'look by' only
		return "look by " + clock.Time(h.LookBy, now)
	}
	return fmt.Sprintf("due since %s, look by %s", clock.Time(h.Due, now), clock.Time(h.LookBy, now))
}

// leastName is what is left of a project's name that is cut.
const leastName = 4

// lineIn is Line in at most width columns: the project's name is cut for it, then left
// out, and only then the time.
func (h Hold) lineIn(now time.Time, width int) string {
	line := h.Line(now)
	over := ansi.StringWidth(line) - width
	if over <= 0 {
		return line
	}
	project := plain.Safe(h.Project)
	h.Project = ""
	line = h.Line(now)
	if left := ansi.StringWidth(project) - over; left >= leastName {
		return ansi.Truncate(project, left, "…") + " " + line
	}
	return ansi.Truncate(line, width, "")
}

const (
	holdGap   = "   " // between two holds on a line
	leastPart = 12    // columns that no hold says itself in less
	mostLines = 2
)

// HoldLines puts the holds into at most two lines of at most width columns. Those that
// are due come first, drawn together as "4 due: LOOSEN 2, Birch SEAL, …" where there
// is no room to say when; the next to fall due always has its place; the rest is
// "+4 more, next Thu 14:20". It takes time in proportion to the holds, and
// to the width.
func HoldLines(holds []Hold, now time.Time, width int) []string {
	if len(holds) == 0 || width < 1 {
		return nil
	}
	r := holdRows{now: now, width: width}
	r.sort(holds)
	if full := mostLines * (width + len(holdGap)) / leastPart; r.dueCount <= full {
		lead := make([]string, 0, r.dueCount)
		for _, h := range r.due {
			lead = append(lead, h.lineIn(now, width))
		}
		if lines, ok := r.fill(lead); ok {
			return lines
		}
	}
	lines, ok := r.fill([]string{r.together()})
	if !ok {
		lines = r.narrow()
	}
	return lines
}

// holdRows is what HoldLines works with: the first of the due and of the running holds,
// more than have room, and how many there are.
type holdRows struct {
	now                    time.Time
	width                  int
	due, running           []*Hold
	dueCount, runningCount int
}

func (r *holdRows) sort(holds []Hold) {
	for i := range holds {
		if h := &holds[i]; h.State(r.now) == HoldRunning {
			r.running = keepFirst(r.running, h, r.width+1)
			r.runningCount++
		} else {
			r.due = keepFirst(r.due, h, r.width+1)
			r.dueCount++
		}
	}
}

// keepFirst puts h in its place among the first holds, of which most are kept.
func keepFirst(first []*Hold, h *Hold, most int) []*Hold {
	at, _ := slices.BinarySearchFunc(first, h, func(a, b *Hold) int {
		if attention(*a, *b) <= 0 { // equal ones stay in the order they came in
			return -1
		}
		return 1
	})
	if at == most {
		return first
	}
	if len(first) == most {
		first = first[:most-1]
	}
	return slices.Insert(first, at, h)
}

// fill says lead and then as many running holds as have room, at least one.
func (r *holdRows) fill(lead []string) (lines []string, ok bool) {
	if r.runningCount == 0 {
		return pack(lead, r.width)
	}
	parts := slices.Clone(lead)
	for _, h := range r.running[:min(len(r.running), mostLines*(r.width+len(holdGap))/leastPart)] {
		parts = append(parts, h.lineIn(r.now, r.width))
	}
	for n := len(parts); n > len(lead); n-- {
		said := parts[:n:n]
		if more := r.more(n - len(lead)); more != "" {
			said = append(said, more)
		}
		if lines, ok := pack(said, r.width); ok {
			return lines, true
		}
	}
	return nil, false
}

// more counts the running holds after the first n.
func (r *holdRows) more(n int) string {
	if r.runningCount <= n {
		return ""
	}
	return fmt.Sprintf("+%d more, next %s", r.runningCount-n, clock.Time(r.running[n].Due, r.now))
}

// together is the due holds in one part of a line: how many, and the names that have room.
func (r *holdRows) together() string {
	switch r.dueCount {
	case 0:
		return ""
	case 1:
		return r.due[0].lineIn(r.now, r.width)
	}
	const andMore = ", …"
	text := fmt.Sprintf("%d due: ", r.dueCount)
	room := r.width - ansi.StringWidth(text) - ansi.StringWidth(andMore)
	var names []string
	for _, h := range r.due {
		name := h.name()
		room -= ansi.StringWidth(name) + len(", ")
		if room+len(", ") < 0 {
			break
		}
		names = append(names, name)
	}
	switch {
	case len(names) == r.dueCount:
		return text + strings.Join(names, ", ")
	case len(names) == 0:
		return ansi.Truncate(text+r.due[0].name(), r.width, "…")
	}
	return text + strings.Join(names, ", ") + andMore
}

// narrow is for where not even one running hold and the count of the others have room:
// the name gives way, then the count.
func (r *holdRows) narrow() []string {
	var lines []string
	if r.dueCount > 0 {
		lines = append(lines, ansi.Truncate(r.together(), r.width, ""))
	}
	if r.runningCount > 0 {
		h, more := r.running[0], r.more(1)
		line := h.lineIn(r.now, r.width)
		if left := r.width - len(holdGap) - ansi.StringWidth(more); more != "" && left >= ansi.StringWidth(": "+h.stand(r.now))+leastName {
			line = h.lineIn(r.now, left) + holdGap + more
		}
		lines = append(lines, line)
	}
	return lines
}

// pack sets parts one behind the other on lines of at most width columns.
func pack(parts []string, width int) (lines []string, fit bool) {
	used := width + 1
	for _, part := range parts {
		if part == "" {
			continue
		}
		wide := ansi.StringWidth(part)
		if used+len(holdGap)+wide <= width {
			lines[len(lines)-1] += holdGap + part
			used += len(holdGap) + wide
			continue
		}
		if lines, used = append(lines, part), wide; used > width || len(lines) > mostLines {
			return nil, false
		}
	}
	return lines, true
}
