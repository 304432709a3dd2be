package drying

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

// node is one drying curve that the weighings allow.
type node struct {
	law  law
	rate float64 // of the faster part, per hour of the law's own time
	fit          // for the best weights
	log  float64 // logarithm of how much it is believed
}

// fit is the weights of a curve with their covariance.
type fit struct {
	dry, fast, slow float64 // grams: in the end, and water in each part at first
	cov             [3][3]float64
}

// handling is how far a weighing errs beside the rounding of the scale, by
// draught, a thumb, the place on the pan: as a share of the weight, and how
// much each is believed (common practice, no source).
var handling = []struct{ share, believed float64 }{{0.0005, 0.2}, {0.001, 0.3}, {0.002, 0.3}, {0.004, 0.2}}

// sigma is the standard deviation in grams of a weighing that errs by a share
// and by rounding: step/√12 (a uniform distribution).
func (s series) sigma(share float64) float64 {
	return math.Hypot(s.step/math.Sqrt(12), share*s.last())
}

// stray is how far the course of a day may be off the law's, as a standard
// deviation of the weighings and a share of the water (common practice, no
// source: no night is like the last).
const stray = 0.003

// worthless is by how much a logarithm of belief may fall short of the best
// before its node is left out.
const worthless = 8

// posterior is every curve worth counting, by Bayes' rule: how much its law
// is believed, times how well the weighings fit (averaging over models:
// Gelman and others, Bayesian Data Analysis, from memory). For a law, a rate
// and a standard deviation the weighings are linear in the weights, which
// are integrated out; the rates lie on a grid in the logarithm.
func (s series) posterior(from []law) []node {
	var nodes []node
	best := math.Inf(-1)
	for _, l := range from {
		for _, n := range s.rates(l) {
			best = math.Max(best, n.log)
			if n.log > best-worthless {
				nodes = append(nodes, n)
			}
		}
	}
	kept := nodes[:0]
	for _, n := range nodes {
		if n.log > best-worthless {
			kept = append(kept, n)
		}
	}
	return kept
}

// rates is the nodes of one law, with the grid drawn closer until most of it
// is worth something.
func (s series) rates(l law) []node {
	const rates, closer = 16, 7
	own := make([]float64, len(s.hours))
	for i, h := range s.hours {
		own[i] = l.clock(s.clock+h) - l.clock(s.clock)
	}
	span := own[len(own)-1]
	low, high := math.Log(0.01/span), math.Log(80/span)
	scales := s.scales(l)
	nodes := make([]node, 0, rates*len(scales))
	var logs [rates]float64
	grid := make([]float64, rates)
	for range closer {
		floats.Span(grid, low, high)
		width := math.Log(grid[1] - grid[0])
		nodes = nodes[:0]
		for i, at := range grid {
			logs[i] = math.Inf(-1)
			rate := math.Exp(at)
			m := s.measured(l, rate, own)
			for _, c := range scales {
				if f, log, ok := s.solve(l, m, c); ok {
					log += width
					logs[i] = math.Max(logs[i], log)
					nodes = append(nodes, node{law: l, rate: rate, fit: f, log: log})
				}
			}
		}
		first, last := worth(logs[:])
		if last-first > rates/2 {
			break
		}
		low, high = grid[max(first-1, 0)], grid[min(last+1, rates-1)]
	}
	return nodes
}

// worth is the first and last of the logarithms that are worth something.
func worth(logs []float64) (first, last int) {
	best := floats.Max(logs)
	first, last = len(logs)-1, 0
	for i, v := range logs {
		if v > best-worthless {
			first, last = min(first, i), max(last, i)
		}
	}
	return first, last
}

// scale is what a scale that errs by a standard deviation knows of a law before
// the sheath dries.
type scale struct {
	sigma float64 // grams
	dry   float64 // grams above ref, expected in the end
	sure  float64 // of that, one over its variance
	log   float64 // logarithm of how much all this is believed, its norms among it
}

