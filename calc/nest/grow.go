package nest

import (
	"math"

	"chape/calc/curve"
)

// coarse is how far the outline that the search works on may lie from the true
// one, mm; it is grown by as much, so that it holds the true one.
const coarse = 0.25

// simplify leaves out corners that lie within tol of the rest (Douglas and
// Peucker 1973), and turns the outline counter-clockwise.
func simplify(l curve.Line, tol float64) curve.Line {
	if l.Area() < 0 {
		l = l.Reverse()
	}
	far := 0
	for i, p := range l {
		if p.Dist(l[0]) > l[far].Dist(l[0]) {
			far = i
		}
	}
	closed := append(append(curve.Line{}, l...), l[0])
	keep := make([]bool, len(closed))
	keep[0], keep[far] = true, true
	thin(closed, keep, 0, far, tol)
	thin(closed, keep, far, len(l), tol)
	var out curve.Line
	for i, p := range l {
		if keep[i] {
			out = append(out, p)
		}
	}
	return out
}

// thin marks what has to be kept between two corners that are.
func thin(l curve.Line, keep []bool, i, j int, tol float64) {
	worst, at := tol, -1
	u := l[j].Sub(l[i])
	n := u.Norm()
	for k := i + 1; k < j; k++ {
		v := l[k].Sub(l[i])
		d := v.Norm()
		if n > 0 {
			s := min(1, max(0, (v.X*u.X+v.Y*u.Y)/(n*n)))
			d = v.Dist(u.Mul(s))
		}
		if d > worst {
			worst, at = d, k
		}
	}
	if at < 0 {
		return
	}
	keep[at] = true
	thin(l, keep, i, at, tol)
	thin(l, keep, at, j, tol)
}

// grow draws the curve that runs r outside a counter-clockwise outline. It
// crosses itself in tight hollows; what it winds round at least once, counter-
// clockwise, is everything within r of the outline, and a little more at corners.
func grow(l curve.Line, r float64) curve.Line {
	var out curve.Line
	for i, p := range l {
		a := p.Sub(l[(i+len(l)-1)%len(l)])
		b := l[(i+1)%len(l)].Sub(p)
		la, lb := a.Norm(), b.Norm()
		if la == 0 || lb == 0 {
			continue
		}
		n := curve.Vec{X: a.Y / la, Y: -a.X / la}
		m := curve.Vec{X: b.Y / lb, Y: -b.X / lb}
		turn := math.Atan2(cross(a, b), a.X*b.X+a.Y*b.Y)
		switch {
		case turn >= 0:
			out = append(out, roundOff(p, n, turn, r)...)
		case r*math.Tan(-turn/2) < 0.4*min(la, lb):
			out = append(out, p.Add(n.Add(m).Mul(r/(1+n.X*m.X+n.Y*m.Y))))
		default:
			out = append(out, p.Add(n.Mul(r)), p, p.Add(m.Mul(r)))
		}
	}
	return out
}

// roundOff is the arc round a corner, as tangents, from the direction n on.
func roundOff(p, n curve.Vec, turn, r float64) curve.Line {
	k := max(1, int(math.Ceil(turn/(math.Pi/5))))
	step := turn / float64(k)
	far := r / math.Cos(step/2)
	var l curve.Line
	for i := range k {
		sin, cos := math.Sincos(step * (float64(i) + 0.5))
		l = append(l, p.Add(curve.Vec{X: n.X*cos - n.Y*sin, Y: n.X*sin + n.Y*cos}.Mul(far)))
	}
	return l
}
