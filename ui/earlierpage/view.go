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
	"chape/ui/term"
)

const leastDraw, leastCurve = 5, 7 // rows

// head says how the plan stands to the earlier sheath, or how to begin.
func (m *Model) head() []string {
	st := m.Styles
	switch {
	case m.photo != nil:
		return m.photo.Lines(m.w)
	case m.pick != nil:
		return layout.Paragraph("Which knife was the earlier sheath made for? Its half-widths are then set against the plan of that one; what is taken over is carried to this one by the landmarks of both.", m.w, 4, st.Text)
	case m.snap.Plan == nil:
		return layout.Paragraph("no plan yet: correct the numbers of the knife first", m.w, 2, st.Warn)
	case m.wrong != nil:
		return layout.Paragraph("! "+term.Plain(m.wrong.Error())+"; "+knifeKey+" chooses it again", m.w, 3, st.Warn)
	case len(m.rows) == 0:
		return layout.Paragraph("Lay an earlier sheath, or its paper, flat with the fold along a rule, zero where the knife's point lay. At some places type how far along, Enter, then how far from the fold to the finished edge, Enter. "+lineKey+" says that it was to the stitch line, "+knifeKey+" that it was made for another knife.", m.w, 6, st.Text)
	}
	return layout.Paragraph(term.Plain(earlier.Words(m.knife, m.rows, m.snap.Unit)), m.w, 3, st.Strong)
}

// foot is what is typed.
func (m *Model) foot() []string {
	if m.entry == nil {
		return nil
	}
	return m.entry.Lines(m.w, m.Styles)
}

// rooms are the rows of the page from top to bottom.
type rooms struct {
	head, foot            []string
	drawing, curve, table int
}

// rooms shares them out: where there is room both the pattern and the difference are drawn,
// else the one that is wanted.
func (m *Model) rooms() rooms {
	r := rooms{head: m.head(), foot: m.foot()}
	room := max(m.h-len(r.head)-len(r.foot), 0)
	const both = 22
	switch {
	case m.pick != nil || m.snap.Plan == nil || m.wrong != nil:
	case len(m.rows) == 0:
		r.drawing = room
	case m.curve:
		r.curve = room * 60 / 100
	case room >= both:
		r.drawing, r.curve = room*38/100, room*32/100
	default:
		r.drawing = room * 55 / 100
	}
	if r.drawing < leastDraw {
		r.drawing = 0
	}
	if r.curve < leastCurve {
		r.curve = 0
	}
	r.table = room - r.drawing - r.curve
	return r
}

func (m *Model) tableRows() int { return m.rooms().table }

// View draws exactly the size that was set.
func (m *Model) View() string {
	if m.w == 0 || m.h == 0 {
		return ""
	}
	r := m.rooms()
	out := append(r.head, m.drawing(m.w, r.drawing)...)
	out = append(out, m.difference(m.w, r.curve)...)
	table := m.table(r.table)
	if m.pick != nil {
		table = m.pickLines()
	}
	out = append(out, layout.Fit(table, m.w, r.table)...)
	return strings.Join(layout.Fit(append(out, r.foot...), m.w, m.h), "\n")
}

// drawing is the plan's half with the earlier sheath's half-widths on it, joined by a thin
// line; while something is taken over, what that makes of the plan is heavy.
func (m *Model) drawing(w, h int) []string {
	if w <= 0 || h <= 0 {
		return nil
	}
	m.c.Reset(w, h, m.glyphs)
	cust, is := m.snap.Project.Customer, m.knife.Plan
	was := (*calc.Plan)(nil)
	plans := []*calc.Plan{is}
	if m.made != nil {
		was, is = m.snap.Plan, m.made
		plans = []*calc.Plan{was, is}
	}
	s := draw.LayPair(m.c, m.glyphs, calc.BackIsRight(cust.Hand, cust.Edge, calc.GrainUp), false, plans...)
	s.Pair(m.c, was, is, false)
	if m.made != nil && m.knife.Title != "" { // it lies on another knife
		return layout.Fit(m.c.Render(m.pens), w, h)
	}
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
	typed := func(mm float64) string { return length.Length(mm).Typed(u, length.Ruler) }
	out := []string{m.Styles.Quiet.Render(layout.Line(fmt.Sprintf("  %8s  %10s  %8s  %-16s  %s", "at, "+u.String(), "that one", "plan", "the plan is", "measured to"), m.w))}
	all := places.Of(m.knife.Project)
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
		text := layout.Line(fmt.Sprintf("%s%8s  %10s  %8s  %-16s  %-18s  %s", lead, typed(r.At), typed(r.Measured), plan, diff, line, places.At(all, r.At)), m.w)
		if i == m.list.At {
			text = m.Styles.Chosen.Render(text)
		}
		out = append(out, text)
	}
	return out
}
