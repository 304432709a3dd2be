package calc

import (
	"fmt"
	"math"

	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
)

// tie is how near a value must come to the extreme to share its place.
const tie = 1e-9

// makeChecks runs every check. Squeeze, gather and thread guard always
// stand in the list; the others too, with their value.
func (p *Plan) makeChecks() {
	p.Checks = []Check{
		p.checkSqueeze(), p.checkGather(), p.checkGuard(), p.checkEdge(),
		p.checkHollow(), p.checkFold(), p.checkThread(), p.checkBack(),
	}
	p.Checks = append(p.Checks, p.checkMouth()...)
	if p.Input.Belt.Loop == FoldedLoop {
		p.Checks = append(p.Checks, p.checkTab())
	}
}

// ruler and calliper show a figure in mm in the shown unit.
func ruler(mm float64, u length.Unit) string {
	return length.Length(mm).Format(u, length.Ruler)
}

func calliper(mm float64, u length.Unit) string {
	return length.Length(mm).Format(u, length.Calliper)
}

// leastRoom keeps a sheath without any room from dividing by nothing, mm.
const leastRoom = 1e-3

// checkSqueeze compares what must pass with the room there is. The share
// decides the place, the millimetres there the level.
func (p *Plan) checkSqueeze() Check {
	s, lim := p.at, p.Input.Limits
	share := func(i int) float64 { return s.need.Y[i]/math.Max(s.room.Y[i], leastRoom) - 1 }
	most := math.Inf(-1)
	for i := range s.need.X {
		most = math.Max(most, share(i))
	}
	at := 0
	for share(at) < most-tie {
		at++
	}
	c := Check{Name: "squeeze", Value: most, At: s.need.X[at], HasAt: true}
	d := s.need.Y[at] - s.room.Y[at]
	where := func(u length.Unit) string { return ruler(c.At, u) + " from the point" }
	switch {
	case d < lim.Loose.MM():
		c.Level = Note
		c.say = func(u length.Unit) string {
			return fmt.Sprintf("tightest place, %s: still %s a side to spare; form it closely, take some ease away or add a strap",
				where(u), calliper(-d, u))
		}
	case d <= lim.Snug.MM():
		c.say = func(u length.Unit) string {
			if d <= 0 {
				return fmt.Sprintf("tightest place, %s: %s a side to spare, the moulding holds the knife", where(u), calliper(-d, u))
			}
			return fmt.Sprintf("tightest place, %s: %s a side, the moulding holds the knife", where(u), calliper(d, u))
		}
	case d <= lim.Tight.MM():
		c.Level = Note
		c.say = func(u length.Unit) string {
			return fmt.Sprintf("tightest place, %s: %s a side too tight when dry; form it wet and insert the knife slowly",
				where(u), calliper(d, u))
		}
	default:
		c.Level = Warn
		c.say = func(u length.Unit) string {
			return fmt.Sprintf("tightest place, %s: %s a side too tight, the knife will not go in; "+
				"add a correction of about %s from there to the mouth",
				where(u), calliper(d, u), calliper(d-lim.Snug.MM(), u))
		}
	}
	return c
}

// checkGather looks for the stretch where the flat line is longest against
// the line on the closed sheath.
func (p *Plan) checkGather() Check {
	most, at := p.at.gather(p.Input.Limits.GatherReach.MM())
	c := Check{Name: "gather", Value: most, At: at, HasAt: true}
	lim := p.Input.Limits
	say := func(tail string) {
		c.say = func(u length.Unit) string {
			return fmt.Sprintf("seam longer than the welt: %.1f %% (%s over %s) about %s from the point; %s", 100*most,
				calliper(most*lim.GatherReach.MM(), u), ruler(lim.GatherReach.MM(), u), ruler(at, u), tail)
		}
	}
	switch {
	case most <= lim.GatherEasy:
		say("it lies down by itself")
	case most <= lim.GatherMost:
		c.Level = Note
		say("ease it in wet, working from both sides of the bolster")
	default:
		c.Level = Warn
		say("it will pucker: use a larger smallest hollow, so that the line passes the step further out")
	}
	return c
}

