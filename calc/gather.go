package calc

import (
	"math"

	"chape/calc/curve"
)

// gather is the largest excess of the flat over the plane stitch line over
// any stretch of the given plane length within 0..mouth, the mean of its two
// end x, and the length of the stretch: all there is where that is less. Both lines are polylines over the same x, so the largest lies
// where one end of the stretch is at one of their points.
func (s *sampled) gather(reach float64) (most, at, along float64) {
	seam, flat := s.seam.Between(0, s.mouth), s.stitch.Between(0, s.mouth)
	plane, long := arcLengths(seam), arcLengths(flat)
	total := plane[len(plane)-1]
	if total <= 0 {
		return 0, 0, 0
	}
	reach = math.Min(reach, total)
	over := curve.Graph{X: plane, Y: long}
	back := curve.Graph{X: plane, Y: seam.X}
	share := func(s0 float64) float64 { return (over.At(s0+reach)-over.At(s0))/reach - 1 }
	starts := make([]float64, 0, 2*len(plane))
	for _, a := range plane {
		for _, s0 := range [...]float64{a, a - reach} {
			if s0 >= -tie && s0+reach <= total+tie {
				starts = append(starts, s0)
			}
		}
	}
	most = math.Inf(-1)
	shares := make([]float64, len(starts))
	for i, s0 := range starts {
		shares[i] = share(s0)
		most = math.Max(most, shares[i])
	}
	at = math.Inf(1)
	for i, s0 := range starts {
		if shares[i] >= most-tie {
			at = math.Min(at, (back.At(s0)+back.At(s0+reach))/2)
		}
	}
	return most, at, reach
}

// arcLengths is the length along the graph from its first point to each.
func arcLengths(g curve.Graph) []float64 {
	out := make([]float64, len(g.X))
	for i := 1; i < len(out); i++ {
		out[i] = out[i-1] + math.Hypot(g.X[i]-g.X[i-1], g.Y[i]-g.Y[i-1])
	}
	return out
}
