package calc

import (
	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
)

// Plan is everything that follows from an Input.
type Plan struct {
	Input  Input
	Fold   knife.FoldLine // where the fold lies in the axes of the marks
	Body   Body
	Flat   Flat  // curves of the opened, cut leather: (x, y)
	Plane  Plane // curves on the closed sheath: (x, u)
	Welt   Welt
	Stitch Stitching
	Loop   Loop
	Strap  *StrapCut // nil: there is none
	Thread Thread
	Checks []Check

	at         *sampled   // what Across and Outline need
	corner     corner     // of the mouth, on the front half
	backCorner corner     // on the half with the tab
	fromMouth  curve.Line // Plane.Stitch from its other end
}

// Body holds the figures of the flat body.
type Body struct {
	Length      float64 // fold from the point end to the highest place of the mouth, without the tab
	Width       float64 // both halves, at the widest
	Area        float64 // both halves, without the tab
	TabLength   float64 // 0 without a loop
	AreaWithTab float64
	MouthStitch float64 // half-width to the stitch line at the mouth
	MouthCut    float64 // half-width to the cut line at the mouth
	Bend        float64 // what the leather's own thickness adds to a half
	Offsets     []Offset
}

// Offset is one row of the table of half-widths, from the fold.
type Offset struct {
	At     float64
	Sewn   bool    // false left of the stitch line: Stitch and Glue mean nothing
	Stitch float64 // to the stitch line
	Glue   float64 // to the glue line, the welt's inner edge
	Cut    float64 // to the cut line
}

// Flat holds the curves of the pattern. y is the distance from the fold;
// the half curves have y >= 0, in outlines the back half has y > 0.
type Flat struct {
	Stitch  curve.Line // from the point end (the fold) to the mouth, the straight run included
	Glue    curve.Line
	Cut     curve.Line // half, from the fold at the point end to the mouth, mouth corner not taken off
	Mouth   curve.Line // from the fold to the cut line
	Outline curve.Line // closed: both halves, corners rounded, tab and relief holes included; the back has y > 0
	Front   curve.Line // closed: the front half alone, along the fold
	EndY    float64    // where the seam meets the fold at the point end
	Drain   *Circle    // in the back half; nil: there is none
}

// Circle is a hole.
type Circle struct {
	Centre   curve.Vec
	Diameter float64
}

// Plane holds the curves on the closed sheath, u from the fold.
type Plane struct {
	Knife  curve.Line // lower edge of what the knife needs, 0 to the mouth
	Stitch curve.Line // from the fold at the point end, along the run, to the mouth
	Inner  curve.Line // welt's inner edge
	Outer  curve.Line // welt's outer edge, sanding included
}

// Welt holds the welt strip.
type Welt struct {
	Area      float64 // one ply
	Thickness float64 // all plies together
	Plies     int
	Outline   curve.Line // closed, in the plane
}

// Stitching is the seam.
type Stitching struct {
	Line      float64 // along the flat stitch line, straight run included
	PlaneLine float64 // along the closed sheath, as computed
	Laid      float64 // the length the holes are laid out on: as measured, else PlaneLine
	Stitches  int
	Holes     int
	Pitch     float64     // along the line
	Walk      float64     // divider setting, the chord
	Stack     float64     // thickness to sew through
	Positions []curve.Vec // hole centres (x, u), from the mouth
	Flat      []curve.Vec // the same holes (x, y)
	Along     []float64   // distance of each hole along the line from the mouth, on the Laid line
	Drills    []Drill     // fit for the thread, smallest first in each series
}

// Choice is the drill the plan names.
func (s Stitching) Choice() Drill {
	for _, d := range s.Drills {
		if d.Choice {
			return d
		}
	}
	return Drill{}
}

// Drill is one drill of a series.
type Drill struct {
	Series   string // "metric", "inch", "number"
	Name     string // "1.3 mm", "1/16 in", "#55"
	Diameter float64
	Choice   bool
}

// Loop is the belt loop made of the tab; empty without one.
type Loop struct {
	Rows     int
	Holes    int     // in all rows, through both lap and body counted once
	Stitches int     // in one row
	Thread   float64 // for all rows, tails and waste included
	Stack    float64
	Offset   float64     // fold to the tab's near edge
	Start    float64     // x of the mouth at the tab's middle: the tab's length counts from here
	Bends    []float64   // distances along the tab from Start where it begins and ends its turn over the belt
	Relief   []Circle    // at the inside corners
	Body     []curve.Vec // holes in the body (x, y), row by row
	Lap      []curve.Vec // the same holes in the tab (x, y)
	RowX     []float64   // x of the rows in the body
	LapX     []float64   // x of the rows in the tab
}

// Thread is what the seam needs; the loop has its own.
type Thread struct {
	Length float64 // both sides, back stitches, waste and tails
	Ratio  float64 // thread over seam, waste and tails left out
}

// Level says how much a check matters.
type Level uint8

// The levels.
const (
	OK Level = iota
	Note
	Warn
)

// String gives the word of the JSON plan.
func (l Level) String() string {
	return [...]string{"ok", "note", "warn"}[l]
}

// Check is one thing the plan looked at.
type Check struct {
	Name  string  // of the JSON plan: "squeeze", "gather", "thread guard" ...
	Value float64 // shares as fractions, lengths in mm
	At    float64 // place along the fold, where HasAt
	HasAt bool
	Level Level
	Mend  string // key in the project file of the input that the remedy names
	Mark  int    // of a figure of a mark: that mark's index
	text  func(length.Unit) string
}

// Text says where, how much in the shown unit, and one remedy where the level
// is not OK. The zero Check has none.
func (c Check) Text(u length.Unit) string { return c.text(u) }
