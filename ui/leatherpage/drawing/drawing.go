// Package drawing draws pieces of leather, their flaws and grain, and the parts that lie on
// them, into cells, each with its scale line.
package drawing

import (
	"fmt"
	"math"

	"github.com/charmbracelet/x/ansi"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/nest"
	"chape/project/leather"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/draw"
	"chape/ui/layout"
	"chape/ui/term"
	"chape/ui/term/ink"
)

// The lines: leather is thin, what is cut is wide, its fold has dashes and dots.
var (
	edgeLine = canvas.Stroke{Type: canvas.Thin, Pen: ink.PenLeather}
	cutLine  = canvas.Stroke{Type: canvas.Continuous, Pen: ink.PenCut}
	foldLine = canvas.Stroke{Type: canvas.LongDashDot, Pen: ink.PenFold}
	usedLine = canvas.Stroke{Type: canvas.Dashed, Pen: ink.PenQuiet}
)

// Drawing is what is drawn on, kept between frames.
type Drawing struct {
	glyphs canvas.Glyphs
	c      *canvas.Canvas
	pens   []canvas.Style
	unit   length.Unit // of the scale line
}

// New gives a drawing in the colours of the screen.
func New(st ink.Styles) *Drawing {
	return &Drawing{c: canvas.New(0, 0, canvas.Braille), pens: st.Pens()}
}

// Set has it drawn with other dots, and its scale line in a unit.
func (d *Drawing) Set(f act.Font, u length.Unit) {
	d.glyphs, d.unit = f.Glyphs, u
	d.c.SetAspect(f.Aspect)
}

// Part shows the outline of a part in w × h cells.
func (d *Drawing) Part(outline curve.Line, w, h int) []string {
	return d.onto(w, h, func() float64 {
		v := d.fit(outline)
		d.c.Polygon(dots(v, outline), cutLine)
		return v.Scale()
	})
}

// Piece shows a piece of leather in w × h cells, with its corners numbered or not.
func (d *Drawing) Piece(p nest.Piece, numbered bool, w, h int) []string {
	return d.onto(w, h, func() float64 {
		v := d.fit(p.Outline)
		d.leather(v, p)
		d.grain(v, p)
		if numbered {
			d.corners(v, p.Outline)
		}
		return v.Scale()
	})
}

// Placing shows one of the pieces of a placing in w × h cells, with the parts on it and
// their names.
func (d *Drawing) Placing(l *leather.Laid, use nest.Use, w, h int) []string {
	return d.onto(w, h, func() float64 { return d.placing(l, use) })
}

// onto draws into w × h cells, the last line being the scale; draw gives the dots a
// millimetre takes.
func (d *Drawing) onto(w, h int, draw func() float64) []string {
	d.c.Reset(w, h-1, d.glyphs)
	scale := draw()
	return append(layout.Fit(d.c.Render(d.pens), w, h-1), d.bar(scale, w))
}

// bar is the scale line below a drawing.
func (d *Drawing) bar(scale float64, w int) string {
	across, _ := d.glyphs.Dots()
	b, ok := draw.ScaleBar(scale/float64(across), d.unit, w/2)
	if !ok {
		return ""
	}
	d.c.Reset(b.Cells, 1, d.glyphs)
	dw, dh := d.c.Dots()
	d.c.Line(0, float64(dh)/2, float64(dw-1), float64(dh)/2, canvas.Stroke{Type: canvas.Thin, Pen: ink.PenQuiet})
	return d.c.Render(d.pens)[0] + " " + b.Length.Short(d.unit) + " " + d.unit.String()
}

// fit shows an outline as large as it will go, up being up.
func (d *Drawing) fit(l curve.Line) canvas.View {
	lo, hi := l.Bounds()
	return d.c.Fit(canvas.Box{MinX: lo.X, MinY: -hi.Y, MaxX: hi.X, MaxY: -lo.Y})
}

// dots is a line on the canvas.
func dots(v canvas.View, l curve.Line) []canvas.Point {
	out := make([]canvas.Point, len(l))
	for i, p := range l {
		out[i] = v.Dot(p.X, -p.Y)
	}
	return out
}

