package leatherpage

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"chape/project/plain"
	"chape/ui/layout"
	"chape/ui/term"
)

// What the parts of the page take, in cells.
const (
	marginWide = 7 // the name of a group
	sayRows    = 3
	leastDraw  = 5
	leastList  = 5
	twoColumns = 120
)

// spots is the page divided up. An empty rectangle is not shown.
type spots struct{ text, list, drawing, say layout.Rect }

// arrange gives the rows half the height, or half the width where that is large, the
// drawing the rest.
func (m *Model) arrange() spots {
	var p spots
	room := max(m.h-sayRows, 0)
	p.say = layout.Rect{Y: room, W: m.w, H: m.h - room}
	if m.large && m.entry == nil {
		p.drawing = layout.Rect{W: m.w, H: room}
		return p
	}
	how := m.howTo()
	if m.w >= twoColumns {
		w := m.w / 2
		p.text = layout.Rect{W: w, H: min(len(m.told(how, w-1)), room/2)}
		p.list = layout.Rect{Y: p.text.H, W: w, H: room - p.text.H}
		p.drawing = layout.Rect{X: w, W: m.w - w, H: room}
		return p
	}
	rows := len(m.rows())
	p.text = layout.Rect{W: m.w, H: min(len(m.told(how, m.w)), max(room-leastList, 0))}
	left := room - p.text.H
	if m.view == viewFold || m.view == viewPull {
		p.list = layout.Rect{Y: p.text.H, W: m.w, H: left}
		return p
	}
	high := min(rows, max(left*11/20, leastList))
	if left-high < leastDraw {
		high = left
	}
	p.list = layout.Rect{Y: p.text.H, W: m.w, H: high}
	p.drawing = layout.Rect{Y: p.text.H + high, W: m.w, H: left - high}
	return p
}

// told are texts as they stand above the rows.
func (m *Model) told(texts []string, w int) []string {
	var out []string
	for _, t := range texts {
		out = append(out, layout.Paragraph(t, w, 8, m.o.Styles.Text)...)
	}
	return out
}

// View draws exactly the size that was set.
func (m *Model) View() string {
	if m.w == 0 || m.h == 0 {
		return ""
	}
	if m.view == viewPhoto {
		return strings.Join(layout.Fit(m.picker.Lines(m.w), m.w, m.h), "\n")
	}
	p := m.arrange()
	left := layout.Fit(m.told(m.howTo(), p.text.W), p.text.W, p.text.H)
	left = append(left, layout.Fit(m.listed(p.list), p.list.W, p.list.H)...)
	drawing := layout.Fit(m.drawing(p.drawing.W, p.drawing.H), p.drawing.W, p.drawing.H)
	var out []string
	if p.drawing.X > 0 {
		out = layout.Beside(left, drawing)
	} else {
		out = append(left, drawing...)
	}
	out = append(out, m.says()...)
	return strings.Join(layout.Fit(out, m.w, m.h), "\n")
}

// nameWide is how wide the names of the rows stand.
func (m *Model) nameWide(rows []row, w int) int {
	wide := 0
	for _, r := range rows {
		wide = max(wide, ansi.StringWidth(r.name))
	}
	return min(wide+2, max(w/2-marginWide, 8))
}

// listed are the rows in sight.
func (m *Model) listed(at layout.Rect) []string {
	rows := m.rows()
	names := m.nameWide(rows, at.W)
	from, to := m.list.Shown()
	var out []string
	for i := from; i < min(to, len(rows)); i++ {
		r := rows[i]
		margin := ""
		if i == from || rows[i-1].group != r.group {
			margin = r.group
		}
		lead := "  "
		if i == m.list.At {
			lead = "> "
		}
		text := layout.Line(r.name, names)
		switch {
		case i == m.list.At && m.entry != nil:
			text += m.entry.Short(at.W-marginWide-2-names-len(r.unit)-2, m.o.Styles.Figure) + " " + r.unit
		case r.value != "":
			text += strings.TrimSpace(r.value + " " + r.unit)
		}
		if i == m.list.At && m.entry == nil {
			text = m.o.Styles.Chosen.Render(layout.Line(text, max(at.W-marginWide-3, 1))) + " "
		}
		out = append(out, m.o.Styles.Quiet.Render(layout.Line(margin, marginWide))+lead+text)
	}
	if m.hides(at.H) {
		more := plain.Many(from, "line") + " above: PgUp"
		if below := len(rows) - to; below > 0 {
			more = plain.Many(below, "more line") + ": PgDn"
		}
		out = append(out, m.o.Styles.Quiet.Render(layout.Ends("", more, at.W)))
	}
	return out
}

// says is what is to be known: what is wrong, how far a placing is, what became of it, how
// the row in hand is meant.
func (m *Model) says() []string {
	st := m.o.Styles
	r, _ := m.row()
	switch {
	case m.entry != nil && m.entry.Err() != nil:
		return layout.Paragraph("! "+term.Plain(m.entry.Err().Error()), m.w, sayRows, st.Warn)
	case m.job != nil:
		return layout.Paragraph(m.job.Progress(), m.w, sayRows, st.Strong)
	case m.rack.Wrong() != "":
		return layout.Paragraph("! "+m.rack.Wrong(), m.w, sayRows, st.Warn)
	case m.view == viewAll && m.laid != nil && m.entry == nil:
		return m.verdict()
	}
	return layout.Paragraph(r.hint, m.w, sayRows, st.Quiet)
}

// verdict is what became of the placing: whether it fits, what is missing, what is used.
func (m *Model) verdict() []string {
	st, u := m.o.Styles, m.snap.Unit
	style := st.Good
	if !m.laid.Result.Fits() {
		style = st.Warn
	}
	out := layout.Paragraph(m.laid.Verdict(), m.w, 1, style)
	if missing := m.laid.Missing(u); len(missing) > 0 {
		out = append(out, layout.Paragraph(strings.Join(missing, "; "), m.w, 1, st.Warn)...)
	}
	if i := m.shown; i < len(m.laid.Result.Uses) {
		text := m.laid.Used(m.laid.Result.Uses[i], u)
		if n := len(m.laid.Result.Uses); n > 1 {
			text += " (→ the next piece)"
		}
		out = append(out, layout.Paragraph(term.Plain(text), m.w, sayRows-len(out), st.Quiet)...)
	}
	return out
}
