package calc

import (
	"math"

	"chape/calc/curve"
)

// gather is the largest excess of the flat over the plane stitch line over
// any stretch of the given plane length within 0..mouth, the mean of its two
// end x, and the length of the stretch: all there is where that is less. Both
// lines are polylines over the same x, so the largest lies where one end of the
// stretch is at one of their points.
func (s *sampled) gather(reach float64) (most, at, along float64) {
	seam, flat := s.seam.Between(0, s.mouth), s.stitch.Between(0, s.mouth)
	plane, long := arcLengths(seam), arcLengths(flat)
	total := plane[len(plane)-1]
	if total <= 0 {
		return 0, 0, 0
	}
	reach = math.Min(reach, total)
	// What the stretch that starts at s0 takes more, and its middle; s0 rises.
	var head, tail cursor
	stretch := func(s0 float64) (share, middle float64) {
		i, f := head.seek(plane, s0)
		j, g := tail.seek(plane, s0+reach)
		share = (mix(long, j, g)-mix(long, i, f))/reach - 1
		return share, (mix(seam.X, i, f) + mix(seam.X, j, g)) / 2
	}
	most, at = math.Inf(-1), math.Inf(1)
	var best []shareAt                            // what may turn out to share the place of the largest
	for _, back := range [...]float64{0, reach} { // the stretch begins at a point, or ends at one
		head, tail = 0, 0
		for _, a := range plane {
			s0 := a - back
			if s0 < -tie || s0+reach > total+tie {
				continue
			}
			share, middle := stretch(s0)
			if share > most+tie {
				best = best[:0]
			}
			if share >= most-tie {
				best = append(best, shareAt{share, middle})
			}
			most = max(most, share)
		}
	}
	for _, b := range best {
		if b.share >= most-tie {
			at = min(at, b.at)
		}
	}
	return most, at, reach
}

// shareAt is what a stretch takes more, and its middle.
type shareAt struct{ share, at float64 }

// cursor finds places in a rising list, each no lower than the last one asked.
type cursor int

// seek gives the piece of the list that holds s and the share of it up to s.
func (c *cursor) seek(list []float64, s float64) (piece int, share float64) {
	i := int(*c)
	for i < len(list)-2 && list[i+1] < s {
		i++
	}
	*c = cursor(i)
	if list[i+1] == list[i] {
		return i, 0
	}
	return i, min(max((s-list[i])/(list[i+1]-list[i]), 0), 1)
}

// mix is the value of a list at a share of its piece.
func mix(list []float64, piece int, share float64) float64 {
	return list[piece] + share*(list[piece+1]-list[piece])
}

// arcLengths is the length along the graph from its first point to each.
func arcLengths(g curve.Graph) []float64 {
	out := make([]float64, len(g.X))
	for i := 1; i < len(out); i++ {
		out[i] = out[i-1] + math.Hypot(g.X[i]-g.X[i-1], g.Y[i]-g.Y[i-1])
	}
	return out
}