// leather draws a piece with its flaws filled.
func (d *Drawing) leather(v canvas.View, p nest.Piece) {
	d.c.Polygon(dots(v, p.Outline), edgeLine)
	for _, f := range p.Flaws {
		d.c.Fill(dots(v, f), 2, ink.PenQuiet)
		d.c.Polygon(dots(v, f), canvas.Stroke{Type: canvas.Thin, Pen: ink.PenQuiet})
	}
}

// grain shows the way that the fold is to lie, where that counts.
func (d *Drawing) grain(v canvas.View, p nest.Piece) {
	if !p.Fixed {
		return
	}
	lo, hi := p.Outline.Bounds()
	sin, cos := math.Sincos(p.Grain)
	along := curve.Vec{X: cos, Y: sin}.Mul(min(hi.X-lo.X, hi.Y-lo.Y) / 4)
	at := leather.Middle(p.Outline)
	d.c.Polyline(dots(v, curve.Line{at.Sub(along), at.Add(along)}), foldLine)
	end := v.Dot(at.X+along.X, -at.Y-along.Y)
	x, y := d.c.Cell(end.X, end.Y)
	d.c.Text(x+1, y, "fold", ink.PenText)
}

// corners numbers them.
func (d *Drawing) corners(v canvas.View, l curve.Line) {
	for i, p := range l {
		at := v.Dot(p.X, -p.Y)
		x, y := d.c.Cell(at.X, at.Y)
		w, h := d.c.Size()
		d.c.Text(min(max(x, 0), w-2), min(max(y, 0), h-1), fmt.Sprint(i+1), ink.PenText)
	}
}

// placing draws the parts on a piece, with their names, and gives the scale.
func (d *Drawing) placing(l *leather.Laid, use nest.Use) float64 {
	piece := l.Task.Pieces[use.Piece]
	v := d.fit(piece.Outline)
	d.leather(v, piece)
	d.c.Polygon(dots(v, curve.Line{use.Lo, {X: use.Hi.X, Y: use.Lo.Y}, use.Hi, {X: use.Lo.X, Y: use.Hi.Y}}), usedLine)
	for _, p := range l.On(use.Piece) {
		d.c.Polygon(dots(v, p.Put(l.Task.Parts[p.Part].Outline)), cutLine)
		if fold := l.Folds[p.Part]; fold != nil {
			d.c.Polyline(dots(v, p.Put(fold)), foldLine)
		}
	}
	for _, p := range l.On(use.Piece) {
		d.name(v, l, p)
	}
	return v.Scale()
}

// name writes the part's name in its middle, where it has room.
func (d *Drawing) name(v canvas.View, l *leather.Laid, p nest.Placement) {
	outline := p.Put(l.Task.Parts[p.Part].Outline)
	lo, hi := outline.Bounds()
	a, b := v.Dot(lo.X, -hi.Y), v.Dot(hi.X, -lo.Y)
	x0, y0 := d.c.Cell(a.X, a.Y)
	x1, y1 := d.c.Cell(b.X, b.Y)
	text := called(l, p.Part, x1-x0-2)
	if text == "" || y1-y0 < 2 {
		return
	}
	at := leather.Middle(outline)
	c := v.Dot(at.X, -at.Y)
	cx, cy := d.c.Cell(c.X, c.Y)
	d.c.Text(max(cx-ansi.StringWidth(text)/2, 0), int(math.Max(float64(cy), 0)), text, ink.PenText)
}

// called is a part's name on at most w cells: with its project, which is cut short where
// there is no room for all of it; "": none has room.
func called(l *leather.Laid, part, w int) string {
	text, own := term.Plain(l.Part(part)), term.Plain(l.Task.Parts[part].Name)
	const least = 4 // letters of a title that still tell it from another
	switch room := w - len(": "+own); {
	case ansi.StringWidth(text) <= w:
		return text
	case l.Several() && room >= least:
		return term.Short(term.Plain(l.Whose[part]), room) + ": " + own
	case ansi.StringWidth(own) <= w:
		return own
	}
	return ""
}
