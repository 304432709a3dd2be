package print

import (
	"fmt"
	"math"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/trace/frame"
	"chape/project"
	"chape/project/print/sheet"
)

// What a tracing sheet takes at most: as far as a person reaches, and a code row says.
const (
	tracingShort = 600
	tracingLong  = 1200
)

// Tracing draws the tracing sheet: the frame to photograph, and a page of words on what to
// do with it. Only paper, correction and date of the options count. The sheet is of no project.
func Tracing(o Options) ([]byte, error) {
	o.Trial, o.Half = 0, false
	j, err := newJob(project.Project{Title: "Tracing sheet"}, nil, o)
	if err != nil {
		return nil, err
	}
	j.tracing = true
	if p := j.o.Paper; min(p.Width, p.Height) > tracingShort || max(p.Width, p.Height) > tracingLong {
		return nil, fmt.Errorf("paper %q is too large for a tracing sheet: use at most %d x %d mm", p.Name, tracingShort, tracingLong)
	}
	j.o.begin("tracing sheet")
	first, err := j.tracingSheet()
	if err != nil {
		return nil, err
	}
	return j.document(append([]sheet.Page{first}, j.tracingWords()...)).PDF(true)
}

// TracingFile is the sheet as a file of its own name.
func TracingFile(o Options) (File, error) {
	data, err := Tracing(o)
	name := "tracing sheet"
	if o.Paper.Width != 0 && o.Paper != sheet.Papers[0] {
		name += " " + o.Paper.Name
	}
	return File{Name: name + ".pdf", Data: data}, err
}

// tracingSheet is the page with the frame. Inside the frame there is nothing but the
// code row; pricks and words stand in the strips right of it and below.
func (j *job) tracingSheet() (sheet.Page, error) {
	w, h := j.o.Paper.Area(j.o.Correction)
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
	j.tracingPricks(&d, s, w, h)
	return sheet.Page{Name: "Tracing sheet", Drawing: d}, nil
}

// tracingPricks puts the pricks into the strips, with the words of every sheet.
func (j *job) tracingPricks(d *sheet.Drawing, s frame.Sheet, w, h float64) {
	const in = 2.1 // from the end of what may be printed on
	across := curve.Vec{X: frame.Band + frame.MarkIn, Y: h - in}
	along := curve.Vec{X: w - in, Y: frame.Band + frame.MarkIn}
	apart := length.Length(pricksApart).Format(length.Millimetres, length.Ruler)
	said := "set your dividers here: " + apart
	for _, v := range []curve.Vec{across, across.Add(curve.Vec{X: pricksApart}), along, along.Add(curve.Vec{Y: pricksApart})} {
		d.Circle(sheet.Circle{Layer: sheet.ScaleLayer, Stroke: sheet.Hair, At: v, Radius: prickRadius})
		d.Line(sheet.ScaleLayer, sheet.Hair, v.Sub(curve.Vec{X: 2}), v.Add(curve.Vec{X: 2}))
		d.Line(sheet.ScaleLayer, sheet.Hair, v.Sub(curve.Vec{Y: 2}), v.Add(curve.Vec{Y: 2}))
	}
	d.Text(sheet.Text{Layer: sheet.ScaleLayer, At: across.Add(curve.Vec{X: pricksApart / 2, Y: 0.8}), Says: said, Size: sheet.WordSize, Anchor: sheet.Middle})
	d.Text(sheet.Text{Layer: sheet.ScaleLayer, At: along.Add(curve.Vec{X: 0.8, Y: pricksApart / 2}), Says: said, Size: sheet.WordSize, Anchor: sheet.Middle, Angle: math.Pi / 2})
	line := "Tracing sheet. Print at 100 %."
	if j.o.Correction.Set() {
		line = fmt.Sprintf("Tracing sheet. Print at 100 %%. Corrected: %s mm.", j.o.Correction)
	}
	// along the right strip, past the pricks: there is always room for one line
	from := along.Y + pricksApart + 4
	size := min(sheet.WordSize, (h-sheet.PageNumber-2-from)/sheet.TextWidth(line, false))
	d.Text(sheet.Text{Layer: sheet.WordLayer, At: curve.Vec{X: w - in + 0.8, Y: (from + h - sheet.PageNumber - 2) / 2}, Says: line, Size: size, Anchor: sheet.Middle, Angle: math.Pi / 2})
}

// tracingWords is the page that says what to do.
func (j *job) tracingWords() []sheet.Page {
	f := j.flow("How to trace a knife", 1)
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
			lines := sheet.Wrap(sheet.Printable(s), size, f.Width-7, false)
			f.Need(size * 1.35 * float64(len(lines)))
			f.Put(0, mark, size, false, sheet.Start)
			for _, l := range lines {
				f.Put(7, l, size, false, sheet.Start)
				f.Y += size * 1.35
			}
			f.Gap(1.2)
		}
	}
	f.Para(j.scaleWords(), size, 0)
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
		"Copy the picture to the computer and give it to chape: chape trace PICTURE, or chape trace PICTURE FILE to put the marks into a project.",
		"Look at the outline before you take it. Then measure the thicknesses with the calliper.")
	f.Heading("leather and earlier patterns")
	f.Gap(1.5)
	f.Para("A piece of leather, or a pattern cut of card, is laid on the sheet instead of a tracing, flat and clear of the frame, and photographed as it lies.", size, 0)
	f.Gap(2)
	f.Para("A traced line is as wide as the pencil. If you want to be exact, trace a steel rule once, and say how wide it is: chape trace PICTURE --rule WIDTH.", size, 0)
	return f.Pages
}
