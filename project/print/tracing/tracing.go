// Package tracing draws the sheet that a knife is traced on.
package tracing

import (
	"cmp"
	"fmt"
	"math"
	"time"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/trace/frame"
	"chape/project/print/folder"
	"chape/project/print/letters"
	"chape/project/print/pdf"
	"chape/project/print/sheet"
)

// What a tracing sheet takes at most: as far as a person reaches, and a code row says.
const (
	tracingShort = 600
	tracingLong  = 1200
)

// Options say on what the sheet is printed. The zero value is A4.
type Options struct {
	Paper      sheet.Paper
	Correction sheet.Correction
	Date       time.Time         // stands in the file; zero: a fixed one
	Progress   func(what string) // hears what is about to be drawn, unless nil
}

// name is what the sheet is called, on paper and in its file.
const name = "Tracing sheet"

// PDF draws the tracing sheet: the frame to photograph, and a page of words on what to
// do with it. Errors are those of paper and correction.
func PDF(o Options) ([]byte, error) {
	o.Paper = o.Paper.OrFirst()
	if err := cmp.Or(o.Paper.Check(), o.Correction.Check()); err != nil {
		return nil, err
	}
	if p := o.Paper; min(p.Width, p.Height) > tracingShort || max(p.Width, p.Height) > tracingLong {
		return nil, fmt.Errorf("paper %q is too large for a tracing sheet: use at most %d x %d mm", p.Name, tracingShort, tracingLong)
	}
	if o.Progress != nil {
		o.Progress("tracing sheet")
	}
	first, err := o.sheet()
	if err != nil {
		return nil, err
	}
	return pdf.Document{Paper: o.Paper, Correction: o.Correction, Date: pdf.DateOr(o.Date), Title: name, Subject: "a knife is traced on it",
		Pages: append([]sheet.Page{first}, o.words()...)}.Bytes(true)
}

// File is the sheet as a file of its own name.
func File(o Options) (folder.File, error) {
	data, err := PDF(o)
	as := "tracing sheet"
	if p := o.Paper.OrFirst(); p != sheet.Papers[0] {
		as += " " + p.Name
	}
	return folder.File{Name: as + ".pdf", Data: data}, err
}

// sheet is the page with the frame. Inside the frame there is nothing but the
// code row; pricks and words stand in the strips right of it and below.
func (o Options) sheet() (sheet.Page, error) {
	w, h := o.Paper.Area(o.Correction)
	s, err := frame.On(w, h)
	if err != nil {
		return sheet.Page{}, err
	}
	var d sheet.Drawing
	corner := curve.Vec{X: frame.Band, Y: frame.Band}
	fill := func(b frame.Box) {
		d.Path(sheet.Path{Layer: sheet.RegisterLayer, Ink: sheet.Black, Closed: true, Pts: sheet.Box{Lo: b.Lo.Add(corner), Hi: b.Hi.Add(corner)}.Corners()})
	}
	for _, q := range s.Squares() {
		fill(q.Box)
	}
	half := curve.Vec{X: frame.MarkHalf, Y: frame.MarkHalf}
	for i, m := range s.Marks() {
		fill(frame.Box{Lo: m.Sub(half), Hi: m.Add(half)})
		disc := func(radius float64, c sheet.Ink) {
			d.Spots = append(d.Spots, sheet.Spot{Layer: sheet.RegisterLayer, At: m.Add(corner), Radius: radius, Ink: c})
		}
		disc(frame.RingOut, sheet.White)
		disc(frame.RingIn, sheet.Black)
		if i == 0 {
			disc(frame.Dot, sheet.White)
		}
	}
	for i, on := range s.Code() {
		if on {
			fill(frame.Cell(i))
		}
	}
	o.pricks(&d, s, w, h)
	return sheet.Page{Name: name, Drawing: d}, nil
}