// gather is the largest excess of the flat over the plane stitch line over
// any stretch of the given plane length within 0..mouth, and the mean of its
// two end x. Both lines are polylines over the same x, so the largest lies
// where one end of the stretch is at one of their points.
func (s *sampled) gather(reach float64) (most, at float64) {
	seam, flat := s.seam.Between(0, s.mouth), s.stitch.Between(0, s.mouth)
	plane, long := arcLengths(seam), arcLengths(flat)
	total := plane[len(plane)-1]
	if total <= 0 {
		return 0, 0
	}
	reach = math.Min(reach, total)
	over := curve.Graph{X: plane, Y: long}
	back := curve.Graph{X: plane, Y: seam.X}
	share := func(s0 float64) float64 { return (over.At(s0+reach)-over.At(s0))/reach - 1 }
	starts := make([]float64, 0, 2*len(plane))
	for _, a := range plane {
		for _, s0 := range [...]float64{a, a - reach} {
			if s0 >= -tie && s0+reach <= total+tie {
				starts = append(starts, s0)
			}
		}
	}
	most = math.Inf(-1)
	shares := make([]float64, len(starts))
	for i, s0 := range starts {
		shares[i] = share(s0)
		most = math.Max(most, shares[i])
	}
	at = math.Inf(1)
	for i, s0 := range starts {
		if shares[i] >= most-tie {
			at = math.Min(at, (back.At(s0)+back.At(s0+reach))/2)
		}
	}
	return most, at
}

// arcLengths is the length along the graph from its first point to each.
func arcLengths(g curve.Graph) []float64 {
	out := make([]float64, len(g.X))
	for i := 1; i < len(out); i++ {
		out[i] = out[i-1] + math.Hypot(g.X[i]-g.X[i-1], g.Y[i]-g.Y[i-1])
	}
	return out
}

// checkGuard finds the hole whose rim comes nearest to the knife.
func (p *Plan) checkGuard() Check {
	lim, half := p.Input.Limits, p.Stitch.Choice().Diameter/2
	dist := make([]float64, len(p.Stitch.Positions))
	least := math.Inf(1)
	for i, h := range p.Stitch.Positions {
		dist[i] = p.at.toKnife(h) - half
		least = math.Min(least, dist[i])
	}
	c := Check{Name: "thread guard", Value: least, At: math.Inf(1), HasAt: true}
	for i, h := range p.Stitch.Positions {
		if dist[i] <= least+tie {
			c.At = math.Min(c.At, h.X)
		}
	}
	tail := "enough leather between edge and thread"
	switch {
	case least < lim.GuardWarn.MM():
		c.Level, tail = Warn, "the edge can reach the thread: move the stitch line out (a larger gap)"
	case least < lim.GuardNote.MM():
		c.Level, tail = Note, "close to the edge: give the stitch line a larger gap"
	}
	c.say = func(u length.Unit) string {
		return fmt.Sprintf("knife to the nearest hole: %s, %s from the point; %s", calliper(least, u), ruler(c.At, u), tail)
	}
	return c
}

// toKnife is the distance in the plane from a point of the stitch line to the
// region that the knife needs. The line never comes nearer than the gap; only
// its drawing with straight pieces would.
func (s *sampled) toKnife(h curve.Vec) float64 {
	// The closing moves the line out by no more than its radius.
	far := s.g + s.b + s.step
	near := s.lower.Between(h.X-far, h.X+far)
	d := near.Nearest(h).Dist(h)
	if h.X < 0 && h.Y < s.lower.Y[0] { // beside the point the knife ends in a line across
		d = -h.X
	}
	return math.Max(d, s.g)
}

