package print

import (
	"fmt"
	"math"
	"strings"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/print/letters"
	"chape/project/print/sheet"
	"chape/project/report"
)

// What the frame of a sheet at true size takes, mm.
const (
	leftStrip  = 9.0
	scaleStrip = 24.0 // pricks and rule, above the words

	nameSize  = 3.2 // of the letters of a sheet's name
	frameSize = 2.6 // of the other words
	frameLine = 3.4
)

// piece is what a run of sheets at true size shows.
type piece struct {
	name   string
	letter string // of its joints: no two are alike in one print
	cutBy  bool   // leather is cut by it
}

// said is a line of words.
type said struct {
	says string
	bold bool
}

// below gives the lines of words under the scale; on narrow paper the sheet's
// name is the first. What warns stands in bold where leather is cut by the sheet.
func (j *job) below(p piece, name string, words []string, warnings int) []said {
	w, _ := j.o.Paper.Area(j.o.Correction)
	lines := []said{{j.heading(frameSize, w-4), false}}
	add := func(s string, bold bool) {
		for _, l := range letters.Wrap(letters.Printable(s), frameSize, w-4, bold) {
			lines = append(lines, said{l, bold})
		}
	}
	if len(j.beside(name)) == 0 {
		add(name, true)
	}
	if p.cutBy {
		for _, s := range j.warned(warnings) {
			add(s, true)
		}
	}
	for _, s := range words {
		add(s, false)
	}
	return lines
}

// warned are the warnings as a sheet says them, so many at most; the first page has all.
func (j *job) warned(most int) []string {
	all := report.Warnings(j.plan, j.p.Units)
	switch more := len(all) - most; {
	case more <= 0:
		return all
	case most == 0:
		return []string{"warned of on page 1: read that before you cut"}
	default:
		return append(all[:most:most], fmt.Sprintf("and %d more: see page 1", more))
	}
}

// beside gives the lines of a sheet's name right of the pricks, if there is
// room for it.
func (j *job) beside(name string) []string {
	w, _ := j.o.Paper.Area(j.o.Correction)
	lines := letters.Wrap(letters.Printable(name), nameSize, w-sheet.PricksApart-12, true)
	if len(lines) > 3 {
		return nil
	}
	return lines
}

// rim keeps the strokes of a sheet inside what may be printed on, mm.
const rim = 0.3

// tile is the room that a sheet has for the drawing, and for what else.
type tile struct {
	w, h     float64
	legend   bool
	warnings int
}

// tile shares out the sheets of a piece. Small paper has no room for the legend, which the
// first page has as well, or for all warnings.
func (j *job) tile(p piece, words []string, all []sign) tile {
	const least = sheet.PricksApart - 4 // so high is what stands above the words
	w, h := j.o.Paper.Area(j.o.Correction)
	longest := sheetName(p.name, sheet.Sheet{Row: 88, Col: 88, Number: 888}, 888)
	var t tile
	for _, t = range []tile{{legend: true, warnings: 3}, {warnings: 3}, {warnings: 1}, {}} {
		low := frameLine * float64(len(j.below(p, longest, words, t.warnings)))
		if t.legend {
			low += signLine * float64(len(legendRows(all, w-4)))
		}
		t.w, t.h = w-leftStrip-rim, h-scaleStrip-low-1-rim
		if t.h >= least {
			break
		}
	}
	return t
}

func sheetName(title string, s sheet.Sheet, all int) string {
	if all == 1 {
		return title
	}
	return fmt.Sprintf("%s, sheet %d of %d: %s", title, s.Number, all, s.Name())
}

// sheets cuts a drawing up and gives each sheet its frame.
func (j *job) sheets(p piece, d *sheet.Drawing, words []string, zones []sheet.Zone) ([]sheet.Page, sheet.Tiling) {
	t, room := j.cut(p, d, words)
	var pages []sheet.Page
	for _, s := range t.Sheets {
		page := sheet.Page{Name: sheetName(p.name, s, len(t.Sheets))}
		on := t.OnSheet(d, s)
		on.Settle(s.Area)
		on.Label(s.Area)
		on.Put(zones, s.Area)
		move := curve.Vec{X: leftStrip, Y: rim}.Sub(s.Area.Lo)
		if j.trial() {
			page.Drawing.Add(notForLeather(s.Area), move)
		}
		page.Drawing.Add(on, move)
		var shown []sign
		if room.legend {
			shown = signsOn(&on)
		}
		j.frame(&page, room.h+rim, j.below(p, page.Name, words, room.warnings), shown)
		pages = append(pages, page)
	}
	return pages, t
}

