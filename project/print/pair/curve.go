package pair

import (
	"math"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/places"
	"chape/project/print/letters"
	"chape/project/print/sheet"
	"chape/project/versions"
)

// How the difference is drawn: letters, the room of the figures at the left, of the names
// below, and what its height shows at least, mm.
const (
	small     = 2.5
	gutter    = 20
	nameRows  = 2
	nameRow   = 1.3 * small
	leastSpan = 2
)

// difference draws how much the later pattern's stitch line lies further from the fold, in
// w by h: along the fold to the right, wider up, on scales of their own. Without a stretch
// in common the drawing is empty.
func difference(p versions.Pair, u length.Unit, w, h float64) (d sheet.Drawing) {
	g := p.Difference()
	n := len(g.X)
	if n < 2 {
		return d
	}
	most, least := g.Max(), -g.Neg().Max()
	most, least = math.Max(most, 0), math.Min(least, 0)
	if more := leastSpan - (most - least); more > 0 {
		most, least = most+more/2, least-more/2
	}
	high := h - nameRows*nameRow - small
	x := func(mm float64) float64 { return gutter + (mm-g.X[0])/(g.X[n-1]-g.X[0])*(w-gutter) }
	y := func(mm float64) float64 { return small/2 + (most-mm)/(most-least)*high }

	d.Line(sheet.MapLayer, sheet.Hair, curve.Vec{X: gutter, Y: y(0)}, curve.Vec{X: w, Y: y(0)})
	for _, mm := range []float64{most, 0, least} {
		if mm == 0 || math.Abs(y(mm)-y(0)) > small {
			d.Text(sheet.Text{Layer: sheet.WordLayer, At: curve.Vec{X: gutter - 2, Y: y(mm) + small/3}, Says: signedWords(mm, u), Size: small, Anchor: sheet.End})
		}
	}
	var line curve.Line
	for i := range g.X {
		line = append(line, curve.Vec{X: x(g.X[i]), Y: y(g.Y[i])})
	}
	d.Path(sheet.Path{Layer: sheet.MapLayer, Stroke: sheet.Wide, Pts: sheet.Thinned(line, false)})
	names(&d, p, x, y(0), small+high, w)
	return d
}

// names ticks what can be found on the knife on the zero line, and calls it by its name
// below, where it has room in one of the rows.
func names(d *sheet.Drawing, p versions.Pair, x func(float64) float64, zero, top, w float64) {
	var end [nameRows]float64 // how far each row is written
	for _, q := range places.Of(p.Is.Project()) {
		if at := x(q.At); at >= gutter-0.01 && at <= w+0.01 {
			d.Line(sheet.MapLayer, sheet.Hair, curve.Vec{X: at, Y: zero - 1}, curve.Vec{X: at, Y: zero + 1})
			wide := small * letters.Width(q.Name, false)
			left := math.Max(0, math.Min(at-wide/2, w-wide))
			for row := range end {
				if q.Name != "" && left >= end[row] {
					d.Text(sheet.Text{Layer: sheet.WordLayer, At: curve.Vec{X: left, Y: top + nameRow*float64(row+1)}, Says: q.Name, Size: small})
					end[row] = left + wide + small
					break
				}
			}
		}
	}
}

// signedWords is a difference in words: "+2 mm wider".
func signedWords(mm float64, u length.Unit) string {
	text := versions.Signed(mm, u, length.Calliper)
	switch {
	case text == versions.Signed(0, u, length.Calliper):
		return "0"
	case mm < 0:
		return text[1:] + " narrower"
	}
	return text[1:] + " wider"
}
