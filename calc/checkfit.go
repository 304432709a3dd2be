package calc

import (
	"math"

	"chape/calc/knife"
)

// checkFold compares the inside radius at the fold, where the spine or the
// welt is thinnest, with the leather.
func (p *Plan) checkFold() Check {
	r, at := p.at.foldRadius()
	leather := p.Input.Sheath.Leather.MM()
	c := Check{Name: "fold", Value: r, At: at, HasAt: true}
	const place = "inside radius at the fold, %v: %v for leather of %v; "
	tail := "it folds without cracking"
	if r < p.Input.Limits.FoldShare*leather-tie {
		c.Level, tail = Note, "thin for it: dampen the fold well before folding"
	}
	c.say(place+tail, inPlace(at), inCalliper(r), inCalliper(leather))
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

// checkBack warns of a back that would cut the fold, and says when a guard
// stands proud of it.
func (p *Plan) checkBack() Check {
	c := Check{Name: "back"}
	if p.Input.Knife.Back == knife.Sharp {
		c.Level, c.Value = Warn, 1
		c.say("sharp back, along %v of fold: it cuts the leather from inside, towards the wearer: "+
			"this knife wants a sheath sewn along both edges", inRuler(p.at.mouth))
		return c
	}
	gap, at, held := p.at.guardProud()
	if !held || gap <= p.Input.Limits.HeldOff.MM() {
		c.say("the fold lies against the back of the knife")
		return c
	}
	c.Level, c.Value, c.At, c.HasAt = Note, gap, at, true
	c.say("guard proud of the back, %v: it holds the fold %v off the blade: "+
		"end the mouth before it, or accept the gap", inPlace(at), inCalliper(gap))
	return c
}

// guardProud finds how far what is no blade stands proud of the blade's back
// inside the sheath: the difference of the two least gaps, and where the
// proudest stands. Not held where there is only one of the two.
func (s *sampled) guardProud() (gap, at float64, held bool) {
	blade, proud := math.Inf(1), math.Inf(1)
	var buf []knife.Section
	for _, x := range s.lower.X {
		buf = s.knife.Sections(buf[:0], x)
		for _, sec := range buf {
			if sec.Kind == knife.Blade {
				blade = math.Min(blade, sec.Top)
			} else if sec.Top < proud-tie {
				proud, at = sec.Top, x
			}
		}
	}
	if math.IsInf(blade, 1) || math.IsInf(proud, 1) {
		return 0, 0, false
	}
	return blade - proud, at, true
}

// checkMouth looks at where the mouth stands on the handle: past its fattest
// part, with enough left to hold. Before a guard that stands proud of the back it
// stands on the blade, and a strap has to hold what the swell can't. A knife
// without a handle has no such checks.
func (p *Plan) checkMouth() []Check {
	fat, has := p.at.fattest()
	if !has {
		return nil
	}
	guard, ahead := p.at.guardAhead(p.Input.Limits.HeldOff.MM())
	mouth, end, need := p.at.mouth, p.at.knife.Length(), p.Input.Limits.HandleLeft.MM()
	left := end - mouth
	c := Check{Name: "mouth", Value: left, At: mouth, HasAt: true}
	const place = "mouth, %v: "
	switch {
	case left < need-tie && end > need:
		c.Level = Warn
		c.say(place+"leaves %v of handle to hold, less than %v: end it at %v", inPlace(mouth), inRuler(left), inRuler(need), inRuler(end-need))
	case left < need-tie:
		c.Level = Warn
		c.say(place+"leaves %v of a knife of %v to hold: this knife is too short for a pouch", inPlace(mouth), inRuler(left), inRuler(end))
	case ahead:
		c.say(place+"ends before the guard", inPlace(mouth))
		return []Check{c, strap(mouth, guard)}
	case mouth < fat-tie && end-fat < need:
		c.Level = Note
		c.say(place+"%v short of the fattest part of the handle, the leather can't close behind the swell: add a strap",
			inPlace(mouth), inRuler(fat-mouth))
	case mouth < fat-tie:
		c.Level = Note
		c.say(place+"%v short of the fattest part of the handle, the leather can't close behind the swell: end it past %v",
			inPlace(mouth), inRuler(fat-mouth), inRuler(fat))
	default:
		c.say(place+"leaves %v of handle to hold", inPlace(mouth), inRuler(left))
	}
	return []Check{c}
}

// strap tells what must hold a knife whose sheath ends before its guard. To end it
// past the guard would hold the fold off the blade.
func strap(mouth, guard float64) Check {
	c := Check{Name: "strap", Value: guard - mouth, At: mouth, HasAt: true, Level: Note}
	c.say("mouth, %v: it ends %v before the guard, the leather can't hold the knife by its handle: add a strap",
		inPlace(mouth), inRuler(guard-mouth))
	return c
}

// guardAhead finds a guard, at the mouth or past it, that stands by more than
// heldOff (mm) proud of the blade's back.
func (s *sampled) guardAhead(heldOff float64) (at float64, ahead bool) {
	back := math.Inf(-1) // the gap at the back where the blade ends
	var buf []knife.Section
	for _, x := range s.knife.Marks() {
		buf = s.knife.Sections(buf[:0], x)
		for _, sec := range buf {
			if sec.Kind != knife.Blade {
				return x, x >= s.mouth-tie && back-sec.Top > heldOff
			}
			back = sec.Top
		}
	}
	return 0, false
}

// fattest is the first place where the handle is thickest. The handle is all
// that is no blade.
func (s *sampled) fattest() (at float64, has bool) {
	thick := 0.0
	var buf []knife.Section
	for _, x := range s.knife.Marks() { // the thickness is monotone in between
		buf = s.knife.Sections(buf[:0], x)
		for _, sec := range buf {
			if sec.Kind != knife.Blade && sec.Thick > thick+tie {
				thick, at, has = sec.Thick, x, true
			}
		}
	}
	return at, has
}