// scales is one for each standard deviation that some sheath could have.
func (s series) scales(l law) []scale {
	out := make([]scale, len(handling))
	for i, h := range handling {
		c := scale{sigma: s.sigma(h.share), dry: s.dry - s.ref}
		if l.night > 0 {
			c.sigma = math.Hypot(c.sigma, stray*s.water)
		}
		c.log = math.Log(l.share*h.believed) - float64(len(s.grams))*math.Log(c.sigma)
		if s.given() {
			dev := c.sigma
			if l.washed {
				c.dry -= washedMean * s.dry
				dev = math.Hypot(dev, washedDev*s.dry)
			}
			c.sure = 1 / (dev * dev)
			c.log -= math.Log(dev)
		}
		if l.ratio > 0 {
			c.log -= math.Log(slowDev * s.water)
		}
		out[i] = c
	}
	return out
}

// measured is what least squares needs at one rate, given the law's own time
// at each weighing.
func (s series) measured(l law, rate float64, own []float64) sums {
	var m sums
	for i, t := range own {
		fast, slow := l.left(rate * t)
		m.add(fast, slow, s.grams[i]-s.ref)
	}
	return m
}

// wettest is more water than leather takes up, as a multiple of its dry weight.
const wettest = 3

// sums is what least squares needs of the weighings: of the columns 1, fast,
// slow and of the grams y.
type sums struct{ n, f, s, ff, fs, ss, y, fy, sy, yy float64 }

func (m *sums) add(fast, slow, y float64) {
	m.n++
	m.f += fast
	m.s += slow
	m.ff += fast * fast
	m.fs += fast * slow
	m.ss += slow * slow
	m.y += y
	m.fy += fast * y
	m.sy += slow * y
	m.yy += y * y
}

// solve finds the weights by least squares, with what is known of the dry
// weight and of the slower part's share as weighings more, and the logarithm
// of how well it all fits with the weights integrated out. It is false where
// no sheath could weigh that.
//
// Three unknowns by cofactors: this runs some ten thousand times in an estimate,
// where a matrix library's allocations would cost more than all else.
func (s series) solve(l law, m sums, c scale) (fit, float64, bool) {
	w := 1 / (c.sigma * c.sigma)
	a00, a01, a02, a11, a12, a22 := w*m.n+c.sure, w*m.f, w*m.s, w*m.ff, w*m.fs, w*m.ss
	b0, b1, b2, yy := w*m.y+c.sure*c.dry, w*m.fy, w*m.sy, w*m.yy+c.sure*c.dry*c.dry
	if l.ratio == 0 {
		a22 = 1 // no slower part
	} else { // slow/fast is about odds
		const odds = slowMean / (1 - slowMean)
		dev := slowDev / (1 - slowMean) * s.water
		v := 1 / (dev * dev)
		a11, a12, a22 = a11+odds*odds*v, a12-odds*v, a22+v
	}
	c00, c01, c02 := a11*a22-a12*a12, a02*a12-a01*a22, a01*a12-a02*a11
	c11, c12, c22 := a00*a22-a02*a02, a01*a02-a00*a12, a00*a11-a01*a01
	det := a00*c00 + a01*c01 + a02*c02
	if !(det > 1e-12*a00*a11*a22) {
		return fit{}, 0, false
	}
	d, f, g := (c00*b0+c01*b1+c02*b2)/det, (c01*b0+c11*b1+c12*b2)/det, (c02*b0+c12*b1+c22*b2)/det
	if dry := d + s.ref; dry <= 0 || f < 0 || g < 0 || f+g <= 0 || f+g > wettest*dry {
		return fit{}, 0, false
	}
	chi2 := math.Max(0, yy-d*b0-f*b1-g*b2)
	if l.ratio == 0 {
		c22 = 0
	}
	return fit{
		dry: d + s.ref, fast: f, slow: g,
		cov: [3][3]float64{{c00 / det, c01 / det, c02 / det}, {c01 / det, c11 / det, c12 / det}, {c02 / det, c12 / det, c22 / det}},
	}, c.log - chi2/2 - math.Log(det)/2, true
}
