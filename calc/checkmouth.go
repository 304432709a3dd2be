package calc

import (
	"math"

	"chape/calc/curve"
	"chape/calc/length"
)

// checkCorner tells when the corners of the mouth are rounded by less than
// asked for, and when the first hole comes near the rounded edge. There is none
// without rounding.
func (p *Plan) checkCorner() []Check {
	asked, r, beside := p.Input.Sheath.MouthRound.MM(), p.corner.radius, p.backCorner.radius
	if asked < leastRound {
		return nil
	}
	c := Check{Name: "mouth corners", Mend: "sheath.mouth_round", Value: beside, At: p.at.mouth, HasAt: true}
	const place = "corners of the mouth, %v: "
	x := inPlace(p.at.mouth)
	switch {
	case beside < r-tie && beside == 0:
		c.Level, c.Mend = Note, "belt.tab"
		c.say(place+"rounded by %v, but square on the half with the tab, which leaves no room: make the tab narrower", x, inCalliper(r))
	case beside < r-tie:
		c.Level = Note
		c.say(place+"rounded by %v, but by %v on the half with the tab, off the relief hole; make them alike, or the tab narrower", x, inCalliper(r), inCalliper(beside))
	case r < asked-tie:
		c.Level = Note
		c.say(place+"there is no room for %v: rounded by %v", x, inCalliper(asked), inCalliper(r))
	default:
		c.say(place+"rounded by %v", x, inCalliper(r))
	}
	near, raise := p.firstHole()
	margin := p.Input.Sheath.Margin.MM()
	f := Check{Name: "first hole", Mend: "stitch.first", Value: near, At: p.Stitch.Positions[0].X, HasAt: true}
	if near < margin-tie {
		f.Level = Note
		f.say("first hole, %v: %v from the rounded edge, less than %v: raise mouth to first hole by %v", inPlace(f.At),
			inCalliper(near), inCalliper(margin), atLeast{raise, length.Calliper})
	} else {
		f.say("first hole, %v: %v from the rounded edge", inPlace(f.At), inCalliper(near))
	}
	return []Check{c, f}
}

// firstHole is how near the first hole in the flat comes to the rounded edge
// of the mouth, and by how much first has to be raised for the margin.
func (p *Plan) firstHole() (near, raise float64) {
	s, margin := p.at, p.Input.Sheath.Margin.MM()
	corner := p.corner // the larger arc comes nearer
	dist := func(v curve.Vec) float64 { return corner.arc.Nearest(v).Dist(v) }
	near = dist(p.Stitch.Flat[0])
	if near >= margin-tie {
		return near, 0
	}
	line := p.fromMouth
	scale := p.Stitch.Laid / p.Stitch.PlaneLine
	first := p.Input.Stitch.First.MM()
	for raise = 0; near < margin && first+raise < p.Stitch.Laid; raise += 0.05 {
		at := line.Along((first + raise) / scale)
		if dist(s.flatten(at.Vec, p.Stitch.PlaneLine-at.S)) >= margin-tie {
			break
		}
	}
	return near, raise
}

// checkTab keeps the loop's stitches out of fold and welt.
func (p *Plan) checkTab() Check {
	b, l, s := p.Input.Belt, p.Loop, p.at
	glue := s.glue(len(s.seam.Y) - 1)
	tab, least := b.Tab.MM(), 2*p.Input.Sheath.Leather.MM()
	pitch, between := p.Input.Stitch.Pitch.MM(), glue-least
	middle := math.Min(p.Body.MouthStitch-2*least, 2*glue-p.Body.MouthStitch) // the widest that fits in the middle
	inFold, inWelt := least-l.Offset, l.Offset+tab-glue
	c := Check{Name: "tab", Mend: "belt.tab", Value: math.Min(-inFold, -inWelt), At: s.mouth, HasAt: true, Level: Warn}
	const place = "tab at the mouth, %v: "
	x := inPlace(s.mouth)
	switch {
	case l.Rows == 0:
		c.say(place+"%v is too narrow for one stitch with its margins; make it %v wide", x, inRuler(tab), atLeast{3 * pitch, length.Calliper})
	case b.rise() < 0:
		c.Mend = "belt.row"
		c.say(place+"its stitches lie %v too low for this belt; sew them %v below the mouth", x, inRuler(-b.rise()), atMost{math.Max(0, b.Row.MM()+b.rise()), length.Ruler})
	case tab > between+tie && b.Centred && middle > 3*pitch:
		c.say(place+"%v too wide for the middle, between fold and welt; make the tab %v wide", x, inCalliper(tab-middle), atMost{middle, length.Calliper})
	case tab > between+tie && between > 3*pitch:
		c.say(place+"%v too wide between fold and welt; make the tab %v wide", x, inCalliper(tab-between), atMost{between, length.Calliper})
	case tab > between+tie:
		c.Mend = "belt.loop"
		c.say(place+"%v too wide between fold and welt, no tab fits: hang this sheath without a folded loop", x, inRuler(tab-between))
	case inFold > tie:
		c.Mend = "belt.offset"
		c.say(place+"%v too near the fold; set it %v from the fold", x, inCalliper(inFold), atLeast{least, length.Calliper})
	case inWelt > tie:
		c.Mend = "belt.offset"
		c.say(place+"its stitches run %v into the welt; set it %v from the fold", x, inCalliper(inWelt), atMost{l.Offset - inWelt, length.Calliper})
	default:
		c.Level = OK
		c.say(place+"clear of fold and welt by %v", x, inRuler(c.Value))
	}
	return c
}
