// Package nest finds places for the parts of sheaths on pieces of leather.
//
// Parts go down one after another, each as far to the left and then as low as
// it can lie (bottom-left-fill: Baker, Coffman and Rivest 1980; holes are filled
// as in Chazelle 1983), each in one of its turns. Where a part can lie beside
// another is read from their no-fit polygon (Art 1966), held as its upright
// slices at even distances, a semi-discrete form of it; each slice is exact. The
// order, the turns and the height used are then improved by late acceptance
// hill climbing (Burke and Bykov 2017). All named from memory.
//
// Figures are mm and radians. The search is pure, and gives the same answer to
// the same task each time unless it is broken off: it ends when a fixed amount of
// work is done, which is counted and never timed.
package nest

import (
	"math"

	"chape/calc/curve"
)

// Kind is what a part is.
type Kind uint8

// The kinds of parts.
const (
	Body  Kind = iota // with its tab
	Welt              // one ply
	Strap             // the retention strap
	Added             // what the maker adds
)

// String names the kind.
func (k Kind) String() string { return [...]string{"body", "welt", "strap", "added"}[k] }

// MayTurn tells whether the part may be cut with its grain side down. A welt may:
// its faces are both glued.
func (k Kind) MayTurn() bool { return k == Welt }

// Part is what is to be cut, Count times.
type Part struct {
	Name      string
	Kind      Kind
	Outline   curve.Line // closed, the true cut line, grain side up, x along the fold
	Count     int
	Thickness float64
	Along     bool // its x has to run along the grain where a piece's grain counts: bodies, straps
}

// Piece is a piece of leather, grain side up.
type Piece struct {
	Name      string
	Outline   curve.Line   // closed
	Flaws     []curve.Line // closed outlines to keep off
	Thickness float64
	Fixed     bool    // the grain counts
	Grain     float64 // direction of the grain from x
	Within    float64 // how far from it the fold may lie, either end first
}

// Task is what the search is given.
type Task struct {
	Parts  []Part
	Pieces []Piece // used one after another
	Gap    float64 // least distance between two parts
}

// Placement is where one copy of a part lies.
type Placement struct {
	Part, Copy int // copy from 0
	Piece      int
	At         curve.Vec // where the outline's origin comes to lie
	Angle      float64   // turned by, counter-clockwise about its origin
	Turned     bool      // grain side down: y counts the other way, before the turn
}

// Put gives the outline as the placement lays it.
func (p Placement) Put(outline curve.Line) curve.Line {
	l := lay(outline, p.Turned, p.Angle)
	for i := range l {
		l[i] = l[i].Add(p.At)
	}
	return l
}

// lay turns an outline over and round its origin.
func lay(outline curve.Line, turned bool, angle float64) curve.Line {
	sin, cos := sincos(angle)
	l := make(curve.Line, len(outline))
	for i, p := range outline {
		if turned {
			p.Y = -p.Y
		}
		l[i] = curve.Vec{X: p.X*cos - p.Y*sin, Y: p.X*sin + p.Y*cos}
	}
	return l
}

// sincos is exact at quarter turns, so that a part as wide as its piece fits.
func sincos(angle float64) (sin, cos float64) {
	q := math.Round(angle / (math.Pi / 2))
	if math.Abs(angle-q*math.Pi/2) > 1e-12 {
		return math.Sincos(angle)
	}
	switch math.Mod(math.Mod(q, 4)+4, 4) {
	case 0:
		return 0, 1
	case 1:
		return 1, 0
	case 2:
		return 0, -1
	}
	return -1, 0
}

// Missing is a part that found no room.
type Missing struct {
	Part, Count int
	Thickness   bool // no piece has its thickness
}

// Use is what became of one piece of leather.
type Use struct {
	Piece   int
	Lo, Hi  curve.Vec // the smallest upright rectangle round the parts on it
	Parts   float64   // area of the parts on it, mm²
	Leather float64   // area of the piece less its flaws, which are taken not to overlap
}

// Rectangle is the area of the rectangle used, mm².
func (u Use) Rectangle() float64 { return (u.Hi.X - u.Lo.X) * (u.Hi.Y - u.Lo.Y) }

// Yield is the share of the rectangle used that becomes parts.
func (u Use) Yield() float64 { return u.Parts / u.Rectangle() }

// Result is the best placing found.
type Result struct {
	Placements []Placement // in the order of parts and copies
	Missing    []Missing
	Uses       []Use // of the pieces that hold a part, in their order
	Stopped    bool  // the search was broken off; this is the best so far
}

// Fits tells whether every part has its place.
func (r Result) Fits() bool { return len(r.Missing) == 0 }

// Rectangle is the area of all rectangles used, mm².
func (r Result) Rectangle() float64 {
	var a float64
	for _, u := range r.Uses {
		a += u.Rectangle()
	}
	return a
}

// Yield is the share of the rectangles used that becomes parts; 0 with none.
func (r Result) Yield() float64 {
	var a float64
	for _, u := range r.Uses {
		a += u.Parts
	}
	if a == 0 {
		return 0
	}
	return a / r.Rectangle()
}

// Rect is a piece of leather, width × height, or a plain part.
func Rect(w, h float64) curve.Line {
	return curve.Line{{}, {X: w}, {X: w, Y: h}, {Y: h}}
}

// Round is a round flaw as an outline that lies nowhere inside the circle.
func Round(centre curve.Vec, radius float64) curve.Line {
	const n = 48
	r := radius / math.Cos(math.Pi/n)
	l := make(curve.Line, n)
	for i := range l {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		l[i] = centre.Add(curve.Vec{X: r * cos, Y: r * sin})
	}
	return l
}
