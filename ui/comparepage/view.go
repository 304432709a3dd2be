package comparepage

import (
	"math"
	"strings"

	"chape/calc"
	"chape/calc/length"
	"chape/project/places"
	"chape/project/report"
	"chape/ui/draw"
	"chape/ui/layout"
	"chape/ui/term"
)

const leastDraw = 5 // rows

// head are the two patterns and where they differ most.
func (m *Model) head() []string {
	st := m.Styles
	switch {
	case m.err != nil:
		return layout.Paragraph("! "+term.Plain(m.err.Error()), m.w, 3, st.Warn)
	case len(m.all) < 2:
		return layout.Paragraph("There is one so far: "+m.all[0].Name()+". Each number that is printed is kept with what it was drawn from; when the pattern is another by then, A raises the number, and the two can be laid over each other here.", m.w, 5, st.Text)
	case m.was == m.is:
		return layout.Paragraph("twice "+m.all[m.is].Name()+": ← or → takes another one", m.w, 2, st.Text)
	}
	out := layout.Paragraph("thin: "+m.all[m.was].Name()+"; heavy: "+m.all[m.is].Name(), m.w, 2, st.Strong)
	return append(out, layout.Paragraph(m.pair.Most(m.snap.Unit), m.w, 2, st.Text)...)
}

// rooms are the rows of head, drawing and tables.
func (m *Model) rooms() (head []string, drawing, tables int) {
	head = m.head()
	room := max(m.h-len(head), 0)
	drawing = room * 55 / 100
	if len(m.lines) == 0 {
		drawing = room
	}
	if drawing < leastDraw {
		drawing = 0
	}
	return head, drawing, room - drawing
}

// View draws exactly the size that was set.
func (m *Model) View() string {
	if m.w == 0 || m.h == 0 || len(m.all) == 0 {
		return strings.Join(layout.Fit(nil, m.w, m.h), "\n")
	}
	head, drawing, tables := m.rooms()
	out := append(head, m.drawing(m.w, drawing)...)
	from, to := m.top, min(m.top+tables, len(m.lines))
	if from < to {
		out = append(out, m.lines[from:to]...)
	}
	return strings.Join(layout.Fit(out, m.w, m.h), "\n")
}

// scroll keeps the tables in sight.
func (m *Model) scroll() { m.roll(0) }

// roll scrolls them by lines.
func (m *Model) roll(by int) {
	if len(m.all) > 0 {
		m.top = max(0, min(m.top+by, len(m.lines)-m.pageful()))
	}
}

// pageful is how many lines of them are seen.
func (m *Model) pageful() int {
	_, _, tables := m.rooms()
	return max(tables, 1)
}

// drawing are both back halves, with their tabs.
func (m *Model) drawing(w, h int) []string {
	if w <= 0 || h <= 0 {
		return nil
	}
	if m.pair.IsPlan == nil {
		return layout.Fit(nil, w, h)
	}
	if m.curve && m.laid() {
		return m.difference(w, h)
	}
	m.c.Reset(w, h, m.glyphs)
	cust := m.snap.Project.Customer
	s := draw.LayPair(m.c, m.glyphs, calc.BackIsRight(cust.Hand, cust.Edge, calc.GrainUp), true, m.pair.IsPlan, m.pair.WasPlan)
	was := m.pair.WasPlan
	if !m.laid() {
		was = nil
	}
	s.Pair(m.c, was, m.pair.IsPlan, true)
	return layout.Fit(m.c.Render(m.pens), w, h)
}

// difference is how much the heavy one's stitch line lies further from the fold.
func (m *Model) difference(w, h int) []string {
	u, is := m.snap.Unit, m.pair.Is.Project()
	d := draw.Difference{By: m.pair.Difference(), At: math.NaN(), Places: draw.NamesOf(places.Of(is)), Say: draw.Saying(u, length.Calliper, "wider", "narrower")}
	if n := len(d.By.X); n > 0 {
		d.Lo, d.Hi = d.By.X[0], max(is.Sheath.Mouth.MM(), d.By.X[n-1])
	}
	m.c.Reset(w, h-1, m.glyphs)
	d.Draw(m.c, m.glyphs)
	says := "the stitch line, " + u.String() + ": above the line the heavy one is wider, below it narrower"
	return append([]string{m.Styles.Quiet.Render(layout.Line(says, w))}, layout.Fit(m.c.Render(m.pens), w, h-1)...)
}

// tables are the lines of both tables.
func (m *Model) tables() []string {
	if m.was == m.is {
		return nil
	}
	out := m.table(m.pair.Figures(m.snap.Unit), 1)
	return append(out, m.table(m.pair.HalfWidths(m.snap.Unit), 0)...)
}

// table lays a table out: its columns flush right but for so many at the left, and the
// last.
func (m *Model) table(t report.Table, left int) []string {
	if len(t.Rows) == 0 {
		return nil
	}
	out := []string{m.Styles.Heading.Render(t.Heading())}
	for i, line := range layout.Aligned(append([][]string{t.Columns}, t.Rows...), left) {
		if i == 0 {
			line = m.Styles.Quiet.Render(line)
		}
		out = append(out, line)
	}
	return append(out, "")
}
