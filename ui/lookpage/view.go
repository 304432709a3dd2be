package lookpage

import (
	"fmt"
	"strings"

	"chape/ui/canvas"
	"chape/ui/layout"
	"chape/ui/term/ink"
)

// least and most are what a sample takes across, in cells.
const least, most = 18, 30

// columns are how many samples stand side by side, and how wide each is with the gap
// behind it. Where three have no room the chosen one stands alone.
func (m *Model) columns() (n, wide int) {
	if w := (m.w - 2) / len(samples); w >= least {
		return len(samples), min(w, most)
	}
	return 1, max(0, min(m.w-2, most))
}

// head are the words above the samples.
func (m *Model) head() []string {
	words := "Take the drawing that is whole: a round ring, lines that join, no empty boxes. " +
		"Some fonts lack the dots. It is kept for all drawings, and can be changed at any time."
	return append(layout.Wrap(words, max(1, m.w-2)), "")
}

// rows is how high a sample is.
func (m *Model) rows() int { return max(1, min(12, m.h-len(m.head())-4)) }

// View implements act.Pane.
func (m *Model) View() string {
	var lines []string
	for _, l := range m.head() {
		lines = append(lines, " "+l)
	}
	n, wide := m.columns()
	var blocks [][]string
	for i, s := range samples {
		if n == 1 && i != m.chosen() {
			continue
		}
		name := "  " + s.name
		if i == m.chosen() {
			name = m.Styles.Strong.Render("[ " + s.name + " ]")
		}
		block := append([]string{name}, m.sample(s.glyphs, wide-2, m.rows())...)
		blocks = append(blocks, layout.Fit(block, wide, m.rows()+1))
	}
	for _, l := range layout.Beside(blocks...) {
		lines = append(lines, " "+l)
	}
	words := fmt.Sprintf("A cell is taken to be %.2f times as high as wide. If the ring stands too tall press Down, if it lies too flat press Up.", m.font.Aspect)
	if n == 1 {
		words = fmt.Sprintf("%d of %d. ", m.chosen()+1, len(samples)) + words
	}
	lines = append(lines, "")
	for _, l := range layout.Wrap(words, max(1, m.w-2)) {
		lines = append(lines, " "+l)
	}
	return strings.Join(layout.Fit(lines, m.w, m.h), "\n")
}

// sample is a ring, a slope and the line types as they look in a set of characters.
func (m *Model) sample(g canvas.Glyphs, w, h int) []string {
	m.c.Reset(w, h, g)
	dw, dh := m.c.Dots()
	across, down := g.Dots()
	x, y := float64(dw), float64(dh)
	tall := m.font.Aspect * float64(across) / float64(down) // height of a dot in dot widths
	radius := min(x*0.3, (y-float64(3*down))*tall/2)
	m.c.Circle(x*0.32, (y-float64(2*down))/2, radius, canvas.Stroke{Type: canvas.Continuous, Pen: ink.PenText})
	m.c.Line(x*0.66, y-float64(3*down), x*0.98, float64(down)/2, canvas.Stroke{Type: canvas.Thin, Pen: ink.PenText})
	for i, t := range []canvas.LineType{canvas.Continuous, canvas.Dashed} {
		at := y - float64((1-i)*down) - float64(down)/2
		m.c.Line(0, at, x-1, at, canvas.Stroke{Type: t, Pen: ink.PenText})
	}
	return m.c.Render(m.pens)
}

// sampleAt is the sample that stands at a cell.
func (m *Model) sampleAt(x, y int) (int, bool) {
	n, wide := m.columns()
	top := len(m.head())
	if n == 1 || wide == 0 || x < 1 || y < top || y > top+m.rows() || (x-1)/wide >= n {
		return 0, false
	}
	return (x - 1) / wide, true
}
