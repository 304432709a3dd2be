// Package knife describes a knife as a maker measures it: a row of marks
// (stations) along a rule, each with the gap at the back, the depth and the
// thickness, and the shape of the section there. From the marks it makes
// smooth curves and, at any place, the section.
//
// All figures are millimetres. x runs along the fold line from the knife's
// point, u from the fold line towards the cutting edge, v is half the
// thickness direction.
package knife

import (
	"chape/calc/length"
)

// Kind is the shape of a section.
type Kind uint8

// The kinds of section.
const (
	Blade Kind = iota // a spine of full thickness, a bevel down to the edge
	Slab              // a rectangle with its outer corners rounded
	Oval              // an ellipse
)

// Kinds lists every kind in the order the screens offer them.
var Kinds = []Kind{Blade, Slab, Oval}

// String gives the word the project file uses.
func (k Kind) String() string {
	switch k {
	case Slab:
		return "slab"
	case Oval:
		return "oval"
	default:
		return "blade"
	}
}

// Back tells whether the knife's back would cut the fold.
type Back uint8

// The two backs.
const (
	Blunt Back = iota
	Sharp
)

// String gives the word the project file uses.
func (b Back) String() string {
	if b == Sharp {
		return "sharp"
	}
	return "blunt"
}

// Station is one mark along the knife.
type Station struct {
	At     length.Length // from the point along the fold line
	Top    length.Length // gap from the fold line down to the spine
	Bottom length.Length // from the fold line to the edge or belly
	Thick  length.Length // full thickness
	Kind   Kind          // of the stretch from here towards the handle
	Bevel  float64       // blades: the share of the depth that tapers, 0 to 1
	Round  length.Length // slabs: radius of the two outer corners
}

// Depth is what the calliper reads, spine to edge.
func (s Station) Depth() length.Length { return s.Bottom - s.Top }

// Knife is the row of marks and the state of the back.
type Knife struct {
	Stations []Station
	Back     Back
}

// Length is the place of the last mark; 0 without marks.
func (k Knife) Length() length.Length {
	if len(k.Stations) == 0 {
		return 0
	}
	return k.Stations[len(k.Stations)-1].At
}
