package shelfpane

import (
	"path/filepath"
	"strings"
	"time"

	"chape/project/shelf"
	"chape/project/shop"
	"chape/ui/layout"
	"chape/ui/term"
)

// foot is the question, or more about the chosen project.
func (m *Model) foot(now time.Time) []string {
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

func (m *Model) footRows() int { return len(m.foot(time.Time{})) }

func (m *Model) questionLines() []string {
	q := m.question
	lines := q.Lines(m.w, m.o.Styles)
	var choices []string
	switch {
	case q.begin != nil:
		p, _ := q.begin.project()
		choices = append(q.begin.lines(), q.learned.lines("experience", p)...)
	case q.take != nil:
		choices = append(q.take.lines(), q.learned.lines("experience    ", q.take.project())...)
	}
	for _, line := range choices {
		lines = append(lines, layout.Line(line, m.w))
	}
	return lines
}

// about is the chosen project's file, step and customer, or why it can't be loaded. It
// takes as many lines for every project, so that the list does not jump.
func (m *Model) about(now time.Time) []string {
	lines := []string{m.o.Styles.Quiet.Render(strings.Repeat("-", m.w)), "", "", ""}
	switch {
	case m.tellsReady() && m.w < abreast:
		lines = append(lines, "", "", "")
	case m.tellsReady():
		lines = append(lines, "")
	}
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
	m.putReady(lines, m.ready(e, now))
	return lines
}

// abreast is how wide the list has to be for a customer and what was not counted to stand
// side by side.
const abreast = 90

// putReady puts when it can be ready into the lines that are kept for it.
func (m *Model) putReady(lines []string, r shop.Ready) {
	if len(lines) <= 4 {
		return
	}
	style, text := m.o.Styles.Text, r.Text
	if r.Short {
		style, text = m.o.Styles.Warn, "! "+text
	}
	lacks := m.o.Styles.Quiet.Render(r.Lacks)
	if len(lines) == 5 {
		lines[3], lines[4] = layout.Ends(lines[3], lacks, m.w), style.Render(text)
		return
	}
	said := lines[4:]
	for i, l := range append(layout.Paragraph(text, m.w, 2, style), lacks) {
		said[i] = l
	}
}

// tellsReady tells whether there is a word on when a project can be ready: where the shop's
// hours are known, and where the settings that have them can't be read.
func (m *Model) tellsReady() bool { return m.shop.Week.Any() || m.shop.Broken != "" }

// ready is when a project can be ready, after those promised earlier; nothing where the
// shop's hours are not known.
func (m *Model) ready(e shelf.Entry, now time.Time) shop.Ready {
	if !m.tellsReady() || e.PutAway {
		return shop.Ready{}
	}
	if !m.queue.Fits(m.shop, now) {
		m.queue = m.shop.Queue(promised(m.entries), now)
	}
	return m.queue.Ready(e.Open, e.Due, now)
}

// promised are the sheaths that share the bench. A sheath is not promised earlier than
// itself, so that the one asked about may be among them.
func promised(entries []shelf.Entry) []shop.Promise {
	var out []shop.Promise
	for _, e := range entries {
		if e.State == shelf.InHand && !e.PutAway {
			out = append(out, shop.Promise{Open: e.Open, Due: e.Due})
		}
	}
	return out
}

// whyBroken is the error in two lines.
func (m *Model) whyBroken(e shelf.Entry) []string {
	text := "! " + term.Plain(e.Err)
	lines := layout.Wrap(text, m.w)
	if len(lines) > 2 {
		rest := strings.TrimSpace(strings.TrimPrefix(text, lines[0]))
		lines = []string{lines[0], layout.Line(rest, m.w)}
	}
	return lines
}
