package calc

import (
	"fmt"
	"math"

	"chape/calc/curve"
	"chape/calc/length"
)

// checkGuard finds the hole whose rim comes nearest to what the edge needs.
func (p *Plan) checkGuard() Check {
	lim, half := p.Input.Limits, p.Stitch.Choice().Diameter/2
	dist := make([]float64, len(p.Stitch.Positions))
	least := math.Inf(1)
	for i, h := range p.Stitch.Positions {
		dist[i] = p.at.toEdge(h) - half
		least = math.Min(least, dist[i])
	}
	c := Check{Name: "thread guard", Mend: "sheath.gap", Value: least, At: math.Inf(1), HasAt: true}
	for i, h := range p.Stitch.Positions {
		if dist[i] <= least+tie {
			c.At = math.Min(c.At, h.X)
		}
	}
	const place = "edge to the rim of a hole, %v: %v; "
	x, d := inPlace(c.At), inCalliper(least)
	switch {
	case least < lim.GuardWarn.MM():
		c.Level = Warn
		c.say(place+"the edge can reach the thread: stitch %v further from the edge", x, d, atLeast{lim.GuardNote.MM() - least, length.Calliper})
	case least < lim.GuardNote.MM():
		c.Level = Note
		c.say(place+"little leather before the thread: stitch %v further from the edge", x, d, atLeast{lim.GuardNote.MM() - least, length.Calliper})
	default:
		c.say(place+"enough leather before the thread", x, d)
	}
	return c
}

// drawn is how far the stitch line, drawn with straight pieces, may stray from
// the true one, mm.
const drawn = 0.002

// toEdge is the distance in the plane from a point of the stitch line to the
// region that the edge needs. It is the gap all along where the closing left
// the line alone; so that such holes tie, what strays by the drawing is taken
// for the gap. Round a handle the line may come nearer.
func (s *sampled) toEdge(h curve.Vec) float64 {
	// Nothing nearer than what lies straight above can lie further off than that.
	far := math.Abs(h.Y-s.edge.At(h.X)) + math.Max(0, s.edge.X[0]-h.X) + s.step
	near := s.edge.Between(h.X-far, h.X+far)
	d := near.Nearest(h).Dist(h)
	if h.X < s.edge.X[0] && h.Y < s.edge.Y[0] { // beside the point the region ends in a line across
		d = s.edge.X[0] - h.X
	}
	if d < s.g+drawn && (h.X < s.front-s.gh || d > s.g-drawn) {
		return s.g
	}
	return d
}

// checkEdge compares the margin with hole and leather.
func (p *Plan) checkEdge() Check {
	margin, leather := p.Input.Sheath.Margin.MM(), p.Input.Sheath.Leather.MM()
	hole := p.Stitch.Choice().Diameter
	c := Check{Name: "edge", Mend: "sheath.margin", Value: margin}
	const place = "stitch line to the finished edge, all along: %v; "
	switch {
	case margin <= hole/2:
		c.Level = Warn
		c.say(place+"the holes break out of the edge: make it %v", inCalliper(margin), atLeast{math.Max(leather, hole), length.Calliper})
	case margin < leather-tie:
		c.Level = Note
		c.say(place+"less than the leather is thick, the edge may tear: make it %v", inCalliper(margin), atLeast{leather, length.Calliper})
	default:
		c.say(place+"enough to carry the stitches", inCalliper(margin))
	}
	return c
}

// checkHollow compares the tightest hollow of the cut line with the smallest
// drum it can be sanded with.
func (p *Plan) checkHollow() Check {
	d, drum := 2*(p.at.b-p.at.m), p.Input.Limits.Drum.MM()
	c := Check{Name: "hollow", Mend: "sheath.blend", Value: d}
	const place = "smallest hollow of the cut line: %v across; "
	if d < drum-tie {
		c.Level = Note
		c.say(place+"your smallest drum will not go in: make it %v", inRuler(d), atLeast{drum, length.Ruler})
	} else {
		c.say(place+"your smallest drum goes in", inRuler(d))
	}
	return c
}

// checkThread tells when a thread is longer than arms are.
func (p *Plan) checkThread() Check {
	l, span := p.Thread.Length, p.Input.Limits.ArmSpans.MM()
	c := Check{Name: "thread length", Mend: "stitch.thread", Value: l}
	if l > span {
		c.Level = Note
		c.say("thread for the seam: %v, longer than two arm spans (%v): split it, the second from where the first ends",
			inLong(l), inLong(span))
	} else {
		c.say("thread for the seam: %v in one piece", inLong(l))
	}
	return c
}

// long shows a length in metres or feet, as thread is pulled from the reel.
func long(mm float64, u length.Unit) string {
	if u == length.Inches {
		return fmt.Sprintf("%.1f ft", mm/(12*length.Inch.MM()))
	}
	return fmt.Sprintf("%.2f m", mm/1000)
}