// pricks puts the pricks into the strips, with the words of every sheet.
func (o Options) pricks(d *sheet.Drawing, s frame.Sheet, w, h float64) {
	const in = 2.1 // from the end of what may be printed on
	across := curve.Vec{X: frame.Band + frame.MarkIn, Y: h - in}
	along := curve.Vec{X: w - in, Y: frame.Band + frame.MarkIn}
	apart := length.Length(sheet.PricksApart).Format(length.Millimetres, length.Ruler)
	said := "set your dividers here: " + apart
	for _, v := range []curve.Vec{across, across.Add(curve.Vec{X: sheet.PricksApart}), along, along.Add(curve.Vec{Y: sheet.PricksApart})} {
		d.Prick(v)
	}
	d.Text(sheet.Text{Layer: sheet.ScaleLayer, At: across.Add(curve.Vec{X: sheet.PricksApart / 2, Y: 0.8}), Says: said, Size: sheet.WordSize, Anchor: sheet.Middle})
	d.Text(sheet.Text{Layer: sheet.ScaleLayer, At: along.Add(curve.Vec{X: 0.8, Y: sheet.PricksApart / 2}), Says: said, Size: sheet.WordSize, Anchor: sheet.Middle, Angle: math.Pi / 2})
	line := "Tracing sheet. Print at 100 %."
	if o.Correction.Set() {
		line = fmt.Sprintf("Tracing sheet. Print at 100 %%. Corrected: %s mm.", o.Correction)
	}
	// along the right strip, past the pricks: there is always room for one line
	from := along.Y + sheet.PricksApart + 4
	size := min(sheet.WordSize, (h-sheet.PageNumber-2-from)/letters.Width(line, false))
	d.Text(sheet.Text{Layer: sheet.WordLayer, At: curve.Vec{X: w - in + 0.8, Y: (from + h - sheet.PageNumber - 2) / 2}, Says: line, Size: size, Anchor: sheet.Middle, Angle: math.Pi / 2})
}

// words is the page that says what to do.
func (o Options) words() []sheet.Page {
	w, h := o.Paper.Area(o.Correction)
	f := sheet.NewFlow(w, h, "How to trace a knife", 1, func(size, width float64) string { return letters.Fit(name, size, width, false) })
	if f.Width > 150 {
		f.Width = 150 // a longer line is hard to read
	}
	size := 3.6
	if f.H < 230 {
		size = 3 // all of it on one page
	}
	list := func(heading string, items ...string) {
		f.Heading(heading)
		f.Gap(1.5)
		for i, s := range items {
			mark := fmt.Sprint(i+1) + "."
			lines := letters.Wrap(letters.Printable(s), size, f.Width-7, false)
			f.Need(size * 1.35 * float64(len(lines)))
			f.Put(0, mark, size, false, sheet.Start)
			for _, l := range lines {
				f.Put(7, l, size, false, sheet.Start)
				f.Y += size * 1.35
			}
			f.Gap(1.2)
		}
	}
	f.Para(sheet.ScaleWords(o.Correction), size, 0)
	f.Gap(2)
	list("trace",
		"Tape the knife's edge. Lay the knife on its side inside the frame, clear of the frame and of the code row; tape the paper down so that it lies flat.",
		"Draw round the knife with a sharp pencil, held upright and hard against the steel. The line must close; write nothing else inside the frame.",
		"Where a bolster or a guard begins and where it ends, make a short stroke outwards from the line, 4 to 7 mm long: one on the back and one on the edge.",
		"Take the knife away.")
	list("photograph",
		"Put the sheet flat, in even light, without flash. Keep your own shadow off it.",
		"Hold the telephone above the middle of the sheet. All four corner marks must be in the picture, and the frame should fill most of it.",
		"Take one picture, sharp and not zoomed in. A slight tilt or turn does no harm.")
	list("read",
		"Copy the picture to the computer and drop it on the window of chape, or press I there; or call chape trace PICTURE FILE to put the marks into a project.",
		"Look at the outline before you take it. Then measure the thicknesses with the calliper.")
	f.Heading("leather and earlier patterns")
	f.Gap(1.5)
	f.Para("A piece of leather, or a pattern cut of card, is laid on the sheet instead of a tracing, flat and clear of the frame, and photographed as it lies.", size, 0)
	f.Gap(2)
	f.Para("A traced line is as wide as the pencil. If you want to be exact, trace a steel rule once, and say how wide it is: chape trace PICTURE --rule WIDTH.", size, 0)
	return f.Pages
}
