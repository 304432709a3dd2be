package draw

import (
	"chape/calc"
	"chape/calc/curve"
	"chape/ui/canvas"
	"chape/ui/term/ink"
	"slices"
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
	c.Polygon(s.dots(append(slices.Clone(spine), belly.Reverse()...), 1), knifeLine)

	s.strap(c, p.Strap, spine, belly)
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

// strap draws the retention strap round the handle, with its snap in front.
func (s Sheet) strap(c *canvas.Canvas, cut *calc.StrapCut, spine, belly curve.Line) {
	const snap = 3 // radius, mm
	if cut == nil {
		return
	}
	for _, x := range []float64{cut.At - cut.Width/2, cut.At + cut.Width/2} {
		a, b := s.dot(curve.Vec{X: x, Y: spine.Height(x)}, 1), s.dot(curve.Vec{X: x, Y: belly.Height(x)}, 1)
		c.Line(a.X, a.Y, b.X, b.Y, cutLine)
	}
	s.circle(c, calc.Circle{Centre: curve.Vec{X: cut.At, Y: cut.Depth}, Diameter: 2 * snap}, 1, reliefRim)
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
