// Package find finds a tracing sheet in a picture: the four corner marks, then the
// squares of the frame between them, counted from mark to mark, which gives the sheet's size
// whatever the lens did.
package find

import (
	"math"
	"slices"

	"chape/calc/curve"
	"chape/calc/trace/frame"
	"chape/calc/trace/raster"
)

// Mark is a corner mark in the reduced picture.
type Mark struct {
	Mid    curve.Vec
	Dotted bool
	square raster.Piece
	off    float64 // how far its shape is from a mark's, 0 to about 1
}

// What the black of a mark measures, mm and mm²: its square without the ring, and its disc without
// and with the dot (area and mean square along any line through the middle).
var (
	squareArea = 4*frame.MarkHalf*frame.MarkHalf - math.Pi*frame.RingOut*frame.RingOut
	squareMean = (4*frame.MarkHalf*frame.MarkHalf*frame.MarkHalf*frame.MarkHalf/3 -
		math.Pi*math.Pow(frame.RingOut, 4)/4) / squareArea
	discArea = math.Pi * frame.RingIn * frame.RingIn
	discMean = float64(frame.RingIn) * frame.RingIn / 4
	dotArea  = math.Pi * frame.Dot * frame.Dot
	ringArea = discArea - dotArea
	ringMean = (discArea*discMean - dotArea*frame.Dot*frame.Dot/4) / ringArea
)

// View is the picture as it is searched: reduced, and its dark pieces.
type View struct {
	grey   *raster.Grey
	label  []int32
	pieces []raster.Piece
}

// Look takes the dark pieces of a reduced picture: what has less than half of the light of the
// mean round it. A shadow of 2 : 1 has two thirds at its edge, and ink a tenth.
func Look(g *raster.Grey) *View {
	mean := g.Mean(max(8, max(g.Width, g.Height)/16))
	dark := make([]bool, len(g.V))
	for i, v := range g.V {
		dark[i] = v < 0.5*mean.V[i]
	}
	v := &View{grey: g}
	v.label, v.pieces = raster.Pieces(dark, g.Width)
	return v
}

// Marks finds what looks like a corner mark: a dark disc in a light ring in a dark square, with
// one middle, and areas and second moments in the proportions of a mark, which no turn and no tilt changes
// by much.
func (v *View) Marks() []Mark {
	var out []Mark
	for k, disc := range v.pieces {
		if disc.Area < 12 {
			continue
		}
		s, ok := v.around(k)
		if !ok {
			continue
		}
		square := v.pieces[s]
		dotted := v.hollow(disc)
		area, mean := discArea, discMean
		if dotted {
			area, mean = ringArea, ringMean
		}
		ratio := float64(square.Area) / float64(disc.Area) * area / squareArea
		scale := squareMean / mean
		far := math.Abs(square.XX-scale*disc.XX) + math.Abs(square.YY-scale*disc.YY) + 2*math.Abs(square.XY-scale*disc.XY)
		off := far / (square.XX + square.YY)
		apart := disc.Mid.Dist(square.Mid) / square.Size()
		if ratio < 0.6 || ratio > 1.7 || off > 0.45 || apart > 0.12 {
			continue
		}
		out = append(out, Mark{disc.Mid, dotted, square, off + apart + math.Abs(math.Log(ratio))})
	}
	slices.SortFunc(out, func(a, b Mark) int {
		if a.off < b.off {
			return -1
		}
		return 1
	})
	return out
}

// around is the piece that a disc meets first in all four directions across a light gap.
func (v *View) around(k int) (int, bool) {
	d := v.pieces[k]
	w, h := v.grey.Width, v.grey.Height
	found := int32(0)
	cx, cy := int(d.Mid.X+0.5), int(d.Mid.Y+0.5)
	far := 2*max(d.X1-d.X0, d.Y1-d.Y0) + 3
	for _, way := range [][2]int{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
		hit := int32(0)
		for i := 1; i < far; i++ {
			x, y := cx+way[0]*i, cy+way[1]*i
			if x < 0 || y < 0 || x >= w || y >= h {
				break
			}
			if l := v.label[y*w+x]; l != 0 && l != int32(k+1) {
				hit = l
				break
			}
		}
		if hit == 0 || found != 0 && hit != found {
			return 0, false
		}
		found = hit
	}
	return int(found - 1), true
}

// hollow tells whether a disc is light in its middle.
func (v *View) hollow(d raster.Piece) bool {
	r := 0.17 * math.Sqrt(math.Sqrt(max(d.XX*d.YY-d.XY*d.XY, 0))) * 2 // a third of the dot
	inner, n := float32(0), float32(0)
	for _, o := range []curve.Vec{{}, {X: r}, {X: -r}, {Y: r}, {Y: -r}} {
		inner += v.grey.At(d.Mid.Add(o))
		n++
	}
	dark, light := float32(math.Inf(1)), float32(0)
	for y := d.Y0; y <= d.Y1; y++ {
		for x := d.X0; x <= d.X1; x++ {
			g := v.grey.V[y*v.grey.Width+x]
			dark, light = min(dark, g), max(light, g)
		}
	}
	return inner/n > dark+0.4*(light-dark)
}
