package phototest

import (
	"bytes"
	"image"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"sync"

	"chape/calc/curve"
)

// Camera is how a picture is taken. Angles are radians.
type Camera struct {
	Width, Height int     // dots
	Fill          float64 // share of the picture that the sheet's longer way takes
	Tilt, Toward  float64 // how far the camera stands off the upright, and to which side
	Turn          float64 // of the picture
	Bulge         float64 // radial distortion at the corners: -0.08 to 0.08
	Fall          float64 // light on one side as a share of that on the other; 1 is even
	Shadow        float64 // light in a hard shadow across the sheet; 1 is none
	Blur          float64 // dots
	Noise         float64 // standard deviation as a share of white
	Wave          float64 // how high the paper is waved, mm
	Bend          float64 // how high it is bent, mm, once over its length
	Mirror        bool
	Shift         curve.Vec // of the sheet's middle, as a share of the picture's width
	Quality       int       // of the JPEG; 0 is 75
	Seed          uint64
}

// view is a camera over a sheet.
type view struct {
	Camera
	p               *Paper
	eye, fx, fy, fz [3]float64 // where it stands, mm from the sheet's middle, and its axes
	focus           float64    // dots
	phase           float64
}

func dot3(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

func cross3(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func unit(a [3]float64) [3]float64 {
	n := math.Sqrt(dot3(a, a))
	return [3]float64{a[0] / n, a[1] / n, a[2] / n}
}

// look sets a camera up: it stands 1.3 times the sheet's longer way off and looks at its middle.
func look(c Camera, p *Paper) *view {
	long := float64(max(p.W, p.H)) / p.PerMM
	far := 1.3 * long
	s, t := math.Sin(c.Tilt), math.Cos(c.Tilt)
	v := &view{Camera: c, p: p, phase: rand.New(rand.NewPCG(c.Seed, 7)).Float64() * 6}
	v.eye = [3]float64{far * s * math.Cos(c.Toward), far * s * math.Sin(c.Toward), far * t}
	v.fz = unit([3]float64{-v.eye[0], -v.eye[1], -v.eye[2]})
	sin, cos := math.Sincos(c.Turn)
	x := [3]float64{cos, sin, 0}
	// y of the sheet is down the paper and z towards the camera, so x × y points away from it
	d := dot3(x, v.fz)
	v.fx = unit([3]float64{x[0] - d*v.fz[0], x[1] - d*v.fz[1], x[2] - d*v.fz[2]})
	v.fy = cross3(v.fx, v.fz)
	if dot3(v.fy, [3]float64{-sin, cos, 0}) < 0 {
		v.fy = [3]float64{-v.fy[0], -v.fy[1], -v.fy[2]}
	}
	v.focus = c.Fill * float64(max(c.Width, c.Height)) * far / long
	return v
}

// height of the paper over the table.
func (v *view) height(x, y float64) float64 {
	w, h := float64(v.p.W)/v.p.PerMM, float64(v.p.H)/v.p.PerMM
	wave := v.Wave * math.Sin(2*math.Pi*x/(0.45*w)+v.phase) * math.Cos(2*math.Pi*y/(0.4*h)+2*v.phase)
	return wave + v.Bend*math.Cos(math.Pi*y/h)
}

// sheet is the place of the paper, mm from its upper left corner, that a dot of the picture shows. The
// lens's distortion is undone by a polynomial of its own: the bent radius gives the straight one.
func (v *view) sheet(px, py float64) curve.Vec {
	half := math.Hypot(float64(v.Width), float64(v.Height)) / 2
	x, y := px-float64(v.Width-1)/2-v.Shift.X*float64(v.Width), py-float64(v.Height-1)/2-v.Shift.Y*float64(v.Width)
	if v.Mirror {
		x = -x
	}
	r2 := (x*x + y*y) / (half * half)
	f := 1 + v.Bulge*(0.85*r2+0.15*r2*r2)
	x, y = x*f/v.focus, y*f/v.focus
	var d [3]float64
	for i := range d {
		d[i] = x*v.fx[i] + y*v.fy[i] + v.fz[i]
	}
	z := 0.0
	var at curve.Vec
	for range 3 {
		k := (z - v.eye[2]) / d[2]
		at = curve.Vec{X: v.eye[0] + k*d[0] + float64(v.p.W)/v.p.PerMM/2, Y: v.eye[1] + k*d[1] + float64(v.p.H)/v.p.PerMM/2}
		z = v.height(at.X, at.Y)
	}
	return at
}

// light falls from side to side, and a shadow with a hard edge lies across.
func (v *view) light(at curve.Vec) float64 {
	w, h := float64(v.p.W)/v.p.PerMM, float64(v.p.H)/v.p.PerMM
	s := (at.X/w + at.Y/h) / 2
	l := 1 + (v.Fall-1)*min(max(s, 0), 1)
	edge := (at.X - 0.3*w) + 0.4*(at.Y-0.5*h) // 1 mm of half-shadow
	return l * (1 + (v.Shadow-1)*min(max(0.5-edge, 0), 1))
}

// Take takes the picture: the light of each dot and channel, 0 to 1, linear.
func Take(p *Paper, c Camera) *image.RGBA {
	if c.Fall == 0 {
		c.Fall = 1
	}
	if c.Shadow == 0 {
		c.Shadow = 1
	}
	v := look(c, p)
	light := make([]float32, 3*c.Width*c.Height)
	var wait sync.WaitGroup
	const strip = 8 // rows between which the way of the light is taken as straight
	for y := 0; y < c.Height; y += 4 * strip {
		wait.Go(func() {
			for k := range 4 {
				v.strip(light, y+k*strip, strip)
			}
		})
	}
	wait.Wait()
	blur(light, c.Width, c.Height, c.Blur)
	return v.develop(light)
}

// strip takes some rows, in squares: their corners are traced, what is inside lies between.
func (v *view) strip(light []float32, y0, n int) {
	for x0 := 0; x0 < v.Width && y0 < v.Height; x0 += n {
		a, b := v.sheet(float64(x0), float64(y0)), v.sheet(float64(x0+n), float64(y0))
		c, d := v.sheet(float64(x0), float64(y0+n)), v.sheet(float64(x0+n), float64(y0+n))
		k := 1 / float64(n)
		for y := y0; y < min(y0+n, v.Height); y++ {
			for x := x0; x < min(x0+n, v.Width); x++ {
				var sum [3]float64
				for _, o := range [4][2]float64{{-0.25, -0.25}, {0.25, -0.25}, {-0.25, 0.25}, {0.25, 0.25}} {
					fx, fy := (float64(x-x0)+o[0])*k, (float64(y-y0)+o[1])*k
					at := vec{X: (a.X*(1-fx)+b.X*fx)*(1-fy) + (c.X*(1-fx)+d.X*fx)*fy,
						Y: (a.Y*(1-fx)+b.Y*fx)*(1-fy) + (c.Y*(1-fx)+d.Y*fx)*fy}
					l := v.light(at) / 4
					rgb := v.p.at(at)
					for i := range sum {
						sum[i] += l * rgb[i]
					}
				}
				for i := range sum {
					light[3*(y*v.Width+x)+i] = float32(sum[i])
				}
			}
		}
	}
}

// table is what lies round the paper: wood.
var table = [3]float64{0.25, 0.16, 0.09}

func (p *Paper) at(v curve.Vec) [3]float64 {
	x, y := v.X*p.PerMM-0.5, v.Y*p.PerMM-0.5
	if x < 0 || y < 0 || x >= float64(p.W-1) || y >= float64(p.H-1) {
		return table
	}
	i, j := int(x), int(y)
	fx, fy := x-float64(i), y-float64(j)
	var out [3]float64
	k := 3 * (j*p.W + i)
	for c := range out {
		a := float64(p.RGB[k+c])*(1-fx) + float64(p.RGB[k+3+c])*fx
		b := float64(p.RGB[k+3*p.W+c])*(1-fx) + float64(p.RGB[k+3*p.W+3+c])*fx
		out[c] = (a*(1-fy) + b*fy) / 255
	}
	return out
}

// blur by a normal distribution.
func blur(v []float32, w, h int, sigma float64) {
	if sigma <= 0 {
		return
	}
	r := int(math.Ceil(3 * sigma))
	k := make([]float32, 2*r+1)
	sum := float32(0)
	for i := range k {
		k[i] = float32(math.Exp(-float64((i-r)*(i-r)) / (2 * sigma * sigma)))
		sum += k[i]
	}
	line := make([]float32, max(w, h))
	pass := func(n, lines, step, next int) {
		for l := range lines {
			for c := range 3 {
				at := l*next + c
				for i := range n {
					line[i] = v[at+i*step]
				}
				for i := range n {
					s := float32(0)
					for j, f := range k {
						s += f * line[min(max(i+j-r, 0), n-1)]
					}
					v[at+i*step] = s / sum
				}
			}
		}
	}
	pass(w, h, 3, 3*w)
	pass(h, w, 3*w, 3)
}

// written is what stands for light of 0 to 1 in a file.
var written = func() (t [1 << 14]uint8) {
	for i := range t {
		s := float64(i) / (1<<14 - 1)
		if s <= 0.0031308 {
			s *= 12.92
		} else {
			s = 1.055*math.Pow(s, 1/2.4) - 0.055
		}
		t[i] = uint8(s*255 + 0.5)
	}
	return t
}()

// develop adds noise and writes the light as a camera does (IEC 61966-2-1).
func (v *view) develop(light []float32) *image.RGBA {
	rnd := rand.New(rand.NewPCG(v.Seed, 1))
	img := image.NewRGBA(image.Rect(0, 0, v.Width, v.Height))
	for i, l := range light {
		s := float64(l)
		if v.Noise > 0 {
			s += v.Noise * rnd.NormFloat64() * math.Sqrt(max(s, 0.01))
		}
		img.Pix[i/3*4+i%3] = written[int(min(max(s, 0), 1)*float64(len(written)-1)+0.5)]
	}
	for i := 3; i < len(img.Pix); i += 4 {
		img.Pix[i] = 255
	}
	return img
}

// JPEG is the picture as a file.
func JPEG(p *Paper, c Camera) []byte {
	if c.Quality == 0 {
		c.Quality = 75
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, Take(p, c), &jpeg.Options{Quality: c.Quality}); err != nil {
		panic(err) // a buffer takes all
	}
	return b.Bytes()
}
