package leatherpage

import (
	"fmt"
	"math"

	"chape/calc/curve"
	"chape/calc/nest"
	"chape/project/leather"
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

// drawing shows the placing on one of its pieces, the piece in hand, or a part.
func (m *Model) drawing(w, h int) []string {
	if w <= 0 || h <= 1 {
		return nil
	}
	m.c.Reset(w, h-1, m.glyphs)
	var scale float64
	switch {
	case m.view == viewPart && m.at < len(m.snap.Project.Added):
		outline, err := m.snap.Project.Added[m.at].Outline()
		if err != nil {
			return nil
		}
		v := m.fit(outline)
		m.c.Polygon(dots(v, outline), cutLine)
		scale = v.Scale()
	case m.view == viewAll && m.laid != nil && m.shown < len(m.laid.Result.Uses):
		scale = m.placing(m.laid.Result.Uses[m.shown])
	default:
		p, ok := m.inSight()
		if !ok {
			return nil
		}
		v := m.fit(p.Outline)
		m.leather(v, p)
		m.grain(v, p)
		if m.view != viewAll && len(m.piece().Corners) > 0 {
			m.corners(v, p.Outline)
		}
		scale = v.Scale()
	}
	return append(layout.Fit(m.c.Render(m.pens), w, h-1), m.bar(scale, w))
}

// bar is the scale line below a drawing.
func (m *Model) bar(scale float64, w int) string {
	across, _ := m.glyphs.Dots()
	b, ok := draw.ScaleBar(scale/float64(across), m.snap.Unit, w/2)
	if !ok {
		return ""
	}
	m.c.Reset(b.Cells, 1, m.glyphs)
	dw, dh := m.c.Dots()
	m.c.Line(0, float64(dh)/2, float64(dw-1), float64(dh)/2, canvas.Stroke{Type: canvas.Thin, Pen: ink.PenQuiet})
	return m.c.Render(m.pens)[0] + " " + b.Length.Short(m.snap.Unit) + " " + m.snap.Unit.String()
}

// inSight is the piece to be shown: that in hand, else the first that is cut from.
func (m *Model) inSight() (nest.Piece, bool) {
	if m.view != viewAll {
		l := m.piece()
		return l.Piece(), l.Sized()
	}
	if i := m.list.At; i < len(m.rack.stock.Pieces) && m.rack.stock.Pieces[i].Sized() {
		return m.rack.stock.Pieces[i].Piece(), true
	}
	if chosen := m.chosen(); len(chosen) > 0 {
		return chosen[0].Piece(), true
	}
	return nest.Piece{}, false
}

// fit shows an outline as large as it will go, up being up.
func (m *Model) fit(l curve.Line) canvas.View {
	lo, hi := l.Bounds()
	return m.c.Fit(canvas.Box{MinX: lo.X, MinY: -hi.Y, MaxX: hi.X, MaxY: -lo.Y})
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
func (m *Model) leather(v canvas.View, p nest.Piece) {
	m.c.Polygon(dots(v, p.Outline), edgeLine)
	for _, f := range p.Flaws {
		m.c.Fill(dots(v, f), 2, ink.PenQuiet)
		m.c.Polygon(dots(v, f), canvas.Stroke{Type: canvas.Thin, Pen: ink.PenQuiet})
	}
}

// grain shows the way that the fold is to lie, where that counts.
func (m *Model) grain(v canvas.View, p nest.Piece) {
	if !p.Fixed {
		return
	}
	lo, hi := p.Outline.Bounds()
	sin, cos := math.Sincos(p.Grain)
	along := curve.Vec{X: cos, Y: sin}.Mul(min(hi.X-lo.X, hi.Y-lo.Y) / 4)
	at := leather.Middle(p.Outline)
	m.c.Polyline(dots(v, curve.Line{at.Sub(along), at.Add(along)}), foldLine)
	end := v.Dot(at.X+along.X, -at.Y-along.Y)
	x, y := m.c.Cell(end.X, end.Y)
	m.c.Text(x+1, y, "fold", ink.PenText)
}

// corners numbers them.
func (m *Model) corners(v canvas.View, l curve.Line) {
	for i, p := range l {
		at := v.Dot(p.X, -p.Y)
		x, y := m.c.Cell(at.X, at.Y)
		w, h := m.c.Size()
		m.c.Text(min(max(x, 0), w-2), min(max(y, 0), h-1), fmt.Sprint(i+1), ink.PenText)
	}
}

// placing draws the parts on a piece, with their names.
func (m *Model) placing(use nest.Use) float64 {
	l := m.laid
	piece := l.Task.Pieces[use.Piece]
	v := m.fit(piece.Outline)
	m.leather(v, piece)
	m.c.Polygon(dots(v, curve.Line{use.Lo, {X: use.Hi.X, Y: use.Lo.Y}, use.Hi, {X: use.Lo.X, Y: use.Hi.Y}}), usedLine)
	for _, p := range l.On(use.Piece) {
		m.c.Polygon(dots(v, p.Put(l.Task.Parts[p.Part].Outline)), cutLine)
		if fold := l.Folds[p.Part]; fold != nil {
			m.c.Polyline(dots(v, p.Put(fold)), foldLine)
		}
	}
	for _, p := range l.On(use.Piece) {
		m.name(v, p)
	}
	return v.Scale()
}

// name writes the part's name in its middle, where it has room.
func (m *Model) name(v canvas.View, p nest.Placement) {
	outline := p.Put(m.laid.Task.Parts[p.Part].Outline)
	lo, hi := outline.Bounds()
	a, b := v.Dot(lo.X, -hi.Y), v.Dot(hi.X, -lo.Y)
	x0, y0 := m.c.Cell(a.X, a.Y)
	x1, y1 := m.c.Cell(b.X, b.Y)
	text := term.Plain(m.laid.Part(p.Part))
	if len(text) > x1-x0-2 {
		text = term.Plain(m.laid.Task.Parts[p.Part].Name)
	}
	if len(text) > x1-x0-2 || y1-y0 < 2 {
		return
	}
	at := leather.Middle(outline)
	c := v.Dot(at.X, -at.Y)
	cx, cy := m.c.Cell(c.X, c.Y)
	m.c.Text(max(cx-len(text)/2, 0), int(math.Max(float64(cy), 0)), text, ink.PenText)
}
