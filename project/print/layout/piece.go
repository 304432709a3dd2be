package layout

import (
	"fmt"
	"math"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/nest"
	"chape/project/print/letters"
	"chape/project/print/sheet"
)

// scales are the fractions of true size, the largest first.
var scales = []float64{4, 5, 8, 10, 20, 50}

// What stands round a drawing, mm.
const (
	headHigh = 22.0
	side     = 16.0 // room for dimensions, left and below
	numbers  = 3.0  // size of the parts' numbers
)

// piece is the page of one piece of leather.
func (j job) piece(u nest.Use) sheet.Page {
	w, h := j.o.Paper.Area(j.o.Correction)
	piece := j.laid.Task.Pieces[u.Piece]
	lo, hi := piece.Outline.Bounds()
	scale := scales[len(scales)-1]
	for i := len(scales) - 1; i >= 0; i-- {
		if (hi.X-lo.X)/scales[i] <= w-side-4 && (hi.Y-lo.Y)/scales[i] <= h-headHigh-side-12 {
			scale = scales[i]
		}
	}
	corner := curve.Vec{X: side, Y: headHigh + (hi.Y-lo.Y)/scale}
	at := func(v curve.Vec) curve.Vec {
		return curve.Vec{X: corner.X + (v.X-lo.X)/scale, Y: corner.Y - (v.Y-lo.Y)/scale}
	}
	p := sheet.Page{Name: "Parts on " + letters.Printable(piece.Name)}
	d := &p.Drawing
	j.head(d, fmt.Sprintf("%s, 1:%.0f, grain side up", p.Name, scale), w)
	flat(d, j.laid, u, at, numbers)
	d.Path(sheet.Path{Layer: sheet.MapLayer, Stroke: sheet.Dotted, Pts: sheet.Box{Lo: at(curve.Vec{X: u.Lo.X, Y: u.Hi.Y}), Hi: at(curve.Vec{X: u.Hi.X, Y: u.Lo.Y})}.Corners(), Closed: true})
	j.across(d, at(lo), at(curve.Vec{X: hi.X, Y: lo.Y}), 10, hi.X-lo.X)
	j.upright(d, at(lo), at(curve.Vec{X: lo.X, Y: hi.Y}), 10, hi.Y-lo.Y)
	if u.Hi.X-u.Lo.X < hi.X-lo.X-1 {
		j.across(d, at(curve.Vec{X: u.Lo.X, Y: lo.Y}), at(curve.Vec{X: u.Hi.X, Y: lo.Y}), 4, u.Hi.X-u.Lo.X)
	}
	if u.Hi.Y-u.Lo.Y < hi.Y-lo.Y-1 {
		j.upright(d, at(curve.Vec{X: lo.X, Y: u.Lo.Y}), at(curve.Vec{X: lo.X, Y: u.Hi.Y}), 4, u.Hi.Y-u.Lo.Y)
	}
	return p
}

// head is the top of a page: what it shows, and of what.
func (j job) head(d *sheet.Drawing, name string, w float64) {
	put := func(y, size float64, says string, bold bool) {
		d.Text(sheet.Text{Layer: sheet.WordLayer, At: curve.Vec{Y: y}, Says: letters.Fit(letters.Printable(says), size, w, bold), Size: size, Bold: bold})
	}
	put(5, 4.5, name, true)
	date := ""
	if !j.o.Date.IsZero() {
		date = ", " + j.o.Date.Format("2 January 2006")
	}
	put(10, 3, j.title+date, false)
	put(14.5, 3, j.laid.Verdict(), false)
}

// figure is a length on paper.
func (j job) figure(mm float64) string { return length.Length(mm).Figure(j.o.Unit, length.Ruler) }

// across draws a dimension so far below its two ends.
func (j job) across(d *sheet.Drawing, a, b curve.Vec, below, mm float64) {
	down := curve.Vec{Y: below}
	d.Line(sheet.ScaleLayer, sheet.Hair, a, a.Add(down).Add(curve.Vec{Y: 1.5}))
	d.Line(sheet.ScaleLayer, sheet.Hair, b, b.Add(down).Add(curve.Vec{Y: 1.5}))
	j.arrowed(d, a.Add(down), b.Add(down), curve.Vec{Y: 1})
	d.Text(sheet.Text{Layer: sheet.ScaleLayer, At: a.Add(b).Mul(0.5).Add(down).Add(curve.Vec{Y: -0.8}), Says: j.figure(mm), Size: 2.6, Anchor: sheet.Middle})
}

// upright draws a dimension so far left of its two ends.
func (j job) upright(d *sheet.Drawing, a, b curve.Vec, left, mm float64) {
	out := curve.Vec{X: -left}
	d.Line(sheet.ScaleLayer, sheet.Hair, a, a.Add(out).Add(curve.Vec{X: -1.5}))
	d.Line(sheet.ScaleLayer, sheet.Hair, b, b.Add(out).Add(curve.Vec{X: -1.5}))
	j.arrowed(d, a.Add(out), b.Add(out), curve.Vec{X: 1})
	d.Text(sheet.Text{Layer: sheet.ScaleLayer, At: a.Add(b).Mul(0.5).Add(out).Add(curve.Vec{X: -0.8}), Says: j.figure(mm), Size: 2.6, Anchor: sheet.Middle, Angle: math.Pi / 2})
}

// arrowed draws a dimension line with an oblique stroke at each end.
func (j job) arrowed(d *sheet.Drawing, a, b, across curve.Vec) {
	d.Line(sheet.ScaleLayer, sheet.Hair, a, b)
	along := curve.Vec{X: across.Y, Y: -across.X}
	tick := along.Add(across).Mul(0.9)
	for _, end := range []curve.Vec{a, b} {
		d.Line(sheet.ScaleLayer, sheet.Thin, end.Sub(tick), end.Add(tick))
	}
}

// list says where each part lies, by the two ends of its fold or of its middle.
func (j job) list(u nest.Use) []sheet.Page {
	w, h := j.o.Paper.Area(j.o.Correction)
	piece := j.laid.Task.Pieces[u.Piece]
	name := "Where they lie on " + letters.Printable(piece.Name)
	f := sheet.NewFlow(w, h, name, 1, func(size, width float64) string {
		return letters.Fit(letters.Printable(j.title), size, width, false)
	})
	unit := j.o.Unit
	f.Para(fmt.Sprintf("Places are in %s, from the lower left corner of the leather's smallest upright rectangle: along, up. A body is laid by its fold, other parts by the middle of their length.", map[length.Unit]string{length.Millimetres: "millimetres", length.Inches: "inches"}[unit]), 2.8, 0)
	f.Para(j.laid.Used(u, unit)+fmt.Sprintf("; %s between two parts at least.", length.Length(j.laid.Task.Gap).Format(unit, length.Ruler)), 2.8, 0)
	if piece.Fixed {
		const degree = math.Pi / 180
		f.Para(fmt.Sprintf("The grain runs at %.0f° to the lower edge; folds lie within %.0f° of it.", piece.Grain/degree, piece.Within/degree), 2.8, 0)
	}
	f.Gap(2)
	for i, p := range j.laid.On(u.Piece) {
		f.Item(fmt.Sprint(i+1), j.laid.Where(p, unit))
	}
	for _, m := range j.laid.Missing(unit) {
		f.Item("!", m)
	}
	return f.Pages
}
