// Package calc turns a knife into the flat pattern of its sheath and the
// stitch plan that goes with it. It is pure: numbers in, numbers out.
//
// Inputs are lengths with their own type; inside, and in every curve of the
// result, figures are millimetres, areas square millimetres, angles radians.
package calc

import (
	"math"

	"chape/calc/knife"
	"chape/calc/length"
)

// Input is everything a plan follows from.
type Input struct {
	Knife  knife.Knife
	Sheath Sheath
	Belt   Belt
	Strap  Strap
	Stitch Stitch
	Fits   []Fit
	Limits Limits

	Outline    *knife.Outline // what the marks were filled from; nil: they were measured
	Untouched  []string       // names of the knife's numbers that nobody has given yet
	Unmeasured []int          // marks, ascending, whose thickness stands as it was proposed
}

// Sheath holds the dimensions of the pouch.
type Sheath struct {
	Mouth           length.Length // point to mouth, along the fold
	Leather         length.Length // thickness of the body
	Welt            length.Length // thickness of the welt, all plies together
	Plies           int           // how many plies make the welt
	Clearance       length.Length // edge to the welt's inner edge
	HandleClearance length.Length // handle, bolster or guard to the welt's inner edge, 0 to Clearance
	PointRoom       length.Length // room before the point
	Gap             length.Length // edge to the stitch line
	Margin          length.Length // stitch line to the finished edge
	Sanding         length.Length // cut oversize, sanded off later
	Blend           length.Length // radius of the tightest hollow of the stitch line
	Ease            length.Length // added to each half
	Neutral         float64       // place of the neutral fibre, share of the thickness from the inside
	MouthRound      length.Length // radius taken off the outer corners at the mouth
	MouthRise       length.Length // how much higher the mouth is at the fold than at the seam
	Drain           length.Length // diameter of a hole below the point, 0 for none
}

// handleGap is from the handle to the stitch line.
func (s Sheath) handleGap() length.Length { return s.Gap - (s.Clearance - s.HandleClearance) }

// pointEnd is from the point to where the seam runs straight to the fold.
func (s Sheath) pointEnd() length.Length { return s.PointRoom + s.Gap }

// pointWelt is from the point to the welt there.
func (s Sheath) pointWelt() length.Length { return s.PointRoom + s.Clearance }

// outside is from the stitch line to the cut line.
func (s Sheath) outside() length.Length { return s.Margin + s.Sanding }

// Paper is how thick the paper of a trial fit is taken, mm (common practice,
// no source).
const Paper length.Length = 0.1

// Looseness is how much looser than in leather a half hangs round the knife
// when folded from stock of the given thickness: (π/2)·k·(t − stock).
func (s Sheath) Looseness(stock length.Length) length.Length {
	return length.Length(math.Pi/2*s.Neutral) * (s.Leather - stock)
}

// LoopKind is how the sheath hangs from the belt.
type LoopKind uint8

// The loops.
const (
	FoldedLoop LoopKind = iota // a tab carried on from the back half
	NoLoop
)

// String gives the word the project file uses.
func (l LoopKind) String() string {
	if l == NoLoop {
		return "none"
	}
	return "folded"
}

// Belt holds the belt and the loop for it.
type Belt struct {
	Loop      LoopKind
	Width     length.Length // of the belt
	Thickness length.Length // of the belt
	Ease      length.Length // inside height of the loop less the belt's width
	Tab       length.Length // width of the tab
	Row       length.Length // the loop's stitch row below the mouth
	Lap       length.Length // leather past that row
	Offset    length.Length // fold to the tab's near edge, where Centred is false
	Centred   bool          // the tab stands in the middle of the mouth
}

// StrapKind is what holds the knife by its handle.
type StrapKind uint8

// The straps.
const (
	NoStrap StrapKind = iota
	SnapStrap
)

// String gives the word the project file uses.
func (k StrapKind) String() string {
	if k == SnapStrap {
		return "snap"
	}
	return "none"
}

// Strap is the strip round the handle that keeps the knife in.
type Strap struct {
	Kind      StrapKind
	At        length.Length // where it crosses the handle, where Placed
	Placed    bool          // false: 12 mm past the handle's front or the mouth's highest place
	Width     length.Length
	Thickness length.Length
	Overlap   length.Length // where the two ends lie over each other
}

// Method is how the seam is sewn; it changes the drill and words.
type Method uint8

// The two ways of sewing by hand.
const (
	Hook       Method = iota // one thread, worked from both sides
	TwoNeedles               // a needle at each end of the thread
)

// String gives the words the project file uses.
func (m Method) String() string {
	if m == TwoNeedles {
		return "two needles"
	}
	return "hook"
}

// Stitch holds how the seam is sewn.
type Stitch struct {
	Pitch     length.Length // wanted distance from hole to hole
	Thread    length.Length // diameter of one strand
	Needle    length.Length // needle or hook shank, where NeedleSet
	NeedleSet bool          // false: the needle is taken as 1.5 threads
	First     length.Length // mouth to first hole
	Last      length.Length // last hole to the end of the line
	Back      int           // stitches sewn twice at each end
	Tail      length.Length // free thread at each end
	Waste     float64       // share added to the thread in the seam
	Measured  length.Length // the line as measured on the closed sheath, 0: as computed
	Method    Method
}

// Shank is the needle or hook shank that must pass the hole.
func (s Stitch) Shank() length.Length {
	if s.NeedleSet {
		return s.Needle
	}
	return 1.5 * s.Thread
}

// Fit is one correction after a trial fit: a smooth bump of height By on
// the half-width, from At-Reach to At+Reach.
type Fit struct {
	At    length.Length
	By    length.Length // negative takes away
	Reach length.Length
	Paper bool // found with a fold of paper: counts less the looseness of paper
}

// Counts is by how much the correction changes the half-width at its middle.
// One seen in paper is more by the looseness of paper, lest a right pattern
// be cut smaller.
func (f Fit) Counts(s Sheath) length.Length {
	if f.Paper {
		return f.By + s.Looseness(Paper)
	}
	return f.By
}

// Limits are the thresholds of the checks, all in this one place. All are
// common practice, no source, and the user's to change in the configuration.
type Limits struct {
	Loose       length.Length // squeeze below this: loose in the sheath
	Snug        length.Length // squeeze up to this: the moulding grips it
	Tight       length.Length // squeeze above this: it will not go in
	GatherEasy  float64       // seam longer than the welt, share: nothing to do
	GatherMost  float64       // above this it can't be eased in
	GuardNote   length.Length // edge to the rim of a hole
	GuardWarn   length.Length
	Drum        length.Length // diameter of the smallest sanding drum
	ArmSpans    length.Length // longest thread that is handy: two arm spans
	HandleLeft  length.Length // handle to hold past the highest leather
	GatherReach length.Length // the stretch over which gather is taken
	FoldShare   float64       // least inside radius at the fold, share of the leather's thickness
	HeldOff     length.Length // the back may lie this far off the fold
	StrapClear  length.Length // strap's edge to a step of the handle
	Unlikely    float64       // a measure this many times what its neighbours say
}

// DefaultLimits gives the thresholds in use unless the user changes them.
func DefaultLimits() Limits {
	return Limits{
		Loose: -2.5, Snug: 1.5, Tight: 3,
		GatherEasy: 0.06, GatherMost: 0.18,
		GuardNote: 3, GuardWarn: 1.5,
		Drum: 50, ArmSpans: 3400, HandleLeft: 50, GatherReach: 20,
		FoldShare: 0.5, HeldOff: 1,
		StrapClear: 3, Unlikely: 2,
	}
}
