package calc

import (
	"fmt"
	"math"

	"chape/calc/curve"
	"chape/calc/length"
)

// StrapCut is the retention strap, laid flat: a strip with its ends rounded
// by half the width. It is fixed on the back and closed in front with a snap,
// both at the middle of the handle's depth.
type StrapCut struct {
	At       float64 // x where it goes round the handle
	Length   float64
	ArmBack  float64 // from fixing to snap over the back of the knife
	ArmBelly float64 // from fixing to snap under its belly
	Width    float64
	Snap     float64    // from the end over the back
	Fixing   float64    // from the end over the back
	Depth    float64    // u of the middle of the handle there
	Outline  curve.Line // closed; x from the end over the back, y from the middle line
}

// strapPast is how far behind the handle's front, or the mouth, a strap lies
// unless its place is given: half its usual width and 3 mm (common practice,
// no source).
const strapPast = 12

// strapPlace is where the strap crosses the handle.
func (s *sampled) strapPlace() float64 {
	st := s.in.Strap
	if st.Placed {
		return st.At.MM()
	}
	front, _ := s.knife.HandleFront()
	return math.Max(front, s.mouth+s.in.Sheath.MouthRise.MM()) + strapPast
}

// makeStrap measures the strap round the convex hull of the handle's section,
// or refuses it where no handle is to go round.
func (p *Plan) makeStrap() error {
	s, st := p.at, p.Input.Strap
	if st.Kind == NoStrap {
		return nil
	}
	at, end := s.strapPlace(), s.knife.Length()
	secs := s.knife.Sections(nil, at)
	switch {
	case st.Placed && at < s.mouth-tie:
		return fmt.Errorf("the strap lies at %s, inside the sheath: place it past the mouth, %s", inMM(at), inMM(s.mouth))
	case len(secs) == 0:
		return fmt.Errorf("the strap lies at %s, past the end of the knife at %s: place it nearer, or end the sheath earlier", inMM(at), inMM(end))
	case !secs[len(secs)-1].Handle:
		return fmt.Errorf("the strap lies at %s, where the knife has no handle outside the sheath: place it on the handle, or leave it out", inMM(at))
	}
	back, belly := secs[len(secs)-1].Arms()
	turn := Bend(math.Pi, 0, st.Thickness.MM(), p.Input.Sheath.Neutral)
	cut := &StrapCut{
		At: at, ArmBack: back + turn, ArmBelly: belly + turn, Width: st.Width.MM(),
		Snap: st.Overlap.MM() / 2, Depth: (secs[len(secs)-1].Top + secs[len(secs)-1].Bottom) / 2,
	}
	cut.Fixing = cut.Snap + cut.ArmBack
	cut.Length = cut.ArmBack + cut.ArmBelly + st.Overlap.MM()
	cut.Outline = roundedStrip(cut.Length, cut.Width)
	p.Strap = cut
	return nil
}

// Area is the strap's, mm².
func (c *StrapCut) Area() float64 {
	if c == nil {
		return 0
	}
	return math.Abs(c.Outline.Area())
}

// roundedStrip is a strip along x whose ends are half circles; of one shorter
// than it is wide the arcs cut each other off.
func roundedStrip(length, width float64) curve.Line {
	r, half := width/2, math.Pi/2
	if length < width {
		half = math.Acos(1 - length/width)
	}
	out := arcRound(curve.Vec{X: length - r}, r, -half, 2*half)
	return append(out, arcRound(curve.Vec{X: r}, r, math.Pi-half, 2*half)...)
}

// checkStrap tells whether the strap stays where it is put, or what a sheath
// without one needs it for. There is none where nothing is to be said.
func (p *Plan) checkStrap() []Check {
	s := p.at
	if p.Strap == nil {
		if guard, ahead := s.guardAhead(p.Input.Limits.HeldOff.MM()); ahead {
			return []Check{strapWanted(s.mouth, guard)}
		}
		return nil
	}
	half, clear := p.Strap.Width/2, p.Input.Limits.StrapClear.MM()
	c := Check{Name: "strap", Mend: "strap.at", Value: math.Inf(1), At: p.Strap.At, HasAt: true}
	step := 0.0
	for _, x := range s.knife.Steps() {
		if d := math.Abs(x-p.Strap.At) - half; x >= s.mouth-tie && d < c.Value {
			c.Value, step = d, x
		}
	}
	fat, _ := s.fattest()
	onSwell := math.Abs(fat-p.Strap.At) - half
	const place = "strap round the handle, %v: "
	at := inPlace(p.Strap.At)
	c.Value = math.Min(c.Value, math.Abs(fat-p.Strap.At)) // finite where there is no step
	switch {
	case step > 0 && c.Value < 0:
		c.Level = Note
		c.say(place+"it lies over the step, %v, and slips: move it %v away", at, inPlace(step), atLeast{clear - c.Value, length.Ruler})
	case onSwell < -tie:
		c.Level, c.Value = Note, onSwell
		c.say(place+"it lies on the fattest part, %v, and slips: move it %v away", at, inPlace(fat), atLeast{-onSwell, length.Ruler})
	case step > 0 && c.Value < clear-tie:
		c.Level = Note
		c.say(place+"only %v beside the step, %v, it slips over it: move it %v away", at, inRuler(c.Value), inPlace(step), atLeast{clear - c.Value, length.Ruler})
	default:
		c.say(place+"clear of steps and of the fattest part", at)
	}
	return []Check{c}
}

// strapWanted tells what must hold a knife whose sheath ends before its guard.
// To end it past the guard would hold the fold off the blade.
func strapWanted(mouth, guard float64) Check {
	c := Check{Name: "strap", Mend: "strap.kind", Value: guard - mouth, At: mouth, HasAt: true, Level: Note}
	c.say("mouth, %v: it ends %v before the guard, the leather can't hold the knife by its handle: add a strap",
		inPlace(mouth), inRuler(guard-mouth))
	return c
}
