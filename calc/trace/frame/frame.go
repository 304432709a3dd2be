// Package frame is the tracing sheet as it is printed and as it is read: a frame of
// black and white squares, a mark in each corner, and a row of cells that spells the
// sheet's size. Lengths are mm on paper; the origin is the frame's inner corner beside
// the dotted mark, x along the sheet's width, y along its height, down the paper.
package frame

import (
	"fmt"
	"math"

	"chape/calc/curve"
)

// The frame, mm.
const (
	Rim   = 8.0  // from the paper's edge to the frame
	Band  = 5.0  // the width of the frame, the side of its squares
	Least = 105. // of the sheet inside its frame, each way
	// Strip is what right of the frame and below it belongs to pricks and words, at
	// least, on paper of a size that is no whole number of squares.
	Strip = 5.0
)

// The mark in a corner: a black square, in it a white ring, in that a black disc.
const (
	MarkOut  = 5.0  // how far the square stands out of the frame's inner corner
	MarkIn   = 10.0 // and how far it reaches in
	RingOut  = 5.5
	RingIn   = 3.0
	Dot      = 1.75 // white, in the disc of the mark at the origin
	MarkHalf = (MarkOut + MarkIn) / 2
)

// Sheet is a sheet by the size inside its frame, mm, whole numbers of squares.
type Sheet struct {
	Width, Height float64
	Version       int
}

// Newest is the version that is printed.
const Newest = 1

// On is the largest sheet for so much room on paper, from the frame's outer corner
// to the end of the strips. The error says that it is too small.
func On(width, height float64) (Sheet, error) {
	inside := func(room float64) float64 { return Band * math.Floor((room-2*Band-Strip+1e-9)/Band) }
	s := Sheet{Width: inside(width), Height: inside(height), Version: Newest}
	if s.Width < Least || s.Height < Least {
		return s, fmt.Errorf("a tracing sheet is at least %g mm wide and high inside its frame: use larger paper", Least)
	}
	if s.Width > most || s.Height > most {
		return s, fmt.Errorf("a tracing sheet is at most %g mm wide and high inside its frame: use smaller paper", most)
	}
	return s, nil
}

// most is what 8 bits can say.
const most = 255 * Band

// Box is an upright rectangle.
type Box struct{ Lo, Hi curve.Vec }

// Mid is its middle.
func (b Box) Mid() curve.Vec { return b.Lo.Add(b.Hi).Mul(0.5) }

func box(x, y, w, h float64) Box { return Box{curve.Vec{X: x, Y: y}, curve.Vec{X: x + w, Y: y + h}} }

// Marks are the middles of the four corner marks: at the origin, along x, across,
// along y.
func (s Sheet) Marks() [4]curve.Vec {
	const in = MarkIn - MarkHalf
	w, h := s.Width-in, s.Height-in
	return [4]curve.Vec{{X: in, Y: in}, {X: w, Y: in}, {X: w, Y: h}, {X: in, Y: h}}
}

// Square is a black square of the frame, with the way that is out of the sheet.
type Square struct {
	Box
	Out curve.Vec
}

// Squares are the black squares between the marks: every other one, and none beside
// a mark.
func (s Sheet) Squares() []Square {
	var out []Square
	side := func(long float64, at func(along float64) Square) {
		n := int(math.Round((long - 2*MarkIn) / Band))
		for i := 1; i < n-1; i += 2 {
			out = append(out, at(MarkIn+float64(i)*Band))
		}
	}
	side(s.Width, func(x float64) Square { return Square{box(x, -Band, Band, Band), curve.Vec{Y: -1}} })
	side(s.Height, func(y float64) Square { return Square{box(s.Width, y, Band, Band), curve.Vec{X: 1}} })
	side(s.Width, func(x float64) Square { return Square{box(x, s.Height, Band, Band), curve.Vec{Y: 1}} })
	side(s.Height, func(y float64) Square { return Square{box(-Band, y, Band, Band), curve.Vec{X: -1}} })
	return out
}
