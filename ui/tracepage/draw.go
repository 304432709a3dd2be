package tracepage

import (
	"math"

	"github.com/charmbracelet/x/ansi"

	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/calc/trace"
	"chape/ui/canvas"
	"chape/ui/term/ink"
)

type projectMarks = []knife.Station

func maxOf(ls []length.Length) length.Length {
	most := length.Length(0)
	for _, l := range ls {
		most = max(most, l)
	}
	return most
}

// How the drawing's lines are drawn.
var (
	outlineStroke = canvas.Stroke{Type: canvas.Continuous, Pen: ink.PenKnife}
	wasStroke     = canvas.Stroke{Type: canvas.Dashed, Pen: ink.PenQuiet}
	foldStroke    = canvas.Stroke{Type: canvas.LongDashDot, Pen: ink.PenFold}
	markStroke    = canvas.Stroke{Type: canvas.Thin, Pen: ink.PenStitch}
	litStroke     = canvas.Stroke{Type: canvas.Continuous, Pen: ink.PenMark}
)

// bar is a line across the knife at a mark.
type bar struct {
	x, from, to float64
	lit         bool
}

// picture is what is drawn, mm: x from the point, y down from the fold line or the rule.
type picture struct {
	outline, was curve.Line
	fold         bool
	bars         []bar
	label        string // at the bar that is lit
}

// drawing is what the page shows, on w×h cells.
func (m *Model) drawing(w, h int) []string {
	m.c.Reset(w, h, m.snap.Font.Glyphs)
	switch m.state {
	case looking:
		m.draw(m.readPicture(), h)
		m.legend(w, h)
	case measuring:
		m.draw(m.leftPicture(), h)
	default:
		if no, ok := m.refusedAt(); ok {
			m.drawRefused(no)
		}
	}
	return m.c.Render(m.pens)
}

// readPicture is the traced knife, its marks, and the knife as it is.
func (m *Model) readPicture() picture {
	k := m.reading.Knife
	p := picture{fold: true, was: outlineOf(m.snap.Project.Knife)}
	for i := range p.was {
		p.was[i].Y -= k.Rule // the rule of its marks lies where this one's does
	}
	for _, v := range k.Outline {
		p.outline = append(p.outline, k.In(v))
	}
	for i, s := range k.Marks {
		lit := i == m.at || i == m.at+1 && s.At == k.Marks[m.at].At
		p.bars = append(p.bars, bar{s.At, s.Gap - k.Rule, s.Gap + s.Depth - k.Rule, lit})
		if i == m.at {
			p.label = m.show(s.At, length.Ruler)
		}
	}
	return p
}

// leftPicture is the knife with the places that are still to be measured.
func (m *Model) leftPicture() picture {
	k := m.snap.Project.Knife
	p := picture{outline: outlineOf(k)}
	left := m.cells()
	if m.inHandIsGrind() {
		left = append(left, m.cell)
	}
	for _, c := range left {
		s := k.Stations[c.mark]
		lit := c.mark == m.cell.mark
		p.bars = append(p.bars, bar{s.At.MM(), s.Top.MM(), s.Bottom.MM(), lit})
		if lit {
			p.label = s.At.Format(m.snap.Unit, length.Ruler)
		}
	}
	return p
}

// outlineOf goes round a knife as its marks have it; nil where they make none.
func outlineOf(k knife.Knife) curve.Line {
	prof, err := knife.NewProfile(k)
	if err != nil {
		return nil
	}
	var back, edge curve.Line
	const samples = 400
	var buf []knife.Section
	for i := range samples + 1 {
		x := k.Length().MM() * float64(i) / samples
		buf = prof.Sections(buf[:0], x)
		for _, s := range buf {
			back, edge = append(back, curve.Vec{X: x, Y: s.Top}), append(edge, curve.Vec{X: x, Y: s.Bottom})
		}
	}
	return append(back, edge.Reverse()...)
}

// draw draws it, a line free below for words.
func (m *Model) draw(p picture, h int) {
	if len(p.outline) == 0 {
		return
	}
	lo, hi := p.outline.Bounds()
	if len(p.was) > 0 {
		l, u := p.was.Bounds()
		lo, hi = curve.Vec{X: min(lo.X, l.X), Y: min(lo.Y, l.Y)}, curve.Vec{X: max(hi.X, u.X), Y: max(hi.Y, u.Y)}
	}
	b := canvas.Box{MinX: lo.X, MinY: min(lo.Y, 0), MaxX: hi.X, MaxY: hi.Y}.Grow(1)
	b.MaxY += (b.MaxY - b.MinY) * 2 / float64(max(h-2, 1)) // for the words below
	v := m.c.Fit(b)
	points := func(l curve.Line) []canvas.Point {
		out := make([]canvas.Point, len(l))
		for i, q := range l {
			out[i] = v.Dot(q.X, q.Y)
		}
		return out
	}
	line := func(x0, y0, x1, y1 float64, s canvas.Stroke) {
		a, z := v.Dot(x0, y0), v.Dot(x1, y1)
		m.c.Line(a.X, a.Y, z.X, z.Y, s)
	}
	if p.fold {
		line(lo.X, 0, hi.X, 0, foldStroke)
	}
	if len(p.was) > 0 {
		m.c.Polygon(points(p.was), wasStroke)
	}
	m.c.Polygon(points(p.outline), outlineStroke)
	for _, s := range p.bars {
		if !s.lit {
			line(s.x, s.from, s.x, s.to, markStroke)
		}
	}
	for _, s := range p.bars {
		if s.lit {
			line(s.x, s.from, s.x, s.to, litStroke)
			m.labelAt(v.Dot(s.x, hi.Y), p.label)
		}
	}
}

// labelAt writes below a place, within the canvas.
func (m *Model) labelAt(p canvas.Point, text string) {
	w, h := m.c.Size()
	cx, cy := m.c.Cell(p.X, p.Y)
	n := ansi.StringWidth(text)
	m.c.Text(max(0, min(cx-n/2, w-n)), min(cy+1, h-1), text, ink.PenMark)
}

// legend says what the lines are, in the upper left where no knife is.
func (m *Model) legend(w, h int) {
	text := "wide: traced; dashed: the knife as it is; dash and dot: the fold line"
	if h >= 8 && ansi.StringWidth(text) <= w {
		m.c.Text(0, h-1, text, ink.PenQuiet)
	}
}

// drawRefused draws what was seen of a line that is open, and where the trouble is.
func (m *Model) drawRefused(no *trace.Refused) {
	b := canvas.Box{MinX: math.Inf(1), MinY: math.Inf(1), MaxX: math.Inf(-1), MaxY: math.Inf(-1)}
	seen := no.Seen
	if no.Placed {
		seen = append(seen[:len(seen):len(seen)], no.At)
	}
	for _, q := range seen {
		b = b.Join(canvas.Box{MinX: q.X, MinY: q.Y, MaxX: q.X, MaxY: q.Y})
	}
	if len(no.Seen) < 2 {
		return
	}
	v := m.c.Fit(b.Grow(5))
	for _, q := range no.Seen {
		d := v.Dot(q.X, q.Y)
		m.c.Dot(d.X, d.Y, ink.PenKnife)
	}
	if no.Placed {
		d := v.Dot(no.At.X, no.At.Y)
		m.c.Circle(d.X, d.Y, 4, canvas.Stroke{Type: canvas.Thin, Pen: ink.PenWarn})
		m.labelAt(d, "here")
	}
}
