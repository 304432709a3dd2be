package knife

import "math"

// cubic is a + b·t + c·t² + d·t³, t from the stretch's beginning.
type cubic struct{ a, b, c, d float64 }

// newCubic goes over the length h from y0 with slope m0 to y1 with slope m1
// (Hermite).
func newCubic(h, y0, y1, m0, m1 float64) cubic {
	rise := (y1 - y0) / h
	return cubic{y0, m0, (3*rise - 2*m0 - m1) / h, (m0 + m1 - 2*rise) / (h * h)}
}

func (q cubic) at(t float64) float64 { return q.a + t*(q.b+t*(q.c+t*q.d)) }

// least is the least value of q less slope·t over lo..hi, and the smallest t
// where it lies.
func (q cubic) least(slope, lo, hi float64) (value, at float64) {
	q.b -= slope
	value, at = q.at(lo), lo
	try := func(t float64) {
		if t > lo && t <= hi {
			if v := q.at(t); v < value {
				value, at = v, t
			}
		}
	}
	a, b, c := 3*q.d, 2*q.c, q.b // the derivative is a·t² + b·t + c
	if root := b*b - 4*a*c; root >= 0 {
		// Without taking two near figures from each other.
		k := -(b + math.Copysign(math.Sqrt(root), b)) / 2
		if a != 0 {
			try(k / a)
		}
		if k != 0 {
			try(c / k)
		}
	}
	try(hi)
	return value, at
}
