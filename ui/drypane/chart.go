package drypane

import (
	"math"
	"strconv"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chape/ui/canvas"
	"chape/ui/term/ink"
)

// The least room in which a curve says something, in cells.
const (
	leastChartW = 24
	leastChartH = 7
)

// chart is the curve being drawn: where hours and grams lie on the canvas.
type chart struct {
	c            *canvas.Canvas
	left         int // cells for the grams at the left
	w, h         int // cells of all
	across, down float64
	to           float64 // hours, from 0
	low, high    float64 // grams
}

// drawing is the curve with its points and axes on exactly w×h cells.
func (m *Model) drawing(w, h int) []string {
	m.c.Reset(w, h, m.glyphs)
	if len(m.dry.Rows) == 0 {
		m.c.Text(0, 0, "no weighings to draw yet", ink.PenQuiet)
		return m.c.Render(m.pens)
	}
	ch := m.scales(w, h)
	ch.axes("hours since " + m.clock(m.dry.Start))
	if d, known := m.dryWeight(); known {
		y := ch.y(d)
		ch.c.Line(ch.x(0), y, ch.x(ch.to), y, canvas.Stroke{Type: canvas.Dashed, Pen: ink.PenLeather})
		_, cy := ch.c.Cell(0, y)
		row := cy - 1
		if row < 1 { // the first row has the axis' name and the likely time
			row = cy + 1
		}
		ch.c.Text(ch.left+1, row, "dry "+number(math.Round(10*d)/10)+" g", ink.PenLeather)
	}
	if m.dry.Err == nil && m.dry.Estimate.Rate > 0 {
		m.drawCurve(ch)
	}
	for _, i := range m.dry.Rows { // a letter is seen from further away than a cross of dots
		p := m.snap.Project.Weigh[i]
		cx, cy := ch.c.Cell(ch.x(m.hours(p.When)), ch.y(p.Grams))
		ch.c.Text(cx, cy, "o", ink.PenMark)
	}
	return m.c.Render(m.pens)
}

// dryWeight is what the sheath dries to, where that is known.
func (m *Model) dryWeight() (float64, bool) {
	switch {
	case m.dry.Err == nil:
		return m.dry.Estimate.Dry, true
	case m.dry.Before >= 0:
		return m.snap.Project.Weigh[m.dry.Before].Grams, true
	}
	return 0, false
}

// drawCurve draws the fitted curve, the window on the axis of hours and, upright,
// the likely moment.
func (m *Model) drawCurve(ch chart) {
	e := m.dry.Estimate
	n := max(2, int(ch.x(ch.to)-ch.x(0))/2)
	var line []canvas.Point
	for _, p := range e.Curve(0, time.Duration(ch.to*float64(time.Hour)), n) {
		line = append(line, canvas.Point{X: ch.x(p.At.Hours()), Y: ch.y(p.Grams)})
	}
	ch.c.Polyline(line, canvas.Stroke{Type: canvas.Thin, Pen: ink.PenCut})
	if e.Reached {
		return
	}
	from, likely, to := m.dry.Window()
	bottom := ch.bottom() - 1 // the line is wide
	ch.c.Line(ch.x(m.hours(from)), bottom, ch.x(math.Min(m.hours(to), ch.to)), bottom, canvas.Stroke{Type: canvas.Continuous, Pen: ink.PenMark})
	x := ch.x(m.hours(likely))
	ch.c.Line(x, ch.down, x, bottom, canvas.Stroke{Type: canvas.Thin, Pen: ink.PenMark})
	text := m.clock(likely)
	cx, _ := ch.c.Cell(x, 0)
	ch.c.Text(min(cx-len(text)/2, ch.w-len(text)), 0, text, ink.PenMark)
}