// frame draws the pricks, the rule, the words and the signs of a sheet at true size below
// a drawing so high.
func (j *job) frame(p *sheet.Page, high float64, words []said, shown []sign) {
	d := &p.Drawing
	corner := curve.Vec{X: 4, Y: high + 7}
	for _, v := range []curve.Vec{corner, corner.Add(curve.Vec{X: sheet.PricksApart}), corner.Sub(curve.Vec{Y: sheet.PricksApart})} {
		d.Prick(v)
	}
	apart := length.Length(sheet.PricksApart).Format(length.Millimetres, length.Ruler)
	if j.p.Units == length.Inches {
		apart += fmt.Sprintf(", %.3f in", sheet.PricksApart/25.4)
	}
	d.Text(sheet.Text{Layer: sheet.ScaleLayer, At: corner.Add(curve.Vec{X: 50, Y: 0.8}), Says: "set your dividers here: " + apart, Size: sheet.WordSize, Anchor: sheet.Middle})
	d.Text(sheet.Text{Layer: sheet.ScaleLayer, At: corner.Add(curve.Vec{X: 0.8, Y: -50}), Says: "set your dividers here: " + apart, Size: sheet.WordSize, Anchor: sheet.Middle, Angle: math.Pi / 2})
	d.Rule(corner.Add(curve.Vec{Y: 6}))
	for i, s := range j.beside(p.Name) {
		d.Text(sheet.Text{Layer: sheet.WordLayer, At: corner.Add(curve.Vec{X: sheet.PricksApart + 6, Y: 1 + 4*float64(i)}), Says: s, Size: nameSize, Bold: true})
	}
	y := high + scaleStrip
	for _, l := range words {
		d.Text(sheet.Text{Layer: sheet.WordLayer, At: curve.Vec{X: 2, Y: y}, Says: l.says, Size: frameSize, Bold: l.bold})
		y += frameLine
	}
	w, _ := j.o.Paper.Area(j.o.Correction)
	legend(d, legendRows(shown, w-4), curve.Vec{X: 2, Y: y + 0.2})
}

// lines are the signs of all pages.
func (j *job) lines(pages []sheet.Page) []sign {
	var all sheet.Drawing
	for _, p := range pages {
		all.Paths = append(all.Paths, p.Drawing.Paths...)
	}
	return signsOn(&all)
}

// heading is the line that tells one print from another, no wider than width
// at a size of letters: a long title is cut, never the number or the date.
func (j *job) heading(size, width float64) string {
	rest := fmt.Sprintf(" · pattern %d", j.p.Revision)
	if len(report.Warnings(j.plan, j.p.Units)) > 0 {
		rest += " · has a warning"
	}
	if j.dated {
		rest += " · " + j.o.Date.Format("2 January 2006")
	}
	return letters.Fit(j.title(), size, width-letters.Width(rest, false)*size, false) + rest
}

func (j *job) title() string {
	switch t := strings.TrimSpace(letters.Printable(j.p.Title)); t {
	case "":
		return "(no title)"
	case letters.Lacking:
		return "(a title that can't be printed)"
	default:
		return t
	}
}

// scaleWords say how to print and to check the print.
func (j *job) scaleWords() string { return sheet.ScaleWords(j.o.Correction) }

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
			if over := -j.plan.Loop.Offset; over > 0 {
				s += "; the tab goes on over the fold by " + j.show(over) + ", to the thin line"
			}
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
		return fmt.Sprintf("TRIAL: not for cutting leather. Sized for trial stock %s mm thick, to fold round the knife with the welt in.", sheet.Millimetres(j.o.Trial.MM()))
	}
	return fmt.Sprintf("In paper this hangs %s loose round the knife on each half; that is right, the leather's thickness takes it up.",
		j.show(report.Hang(j.plan, j.o.Stock)))
}

// notForLeather is what a trial is marked with, all over.
func notForLeather(b sheet.Box) sheet.Drawing {
	var d sheet.Drawing
	const size, down, right = 5.0, 30.0, 95.0
	for row, y := 0, b.Lo.Y+15; y < b.Hi.Y; row, y = row+1, y+down {
		for x := b.Lo.X + 40 + right/2*float64(row%2); x-right/2 < b.Hi.X; x += right {
			d.Text(sheet.Text{Layer: sheet.TrialLayer, At: curve.Vec{X: x, Y: y}, Says: "TRIAL: not for cutting leather", Size: size, Grey: true, Angle: 0.25, Anchor: sheet.Middle})
		}
	}
	return d.Clip(b)
}
