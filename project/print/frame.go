package print

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/report"
)

// What the frame of a sheet at true size takes, mm.
const (
	leftStrip   = 9.0
	scaleStrip  = 24.0 // pricks and rule, above the words
	pricksApart = 100.0
	prickRadius = 1.2

	nameSize  = 3.2 // of the letters of a sheet's name
	frameSize = 2.6 // of the other words
	frameLine = 3.4
)

// page is one page in millimetres as measured on paper, from the upper left
// corner of what may be printed on.
type page struct {
	name string
	d    drawing
}

// below gives the lines of words under the scale; on narrow paper the sheet's
// name is the first.
func (j *job) below(name string, words []string) []string {
	w, _ := j.o.Paper.area(j.o.Correction)
	lines := []string{j.heading(frameSize, w-4)}
	if len(j.beside(name)) == 0 {
		words = append([]string{name}, words...)
	}
	for _, s := range words {
		lines = append(lines, wrap(printable(s), frameSize, w-4, false)...)
	}
	return lines
}

// beside gives the lines of a sheet's name right of the pricks, if there is
// room for it.
func (j *job) beside(name string) []string {
	w, _ := j.o.Paper.area(j.o.Correction)
	lines := wrap(printable(name), nameSize, w-pricksApart-12, true)
	if len(lines) > 3 {
		return nil
	}
	return lines
}

// tile gives the room that sheets of a title and with such words have for the
// drawing.
func (j *job) tile(title string, words []string) (w, h float64) {
	w, h = j.o.Paper.area(j.o.Correction)
	longest := sheetName(title, sheet{row: 88, col: 88, number: 888}, 888)
	return w - leftStrip, h - scaleStrip - frameLine*float64(len(j.below(longest, words))) - 1
}

func sheetName(title string, s sheet, all int) string {
	if all == 1 {
		return title
	}
	return fmt.Sprintf("%s, sheet %d of %d: %s", title, s.number, all, s.name())
}

// sheets cuts a drawing up and gives each sheet its frame.
func (j *job) sheets(title string, d *drawing, words []string, zones []zone) ([]page, tiling) {
	w, h := j.tile(title, words)
	t := cutUp(d, w, h)
	var pages []page
	for _, s := range t.sheets {
		p := page{name: sheetName(title, s, len(t.sheets))}
		on := t.onSheet(d, s)
		on.settle(s.area)
		on.label(s.area)
		on.put(zones, s.area)
		move := curve.Vec{X: leftStrip}.Sub(s.area.lo)
		if j.trial() {
			p.d.add(notForLeather(s.area), move)
		}
		p.d.add(on, move)
		j.frame(&p, h, words)
		pages = append(pages, p)
	}
	return pages, t
}

// frame draws the pricks, the rule and the words of a sheet at true size below
// a drawing so high.
func (j *job) frame(p *page, high float64, words []string) {
	d := &p.d
	corner := curve.Vec{X: 4, Y: high + 7}
	for _, v := range []curve.Vec{corner, corner.Add(curve.Vec{X: pricksApart}), corner.Sub(curve.Vec{Y: pricksApart})} {
		d.circle(circle{scaleLayer, hair, v, prickRadius})
		d.line(scaleLayer, hair, v.Sub(curve.Vec{X: 2}), v.Add(curve.Vec{X: 2}))
		d.line(scaleLayer, hair, v.Sub(curve.Vec{Y: 2}), v.Add(curve.Vec{Y: 2}))
	}
	apart := length.Length(pricksApart).Format(length.Millimetres, length.Ruler)
	d.text(text{layer: scaleLayer, at: corner.Add(curve.Vec{X: 50, Y: 0.8}), s: "set your dividers here: " + apart, size: wordSize, anchor: middle})
	d.text(text{layer: scaleLayer, at: corner.Add(curve.Vec{X: 0.8, Y: -50}), s: "set your dividers here: " + apart, size: wordSize, anchor: middle, angle: math.Pi / 2})
	rule(d, corner.Add(curve.Vec{Y: 6}))
	for i, s := range j.beside(p.name) {
		d.text(text{layer: wordLayer, at: corner.Add(curve.Vec{X: pricksApart + 6, Y: 1 + 4*float64(i)}), s: s, size: nameSize, bold: true})
	}
	for i, s := range j.below(p.name, words) {
		d.text(text{layer: wordLayer, at: curve.Vec{X: 2, Y: high + scaleStrip + frameLine*float64(i)}, s: s, size: frameSize})
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
	if j.tracing {
		return fit(j.title(), size, width, false)
	}
	rest := fmt.Sprintf(" · revision %d", j.p.Revision)
	if j.dated {
		rest += " · " + j.o.Date.Format("2 January 2006")
	}
	return fit(j.title(), size, width-textWidth(rest, false)*size, false) + rest
}

func (j *job) title() string {
	switch t := strings.TrimSpace(printable(j.p.Title)); t {
	case "":
		return "(no title)"
	case lacking:
		return "(a title that can't be printed)"
	default:
		return t
	}
}

// scaleWords say how to print and to check the print.
func (j *job) scaleWords() string {
	s := "Print at 100 %, no scaling, no fitting to the page; check with your dividers before you cut."
	if c := j.o.Correction; c.Set() {
		s += fmt.Sprintf(" Corrected for a printer that gave %s mm for 100 × 100 mm.", c)
	}
	return s
}

// String gives both measurements in mm: "98.5 × 101.2".
func (c Correction) String() string { return millimetres(c.X) + " × " + millimetres(c.Y) }

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
		if j.plan.Flat.Drain != nil {
			s += "; the drain hole belongs to the back half only"
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
