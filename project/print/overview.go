package print

import (
	"fmt"
	"math"

	"chape/calc/curve"
	"chape/project/print/letters"
	"chape/project/print/sheet"
	"chape/project/report"
)

// overview is the first page: what there is, how the sheets go together, and
// what the lines mean.
func (j *job) overview(pattern *sheet.Drawing, t sheet.Tiling, rest []sheet.Page) sheet.Page {
	w, h := j.o.Paper.Area(j.o.Correction)
	f := j.flow("How the sheets go together", 1)
	f.Big(j.title(), 3)
	date := ""
	if j.dated {
		date = j.o.Date.Format("2 January 2006")
	}
	customer := ""
	if j.p.Customer.Name != "" {
		customer = "for " + j.p.Customer.Name
	}
	f.Para(letters.Joined(fmt.Sprintf("pattern %d", j.p.Revision), date, customer), 3, 0)
	if letters.Lacks(j.written()...) {
		f.Para("The sheets leave out some letters that their font does not have: … stands for them. The project file has them.", 2.7, 0)
	}
	for _, s := range report.Warnings(j.plan, j.p.Units) {
		f.Gap(1)
		f.Bold(s, 3)
	}
	f.Gap(2)
	top := f.Y
	mapHeight := h * 0.36
	m := overviewMap(pattern, t, w-2*rim, mapHeight)
	f.Page().Add(m, curve.Vec{X: rim, Y: top})
	f.Y += mapHeight + 3
	if j.trial() {
		f.Para(j.looseWords(), 3.2, 0)
	}
	f.Heading("putting the sheets together")
	for _, s := range j.howTo(t) {
		f.Item("–", s)
	}
	f.Heading("lines")
	legendPage(f, j.lines(rest))
	f.Heading("pages")
	for _, line := range contents(rest, 2.7, f.Width) {
		f.Para(line, 2.7, 0)
	}
	return f.Pages[0]
}

// written is what the maker has put into words, as far as the sheets say it.
func (j *job) written() []string {
	out := []string{j.p.Title, j.p.Customer.Name}
	if j.trial() {
		return out // no cards
	}
	out = append(out, j.p.Notes)
	for _, s := range j.p.Steps {
		out = append(out, s.Title, s.Caution)
	}
	return out
}

func (j *job) howTo(t sheet.Tiling) []string {
	out := []string{j.scaleWords()}
	if len(t.Sheets) > 1 {
		out = append(out, "Each joint has a letter and two marks. Trim one sheet along the dotted line, lay it on its neighbour so that the marks of the same name lie on each other (hold both to the light), and tape.")
	}
	return append(out, j.sideWords(), j.looseWords())
}

// overviewMap shows the sheets over the pattern, made small.
func overviewMap(pattern *sheet.Drawing, t sheet.Tiling, w, h float64) sheet.Drawing {
	scale := math.Min(w/t.Whole.Width(), h/t.Whole.Height())
	off := curve.Vec{X: (w - scale*t.Whole.Width()) / 2}
	small := func(v curve.Vec) curve.Vec { return v.Sub(t.Whole.Lo).Mul(scale).Add(off) }
	var d sheet.Drawing
	for _, p := range pattern.Paths {
		if p.Layer != sheet.CutLayer && p.Layer != sheet.FoldLayer {
			continue
		}
		p.Name, p.Layer = "", sheet.MapLayer
		pts := make(curve.Line, len(p.Pts))
		for i, v := range p.Pts {
			pts[i] = small(v)
		}
		p.Pts, p.Stroke.Width = pts, 0.3
		d.Path(p)
	}
	outline := len(d.Paths)
	for _, s := range t.Sheets {
		b := sheet.Box{Lo: small(s.Area.Lo), Hi: small(s.Area.Hi)}
		d.Path(sheet.Path{Layer: sheet.MapLayer, Stroke: sheet.Hair, Pts: b.Corners(), Closed: true})
		size := math.Min(6, b.Width()/10)
		at := ringAt(b, size, scale*sheet.Overlap, d.Paths[:outline])
		d.Circle(sheet.Circle{Layer: sheet.MapLayer, Stroke: sheet.Thin, At: at.Sub(curve.Vec{Y: 0.35 * size}), Radius: 0.9 * size})
		d.Text(sheet.Text{Layer: sheet.MapLayer, At: at, Says: fmt.Sprint(s.Number), Size: size, Bold: true, Anchor: sheet.Middle})
		if b.Width() > 18 {
			name := sheet.Text{Layer: sheet.MapLayer, At: at.Add(curve.Vec{X: -0.9 * size, Y: 0.9*size + 1.6}), Says: s.Name(), Size: 2.5}
			if !name.Crossed(d.Paths) { // the list of pages has it too
				d.Text(name)
			}
		}
	}
	for _, g := range t.Joints {
		for _, m := range g.Marks {
			d.Circle(sheet.Circle{Layer: sheet.MapLayer, Stroke: sheet.Hair, At: small(m), Radius: 0.5})
		}
		at := small(g.On[0].Add(g.On[1]).Mul(0.5))
		d.Text(sheet.Text{Layer: sheet.MapLayer, At: at.Add(curve.Vec{Y: 0.8}), Says: g.Name, Size: 2.5, Bold: true, Anchor: sheet.Middle})
	}
	return d
}

// ringAt is where the number of a sheet stands in the map: in the first corner of the sheet
// that no line of the pattern runs through, else in the first.
func ringAt(b sheet.Box, size, overlap float64, lines []sheet.Path) curve.Vec {
	left, right := b.Lo.X+1.2*size, b.Hi.X-1.2*size
	top, foot := b.Lo.Y+overlap+1.5*size, b.Hi.Y-overlap-0.8*size
	at := curve.Vec{X: left, Y: top}
	for _, c := range []curve.Vec{at, {X: right, Y: top}, {X: left, Y: foot}, {X: right, Y: foot}} {
		middle, r := c.Sub(curve.Vec{Y: 0.35 * size}), curve.Vec{X: size, Y: size}
		if !runsThrough(lines, middle.Sub(r), middle.Add(r)) {
			return c
		}
	}
	return at
}

func runsThrough(lines []sheet.Path, lo, hi curve.Vec) bool {
	for _, p := range lines {
		for i, z := range p.Pts {
			a := p.Pts[max(i-1, 0)]
			if i == 0 && p.Closed {
				a = p.Pts[len(p.Pts)-1]
			}
			if _, _, ok := curve.Clip(a, z, lo, hi); ok {
				return true
			}
		}
	}
	return false
}

// contents lists the pages by number, in lines of a width, none torn from its number.
func contents(rest []sheet.Page, size, width float64) []string {
	var lines []string
	for i, p := range rest {
		one := fmt.Sprintf("%d %s", i+2, p.Name)
		if i < len(rest)-1 {
			one += ";"
		}
		n := len(lines) - 1
		if n >= 0 && letters.Width(lines[n]+" "+one, false)*size <= width {
			lines[n] += " " + one
			continue
		}
		lines = append(lines, one)
	}
	return lines
}
