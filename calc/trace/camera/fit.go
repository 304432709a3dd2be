package camera

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"

	"chape/calc/curve"
	"chape/calc/trace/frame"
)

// Seen is a place of the sheet, mm, and where it is seen, dots.
type Seen struct{ Sheet, Image curve.Vec }

// errFit is a picture that no camera makes.
var errFit = errors.New("the frame is not seen as a camera sees a flat sheet: lay the sheet flat and photograph it from above")

// Fit finds the camera by which the places are seen where they are: the homography by the direct
// linear transformation in normalised coordinates (Hartley, 'In defense of the eight-point
// algorithm', 1997), then all 12 figures by least squares (Levenberg's and Marquardt's way) with
// Huber's loss, which straight counts what is further off than loose mm.
func Fit(seen []Seen, s frame.Sheet, width, height int, loose float64) (*Camera, error) {
	c := &Camera{
		mid: curve.Vec{X: s.Width / 2, Y: s.Height / 2}, size: max(s.Width, s.Height) / 2,
		centre: curve.Vec{X: float64(width-1) / 2, Y: float64(height-1) / 2},
		half:   math.Hypot(float64(width), float64(height)) / 2,
	}
	if len(seen) < Params {
		return nil, errFit
	}
	if err := c.linear(seen); err != nil {
		return nil, err
	}
	return c, c.refine(seen, loose)
}

// Refit is Fit from the figures that c has.
func (c *Camera) Refit(seen []Seen, loose float64) (*Camera, error) {
	out := *c
	if len(seen) < Params {
		return nil, errFit
	}
	return &out, out.refine(seen, loose)
}

// linear is the direct linear transformation.
func (c *Camera) linear(seen []Seen) error {
	a := mat.NewDense(2*len(seen), 8, nil)
	b := mat.NewVecDense(2*len(seen), nil)
	for i, s := range seen {
		x, y := (s.Sheet.X-c.mid.X)/c.size, (s.Sheet.Y-c.mid.Y)/c.size
		u, v := (s.Image.X-c.centre.X)/c.half, (s.Image.Y-c.centre.Y)/c.half
		a.SetRow(2*i, []float64{x, y, 1, 0, 0, 0, -u * x, -u * y})
		a.SetRow(2*i+1, []float64{0, 0, 0, x, y, 1, -v * x, -v * y})
		b.SetVec(2*i, u)
		b.SetVec(2*i+1, v)
	}
	var h mat.VecDense
	if err := h.SolveVec(a, b); err != nil {
		return errFit
	}
	copy(c.p[:8], h.RawVector().Data)
	return nil
}

// cost is the sum of Huber's losses, in squares of dots.
func (c *Camera) cost(p *[Params]float64, seen []Seen, loose []float64) float64 {
	sum := 0.0
	for i, s := range seen {
		d, k := c.with(p, s.Sheet).Dist(s.Image), loose[i]
		if d > k {
			sum += 2*k*d - k*k
		} else {
			sum += d * d
		}
	}
	return sum + c.prior(p)
}

// stiff holds the lens's centre and second term to likely figures where the picture says nothing
// of them, far weaker than any place does.
const stiff = 1e-7

func (c *Camera) prior(p *[Params]float64) float64 {
	return stiff * c.half * c.half * (p[9]*p[9] + p[10]*p[10] + p[11]*p[11])
}

func (c *Camera) refine(seen []Seen, loose float64) error {
	limits := make([]float64, len(seen))
	for i, s := range seen {
		limits[i] = max(loose*c.Scale(s.Sheet), 1e-6)
	}
	lambda, now := 1e-3, c.cost(&c.p, seen, limits)
	for range 60 {
		n, g := c.normal(seen, limits)
		better := false
		for range 12 {
			p, ok := c.try(n, g, lambda)
			if !ok {
				lambda *= 10
				continue
			}
			if then := c.cost(&p, seen, limits); then < now {
				better = now-then > 1e-9*now
				c.p, now, lambda = p, then, lambda/5
				break
			}
			lambda *= 4
		}
		if !better {
			break
		}
	}
	if math.IsNaN(now) || math.IsInf(now, 0) {
		return errFit
	}
	return nil
}

// normal is the normal equations' matrix and right side, with the places' weights.
func (c *Camera) normal(seen []Seen, loose []float64) (*mat.SymDense, *mat.VecDense) {
	n, g := mat.NewSymDense(Params, nil), mat.NewVecDense(Params, nil)
	for i, s := range seen {
		at := c.with(&c.p, s.Sheet)
		r := s.Image.Sub(at)
		w := 1.0
		if d := r.Norm(); d > loose[i] {
			w = loose[i] / d
		}
		var j [Params]curve.Vec
		for k := range j {
			const h = 1e-6
			p := c.p
			p[k] += h
			j[k] = c.with(&p, s.Sheet).Sub(at).Mul(1 / h)
		}
		for a := range j {
			g.SetVec(a, g.AtVec(a)+w*(j[a].X*r.X+j[a].Y*r.Y))
			for b := a; b < Params; b++ {
				n.SetSym(a, b, n.At(a, b)+w*(j[a].X*j[b].X+j[a].Y*j[b].Y))
			}
		}
	}
	for _, k := range []int{9, 10, 11} {
		m := stiff * c.half * c.half
		n.SetSym(k, k, n.At(k, k)+m)
		g.SetVec(k, g.AtVec(k)-m*c.p[k])
	}
	return n, g
}

// try is the step that a damping gives.
func (c *Camera) try(n *mat.SymDense, g *mat.VecDense, lambda float64) (p [Params]float64, ok bool) {
	damped := mat.NewSymDense(Params, nil)
	damped.CopySym(n)
	for k := range Params {
		damped.SetSym(k, k, n.At(k, k)*(1+lambda)+1e-12)
	}
	var chol mat.Cholesky
	if !chol.Factorize(damped) {
		return p, false
	}
	var d mat.VecDense
	if err := chol.SolveVecTo(&d, g); err != nil && d.IsEmpty() {
		return p, false
	}
	p = c.p
	for k := range p {
		p[k] += d.AtVec(k)
	}
	return p, true
}

// Residual is how far the places are seen from where the camera has them, mm on the sheet.
type Residual struct {
	RMS, Worst float64
	At         curve.Vec // of the worst, on the sheet
}

// Residual of places.
func (c *Camera) Residual(seen []Seen) Residual {
	var out Residual
	sum := 0.0
	for _, s := range seen {
		d := c.Image(s.Sheet).Dist(s.Image) / c.Scale(s.Sheet)
		sum += d * d
		if d > out.Worst {
			out.Worst, out.At = d, s.Sheet
		}
	}
	out.RMS = math.Sqrt(sum / float64(len(seen)))
	return out
}
