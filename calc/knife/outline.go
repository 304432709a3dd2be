package knife

import (
	"fmt"

	"chape/calc/length"
)

// Point is the shape of a blade's point.
type Point uint8

// The points of the quick form.
const (
	Straight   Point = iota // a straight back, the belly rises to it
	Drop                    // the back falls to the point in a bow
	Clip                    // the back falls to the point hollow, from a corner
	Spear                   // back and belly meet in the middle
	Sheepsfoot              // a straight edge, the back falls to it
)

// Points lists every point in the order the screens offer them.
var Points = []Point{Drop, Straight, Clip, Spear, Sheepsfoot}

// String gives the word the project file uses.
func (p Point) String() string {
	switch p {
	case Drop:
		return "drop"
	case Clip:
		return "clip"
	case Spear:
		return "spear"
	case Sheepsfoot:
		return "sheepsfoot"
	default:
		return "straight"
	}
}

// Front is what stands between blade and handle.
type Front uint8

// The fronts of a handle.
const (
	NoFront Front = iota
	Bolster
	Guard
)

// Fronts lists every front in the order the screens offer them.
var Fronts = []Front{Bolster, Guard, NoFront}

// String gives the word the project file uses.
func (f Front) String() string {
	switch f {
	case Bolster:
		return "bolster"
	case Guard:
		return "guard"
	default:
		return "none"
	}
}

// Outline is the quick way in: a dozen dimensions that fill the marks.
type Outline struct {
	Point       Point
	Blade       length.Length // point to the front of the handle or bolster
	Depth       length.Length // greatest depth of the blade
	Spine       length.Length // thickness of the spine
	Grind       length.Length // grind height; 0: full flat grind
	Front       Front
	FrontLength length.Length // bolster or guard, along the knife
	FrontDepth  length.Length
	FrontThick  length.Length
	FrontBack   length.Length // of a guard, with BackGiven: how far it stands out at the back
	FrontEdge   length.Length // of a guard, with EdgeGiven: how far it stands out at the edge
	BackGiven   bool
	EdgeGiven   bool          // FrontDepth says nothing then
	Handle      length.Length // length behind the front
	HandleDepth length.Length
	HandleThick length.Length
	Swell       length.Length // how much deeper and thicker the handle is at its fattest
	Butt        length.Length // depth at the butt; 0: as the handle
	Section     Kind          // of the handle: Slab or Oval
}

// Misfit is a dimension of an outline from which no marks can be made.
type Misfit struct {
	Key   string // as in the project file: "blade", "front_depth"
	Value length.Length
	Least length.Length
	Most  length.Length // of a grind: the blade's depth; 0: there is no such bound
}

// Error names the dimension, its value in mm and what would do.
func (m *Misfit) Error() string {
	mm := func(l length.Length) string { return fmt.Sprintf("%v mm", float64(l)) }
	return fmt.Sprintf("%s: found %s: %s", m.Key, mm(m.Value), m.Remedy(mm, mm))
}

// Remedy says what would do. The bounds are written by least and most, so that
// they come in the maker's unit and rounding does not put them out of bounds.
func (m *Misfit) Remedy(least, most func(length.Length) string) string {
	if m.Most > 0 {
		return "give at most the blade's depth, " + most(m.Most) + ", or 0 for a full grind"
	}
	return "give " + least(m.Least) + " or more"
}

// The smallest dimensions from which marks come out in order, mm.
const (
	leastBlade      = 20
	leastHandle     = 20
	leastBladeDepth = 5
	leastDepth      = 1
	leastThick      = 0.1
	leastFront      = 1
)

// Validate says which dimension gives no marks, as a *Misfit; nil where all do.
func (o Outline) Validate() error {
	checks := []struct {
		key   string
		value length.Length
		least length.Length
		on    bool
	}{
		{"blade", o.Blade, leastBlade, true},
		{"depth", o.Depth, leastBladeDepth, true},
		{"spine", o.Spine, leastThick, true},
		{"grind", o.Grind, 0, true},
		{"front_length", o.FrontLength, leastFront, o.Front != NoFront},
		{"front_depth", o.FrontDepth, leastDepth, o.Front != NoFront},
		{"front_thick", o.FrontThick, leastThick, o.Front != NoFront},
		{"handle", o.Handle, leastHandle, true},
		{"handle_depth", o.HandleDepth, leastDepth, true},
		{"handle_thick", o.HandleThick, leastThick, true},
		{"swell", o.Swell, 0, true},
		{"butt", o.Butt, 0, true},
	}
	for _, c := range checks {
		if c.on && !(c.value >= c.least && c.value <= 1e5) { // a NaN too
			return &Misfit{Key: c.key, Value: c.value, Least: c.least}
		}
	}
	if o.Grind > o.Depth {
		return &Misfit{Key: "grind", Value: o.Grind, Most: o.Depth}
	}
	return nil
}
