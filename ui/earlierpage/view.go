package earlierpage

import (
	"fmt"
	"strings"

	"chape/calc"
	"chape/calc/length"
	"chape/project/earlier"
	"chape/project/places"
	"chape/ui/draw"
	"chape/ui/layout"
)

const leastDraw = 5 // rows

// head says how the plan stands to the earlier sheath, or how to begin.
func (m *Model) head() []string {
	switch {
	case m.photo != nil:
		return m.photo.Lines(m.w)
	case m.snap.Plan == nil:
		return layout.Paragraph("no plan yet: correct the numbers of the knife first", m.w, 2, m.Styles.Warn)
	case len(m.rows) == 0:
		return layout.Paragraph("Lay an earlier sheath, or its paper, flat with the fold along a rule, zero where the knife's point lay. At some places type how far along, Enter, then how far from the fold to the finished edge, Enter. "+lineKey+" says that it was to the stitch line.", m.w, 6, m.Styles.Text)
	}
	return layout.Paragraph(earlier.Words(m.snap.Project, m.rows), m.w, 2, m.Styles.Strong)
}

// foot is what is typed.
func (m *Model) foot() []string {
	if m.entry == nil {
		return nil
	}
	return m.entry.Lines(m.w, m.Styles)
}

// rooms are the rows of drawing and table.
func (m *Model) rooms() (head, foot []string, drawing, table int) {
	head, foot = m.head(), m.foot()
	room := max(m.h-len(head)-len(foot), 0)
	drawing = room
	if len(m.rows) > 0 {
		drawing = room * 55 / 100
	}
	if drawing < leastDraw || m.snap.Plan == nil {
		drawing = 0
	}
	return head, foot, drawing, room - drawing
}

func (m *Model) tableRows() int {
	_, _, _, table := m.rooms()
	return table
}

// View draws exactly the size that was set.
func (m *Model) View() string {
	if m.w == 0 || m.h == 0 {
		return ""
	}
	head, foot, drawing, table := m.rooms()
	out := append(head, m.drawing(m.w, drawing)...)
	out = append(out, layout.Fit(m.table(table), m.w, table)...)
	return strings.Join(layout.Fit(append(out, foot...), m.w, m.h), "\n")
}

// drawing is the plan's half with the earlier sheath's half-widths on it, joined by a thin
// line; while something is taken over, what that makes of the plan is heavy.
func (m *Model) drawing(w, h int) []string {
	if w <= 0 || h <= 0 {
		return nil
	}
	m.c.Reset(w, h, m.glyphs)
	cust, is := m.snap.Project.Customer, m.snap.Plan
	was := (*calc.Plan)(nil)
	plans := []*calc.Plan{is}
	if m.made != nil {
		was, is = is, m.made
		plans = append(plans, is)
	}
	s := draw.LayPair(m.c, m.glyphs, calc.BackIsRight(cust.Hand, cust.Edge, calc.GrainUp), false, plans...)
	s.Pair(m.c, was, is, false)
	for _, line := range []string{"edge", "stitches"} {
		var at, wide []float64
		for _, r := range m.rows {
			if r.Line == line {
				at, wide = append(at, r.At), append(wide, r.Measured)
			}
		}
		s.Measured(m.c, at, wide)
	}
	if len(m.rows) > 0 {
		s.Cursor(m.c, is, m.rows[min(m.list.At, len(m.rows)-1)].At, "")
	}
	return layout.Fit(m.c.Render(m.pens), w, h)
}

// table are the half-widths beside the plan's.
func (m *Model) table(h int) []string {
	if len(m.rows) == 0 || h <= 0 {
		return nil
	}
	u := m.snap.Unit
	fig := func(mm float64) string { return length.Length(mm).Figure(u, length.Ruler) }
	out := []string{m.Styles.Quiet.Render(layout.Line(fmt.Sprintf("  %8s  %10s  %8s  %-16s  %s", "at, "+u.String(), "that one", "plan", "the plan is", "measured to"), m.w))}
	all := places.Of(m.snap.Project)
	from, to := m.list.Shown()
	for i := from; i < to && len(out) < h; i++ {
		r := m.rows[i]
		plan, diff := fig(r.Plan), "as wide"
		switch text := fig(r.By); {
		case !r.Inside:
			plan, diff = "", "not there"
		case text == fig(0):
		case r.By > 0:
			diff = text + " short"
		default:
			diff = fig(-r.By) + " over"
			if fig(-r.By) == fig(0) {
				diff = "as wide"
			}
		}
		line := "the finished edge"
		if r.Line == "stitches" {
			line = "the stitch line"
		}
		lead := "  "
		if i == m.list.At {
			lead = "> "
		}
		text := layout.Line(fmt.Sprintf("%s%8s  %10s  %8s  %-16s  %-18s  %s", lead, fig(r.At), fig(r.Measured), plan, diff, line, places.At(all, r.At)), m.w)
		if i == m.list.At {
			text = m.Styles.Chosen.Render(text)
		}
		out = append(out, text)
	}
	return out
}
