package sheettest

import (
	"math"
	"math/rand/v2"

	"chape/calc/curve"
	"chape/calc/trace/raster"
)

// Shot is how a sheet is photographed: by a pinhole that looks at its middle, and a lens that bends what it sees.
type Shot struct {
	Width, Height int     // dots
	PerMM         float64 // dots at the sheet's middle
	Turn, Tilt    float64 // of the picture, and of the camera from the upright, radians
	Bulge         float64 // how much further out a corner's light comes from
	Shift         curve.Vec
	Mirror        bool
	Blur          int                         // dots each way over which the light is spread
	Noise         float64                     // standard deviation, of white
	Shade         func(x, y float64) float64  // light that falls on a place; nil is 1
	Warp          func(v curve.Vec) curve.Vec // where the paper that seems to be at v comes from; nil is there
	sheet         Sheet
}

// Of is the shot of a sheet.
func (c Shot) Of(s Sheet) Shot { c.sheet = s; return c }

// far is how far off the camera stands, mm.
func (c Shot) far() float64 { return 1.3 * max(c.sheet.Width, c.sheet.Height) }

func (c Shot) mid() curve.Vec {
	return curve.Vec{X: float64(c.Width-1)/2 + c.Shift.X, Y: float64(c.Height-1)/2 + c.Shift.Y}
}

// bend is where a straight lens would show what this one shows at d from the middle.
func (c Shot) bend(d curve.Vec) curve.Vec {
	half := math.Hypot(float64(c.Width), float64(c.Height)) / 2
	return d.Mul(1 + c.Bulge*(d.X*d.X+d.Y*d.Y)/(half*half))
}

// Seen is the dot at which a place of the sheet, mm, is seen.
func (c Shot) Seen(v curve.Vec) curve.Vec {
	sin, cos := math.Sincos(c.Turn)
	x, y := v.X-c.sheet.Width/2, v.Y-c.sheet.Height/2
	x, y = x*cos-y*sin, x*sin+y*cos
	k := c.PerMM / (1 - y*math.Sin(c.Tilt)/c.far())
	straight := curve.Vec{X: x * k, Y: y * math.Cos(c.Tilt) * k}
	d := straight
	for range 30 { // the inverse of bend, by going round
		d = d.Add(straight.Sub(c.bend(d)))
	}
	if c.Mirror {
		d.X = -d.X
	}
	return c.mid().Add(d)
}

// place gives the place of the sheet that a dot shows.
func (c Shot) place() func(dot curve.Vec) curve.Vec {
	mid, half := c.mid(), curve.Vec{X: c.sheet.Width / 2, Y: c.sheet.Height / 2}
	lean, cosT := math.Sin(c.Tilt)/c.far(), math.Cos(c.Tilt)
	sin, cos := math.Sincos(c.Turn)
	return func(dot curve.Vec) curve.Vec {
		d := dot.Sub(mid)
		if c.Mirror {
			d.X = -d.X
		}
		d = c.bend(d).Mul(1 / c.PerMM)
		y := d.Y / (cosT + d.Y*lean)
		x := d.X * (1 - y*lean)
		return curve.Vec{X: x*cos + y*sin + half.X, Y: y*cos - x*sin + half.Y}
	}
}

// Take takes the picture: each dot the mean of five by five places in linear light, written as IEC 61966-2-1 says. Where the four corners of a dot
// are alike the dot is as they are: nothing is drawn that would slip between.
func (c Shot) Take() *raster.Picture {
	light, place := make([]Light, c.Width*c.Height), c.place()
	at := func(x, y float64) Light {
		v := place(curve.Vec{X: x, Y: y})
		if c.Warp != nil {
			v = c.Warp(v)
		}
		return c.sheet.At(v.X, v.Y)
	}
	corner := make([]Light, (c.Width+1)*(c.Height+1))
	for k := range corner {
		corner[k] = at(float64(k%(c.Width+1))-0.5, float64(k/(c.Width+1))-0.5)
	}
	const fine = 5
	for i := range light {
		x, y := float64(i%c.Width), float64(i/c.Width)
		k := i/c.Width*(c.Width+1) + i%c.Width
		light[i] = corner[k]
		if a := light[i]; a != corner[k+1] || a != corner[k+c.Width+1] || a != corner[k+c.Width+2] {
			light[i] = Light{}
			for k := range fine * fine {
				for ch, l := range at(x+float64(k%fine-2)/fine, y+float64(k/fine-2)/fine) {
					light[i][ch] += l / (fine * fine)
				}
			}
		}
		if c.Shade != nil {
			v := place(curve.Vec{X: x, Y: y})
			f := c.Shade(v.X, v.Y)
			light[i] = Light{light[i][0] * f, light[i][1] * f, light[i][2] * f}
		}
	}
	light = blurred(light, c.Width, c.Blur)
	p := &raster.Picture{Width: c.Width, Height: c.Height, RGB: make([]uint8, 3*len(light))}
	r := rand.New(rand.NewPCG(uint64(len(light)), 1))
	for i := range p.RGB {
		v := light[i/3][i%3]
		if c.Noise > 0 {
			v += c.Noise * r.NormFloat64()
		}
		p.RGB[i] = written[int(min(max(v, 0), 1)*float64(len(written)-1)+0.5)]
	}
	return p
}

// blurred spreads the light over a square, twice, which is near a normal distribution.
func blurred(light []Light, w, r int) []Light {
	for _, step := range []int{1, w, 1, w} {
		if r == 0 {
			break
		}
		out := make([]Light, len(light))
		for i := range light {
			for k := -r; k <= r; k++ {
				j := min(max(i+k*step, 0), len(light)-1)
				for ch := range light[j] {
					out[i][ch] += light[j][ch] / float64(2*r+1)
				}
			}
		}
		light = out
	}
	return light
}

// written are the samples for lights from 0 to 1.
var written = func() (out [1 << 14]uint8) {
	for i := range out {
		l := float64(i) / float64(len(out)-1)
		if l <= 0.0031308 {
			out[i] = uint8(255*12.92*l + 0.5)
		} else {
			out[i] = uint8(255*(1.055*math.Pow(l, 1/2.4)-0.055) + 0.5)
		}
	}
	return out
}()
