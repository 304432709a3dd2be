package print

import (
	"fmt"
	"math"

	"chape/calc/curve"
)

// overview is the first page: what there is, how the sheets go together, and
// what the lines mean.
func (j *job) overview(pattern *drawing, t tiling, rest []page) page {
	w, h := j.o.Paper.area(j.o.Correction)
	f := newFlow(j, "How the sheets go together", 1)
	f.big(j.title(), 3)
	date := ""
	if j.dated {
		date = j.o.Date.Format("2 January 2006")
	}
	customer := ""
	if j.p.Customer.Name != "" {
		customer = "for " + j.p.Customer.Name
	}
	f.para(joined(fmt.Sprintf("revision %d", j.p.Revision), date, customer), 3, 0)
	if lacksLetters(j.written()...) {
		f.para("The sheets leave out some letters that their font does not have: … stands for them. The project file has them.", 2.7, 0)
	}
	f.gap(2)
	top := f.y
	mapHeight := h * 0.36
	m := overviewMap(pattern, t, w, mapHeight)
	f.page().add(m, curve.Vec{Y: top})
	f.y += mapHeight + 3
	if j.trial() {
		f.para(j.looseWords(), 3.2, 0)
	}
	f.heading("putting the sheets together")
	for _, s := range j.howTo(t) {
		f.item("–", s)
	}
	f.heading("lines")
	f.legend()
	f.heading("pages")
	f.para(contents(rest), 2.7, 0)
	return f.pages[0]
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

func (j *job) howTo(t tiling) []string {
	out := []string{j.scaleWords()}
	if len(t.sheets) > 1 {
		out = append(out, "Each joint has a letter and two marks. Trim one sheet along the dotted line, lay it on its neighbour so that the marks of the same name lie on each other (hold both to the light), and tape.")
	}
	return append(out, j.sideWords(), j.looseWords())
}

// overviewMap shows the sheets over the pattern, made small.
func overviewMap(pattern *drawing, t tiling, w, h float64) drawing {
	scale := math.Min(w/t.whole.width(), h/t.whole.height())
	off := curve.Vec{X: (w - scale*t.whole.width()) / 2}
	small := func(v curve.Vec) curve.Vec { return v.Sub(t.whole.lo).Mul(scale).Add(off) }
	var d drawing
	for _, p := range pattern.paths {
		if p.layer != cutLayer && p.layer != foldLayer {
			continue
		}
		p.name, p.layer = "", mapLayer
		pts := make(curve.Line, len(p.pts))
		for i, v := range p.pts {
			pts[i] = small(v)
		}
		p.pts, p.stroke.width = pts, 0.3
		d.path(p)
	}
	for _, s := range t.sheets {
		b := box{small(s.area.lo), small(s.area.hi)}
		d.path(path{layer: mapLayer, stroke: hair, pts: b.corners(), closed: true})
		size := math.Min(6, b.width()/10)
		at := b.lo.Add(curve.Vec{X: 1.2 * size, Y: scale*overlap + 1.5*size})
		d.circle(circle{mapLayer, thin, at.Sub(curve.Vec{Y: 0.35 * size}), 0.9 * size})
		d.text(text{layer: mapLayer, at: at, s: fmt.Sprint(s.number), size: size, bold: true, anchor: middle})
		if b.width() > 18 {
			name := text{layer: mapLayer, at: at.Add(curve.Vec{X: -0.9 * size, Y: 0.9*size + 1.6}), s: s.name(), size: 2}
			if !name.crossed(d.paths) { // the list of pages has it too
				d.text(name)
			}
		}
	}
	for _, g := range t.joints {
		for _, m := range g.marks {
			d.circle(circle{mapLayer, hair, small(m), 0.5})
		}
		at := small(g.on[0].Add(g.on[1]).Mul(0.5))
		d.text(text{layer: mapLayer, at: at.Add(curve.Vec{Y: 0.8}), s: g.name, size: 2.4, bold: true, anchor: middle})
	}
	return d
}

// contents lists the pages by number.
func contents(rest []page) string {
	s := ""
	for i, p := range rest {
		if i > 0 {
			s += "; "
		}
		s += fmt.Sprintf("%d %s", i+2, p.name)
	}
	return s
}

// legend shows a piece of each line with its words.
func (f *flow) legend() {
	for _, l := range []struct {
		s    stroke
		says string
	}{
		{wide, "cut: the middle of the line"},
		{dashed, "stitch line; a cross is a hole, every tenth has a ring and its number from the mouth"},
		{thin, "glue line: the welt lies from here outwards; roughen and cement no further in"},
		{dashDot, "fold"},
		{dotted, "joint of two sheets: trim one of them here"},
	} {
		lines := wrap(printable(l.says), 2.7, f.width-26, false)
		f.need(3.8)
		f.page().line(mapLayer, l.s, curve.Vec{X: f.x(), Y: f.y + 2}, curve.Vec{X: f.x() + 22, Y: f.y + 2})
		for _, s := range lines {
			f.need(3.8)
			f.put(26, s, 2.7, false, start)
			f.y += 3.8
		}
	}
}