// checkEdge compares the margin with hole and leather.
func (p *Plan) checkEdge() Check {
	margin, leather := p.Input.Sheath.Margin.MM(), p.Input.Sheath.Leather.MM()
	c := Check{Name: "edge", Value: margin}
	tail := "enough to carry the stitches"
	if rim := margin - p.Stitch.Choice().Diameter/2; rim <= 0 {
		c.Level, tail = Warn, "the holes break out of the edge: make the margin wider"
	} else if margin < leather-tie {
		c.Level, tail = Note, "less than the leather is thick, the edge may tear: make the margin wider"
	}
	c.say = func(u length.Unit) string {
		return fmt.Sprintf("stitch line to the finished edge all along: %s; %s", ruler(margin, u), tail)
	}
	return c
}

// checkHollow compares the tightest hollow of the cut line with the
// smallest drum it can be sanded with.
func (p *Plan) checkHollow() Check {
	d, drum := 2*(p.at.b-p.at.m), p.Input.Limits.Drum.MM()
	c := Check{Name: "hollow", Value: d}
	tail := "your smallest drum fits"
	if d < drum-tie {
		c.Level = Note
	}
	c.say = func(u length.Unit) string {
		if c.Level == Note {
			return fmt.Sprintf("smallest hollow of the cut line: %s across, your smallest drum is %s; use a larger smallest hollow, or a file",
				ruler(d, u), ruler(drum, u))
		}
		return fmt.Sprintf("smallest hollow of the cut line: %s across; %s", ruler(d, u), tail)
	}
	return c
}

// checkFold compares the inside radius at the fold, where the spine or the
// welt is thinnest, with the leather.
func (p *Plan) checkFold() Check {
	r, at := p.at.foldRadius()
	leather := p.Input.Sheath.Leather.MM()
	c := Check{Name: "fold", Value: r, At: at, HasAt: true}
	tail := "it folds without cracking when damp"
	if r < leather/2-tie {
		c.Level, tail = Note, "thin spine and thick leather: dampen the fold well before folding, or use a thicker welt"
	}
	c.say = func(u length.Unit) string {
		return fmt.Sprintf("inside radius at the fold: %s for leather of %s, %s from the point; %s",
			calliper(r, u), calliper(leather, u), ruler(at, u), tail)
	}
	return c
}

// foldRadius is the least inside radius of the fold over the knife, and
// where: half the welt, or half the back where it lies against the fold.
func (s *sampled) foldRadius() (r, at float64) {
	half := s.in.Sheath.Welt.MM() / 2
	r = math.Inf(1)
	var buf []knife.Section
	for _, x := range s.lower.X {
		here := half
		buf = s.knife.Sections(buf[:0], x)
		for _, sec := range buf {
			if sec.Top < s.in.Sheath.Leather.MM() && sec.Kind != knife.Oval {
				here = math.Max(here, sec.Thick/2)
			}
		}
		if here < r-tie {
			r, at = here, x
		}
	}
	return r, at
}

// checkThread tells when a thread is longer than arms are.
func (p *Plan) checkThread() Check {
	l, span := p.Thread.Length, p.Input.Limits.ArmSpans.MM()
	c := Check{Name: "thread length", Value: l}
	if l > span {
		c.Level = Note
	}
	c.say = func(u length.Unit) string {
		if c.Level == Note {
			return fmt.Sprintf("thread for the seam: %s, longer than two arm spans (%s); split it, and start the second where the first ends",
				long(l, u), long(span, u))
		}
		return fmt.Sprintf("thread for the seam: %s in one piece", long(l, u))
	}
	return c
}

// long shows a length in metres or feet and inches' decimal, as thread is
// pulled from the reel.
func long(mm float64, u length.Unit) string {
	if u == length.Inches {
		return fmt.Sprintf("%.1f ft", mm/(12*length.Inch.MM()))
	}
	return fmt.Sprintf("%.2f m", mm/1000)
}
