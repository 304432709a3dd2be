package knife

import (
	"math"

	"gonum.org/v1/gonum/mathext"

	"chape/calc/curve"
)

// Section is one cut across the knife, mm.
type Section struct {
	Kind        Kind
	Top, Bottom float64 // u of spine and edge
	Thick       float64 // full thickness
	Bevel       float64 // blades
	Round       float64 // slabs
	Handle      bool    // bolster, guard or grip: no edge to keep off
}

// Depth is the section's extent across the blade.
func (s Section) Depth() float64 { return s.Bottom - s.Top }

// Shift moves the section by du towards the edge.
func (s Section) Shift(du float64) Section {
	s.Top += du
	s.Bottom += du
	return s
}

// chordError is how much shorter than its curve a polygon of Upper may be, mm.
const chordError = 0.004

// Upper appends the upper half of the section, (u, v) with v >= 0, from the
// spine to the edge, u never falling. Curves become inscribed polygons at
// most chordError shorter than they are.
func (s Section) Upper(dst []curve.Vec) []curve.Vec {
	h := s.Thick / 2
	switch s.Kind {
	case Slab:
		r := max(0, min(s.Round, min(h, s.Depth()/2)))
		dst = append(dst, curve.Vec{X: s.Top})
		dst = arc(dst, curve.Vec{X: s.Top + r, Y: h - r}, r, r, math.Pi, math.Pi/2, chordError/2)
		dst = arc(dst, curve.Vec{X: s.Bottom - r, Y: h - r}, r, r, math.Pi/2, 0, chordError/2)
		return append(dst, curve.Vec{X: s.Bottom})
	case Oval:
		a := s.Depth() / 2
		return arc(dst, curve.Vec{X: s.Top + a}, a, h, math.Pi, 0, chordError)
	default:
		return append(dst,
			curve.Vec{X: s.Top, Y: h},
			curve.Vec{X: s.Top + (1-s.Bevel)*s.Depth(), Y: h},
			curve.Vec{X: s.Bottom})
	}
}

// arc appends points of an ellipse with half axes a and b from angle t0 to
// t1, in all short mm at most shorter than the arc. A chord is shorter than its
// arc by about the arc times dt²/24.
func arc(dst []curve.Vec, c curve.Vec, a, b, t0, t1, short float64) []curve.Vec {
	if a == 0 && b == 0 {
		return append(dst, c)
	}
	span := math.Abs(t1 - t0)
	n := int(math.Ceil(span * math.Sqrt(span*max(a, b)/(24*short))))
	n = max(2, min(n, 400))
	// One rotation by the step's angle a point spares a sine and a cosine each.
	sin, cos := math.Sincos((t1 - t0) / float64(n))
	y, x := math.Sincos(t0)
	for i := 0; i <= n; i++ {
		dst = append(dst, curve.Vec{X: c.X + a*x, Y: c.Y + b*y})
		x, y = x*cos-y*sin, x*sin+y*cos
	}
	return dst
}

// Arms are the two parts of a strap pulled tight round the section's convex
// hull, both from the middle of the depth on one side to the middle on the
// other: over the back and under the belly, mm. An ellipse is measured by its
// integral, the rest is straight and round.
func (s Section) Arms() (back, belly float64) {
	d, t := s.Depth(), s.Thick
	switch s.Kind {
	case Slab:
		r := max(0, min(s.Round, min(t, d)/2))
		arm := d + t - (4-math.Pi)*r
		return arm, arm
	case Oval:
		a, b := max(d, t)/2, min(d, t)/2
		if a == 0 {
			return 0, 0
		}
		arm := 2 * a * mathext.CompleteE(1-b*b/(a*a))
		return arm, arm
	default:
		flat := (1 - s.Bevel) * d // from the spine to where the taper begins
		slope := math.Hypot(s.Bevel*d, t/2)
		if flat >= d/2 {
			return t + d, 2 * (flat - d/2 + slope)
		}
		half := slope * (d/2 - flat) / (s.Bevel * d)
		return t + 2*(flat+half), 2 * (slope - half)
	}
}
