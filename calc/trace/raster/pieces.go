package raster

import (
	"math"

	"chape/calc/curve"
)

// Piece is a connected piece of dots (by their sides), with its moments.
type Piece struct {
	Area           int
	Mid            curve.Vec
	XX, XY, YY     float64 // mean squares about the middle
	X0, Y0, X1, Y1 int     // bounds, the last dots included
	First          int     // its first dot
}

// Size is the square root of the area.
func (p Piece) Size() float64 { return math.Sqrt(float64(p.Area)) }

// Pieces finds the connected pieces of the dots that are set. label gives, for each dot, its
// piece's number plus one, or 0. Two passes over the rows; labels that meet are joined.
func Pieces(set []bool, width int) (label []int32, pieces []Piece) {
	label = make([]int32, len(set))
	parent := []int32{0}
	root := func(a int32) int32 {
		for parent[a] != a {
			parent[a] = parent[parent[a]]
			a = parent[a]
		}
		return a
	}
	for i, on := range set {
		if !on {
			continue
		}
		var up, left int32
		if i >= width {
			up = label[i-width]
		}
		if i%width > 0 {
			left = label[i-1]
		}
		switch {
		case up == 0 && left == 0:
			parent = append(parent, int32(len(parent)))
			label[i] = int32(len(parent) - 1)
		case up == 0:
			label[i] = left
		case left == 0 || left == up:
			label[i] = up
		default:
			a, b := root(up), root(left)
			parent[max(a, b)] = min(a, b)
			label[i] = min(a, b)
		}
	}
	number := make([]int32, len(parent))
	n := int32(0)
	for a := 1; a < len(parent); a++ {
		if r := root(int32(a)); r == int32(a) {
			n++
			number[a] = n
		}
	}
	for a := 1; a < len(parent); a++ {
		number[a] = number[root(int32(a))]
	}
	for i := range label {
		label[i] = number[label[i]]
	}
	return label, measure(label, width, int(n))
}

// measure sums up the moments of the labelled pieces.
func measure(label []int32, width, n int) []Piece {
	pieces := make([]Piece, n)
	for i, l := range label {
		if l == 0 {
			continue
		}
		p := &pieces[l-1]
		x, y := i%width, i/width
		if p.Area == 0 {
			p.First, p.X0, p.X1, p.Y0 = i, x, x, y
		}
		p.Area++
		p.X0, p.X1, p.Y1 = min(p.X0, x), max(p.X1, x), y
		// about the first dot, so that figures stay small
		dx, dy := float64(x-p.First%width), float64(y-p.First/width)
		p.Mid = p.Mid.Add(curve.Vec{X: dx, Y: dy})
		p.XX, p.XY, p.YY = p.XX+dx*dx, p.XY+dx*dy, p.YY+dy*dy
	}
	for k := range pieces {
		p := &pieces[k]
		m := 1 / float64(p.Area)
		d := p.Mid.Mul(m)
		p.XX, p.XY, p.YY = p.XX*m-d.X*d.X, p.XY*m-d.X*d.Y, p.YY*m-d.Y*d.Y
		p.Mid = d.Add(curve.Vec{X: float64(p.First % width), Y: float64(p.First / width)})
	}
	return pieces
}

// Along is the direction in which the piece is longest, and how many times its second moment along is
// that across.
func (p Piece) Along() (way curve.Vec, slim float64) {
	turn := math.Atan2(2*p.XY, p.XX-p.YY) / 2
	half, diff := (p.XX+p.YY)/2, math.Hypot((p.XX-p.YY)/2, p.XY)
	const own = 1.0 / 12 // of a single dot
	return curve.Vec{X: math.Cos(turn), Y: math.Sin(turn)}, (half + diff + own) / max(half-diff+own, own)
}