// scales chooses the ranges: all weighings, and on to where it is dry.
func (m *Model) scales(w, h int) chart {
	ch := chart{c: m.c, w: w, h: h, low: math.Inf(1), high: math.Inf(-1)}
	across, down := m.glyphs.Dots()
	ch.across, ch.down = float64(across), float64(down)
	grams := func(g float64) { ch.low, ch.high = math.Min(ch.low, g), math.Max(ch.high, g) }
	for _, i := range m.dry.Rows {
		p := m.snap.Project.Weigh[i]
		grams(p.Grams)
		ch.to = math.Max(ch.to, m.hours(p.When))
	}
	if d, known := m.dryWeight(); known {
		grams(d)
	}
	if e := m.dry.Estimate; m.dry.Err == nil && e.Rate > 0 {
		grams(e.Grams(0))
		likely := e.Likely.Hours()
		ch.to = math.Max(ch.to, math.Max(likely, math.Min(e.Latest.Hours(), 1.5*likely)))
	}
	pad := math.Max(0.06*(ch.high-ch.low), 0.01*ch.high)
	ch.low, ch.high = ch.low-pad, ch.high+pad
	ch.to = math.Max(1.05*ch.to, 0.1)
	for _, g := range ch.gramTicks() {
		ch.left = max(ch.left, ansi.StringWidth(number(g)))
	}
	return ch
}

// x is the dot of an hour, y that of a weight. The axis of grams stands in the
// cell right of the labels; two lines below are for those of the hours.
func (ch chart) x(hours float64) float64 {
	from := float64(ch.left)*ch.across + 0.5
	return from + (float64(ch.w)*ch.across-1-from)*hours/ch.to
}

func (ch chart) y(grams float64) float64 {
	return ch.down + (ch.bottom()-ch.down)*(ch.high-grams)/(ch.high-ch.low)
}

func (ch chart) bottom() float64 { return float64(ch.h-2)*ch.down - 0.5 }

func (ch chart) gramTicks() []float64 {
	return ticks(ch.low, ch.high, gramStep((ch.high-ch.low)/float64(max(3, ch.h/4))))
}

// axes draws both axes with their figures.
func (ch chart) axes(hoursName string) {
	thin := canvas.Stroke{Type: canvas.Thin, Pen: ink.PenQuiet}
	ch.c.Line(ch.x(0), 0.5, ch.x(0), ch.bottom(), thin)
	ch.c.Line(ch.x(0), ch.bottom(), ch.x(ch.to), ch.bottom(), thin)
	ch.c.Text(0, 0, "grams", ink.PenQuiet)
	for _, g := range ch.gramTicks() {
		text := number(g)
		if _, cy := ch.c.Cell(0, ch.y(g)); cy > 0 && cy < ch.h-2 {
			ch.c.Text(ch.left-len(text), cy, text, ink.PenQuiet)
		}
	}
	free := 0
	for _, t := range ticks(0, ch.to, hourStep(ch.to/float64(max(2, ch.w/8)))) {
		text := number(t)
		cx, _ := ch.c.Cell(ch.x(t), 0)
		if at := cx - len(text)/2; at >= free && at+len(text) <= ch.w {
			ch.c.Text(at, ch.h-2, text, ink.PenQuiet)
			free = at + len(text) + 1
		}
	}
	if over := ansi.StringWidth(hoursName) - (ch.w - ch.left); over > 0 {
		hoursName = "hours"
	}
	ch.c.Text(ch.w-ansi.StringWidth(hoursName), ch.h-1, hoursName, ink.PenQuiet)
}

// gramStep and hourStep are the least round steps not below the wanted one.
func gramStep(wanted float64) float64 {
	for scale := 0.01; ; scale *= 10 {
		for _, s := range []float64{1, 2, 5} {
			if s*scale >= wanted {
				return s * scale
			}
		}
	}
}

func hourStep(wanted float64) float64 {
	for _, s := range []float64{0.05, 0.1, 0.25, 0.5, 1, 2, 3, 6, 12, 24, 48, 96, 168} {
		if s >= wanted {
			return s
		}
	}
	const week = 168
	return week * math.Ceil(wanted/week)
}

// ticks are the multiples of step from lo to hi.
func ticks(lo, hi, step float64) []float64 {
	var out []float64
	for k := math.Ceil(lo / step); k*step <= hi; k++ {
		out = append(out, k*step)
	}
	return out
}

// number is a tick's figure, without what multiplying left behind.
func number(f float64) string {
	return strconv.FormatFloat(math.Round(f*1000)/1000, 'f', -1, 64)
}
