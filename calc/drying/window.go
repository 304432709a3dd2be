package drying

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat/distuv"
)

// spread is the places, in standard deviations, that stand for the weights of
// a node: the middles of equal parts of a normal distribution, of its variance.
var spread = func() []float64 {
	out := make([]float64, 5)
	for i := range out {
		out[i] = distuv.UnitNormal.Quantile((float64(i) + 0.5) / float64(len(out)))
	}
	floats.Scale(math.Sqrt(float64(len(out)))/floats.Norm(out, 2), out)
	return out
}()

// moments is when the sheath may be within NearDry of dry, in hours since the
// first weighing and in order, with how much each is believed. They are
// gathered into steps of a part in 300, finer than any window.
func (s series) moments(nodes []node) (hours, weights []float64) {
	const bins, low, high = 4000, 1e-3, 1e3 // of the span of the weighings
	span := s.hours[len(s.hours)-1]
	perBin := math.Log(high/low) / bins
	best := math.Inf(-1)
	for _, n := range nodes {
		best = math.Max(best, n.log)
	}
	var bin [bins]float64
	for _, n := range nodes {
		weight := math.Exp(n.log - best)
		for _, at := range s.nearDry(n) {
			i := int(math.Log(math.Max(at/span/low, 1)) / perBin)
			bin[min(i, bins-1)] += weight
		}
	}
	for i, w := range bin {
		if w > 0 {
			hours = append(hours, span*low*math.Exp((float64(i)+0.5)*perBin))
			weights = append(weights, w)
		}
	}
	return hours, weights
}

// nearDry is when a node is within NearDry of dry, for weights that lie
// spread along the line on which they change that moment the most.
func (s series) nearDry(n node) [5]float64 {
	kt := n.until(n.fit)
	fast, slow := n.law.left(kt)
	grad := [3]float64{-NearDry, fast, slow}
	var along [3]float64
	variance := 0.0
	for i := range along {
		along[i] = floats.Dot(n.cov[i][:], grad[:])
		variance += along[i] * grad[i]
	}
	dev := math.Sqrt(math.Max(variance, 1e-300))
	var out [5]float64
	for i, z := range spread {
		f := fit{
			dry:  math.Max(n.dry+z*along[0]/dev, n.dry/2),
			fast: math.Max(n.fast+z*along[1]/dev, 0),
			slow: math.Max(n.slow+z*along[2]/dev, 0),
		}
		out[i] = s.moment(n, n.until(f))
	}
	return out
}

// until is the rate times own hours after which these weights leave NearDry
// of the dry weight as water, 0 if there was no more at first. By Newton's rule
// on the logarithm of the water, which is convex: from the left it does not
// overshoot.
func (n node) until(f fit) float64 {
	share := NearDry * f.dry
	kt := math.Log(f.fast / share)
	if n.law.ratio > 0 && f.slow > 0 {
		kt = math.Max(kt, math.Log(f.slow/share)/n.law.ratio)
		for range 30 {
			a, b := n.law.left(kt)
			a, b = a*f.fast, b*f.slow
			d := math.Log((a+b)/share) * (a + b) / (a + n.law.ratio*b)
			if kt += d; math.Abs(d) < 1e-5 {
				break
			}
		}
	}
	return math.Max(kt, 0)
}

// typical is the best of the nodes that are dry about the likely moment, within
// a tenth of the window; with a slower part only from FewestForSlow on.
func (s series) typical(nodes []node, likely, width float64) node {
	var best node
	found, near := false, 0.0
	for _, n := range nodes {
		if n.law.ratio > 0 && len(s.grams) < FewestForSlow {
			continue
		}
		off := math.Max(math.Abs(s.moment(n, n.until(n.fit))-likely), width/10)
		if !found || off < near || off == near && n.log > best.log {
			best, near, found = n, off, true
		}
	}
	if !found { // only slower parts explain these few
		best = nodes[0]
	}
	return best
}

// weight is grams on a node's curve, hours after an hour of the day, that of
// the first weighing.
func (n node) weight(clock, hours float64) float64 {
	fast, slow := n.law.left(n.rate * (n.law.clock(clock+hours) - n.law.clock(clock)))
	return n.dry + n.fast*fast + n.slow*slow
}

// moment is the hours since the first weighing of a node's rate times own hours.
func (s series) moment(n node, kt float64) float64 {
	return n.law.hour(n.law.clock(s.clock)+kt/n.rate) - s.clock
}

// shortest is the shortest stretch of x, which is in order, that holds a share
// of the weights.
func shortest(x, weights []float64, share float64) (low, high float64) {
	want := share * floats.Sum(weights)
	low, high = x[0], x[len(x)-1]
	sum, j := 0.0, 0
	for i := range x {
		for ; j < len(x) && sum < want; j++ {
			sum += weights[j]
		}
		if sum < want {
			break
		}
		if x[j-1]-x[i] < high-low {
			low, high = x[i], x[j-1]
		}
		sum -= weights[i]
	}
	return low, high
}
