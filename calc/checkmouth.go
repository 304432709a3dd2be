package calc

import "math"

// checkCorner tells when rounding the corners of the mouth takes so much off
// the end of the stitch line that the first hole comes near the edge. There
// is none without rounding.
func (p *Plan) checkCorner() []Check {
	r := p.corner.radius
	if r <= 0 {
		return nil
	}
	lost := p.corner.takes(p.Body.MouthStitch, p.at.mouth)
	c := Check{Name: "mouth corners", Value: lost, At: p.at.mouth, HasAt: true}
	if lost > p.Input.Stitch.First.MM()/2 {
		c.Level = Note
		c.say("corners of the mouth, %v: rounded by %v they take %v off the end of the stitch line: round them by %v",
			inPlace(p.at.mouth), inCalliper(r), inCalliper(lost), inCalliper(p.at.m))
	} else {
		c.say("corners of the mouth, %v: rounded by %v", inPlace(p.at.mouth), inCalliper(r))
	}
	return []Check{c}
}

// takes is how much the corner takes off a line that runs to the mouth at
// the half-width y.
func (c corner) takes(y, mouth float64) float64 {
	for i := 1; i < len(c.arc); i++ { // from the cut line to the mouth, y falling
		a, b := c.arc[i-1], c.arc[i]
		if b.Y <= y && a.Y > y {
			return mouth - a.X - (b.X-a.X)*(a.Y-y)/(a.Y-b.Y)
		}
	}
	return 0
}

// checkTab keeps the loop's stitches out of fold and welt.
func (p *Plan) checkTab() Check {
	b, l, s := p.Input.Belt, p.Loop, p.at
	n := len(s.seam.Y) - 1
	glue := p.Body.MouthStitch - (s.seam.Y[n] - s.inner.Y[n])
	tab, least := b.Tab.MM(), 2*p.Input.Sheath.Leather.MM()
	pitch, between := p.Input.Stitch.Pitch.MM(), glue-least
	inFold, inWelt := least-l.Offset, l.Offset+tab-glue
	c := Check{Name: "tab", Value: math.Min(-inFold, -inWelt), At: s.mouth, HasAt: true, Level: Warn}
	const place = "tab at the mouth, %v: "
	x := inPlace(s.mouth)
	switch {
	case l.Rows == 0:
		c.say(place+"%v is too narrow for one stitch with its margins; make it %v wide", x, inRuler(tab), inCalliper(3*pitch))
	case b.rise() < 0:
		c.say(place+"its stitches lie %v too low for this belt; sew them %v below the mouth", x, inRuler(-b.rise()), inRuler(math.Max(0, b.Row.MM()+b.rise())))
	case tab > between+tie && between > 3*pitch:
		c.say(place+"%v too wide between fold and welt; make the tab %v wide", x, inCalliper(tab-between), inCalliper(between))
	case tab > between+tie:
		c.say(place+"%v too wide between fold and welt, no tab fits: hang this sheath without a folded loop", x, inRuler(tab-between))
	case inFold > tie:
		c.say(place+"%v too near the fold; set it %v from the fold", x, inCalliper(inFold), inCalliper(least))
	case inWelt > tie:
		c.say(place+"its stitches run %v into the welt; set it %v from the fold", x, inCalliper(inWelt), inCalliper(l.Offset-inWelt))
	default:
		c.Level = OK
		c.say(place+"clear of fold and welt by %v", x, inRuler(c.Value))
	}
	return c
}
