// Package camera fits a camera to places of the sheet seen in a picture: a homography and
// the radial distortion of the lens about a centre.
package camera

import (
	"math"

	"chape/calc/curve"
)

// Params are how many figures a camera has: 8 of the homography, two radial terms, the centre.
const Params = 12

// Camera takes places of the sheet, mm, to dots of a picture.
type Camera struct {
	p      [Params]float64
	mid    curve.Vec // of the sheet
	size   float64   // half of the sheet's longer side
	centre curve.Vec // of the picture
	half   float64   // half of its diagonal
}

// Image is where a place of the sheet is seen. The radial terms are those of Brown, 'Decentering
// distortion of lenses' (1966), applied going out: seen = c + (u − c)(1 + k1 r² + k2 r⁴).
func (c *Camera) Image(v curve.Vec) curve.Vec {
	return c.with(&c.p, v)
}

func (c *Camera) with(p *[Params]float64, v curve.Vec) curve.Vec {
	x, y := (v.X-c.mid.X)/c.size, (v.Y-c.mid.Y)/c.size
	w := p[6]*x + p[7]*y + 1
	u := (p[0]*x+p[1]*y+p[2])/w - p[10]
	t := (p[3]*x+p[4]*y+p[5])/w - p[11]
	r := u*u + t*t
	f := 1 + p[8]*r + p[9]*r*r
	return curve.Vec{X: c.centre.X + c.half*(p[10]+u*f), Y: c.centre.Y + c.half*(p[11]+t*f)}
}

// Scale is how many dots a millimetre is at a place, the mean of both ways.
func (c *Camera) Scale(v curve.Vec) float64 {
	const d = 0.5
	x := c.Image(v.Add(curve.Vec{X: d})).Sub(c.Image(v.Sub(curve.Vec{X: d})))
	y := c.Image(v.Add(curve.Vec{Y: d})).Sub(c.Image(v.Sub(curve.Vec{Y: d})))
	return math.Sqrt(math.Abs(x.X*y.Y - x.Y*y.X))
}

// Larger is the same camera for a picture with n by n dots for each.
func (c *Camera) Larger(n float64) *Camera {
	out := *c
	out.half *= n
	out.centre = curve.Vec{X: (c.centre.X+0.5)*n - 0.5, Y: (c.centre.Y+0.5)*n - 0.5}
	return &out
}
