package knife

import "chape/calc/length"

// Point is the shape of a blade's point.
type Point uint8

// The points of the quick form.
const (
	Straight Point = iota
	Drop
	Clip
	Spear
	Sheepsfoot
)

// Front is what stands between blade and handle.
type Front uint8

// The fronts of a handle.
const (
	NoFront Front = iota
	Bolster
	Guard
)

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
	Handle      length.Length // length behind the front
	HandleDepth length.Length
	HandleThick length.Length
	Swell       length.Length // how much deeper and thicker the handle is at its fattest
	Butt        length.Length // depth at the butt; 0: as the handle
	Section     Kind          // of the handle: Slab or Oval
}
