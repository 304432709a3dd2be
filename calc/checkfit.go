package calc

import (
	"fmt"
	"math"

	"chape/calc/knife"
	"chape/calc/length"
)

// heldOff is the gap between the blade's back and the fold from which on a
// guard holds the fold off, mm (common practice, no source).
const heldOff = 1

// checkBack warns of a back that would cut the fold, and says when a guard
// stands proud of it.
func (p *Plan) checkBack() Check {
	c := Check{Name: "back"}
	if p.Input.Knife.Back == knife.Sharp {
		c.Level, c.Value = Warn, 1
		c.say = func(u length.Unit) string {
			return fmt.Sprintf("the back is sharp: along %s of fold it would cut the leather from inside, towards the wearer; "+
				"this is no knife for a fold-over sheath, make one sewn on both sides", ruler(p.at.mouth, u))
		}
		return c
	}
	gap, at, held := p.at.guardProud()
	if !held {
		c.say = func(length.Unit) string { return "the fold lies against the back of the knife" }
		return c
	}
	c.Level, c.Value, c.At, c.HasAt = Note, gap, at, true
	c.say = func(u length.Unit) string {
		return fmt.Sprintf("%s from the point the guard stands proud of the back and holds the fold %s off the blade: "+
			"end the mouth before it, or accept the gap", ruler(at, u), calliper(gap, u))
	}
	return c
}

// guardProud finds whether what touches the fold inside the sheath is no
// blade, while the blade nowhere comes near it: the blade's least gap, and the
// place of what touches.
func (s *sampled) guardProud() (gap, at float64, held bool) {
	gap, at = math.Inf(1), math.Inf(1)
	var buf []knife.Section
	for _, x := range s.lower.X {
		buf = s.knife.Sections(buf[:0], x)
		for _, sec := range buf {
			if sec.Kind == knife.Blade {
				gap = math.Min(gap, sec.Top)
			} else if sec.Top < tie {
				at = math.Min(at, x)
			}
		}
	}
	return gap, at, !math.IsInf(gap, 1) && gap > heldOff && !math.IsInf(at, 1)
}

// checkMouth looks at where the mouth stands on the handle: past its fattest
// part, with enough left to hold. A knife without a handle has no such check.
func (p *Plan) checkMouth() []Check {
	fat, has := p.at.fattest()
	if !has {
		return nil
	}
	mouth, left := p.at.mouth, p.at.knife.Length()-p.at.mouth
	c := Check{Name: "mouth", Value: left, At: mouth, HasAt: true}
	switch need := p.Input.Limits.HandleLeft.MM(); {
	case left < need-tie:
		c.Level = Warn
		c.say = func(u length.Unit) string {
			return fmt.Sprintf("mouth at %s leaves %s of handle to hold, less than %s: move the mouth %s towards the point",
				ruler(mouth, u), ruler(left, u), ruler(need, u), ruler(need-left, u))
		}
	case mouth < fat-tie:
		c.Level = Note
		c.say = func(u length.Unit) string {
			return fmt.Sprintf("mouth at %s is %s short of the fattest part of the handle, the leather can't close behind the swell: "+
				"move the mouth to %s, or add a strap", ruler(mouth, u), ruler(fat-mouth, u), ruler(fat, u))
		}
	default:
		c.say = func(u length.Unit) string {
			return fmt.Sprintf("mouth at %s leaves %s of handle to hold", ruler(mouth, u), ruler(left, u))
		}
	}
	return []Check{c}
}

// fattest is the first place where the handle is thickest. The handle is all
// that is no blade.
func (s *sampled) fattest() (at float64, has bool) {
	thick := 0.0
	look := func(x float64) {
		for _, sec := range s.knife.Sections(nil, x) {
			if sec.Kind != knife.Blade && sec.Thick > thick+tie {
				thick, at, has = sec.Thick, x, true
			}
		}
	}
	// The thickness is monotone between marks, so the marks suffice.
	for _, x := range s.knife.Marks() {
		look(x)
	}
	return at, has
}

// checkTab keeps the loop's stitches out of fold and welt.
func (p *Plan) checkTab() Check {
	b, l, s := p.Input.Belt, p.Loop, p.at
	n := len(s.seam.Y) - 1
	glue := p.Body.MouthStitch - (s.seam.Y[n] - s.inner.Y[n])
	tab, least := b.Tab.MM(), 2*p.Input.Sheath.Leather.MM()
	inFold, inWelt := least-l.Offset, l.Offset+tab-glue
	c := Check{Name: "tab", Value: math.Min(-inFold, -inWelt), At: s.mouth, HasAt: true}
	at := func(u length.Unit) string { return fmt.Sprintf("tab at the mouth, %s", ruler(s.mouth, u)) }
	switch {
	case l.Rows == 0:
		c.Level = Warn
		c.say = func(u length.Unit) string {
			return fmt.Sprintf("%s: %s wide is too narrow for one stitch of %s with margins; make the tab at least %s wide",
				at(u), ruler(tab, u), ruler(p.Input.Stitch.Pitch.MM(), u), ruler(3*p.Input.Stitch.Pitch.MM(), u))
		}
	case b.rise() < 0:
		c.Level = Warn
		c.say = func(u length.Unit) string {
			return fmt.Sprintf("%s: the stitch row lies %s too far below the mouth for this belt; bring the row up", at(u), ruler(-b.rise(), u))
		}
	case inFold > tie && inWelt > tie:
		c.Level = Warn
		c.say = func(u length.Unit) string {
			return fmt.Sprintf("%s: %s too wide, it stands in the fold and in the welt; make it %s wide",
				at(u), ruler(inFold+inWelt, u), ruler(math.Max(0, tab-inFold-inWelt), u))
		}
	case inFold > tie:
		c.Level = Warn
		c.say = func(u length.Unit) string {
			return fmt.Sprintf("%s: %s too near the fold; move it out to %s from the fold", at(u), ruler(inFold, u), ruler(least, u))
		}
	case inWelt > tie:
		c.Level = Warn
		c.say = func(u length.Unit) string {
			return fmt.Sprintf("%s: its stitches run %s into the welt; move it in to %s from the fold, or make it narrower",
				at(u), ruler(inWelt, u), ruler(math.Max(0, l.Offset-inWelt), u))
		}
	default:
		c.say = func(u length.Unit) string {
			return fmt.Sprintf("%s: clear of fold and welt by %s", at(u), ruler(c.Value, u))
		}
	}
	return c
}
