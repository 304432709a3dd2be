package earlierpage

import (
	"math"

	"chape/calc"
	"chape/calc/compare"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project"
	"chape/project/earlier"
	"chape/project/places"
	"chape/ui/draw"
	"chape/ui/layout"
)

// difference is the difference as a curve, a line of words above it. While some of it is
// taken over it is drawn along this knife, with what that takes dashed.
func (m *Model) difference(w, h int) []string {
	if w <= 0 || h <= 0 || len(m.rows) == 0 {
		return nil
	}
	u := m.snap.Unit
	d, of := draw.Difference{By: earlier.Curve(m.rows), Say: draw.Saying(u, length.Ruler, "short", "over")}, m.knife.Project
	says := "the difference, " + u.String() + ": above the line the plan is short, below it over"
	if m.entry != nil && m.entry.typed != nil {
		d.By, d.At, of = m.toTake, math.NaN(), m.snap.Project
		says = "what there is to take over along this knife, " + u.String() + "; dashed: what is taken"
		d.Taken = m.taking()
	} else {
		d.Dots, d.At = d.By.X, m.rows[min(m.list.At, len(m.rows)-1)].At
	}
	if len(d.By.X) > 0 {
		d.Lo, d.Hi = min(0, d.By.X[0]), max(of.Sheath.Mouth.MM(), d.By.X[len(d.By.X)-1])
	}
	d.Places = draw.NamesOf(places.Of(of))
	m.c.Reset(w, h-1, m.glyphs)
	d.Draw(m.c, m.glyphs)
	return append([]string{m.Styles.Quiet.Render(layout.Line(says, w))}, layout.Fit(m.c.Render(m.pens), w, h-1)...)
}

// taking is the sum of what is being taken over, along this knife.
func (m *Model) taking() (g curve.Graph) {
	fits := project.Project{Fits: m.fits}.Input(calc.Limits{}).Fits
	for x := 0.0; len(m.fits) > 0 && x <= m.snap.Project.Sheath.Mouth.MM(); x++ {
		g.X, g.Y = append(g.X, x), append(g.Y, compare.Sum(fits, x))
	}
	return g
}
