package calc

import (
	"fmt"
	"math"

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
	p.Checks = append(p.Checks, p.checkStrap()...)
	p.Checks = append(p.Checks, p.checkCorner()...)
	p.Checks = append(p.Checks, p.checkHoles()...)
	if p.Input.Belt.Loop == FoldedLoop {
		p.Checks = append(p.Checks, p.checkTab(), p.checkRub())
	}
	p.Checks = append(p.Checks, p.Input.checkThickness()...)
	p.Checks = append(p.Checks, p.Input.checkUntouched()...)
	p.Checks = append(p.Checks, p.Input.checkUnmeasured()...)
}

// say keeps what the check says: the words of form with each figure of args
// shown in the unit asked for. %v in the form takes one of the types below.
func (c *Check) say(form string, args ...any) {
	c.text = func(u length.Unit) string {
		shown := make([]any, len(args))
		for i, a := range args {
			switch a := a.(type) {
			case inRuler:
				shown[i] = ruler(float64(a), u)
			case inPlace:
				shown[i] = a.say(u)
			case atLeast:
				shown[i] = length.Length(a.mm).Up(u, a.tool).Format(u, a.tool)
			case atMost:
				shown[i] = length.Length(a.mm).Down(u, a.tool).Format(u, a.tool)
			case inCalliper:
				shown[i] = calliper(float64(a), u)
			case inLong:
				shown[i] = long(float64(a), u)
			default:
				shown[i] = a
			}
		}
		return fmt.Sprintf(form, shown...)
	}
}

// The figures of a check in mm, and how closely they are shown.
type (
	inRuler    float64 // to be laid out with a ruler
	inCalliper float64 // to be set with callipers or dividers
	inLong     float64 // pulled from the reel: metres or feet
	inPlace    float64 // x: a place along the fold

	// What a remedy asks for, so that it helps when it is done as it is shown.
	atLeast struct {
		mm   float64
		tool length.Fineness
	}
	atMost struct {
		mm   float64
		tool length.Fineness
	}
)

// say names the place the way one finds it on the knife.
func (x inPlace) say(u length.Unit) string {
	switch {
	case math.Abs(float64(x)) < tie:
		return "at the point"
	case x < 0:
		return ruler(-float64(x), u) + " beyond the point"
	default:
		return ruler(float64(x), u) + " from the point"
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

// leastSeen is the smallest length that the shown figures do not round to 0, mm.
const leastSeen = 0.025

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
	c := Check{Name: "squeeze", Mend: "sheath.ease", Value: most, At: s.need.X[at], HasAt: true}
	d := s.need.Y[at] - s.room.Y[at]
	const place = "tightest place, %v: %v a side "
	x, spare, tight := inPlace(c.At), inCalliper(-d), inCalliper(d)
	held := p.Held()
	switch {
	case d < lim.Loose.MM():
		c.Level, c.Mend = Note, "strap.kind"
		c.say(place+"to spare, loose: form it closely, or add a strap", x, spare)
	case d <= 0:
		c.say(place+"to spare, "+held, x, spare)
	case d <= lim.Snug.MM():
		c.say(place+"tight, "+held, x, tight)
	case d <= lim.Tight.MM():
		c.Level = Note
		c.say(place+"tight: form it wet and insert the knife slowly", x, tight)
	default:
		c.Level = Warn
		c.say(place+"too tight, the knife will not go in: add ease, or a correction of %v from there to the mouth", x, tight, atLeast{d - lim.Snug.MM(), length.Calliper})
	}
	return c
}

// Held says what becomes of a knife that is neither loose nor too tight.
func (p *Plan) Held() string {
	if p.at.grips() {
		return "the moulding grips it"
	}
	return "room to form"
}

// grips tells whether wet leather can be moulded behind something: the mouth
// lies past the handle's fattest part, or past a guard that is more to pass
// than what stands at the mouth.
func (s *sampled) grips() bool {
	if !s.hasHandle() {
		return false
	}
	if fat, _ := s.fattest(); fat <= s.mouth+tie {
		return true
	}
	half := s.in.Sheath.Welt.MM() / 2
	var str tautString
	passing, at := 0.0, 0.0
	var buf []knife.Section
	for _, x := range append(s.inside.Marks(), s.mouth) {
		if x < s.front-tie || x > s.mouth+tie {
			continue
		}
		buf = s.inside.Sections(buf[:0], x)
		for _, sec := range buf {
			at = str.alone(half, sec)
			passing = max(passing, at)
		}
	}
	return passing > at+leastGrip
}

// leastGrip is how much more a guard is to pass than the place behind it, for
// leather to grip it, mm a side (common practice, no source).
const leastGrip = 0.5

// checkGather looks for the stretch where the flat line is longest against
// the line on the closed sheath.
func (p *Plan) checkGather() Check {
	lim := p.Input.Limits
	most, at, reach := p.at.gather(lim.GatherReach.MM())
	c := Check{Name: "gather", Mend: "sheath.blend", Value: most, At: at, HasAt: true}
	say := func(tail string) {
		c.say("seam longer than the welt, %v: by %v over %v (%.1f %%)"+tail,
			inPlace(at), inCalliper(most*reach), inRuler(reach), 100*most)
	}
	switch {
	case most*reach < leastSeen:
		c.say("seam nowhere longer than the welt, it lies down by itself")
	case most <= lim.GatherEasy:
		say("; it lies down by itself")
	case most <= lim.GatherMost:
		c.Level = Note
		say(": ease it in wet, a little at every stitch")
	default:
		c.Level = Warn
		say("; it will pucker: make the smallest hollow larger, or move the stitch line out")
	}
	return c
}
