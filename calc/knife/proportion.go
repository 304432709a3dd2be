package knife

import "chape/calc/length"

// Usual is the outline of a new project: a middling drop point with a bolster
// and an oval handle, of our own invention.
func Usual() Outline {
	return Outline{
		Point: Drop, Blade: 110, Depth: 30, Spine: 4,
		Front: Bolster, FrontLength: 12, FrontDepth: 31, FrontThick: 17,
		Handle: 110, HandleDepth: 27, HandleThick: 17, Swell: 4, Section: Oval,
	}
}

// guardLength is how long a guard is on such a knife, along it, mm.
const guardLength = 6

// Oddity is a figure of an outline that is out of proportion.
type Oddity struct {
	Key   string // as in the project file
	Name  string
	Value length.Length
	Usual length.Length // what Usual's proportions make of it
}

// Odd lists the figures that are more than times (or less than its inverse)
// what Usual's proportions to blade depth, handle depth or handle thickness
// make of them. Grind, swell and a butt of 0 may be anything.
func (o Outline) Odd(times float64) []Oddity {
	u := Usual()
	var odd []Oddity
	look := func(key, name string, value, usual, by, usualBy length.Length) {
		if value == 0 || usualBy == 0 {
			return
		}
		said := usual / usualBy * by
		if float64(value) > times*float64(said)+same || float64(value) < float64(said)/times-same {
			odd = append(odd, Oddity{key, name, value, said})
		}
	}
	look("blade", "blade length", o.Blade, u.Blade, o.Depth, u.Depth)
	look("spine", "spine thickness", o.Spine, u.Spine, o.Depth, u.Depth)
	if o.Front == Guard {
		u.FrontLength = guardLength
	}
	if o.Front != NoFront {
		look("front_length", "front length", o.FrontLength, u.FrontLength, o.Depth, u.Depth)
		look("front_depth", "front depth", o.FrontDepth, u.FrontDepth, o.Depth, u.Depth)
		look("front_thick", "front thickness", o.FrontThick, u.FrontThick, o.HandleThick, u.HandleThick)
	}
	look("handle", "handle length", o.Handle, u.Handle, o.HandleDepth, u.HandleDepth)
	look("handle_depth", "handle depth", o.HandleDepth, u.HandleDepth, o.Depth, u.Depth)
	look("handle_thick", "handle thickness", o.HandleThick, u.HandleThick, o.HandleDepth, u.HandleDepth)
	look("butt", "butt depth", o.Butt, u.HandleDepth, o.HandleDepth, u.HandleDepth)
	return odd
}
