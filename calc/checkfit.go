package calc

import (
	"math"

	"chape/calc/knife"
	"chape/calc/length"
)

// checkFold compares the inside radius at the fold, where the spine or the
// welt is thinnest, with the leather.
func (p *Plan) checkFold() Check {
	r, at := p.at.fold, p.at.foldAt
	leather := p.Input.Sheath.Leather.MM()
	c := Check{Name: "fold", Mend: "sheath.leather", Value: r, At: at, HasAt: true}
	const place = "inside radius at the fold, %v: %v for leather of %v; "
	tail := "it folds without cracking"
	if r < p.Input.Limits.FoldShare*leather-tie {
		c.Level, tail = Note, "thin for it: dampen the fold well before folding"
	}
	c.say(place+tail, inPlace(at), inCalliper(r), inCalliper(leather))
	return c
}

// foldRadius is the inside radius of the fold over the sections of one place:
// half the welt, or half the back where it lies against the fold.
func (s *sampled) foldRadius(sections []knife.Section) float64 {
	r := s.in.Sheath.Welt.MM() / 2
	for i := range sections {
		if sec := &sections[i]; sec.Top < s.in.Sheath.Leather.MM() && sec.Kind != knife.Oval {
			r = max(r, sec.Thick/2)
		}
	}
	return r
}

// checkBack warns of a back that would cut the fold, and says where the back
// lies off the fold because something stands out of it.
func (p *Plan) checkBack() Check {
	s := p.at
	gap, at := s.inside.Held(s.mouth/4, s.mouth)
	by := s.holder(at)
	c := Check{Name: "back", Mend: "sheath.mouth", Value: gap, At: at, HasAt: true}
	switch {
	case p.Input.Knife.Back == knife.Sharp:
		c.Level, c.Mend = Warn, "knife.back"
		c.say("sharp back, along %v of fold: it cuts the leather from inside, towards the wearer: "+
			"this knife wants a sheath sewn along both edges", inRuler(s.mouth))
	case gap <= p.Input.Limits.HeldOff.MM():
		c.say("the fold lies against the back of the knife")
	case by >= 0:
		c.Level = Note
		c.say("back, %v: the guard or handle, %v, holds the fold %v off it: end the mouth before that, or accept the gap",
			inPlace(at), inPlace(by), inCalliper(gap))
	default:
		c.Level = Note
		if p.Input.Outline == nil { // else no gap was measured
			c.Mend, c.Mark = "knife.station.top", nearest(p.Input.Knife.Stations, at)
		}
		c.say("back, %v: it is hollow there, or falls away, and the fold lies %v off it: accept the gap, or form the fold in by hand",
			inPlace(at), inCalliper(gap))
	}
	return c
}

// holder is where guard or handle touches the fold, if that is what touches it
// nearest to the place at; or -1.
func (s *sampled) holder(at float64) float64 {
	by, near := -1.0, math.Inf(1)
	for _, x := range s.inside.Touching(s.mouth) {
		if d := math.Abs(x - at); d < near {
			by, near = x, d
		}
	}
	if by < s.front-tie {
		return -1
	}
	return by
}

// checkMouth looks at where the mouth stands on the handle: past its fattest
// part, with enough left to hold past the highest leather. Before a guard that
// stands proud of the back it stands on the blade, and a strap has to hold what
// the swell can't. A knife without a handle has no such checks.
func (p *Plan) checkMouth() []Check {
	fat, has := p.at.fattest()
	if !has {
		return nil
	}
	_, ahead := p.at.guardAhead(p.Input.Limits.HeldOff.MM())
	rise := p.Input.Sheath.MouthRise.MM()
	mouth, end, need := p.at.mouth, p.at.knife.Length(), p.Input.Limits.HandleLeft.MM()
	left := end - mouth - rise
	c := Check{Name: "mouth", Mend: "sheath.mouth", Value: left, At: mouth, HasAt: true}
	const place = "mouth, %v: "
	const behind = place + "%v short of the fattest part of the handle, the leather can't close behind the swell: "
	x, short := inPlace(mouth), inRuler(fat-mouth)
	switch {
	case left < need-tie && end-rise > need:
		c.Level = Warn
		c.say(place+"its highest leather leaves %v of handle to hold, less than %v: end it at %v", x, inRuler(max(0, left)), inRuler(need), atMost{end - rise - need, length.Ruler})
	case left < need-tie:
		c.Level = Warn
		c.say(place+"leaves %v of a knife of %v to hold: this knife is too short for a pouch", x, inRuler(max(0, left)), inRuler(end))
	case ahead:
		c.say(place+"ends before the guard", x)
	case mouth < fat-tie && p.Strap != nil:
		c.say(place+"short of the fattest part of the handle, the strap holds it", x)
	case mouth < fat-tie && end-rise-fat < need:
		c.Level, c.Mend = Note, "strap.kind"
		c.say(behind+"add a strap", x, short)
	case mouth < fat-tie:
		c.Level, c.Mend = Note, "strap.kind"
		c.say(behind+"add a strap, or end it past %v", x, short, atLeast{fat, length.Ruler})
	default:
		c.say(place+"leaves %v of handle to hold", x, inRuler(left))
	}
	return []Check{c}
}

// guardAhead finds a guard, at the mouth or past it, that stands by more than
// heldOff (mm) proud of the blade's back.
func (s *sampled) guardAhead(heldOff float64) (at float64, ahead bool) {
	back := math.Inf(-1) // the gap at the back where the blade ends
	var buf []knife.Section
	for _, x := range s.knife.Marks() {
		buf = s.knife.Sections(buf[:0], x)
		for _, sec := range buf {
			if sec.Handle {
				return x, x >= s.mouth-tie && back-sec.Top > heldOff
			}
			back = sec.Top
		}
	}
	return 0, false
}

// fattest is the first place where the handle is thickest.
func (s *sampled) fattest() (at float64, has bool) { return swell(s.knife) }
