package camera

import (
	"math"
	"slices"

	"chape/calc/curve"
	"chape/calc/trace/frame"
	"chape/calc/trace/raster"
)

// Centres finds the middles of the frame's squares and marks in the full picture: the mean of
// opposite edges, each at its half-way crossing in linear light, so that ink that spreads and a
// picture that is soft cancel out. soft is how wide the edges are, mm (their standard deviation
// if blurred so), the median of all.
func (c *Camera) Centres(p *raster.Picture, s frame.Sheet) (seen []Seen, soft float64) {
	var widths []float64
	put := func(at curve.Vec, half float64) {
		v, width, ok := c.centre1(p, at, half)
		if ok {
			seen = append(seen, Seen{at, v})
			widths = append(widths, width)
		}
	}
	for _, q := range s.Squares() {
		put(q.Mid(), frame.Band/2)
	}
	for _, m := range s.Marks() {
		put(m, frame.MarkHalf)
	}
	if len(widths) == 0 {
		return nil, 0
	}
	slices.Sort(widths)
	return seen, widths[len(widths)/2]
}

// centre1 is the middle of one black square.
func (c *Camera) centre1(p *raster.Picture, at curve.Vec, half float64) (v curve.Vec, width float64, ok bool) {
	x, wx, ok1 := c.across(p, at, curve.Vec{X: 1}, half)
	y, wy, ok2 := c.across(p, at, curve.Vec{Y: 1}, half)
	return c.Image(at.Add(curve.Vec{X: x, Y: y})), (wx + wy) / 2, ok1 && ok2
}

// How edges are looked at, mm.
const (
	fine     = 0.1 // between samples
	inside   = 1.2 // how far inside an edge black is taken
	white0   = 0.7 // from here outside the edge …
	white1   = 1.5 // … to here white is taken
	reach    = 1.6
	mostAway = 0.45 // of a middle from where it was expected, as a share of half a square
)

// across is how far the middle between two opposite edges lies from at along e.
func (c *Camera) across(p *raster.Picture, at, e curve.Vec, half float64) (off, width float64, ok bool) {
	side := curve.Vec{X: e.Y, Y: e.X}
	edge := func(sign float64) (float64, float64, bool) {
		n := int((inside + reach) / fine)
		light := make([]float64, n+1)
		const lanes = 7
		for i := range light {
			d := sign * (half - inside + fine*float64(i))
			for l := range lanes {
				t := half * 0.6 * (2*float64(l)/(lanes-1) - 1)
				w := c.Image(at.Add(e.Mul(d)).Add(side.Mul(t)))
				if !p.Has(w) {
					return 0, 0, false
				}
				light[i] += float64(p.At(w)) / lanes
			}
		}
		d, width, ok := crossing(light)
		return sign * (half - inside + d), width, ok
	}
	a, wa, ok1 := edge(-1)
	b, wb, ok2 := edge(1)
	off = (a + b) / 2
	ok = ok1 && ok2 && math.Abs(off) < mostAway*half && math.Abs(b-a-2*half) < 0.5*half
	return off, (wa + wb) / 2, ok
}

// crossing is where a profile from black to white passes half-way, mm from its start, and how wide the edge is.
func crossing(light []float64) (at, width float64, ok bool) {
	black := (light[0] + light[1] + light[2]) / 3
	from, to := int((inside+white0)/fine), int((inside+white1)/fine)
	white := 0.0
	for _, v := range light[from:to] {
		white += v / float64(to-from)
	}
	if white < 0.02 || black > 0.7*white {
		return 0, 0, false
	}
	pass := func(share float64) float64 {
		level := black + share*(white-black)
		for i := 1; i < len(light); i++ {
			if light[i] >= level {
				return fine * (float64(i) - (light[i]-level)/max(light[i]-light[i-1], 1e-9))
			}
		}
		return -1
	}
	low, mid, high := pass(0.25), pass(0.5), pass(0.75)
	if low < 0 || mid < 0 || high < 0 {
		return 0, 0, false
	}
	const quartiles = 1.349 // of a normal distribution, apart in standard deviations
	return mid, (high - low) / quartiles, true
}
