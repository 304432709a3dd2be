package draw

import (
	"github.com/charmbracelet/x/ansi"

	"chape/calc"
	"chape/calc/curve"
	"chape/ui/canvas"
	"chape/ui/term/ink"
)

// names writes what is what onto the flat pattern.
func (s Sheet) names(c *canvas.Canvas, p *calc.Plan, m *Mark, halves []float64) {
	mouth := p.Input.Sheath.Mouth.MM()
	for i, half := range halves {
		middle := curve.Vec{X: mouth * 0.36, Y: p.Flat.Glue.Height(mouth*0.36) * 0.5}
		s.name(c, middle, half, []string{"back", "front"}[i])
	}
	s.name(c, curve.Vec{X: mouth * 0.62}, 1, "fold")
	s.mouthName(c, p, halves[len(halves)-1])
	s.pointName(c, p, m)
}

// mouthName stands outside the mouth, beside the tab; without a tab inside.
func (s Sheet) mouthName(c *canvas.Canvas, p *calc.Plan, half float64) {
	mouth, wide := p.Input.Sheath.Mouth.MM(), p.Body.MouthCut
	at := curve.Vec{X: mouth, Y: wide * 0.5}
	if p.Body.TabLength <= 0 {
		at.X -= 4 / s.Scale() // cells
		s.name(c, at, half, "mouth")
		return
	}
	if half > 0 { // on the tab's own half, past its far edge
		at.Y = (p.Loop.Offset + p.Input.Belt.Tab.MM() + wide) / 2
	}
	cx, cy := s.cell(c, at, half)
	if s.Upright {
		c.Text(cx-2, cy-2, "mouth", ink.PenQuiet)
		return
	}
	c.Text(cx+2, cy, "mouth", ink.PenQuiet)
}

// pointName stands outside the cut line at the point end; beside the chosen
// mark's pointer where that is in its place.
func (s Sheet) pointName(c *canvas.Canvas, p *calc.Plan, m *Mark) {
	const word = "point"
	first := p.Flat.Cut[0].X
	if s.Upright {
		cx, cy := s.cell(c, curve.Vec{X: first}, 1)
		c.Text(cx-len(word)/2, cy+1, word, ink.PenQuiet)
		return
	}
	reach := first + float64(len(word)+1)/s.Scale()
	cx, cy := s.cell(c, curve.Vec{X: first, Y: p.Flat.Cut.Height(reach)}, 1)
	cy += int(s.side)
	if m != nil {
		mx, my := s.cell(c, curve.Vec{X: m.At, Y: p.Flat.Cut.Height(m.At)}, 1)
		if my+int(s.side) == cy && mx < cx+len(word)+1 {
			cx = mx + len(m.Label) + 2
		}
	}
	c.Text(cx, cy, word, ink.PenQuiet)
}

// name writes a word with its middle at a place.
func (s Sheet) name(c *canvas.Canvas, at curve.Vec, half float64, word string) {
	cx, cy := s.cell(c, at, half)
	c.Text(cx-ansi.StringWidth(word)/2, cy, word, ink.PenQuiet)
}
