package calc

import (
	"math"

	"chape/calc/curve"
	"chape/calc/knife"
)

// checkRub counts the loop's stitches that lie on the blade: its flat rubs
// their thread on the inside every time the knife goes in and out.
func (p *Plan) checkRub() Check {
	c := Check{Name: "loop rub", Mend: "belt.row"}
	for i := range p.Loop.Rows {
		row := p.Loop.Body[i*(p.Loop.Stitches+1) : (i+1)*(p.Loop.Stitches+1)]
		for k := 1; k < len(row); k++ {
			if p.at.onBlade(row[k-1]) || p.at.onBlade(row[k]) {
				c.Value++
				if !c.HasAt || row[k].X < c.At {
					c.At, c.HasAt = row[k].X, true
				}
			}
		}
	}
	if c.Value == 0 {
		c.say("no stitch of the loop lies on the blade")
		return c
	}
	c.Level = Note
	c.say("stitches of the loop, %v: %.0f lie on the blade, whose flat rubs their thread inside: sink them in a groove "+
		"and cover them with a patch, or move the rows", inPlace(c.At), c.Value)
	return c
}

// onBlade tells whether a place of the flat back half lies over what the edge
// needs, off what the handle needs.
func (s *sampled) onBlade(v curve.Vec) bool {
	if v.X < s.edge.X[0] || v.X > s.mouth {
		return false
	}
	edge, handle := s.edge.At(v.X), 0.0
	if v.X >= s.front-tie {
		handle = s.handle.At(v.X)
	}
	if handle >= edge {
		return false
	}
	u := s.over(v)
	return u <= edge && (handle == 0 || u > handle)
}

// over is the place u in the plane of the blade over which a place of the flat
// back half comes to lie: so far along the leather's inner face, what the bend,
// ease and corrections add being taken up evenly as far as the welt.
func (s *sampled) over(v curve.Vec) float64 {
	half := s.in.Sheath.Welt.MM() / 2
	var str tautString
	str.pull(half, s.inside.Sections([]knife.Section(nil), v.X), curve.Vec{X: s.inner.At(v.X), Y: half})
	face := append(curve.Line{{}}, str.hull...)
	glue := s.glueAt(v.X)
	if v.Y >= glue || glue <= 0 {
		return s.inner.At(v.X) + v.Y - glue
	}
	return math.Max(0, face.Along(v.Y/glue*face.Length()).X)
}
