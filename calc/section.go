package calc

import (
	"chape/calc/curve"
	"chape/calc/knife"
)

// Across is the cut across sheath and knife at one place, upper half: (u, v)
// with v >= 0; the lower half mirrors it.
type Across struct {
	At       float64
	Knife    []curve.Line // one outline, two at a step
	Sheathed bool         // false past the mouth: only Knife means something
	Inside   curve.Line   // the leather's inner face: from the fold over the knife to the seam's edge
	Welt     float64      // u of the welt's inner edge
	Stitch   float64      // u of the stitch line
	Edge     float64      // u of the finished edge
	HalfWelt float64
	Leather  float64
	Need     float64 // half girth that has to pass here
	Room     float64 // half girth there is, fold to welt
}

// Across cuts the sheath at x, 0 to the end of the knife. At a step that stands
// at the mouth it is the side nearer the point.
func (p *Plan) Across(x float64) Across {
	s := p.at
	a := Across{At: x, HalfWelt: s.in.Sheath.Welt.MM() / 2, Leather: s.in.Sheath.Leather.MM()}
	secs := s.knife.Sections(nil, x)
	if x <= s.mouth {
		secs = s.inside.Sections(nil, x)
	}
	for _, sec := range secs {
		a.Knife = append(a.Knife, sec.Upper(nil))
	}
	if x < 0 || x > s.mouth {
		return a
	}
	a.Sheathed = true
	a.Welt, a.Stitch = s.inner.At(x), s.seam.At(x)
	a.Edge = a.Stitch + s.in.Sheath.Margin.MM()
	a.Need, a.Room = s.need.At(x), s.room.At(x)
	var str tautString
	str.pull(a.HalfWelt, secs, curve.Vec{X: a.Welt, Y: a.HalfWelt})
	a.Inside = append(curve.Line{{}}, str.hull...)
	a.Inside = append(a.Inside, curve.Vec{X: a.Edge, Y: a.HalfWelt})
	return a
}

// Outline is the knife seen from the side: spine and edge over x, with steps
// drawn; step is the distance of the points, mm.
func (p *Plan) Outline(step float64) (spine, edge curve.Line) {
	return knifeSide(p.at.knife, step)
}

func knifeSide(k *knife.Profile, step float64) (spine, edge curve.Line) {
	var buf []knife.Section
	for _, x := range curve.Grid(0, k.Length(), step, k.Breaks()) {
		buf = k.Sections(buf[:0], x)
		for _, sec := range buf {
			spine = append(spine, curve.Vec{X: x, Y: sec.Top})
			edge = append(edge, curve.Vec{X: x, Y: sec.Bottom})
		}
	}
	return spine, edge
}
