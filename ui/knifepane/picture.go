package knifepane

import (
	"strconv"

	"chape/calc"
	"chape/ui/draw"
	"chape/ui/form"
	"chape/ui/layout"
	"chape/ui/term/ink"
)

// Where the pane has the screen to itself it shows a small drawing, too, which follows
// each keystroke; where the plan stands beside it there is no need.
const (
	alone        = 60 // from this width on
	leastPicture = 22 // cells wide
	leastUnder   = 7  // lines high, under the rows
	mostPicture  = 16 // lines high
	apart        = 2
	formWidth    = nameWidth + wholes + parts + 6
)

// pictured tells whether the page has a drawing, with the room for it beside the rows
// (wide cells) or under them.
func (m *Model) pictured() (beside int, ok bool) {
	if m.width < alone || m.snap.Plan == nil || m.page == form.Order {
		return 0, false
	}
	if m.page == form.Trial {
		return 0, true // its notes need the width
	}
	return m.width - m.rowsWidth() - apart, true
}

// rowsWidth is what the rows of the page take at least.
func (m *Model) rowsWidth() int {
	w := formWidth
	for _, r := range m.rows {
		if r.List != "" && r.IsHeading() {
			w = max(w, m.tableWidth(r.List))
		}
	}
	return min(w, m.width)
}

// wide is the width that the rows have.
func (m *Model) wide() int {
	if beside, ok := m.pictured(); ok && beside >= leastPicture {
		return m.width - beside - apart
	}
	return m.width
}

// withPicture sets the drawing beside the rows or, where that leaves no room, under them.
func (m *Model) withPicture(rows []string) []string {
	beside, ok := m.pictured()
	switch {
	case !ok:
		return rows
	case beside >= leastPicture:
		picture := layout.Fit(m.picture(beside, min(len(rows), mostPicture)), beside, len(rows))
		return layout.Beside(layout.Fit(rows, m.width-beside, len(rows)), picture)
	}
	free := len(rows) - len(m.rows)
	if free < leastUnder {
		return rows
	}
	high := min(free-1, mostPicture)
	return append(rows[:len(rows)-high], m.picture(m.width, high)...)
}

// picture draws the closed sheath with the knife in it, or the half of the pattern where
// the page is about the leather.
func (m *Model) picture(w, h int) []string {
	if w <= 0 || h <= 0 {
		return nil
	}
	shape := draw.Closed
	if m.page == form.Sheath || m.page == form.Loop {
		shape = draw.Half
	}
	g, cust, plan := m.snap.Font.Glyphs, m.snap.Project.Customer, m.snap.Plan
	m.c.SetAspect(m.snap.Font.Aspect)
	m.c.Reset(w, h, g)
	sheet := draw.Lay(m.c, g, plan, shape, calc.BackIsRight(cust.Hand, cust.Edge, calc.GrainUp))
	var mark *draw.Mark
	if s := plan.Input.Knife.Stations; m.row().List == "mark" && m.snap.Mark < len(s) {
		mark = &draw.Mark{At: s[m.snap.Mark].At.MM(), Label: strconv.Itoa(m.snap.Mark + 1)}
	}
	sheet.Draw(m.c, plan, mark)
	pens := m.Styles.Pens()
	if m.snap.Stale {
		for i := range pens {
			pens[i] = pens[ink.PenQuiet]
		}
	}
	return m.c.Render(pens)
}
