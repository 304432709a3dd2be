package calc

import (
	"math"

	"chape/calc/curve"
)

// What a hole keeps of leather round it, mm, and how far apart two stand, in drills
// (common practice, no source).
const (
	leastBeside = 1.0
	leastApart  = 1.5
)

// sewn is a hole with where it belongs and what would move it.
type sewn struct {
	Circle
	what, remedy string
	mend         string // the input that the remedy names
	back         bool   // it belongs on the back half
}

// checkHoles looks at the holes as they are cut: each lies on the leather with some of
// it all round, and no two run into each other. It says nothing where all is well.
func (p *Plan) checkHoles() []Check {
	holes := p.holes()
	c := Check{Name: "holes", Level: Warn, HasAt: true}
	rim := newRim(p.Flat.Outline)
	for _, h := range holes {
		left := rim.depth(h.Centre, h.Diameter/2+2*leastBeside) - h.Diameter/2
		if h.back {
			left = math.Min(left, h.Centre.Y-h.Diameter/2)
		}
		if left < leastBeside-tie {
			c.Value, c.At, c.Mend = left, h.Centre.X, h.mend
			c.say("%v, %v: less than %v of leather beside it: %v", word(h.what), inPlace(c.At), inCalliper(leastBeside), word(h.remedy))
			return []Check{c}
		}
	}
	if n := len(p.Stitch.Positions); n > 0 { // on the closed sheath the seam ends at the fold
		last := p.Stitch.Positions[n-1]
		if left := last.Y - p.Stitch.Choice().Diameter/2; left < leastBeside-tie {
			c.Value, c.At, c.Mend = left, last.X, "stitch.last"
			c.say("last hole of the seam, %v: less than %v of leather to the fold: end further from it", inPlace(c.At), inCalliper(leastBeside))
			return []Check{c}
		}
	}
	if i, j, ok := tooClose(holes); ok {
		a, b := holes[i], holes[j]
		c.Value, c.At, c.Mend = a.Centre.Dist(b.Centre), a.Centre.X, b.mend
		c.say("%v and %v, %v: %v apart, they run into each other: %v", word(a.what), word(b.what), inPlace(c.At), inCalliper(c.Value), word(b.remedy))
		return []Check{c}
	}
	return p.checkRelief()
}

// checkRelief keeps the holes at the tab's corners off fold and rim. They are part of the
// outline: what comes near them is found there.
func (p *Plan) checkRelief() []Check {
	c := Check{Name: "holes", Level: Warn, HasAt: true, Mend: "belt.tab"}
	for _, r := range p.Loop.Relief {
		radius := r.Diameter / 2
		c.At, c.Value = r.Centre.X, math.Min(r.Centre.Y, p.Body.MouthCut-r.Centre.Y)-radius
		if c.Value < leastBeside-tie {
			c.say("relief hole at the tab's corner, %v: it reaches the fold or the rim: make the tab narrower, or move it", inPlace(c.At))
			return []Check{c}
		}
	}
	return nil
}

// word is a piece of a check's text.
type word string

// holes are all that are made in the body: the seam's in both halves, the loop's, the
// drain.
func (p *Plan) holes() []sewn {
	drill, n := p.Stitch.Choice().Diameter, len(p.Stitch.Flat)
	out := make([]sewn, 0, 2*n+len(p.Loop.Body)+len(p.Loop.Lap)+1)
	for _, side := range []float64{1, -1} {
		for i, v := range p.Stitch.Flat {
			h := sewn{Circle: Circle{curve.Vec{X: v.X, Y: side * v.Y}, drill}, what: "hole of the seam", remedy: "give it a wider margin, or a longer pitch", mend: "sheath.margin"}
			switch {
			case i == 0 && p.at.mouth-v.X < drill/2+leastBeside:
				h.what, h.remedy, h.mend = "first hole of the seam", "start further from the mouth", "stitch.first"
			case i == 0:
				h.what, h.remedy, h.mend = "first hole of the seam", "start further from the mouth, or give it a wider margin", "stitch.first"
			case i == n-1:
				h.what = "last hole of the seam"
			}
			out = append(out, h)
		}
	}
	for _, v := range p.Loop.Body {
		out = append(out, sewn{Circle{v, drill}, "hole of the loop", "move its row or its tab", "belt.row", true})
	}
	for _, v := range p.Loop.Lap {
		h := sewn{Circle{v, drill}, "hole of the loop's lap", "give it a longer pitch, or a wider tab", "stitch.pitch", true}
		switch {
		case v.X < p.Loop.Start: // no place on the tab: it counts as off the leather
			h.Centre.Y, h.remedy, h.mend = -h.Centre.Y, "sew the row higher", "belt.row"
		case p.Loop.Start+p.Body.TabLength-v.X < drill/2+leastBeside:
			h.remedy, h.mend = "leave more lap", "belt.lap"
		}
		out = append(out, h)
	}
	if d := p.Flat.Drain; d != nil {
		out = append(out, sewn{*d, "drain", "make it smaller", "sheath.drain", true})
	}
	return out
}

// tooClose finds two holes that stand less than leastApart drills apart. They are looked
// at in the order of x, so that few pairs are.
func tooClose(holes []sewn) (i, j int, ok bool) {
	order := byX(holes)
	widest := 0.0
	for _, h := range holes {
		widest = math.Max(widest, h.Diameter)
	}
	for n, a := range order {
		for _, b := range order[n+1:] {
			if holes[b].Centre.X-holes[a].Centre.X > leastApart*widest {
				break
			}
			if need := leastApart * (holes[a].Diameter + holes[b].Diameter) / 2; holes[a].Centre.Dist(holes[b].Centre) < need-tie {
				return min(a, b), max(a, b), true
			}
		}
	}
	return 0, 0, false
}
