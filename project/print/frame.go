package print

import (
	"fmt"
	"math"
	"strconv"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/report"
)

// What the frame of a sheet at true size takes, mm.
const (
	leftStrip   = 9.0
	bottomStrip = 42.0
	pricksApart = 100.0
	prickRadius = 1.2
)

// page is one page in millimetres as measured on paper, from the upper left
// corner of what may be printed on.
type page struct {
	name string
	d    drawing
}

// tile gives the room a page has for the drawing.
func (j *job) tile() (w, h float64) {
	w, h = j.o.Paper.area(j.o.Correction)
	return w - leftStrip, h - bottomStrip
}

// sheets cuts a drawing up and gives each sheet its frame.
func (j *job) sheets(title string, d *drawing, words []string, zones []zone) ([]page, tiling) {
	w, h := j.tile()
	t := cutUp(d, w, h)
	var pages []page
	for _, s := range t.sheets {
		name := title
		if len(t.sheets) > 1 {
			name = fmt.Sprintf("%s, sheet %d of %d: %s", title, s.number, len(t.sheets), s.name())
		}
		p := page{name: name}
		on := t.onSheet(d, s)
		on.label(s.area)
		on.put(zones, s.area)
		move := curve.Vec{X: leftStrip}.Sub(s.area.lo)
		if j.trial() {
			p.d.add(notForLeather(s.area), move)
		}
		p.d.add(on, move)
		j.frame(&p, words)
		pages = append(pages, p)
	}
	return pages, t
}

// frame draws the pricks, the rule and the words of a sheet at true size.
func (j *job) frame(p *page, words []string) {
	w, h := j.o.Paper.area(j.o.Correction)
	d := &p.d
	corner := curve.Vec{X: 4, Y: h - bottomStrip + 7}
	for _, v := range []curve.Vec{corner, corner.Add(curve.Vec{X: pricksApart}), corner.Sub(curve.Vec{Y: pricksApart})} {
		d.circle(circle{scaleLayer, hair, v, prickRadius})
		d.line(scaleLayer, hair, v.Sub(curve.Vec{X: 2}), v.Add(curve.Vec{X: 2}))
		d.line(scaleLayer, hair, v.Sub(curve.Vec{Y: 2}), v.Add(curve.Vec{Y: 2}))
	}
	apart := length.Length(pricksApart).Format(length.Millimetres, length.Ruler)
	d.text(text{layer: scaleLayer, at: corner.Add(curve.Vec{X: 50, Y: 0.8}), s: "set your dividers here: " + apart, size: wordSize, anchor: middle})
	d.text(text{layer: scaleLayer, at: corner.Add(curve.Vec{X: 0.8, Y: -50}), s: "set your dividers here: " + apart, size: wordSize, anchor: middle, angle: math.Pi / 2})
	rule(d, corner.Add(curve.Vec{Y: 6}))
	const large, small = 3.2, 2.6
	name := wrap(printable(p.name), large, w-corner.X-pricksApart-8, true)
	if len(name) > 3 { // narrow paper: below, with the other words
		name, words = nil, append([]string{p.name}, words...)
	}
	for i, s := range name {
		d.text(text{layer: wordLayer, at: corner.Add(curve.Vec{X: pricksApart + 6, Y: 1 + 4*float64(i)}), s: s, size: large, bold: true})
	}
	y := corner.Y + 17
	for _, s := range append([]string{j.heading(small, w-4)}, words...) {
		for _, l := range wrap(printable(s), small, w-4, false) {
			if y <= h-0.7 {
				d.text(text{layer: wordLayer, at: curve.Vec{X: 2, Y: y}, s: l, size: small})
			}
			y += 3.4
		}
	}
}

// rule draws 4 inches in eighths.
func rule(d *drawing, at curve.Vec) {
	d.line(scaleLayer, hair, at, at.Add(curve.Vec{X: 4 * 25.4}))
	for i := range 33 {
		tick := 1.2
		switch {
		case i%8 == 0:
			tick = 3.4
		case i%4 == 0:
			tick = 2.2
		}
		x := at.X + float64(i)*25.4/8
		d.line(scaleLayer, hair, curve.Vec{X: x, Y: at.Y}, curve.Vec{X: x, Y: at.Y + tick})
		if i%8 == 0 {
			s := strconv.Itoa(i / 8)
			if i == 32 {
				s += "″"
			}
			d.text(text{layer: scaleLayer, at: curve.Vec{X: x, Y: at.Y + 5.6}, s: s, size: 2, anchor: middle})
		}
	}
}

// heading is the line that tells one print from another, no wider than width
// at a size of letters: a long title is cut, never the revision or the date.
func (j *job) heading(size, width float64) string {
	rest := fmt.Sprintf(" · revision %d", j.p.Revision)
	if j.dated {
		rest += " · " + j.o.Date.Format("2 January 2006")
	}
	return fit(j.title(), size, width-textWidth(rest, false)*size, false) + rest
}

func (j *job) title() string {
	if t := printable(j.p.Title); t != "" {
		return t
	}
	return "(no title)"
}

// scaleWords say how to print and to check the print.
func (j *job) scaleWords() string {
	s := "Print at 100 %, no scaling, no fitting to the page; check with your dividers before you cut."
	if c := j.o.Correction; c.set() {
		s += fmt.Sprintf(" Corrected for a printer that gave %s × %s mm for 100 × 100 mm.", millimetres(c.X), millimetres(c.Y))
	}
	return s
}

// millimetres shows what was measured; 0 was not.
func millimetres(v float64) string {
	if v == 0 {
		v = 100
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// sideWords say which side is up and where the back half lies.
func (j *job) sideWords() string {
	side := "left"
	if j.facing(j.o.Up).back > 0 {
		side = "right"
	}
	s := fmt.Sprintf("%s, mouth up; for the %s: the back half lies %s of the fold.", capital(j.o.Up.String()), report.Worn(j.p), side)
	if j.o.Half {
		s += " Half pattern: mark this, flip it over the fold, mark the other half"
		if j.plan.Body.TabLength > 0 {
			s += "; the tab belongs to the back half only, the other ends at the mouth"
		}
		s += "."
	}
	return s
}

// looseWords keep a paper trial from spoiling a right pattern.
func (j *job) looseWords() string {
	if j.trial() {
		return fmt.Sprintf("TRIAL: not for cutting leather. Sized for trial stock %s mm thick, to fold round the knife with the welt in.", millimetres(j.o.Trial.MM()))
	}
	return fmt.Sprintf("In paper this hangs %s loose round the knife on each half; that is right, the leather's thickness takes it up.",
		j.show(report.Hang(j.plan, j.o.Stock)))
}

// notForLeather is what a trial is marked with, all over.
func notForLeather(b box) drawing {
	var d drawing
	const size, down, right = 5.0, 30.0, 95.0
	for row, y := 0, b.lo.Y+15; y < b.hi.Y; row, y = row+1, y+down {
		for x := b.lo.X + 40 + right/2*float64(row%2); x-right/2 < b.hi.X; x += right {
			d.text(text{layer: trialLayer, at: curve.Vec{X: x, Y: y}, s: "TRIAL: not for cutting leather", size: size, grey: true, angle: 0.25, anchor: middle})
		}
	}
	return d.clip(b)
}
