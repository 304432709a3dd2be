// Package pair prints two patterns of a project laid over each other, with a table of how
// they differ.
package pair

import (
	"fmt"
	"math"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/print/card"
	"chape/project/print/folder"
	"chape/project/print/letters"
	"chape/project/print/pdf"
	"chape/project/print/sheet"
	"chape/project/versions"
)

// Options say how to print: paper, and what corrects the printer.
type Options struct {
	Paper      sheet.Paper
	Correction sheet.Correction
}

// File is the comparison as a file: "orchard patterns 2 and 3.pdf". The errors are those
// of the options.
func File(p versions.Pair, o Options, base string, u length.Unit) (folder.File, error) {
	if o.Paper.Width == 0 {
		o.Paper = sheet.Papers[0]
	}
	if err := o.Paper.Check(); err != nil {
		return folder.File{}, err
	}
	if err := o.Correction.Check(); err != nil {
		return folder.File{}, err
	}
	doc := pdf.Document{Paper: o.Paper, Correction: o.Correction, Date: pdf.DateOr(p.Is.Printed), Title: title(p),
		Subject: p.Was.Name() + " and " + p.Is.Name(), Pages: pages(p, o, u)}
	data, err := doc.Bytes(true)
	return folder.File{Name: folder.Name(base, fmt.Sprintf(" patterns %d and %d.pdf", p.Was.Number, p.Is.Number)), Data: data}, err
}

func title(p versions.Pair) string {
	if t := letters.Printable(p.Is.Project().Title); t != "" {
		return t
	}
	return "(no title)"
}

func pages(p versions.Pair, o Options, u length.Unit) []sheet.Page {
	w, h := o.Paper.Area(o.Correction)
	f := sheet.NewFlow(w, h, "Two patterns", 1, func(size, width float64) string {
		return letters.Fit(title(p), size, width, false)
	})
	f.Big(title(p), 2)
	f.Para("Thin: "+p.Was.Name()+". Heavy: "+p.Is.Name()+".", 3, 0)
	f.Para(p.Most(u)+".", 3, 0)
	f.Gap(2)
	high := h * 0.36
	d, scale := overlay(p, w, high)
	f.Page().Add(d, curve.Vec{Y: f.Y})
	f.Y += d.Bounds().Hi.Y + 2
	f.Para(fmt.Sprintf("Drawn at 1 : %.2f, not to cut by.", 1/scale), 2.7, 0)
	const tall = 42
	if d := difference(p, u, w, tall); len(d.Paths) > 0 {
		f.Need(tall + 9)
		f.Para("How much further from the fold the stitch line of the heavy one lies, along the fold, "+u.String()+":", 2.7, 0)
		f.Gap(1)
		f.Page().Add(d, curve.Vec{Y: f.Y})
		f.Y += tall + 2
	}
	card.Table(f, p.HalfWidths(u), 1)
	if t := p.Figures(u); len(t.Rows) > 0 {
		card.Table(f, t, 1)
	}
	return f.Pages
}

// overlay draws both patterns, the mouth to the right, as large as w by h allows; scale is
// millimetres on paper to one of the pattern.
func overlay(p versions.Pair, w, h float64) (d sheet.Drawing, scale float64) {
	lo, hi := p.IsPlan.Flat.Outline.Bounds()
	a, b := p.WasPlan.Flat.Outline.Bounds()
	lo, hi = curve.Vec{X: math.Min(lo.X, a.X), Y: math.Min(lo.Y, a.Y)}, curve.Vec{X: math.Max(hi.X, b.X), Y: math.Max(hi.Y, b.Y)}
	cust, turn := p.Is.Project().Customer, -1.0
	if calc.BackIsRight(cust.Hand, cust.Edge, calc.GrainUp) { // right of the fold, mouth up: below it here
		turn = 1
	}
	scale = math.Min(1, math.Min(w/(hi.X-lo.X), h/(hi.Y-lo.Y)))
	left := (w - scale*(hi.X-lo.X)) / 2
	at := func(l curve.Line) curve.Line {
		out := make(curve.Line, len(l))
		for i, v := range l {
			y := v.Y - lo.Y
			if turn < 0 {
				y = hi.Y - v.Y
			}
			out[i] = curve.Vec{X: left + scale*(v.X-lo.X), Y: scale * y}
		}
		return out
	}
	plan := func(q *calc.Plan, cut, stitch sheet.Stroke) {
		d.Path(sheet.Path{Layer: sheet.MapLayer, Stroke: cut, Pts: at(sheet.Thinned(q.Flat.Outline, true)), Closed: true})
		line := sheet.Thinned(q.Flat.Stitch, false)
		d.Path(sheet.Path{Layer: sheet.MapLayer, Stroke: stitch, Pts: at(line)})
		other := make(curve.Line, len(line))
		for i, v := range line {
			other[i] = curve.Vec{X: v.X, Y: -v.Y}
		}
		d.Path(sheet.Path{Layer: sheet.MapLayer, Stroke: stitch, Pts: at(other)})
	}
	plan(p.WasPlan, sheet.Hair, sheet.Hair)
	plan(p.IsPlan, sheet.Wide, sheet.Dashed)
	fold := curve.Line{p.IsPlan.Flat.Cut[0], {X: p.IsPlan.Flat.Mouth[0].X}}
	d.Path(sheet.Path{Layer: sheet.MapLayer, Stroke: sheet.DashDot, Pts: at(fold)})
	return d, scale
}
