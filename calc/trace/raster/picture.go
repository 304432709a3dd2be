// Package raster holds pictures as fields of samples, and the few workings on such fields
// that reading a tracing needs: the local mean, grey closing, connected pieces, growing from
// seeds, distance, level lines.
package raster

import (
	"math"

	"chape/calc/curve"
)

// Picture is red, green and blue samples as a camera writes them (IEC 61966-2-1, sRGB),
// three bytes a dot, row by row from the top.
type Picture struct {
	Width, Height int
	RGB           []uint8
}

// linear is the light that a sample stands for, 0 to 1 (IEC 61966-2-1).
var linear = func() (t [256]float32) {
	for i := range t {
		v := float64(i) / 255
		if v <= 0.04045 {
			t[i] = float32(v / 12.92)
		} else {
			t[i] = float32(math.Pow((v+0.055)/1.055, 2.4))
		}
	}
	return t
}()

// The shares of the channels in luminance (ITU-R BT.709).
const shareR, shareG, shareB = 0.2126, 0.7152, 0.0722

// Light is the luminance of a dot, 0 to 1.
func (p *Picture) Light(x, y int) float32 {
	i := 3 * (y*p.Width + x)
	return shareR*linear[p.RGB[i]] + shareG*linear[p.RGB[i+1]] + shareB*linear[p.RGB[i+2]]
}

// Colour is the light of the three channels at a dot.
func (p *Picture) Colour(x, y int) [3]float32 {
	i := 3 * (y*p.Width + x)
	return [3]float32{linear[p.RGB[i]], linear[p.RGB[i+1]], linear[p.RGB[i+2]]}
}

// Has tells whether a place has four dots round it. Dot (i, j) has its middle at (i, j).
func (p *Picture) Has(v curve.Vec) bool {
	return v.X >= 0 && v.Y >= 0 && v.X < float64(p.Width-1) && v.Y < float64(p.Height-1)
}

// At is the luminance at a place, between dots on a straight line; outside the picture that
// of the nearest place inside.
func (p *Picture) At(v curve.Vec) float32 {
	x, y, fx, fy := p.cell(v)
	a := p.Light(x, y)*(1-fx) + p.Light(x+1, y)*fx
	b := p.Light(x, y+1)*(1-fx) + p.Light(x+1, y+1)*fx
	return a*(1-fy) + b*fy
}

// ColourAt is At for the three channels.
func (p *Picture) ColourAt(v curve.Vec) (out [3]float32) {
	x, y, fx, fy := p.cell(v)
	a, b, c, d := p.Colour(x, y), p.Colour(x+1, y), p.Colour(x, y+1), p.Colour(x+1, y+1)
	for i := range out {
		out[i] = (a[i]*(1-fx)+b[i]*fx)*(1-fy) + (c[i]*(1-fx)+d[i]*fx)*fy
	}
	return out
}

func (p *Picture) cell(v curve.Vec) (x, y int, fx, fy float32) {
	vx, vy := min(max(v.X, 0), float64(p.Width)-1.001), min(max(v.Y, 0), float64(p.Height)-1.001)
	x, y = int(vx), int(vy)
	return x, y, float32(vx - float64(x)), float32(vy - float64(y))
}

// Grey is one sample a dot.
type Grey struct {
	Width, Height int
	V             []float32
}

// NewGrey is a field of zeros.
func NewGrey(w, h int) *Grey { return &Grey{w, h, make([]float32, w*h)} }

// Reduced is the luminance of the picture, each dot the mean of n by n.
func (p *Picture) Reduced(n int) *Grey {
	g := NewGrey(p.Width/n, p.Height/n)
	for y := range g.Height {
		row := g.V[y*g.Width : (y+1)*g.Width]
		for dy := range n {
			for x := range g.Width * n {
				row[x/n] += p.Light(x, y*n+dy)
			}
		}
		for x := range row {
			row[x] /= float32(n * n)
		}
	}
	return g
}

// At is the field at a place, between dots on a straight line.
func (g *Grey) At(v curve.Vec) float32 {
	vx, vy := min(max(v.X, 0), float64(g.Width)-1.001), min(max(v.Y, 0), float64(g.Height)-1.001)
	x, y := int(vx), int(vy)
	fx, fy := float32(vx-float64(x)), float32(vy-float64(y))
	i := y*g.Width + x
	return (g.V[i]*(1-fx)+g.V[i+1]*fx)*(1-fy) + (g.V[i+g.Width]*(1-fx)+g.V[i+g.Width+1]*fx)*fy
}
