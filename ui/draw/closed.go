package draw

import (
	"chape/calc"
	"chape/calc/curve"
	"chape/ui/canvas"
	"chape/ui/term/ink"
)

// closed draws the closed sheath with the knife in it.
func (s Sheet) closed(c *canvas.Canvas, p *calc.Plan, m *Mark) {
	mouth := p.Input.Sheath.Mouth.MM()
	c.Polyline(s.dots(p.Plane.Inner, 1), glueLine)
	c.Polyline(s.dots(p.Plane.Stitch, 1), stitchLine)
	outer := p.Plane.Outer
	s.fold(c, outer[0].X, mouth+p.Input.Sheath.MouthRise.MM())
	edge := append(append(curve.Line(nil), outer...), p.Flat.Mouth.Reverse()...)
	edge = onlyTo(edge, outer[len(outer)-1].Y)
	c.Polyline(s.dots(edge, 1), cutLine)

	across, _ := s.glyphs.Dots()
	spine, belly := p.Outline(float64(across) / s.View.Scale())
	c.Polygon(s.dots(append(spine, belly.Reverse()...), 1), knifeLine)

	s.holes(c, p.Stitch.Positions, 1, p.Stitch.Walk, p.Stitch.Choice().Diameter)
	if m != nil {
		s.mark(c, m, outer.Height(m.At), []float64{1})
	}
	s.name(c, curve.Vec{X: mouth * 0.62}, 1, "fold")
	cx, cy := s.cell(c, curve.Vec{X: mouth, Y: outer[len(outer)-1].Y}, 1)
	if s.Upright {
		c.Text(cx-2, cy-2, "mouth", ink.PenQuiet)
	} else {
		c.Text(cx+2, cy, "mouth", ink.PenQuiet)
	}
}

// onlyTo keeps the points of a line with y up to the given one: the flat
// mouth is wider than the closed one.
func onlyTo(l curve.Line, y float64) curve.Line {
	var out curve.Line
	for _, v := range l {
		if v.Y <= y {
			out = append(out, v)
		}
	}
	return out
}
