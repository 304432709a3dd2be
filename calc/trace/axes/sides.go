package axes

import (
	"math"

	"chape/calc/curve"
)

// sides are back and edge as curves over x, sampled from 0 to the length.
type sides struct {
	step        float64
	top, bottom []float64
}

const sampled = 0.1 // mm

func (s sides) length() float64     { return float64(len(s.top)-1) * s.step }
func (s sides) depth(i int) float64 { return s.bottom[i] - s.top[i] }

// at gives both sides at x, between samples on straight lines.
func (s sides) at(x float64) (top, bottom float64) {
	f := min(max(x/s.step, 0), float64(len(s.top)-1)-1e-9)
	i := int(f)
	f -= float64(i)
	return s.top[i]*(1-f) + s.top[i+1]*f, s.bottom[i]*(1-f) + s.bottom[i+1]*f
}

// sidesOf takes the least and the greatest u at each x of an outline that begins at x = 0. Both ends are taken
// a little inside, where they have a depth.
func sidesOf(l curve.Line) sides {
	_, hi := l.Bounds()
	n := max(int(hi.X/sampled), 1) + 1
	s := sides{step: hi.X / float64(n-1), top: make([]float64, n), bottom: make([]float64, n)}
	for i := range s.top {
		s.top[i], s.bottom[i] = math.Inf(1), math.Inf(-1)
	}
	for i, a := range l {
		b := l[(i+1)%len(l)]
		if a.X > b.X {
			a, b = b, a
		}
		for k := max(0, int(math.Ceil(a.X/s.step))); k < n && float64(k)*s.step <= b.X; k++ {
			u := a.Y
			if b.X > a.X {
				u += (b.Y - a.Y) * (float64(k)*s.step - a.X) / (b.X - a.X)
			}
			s.top[k], s.bottom[k] = min(s.top[k], u), max(s.bottom[k], u)
		}
	}
	s.whole()
	return s
}

// whole fills samples that no edge crosses, which happens at the ends alone.
func (s sides) whole() {
	n := len(s.top)
	for i := 1; i < n; i++ {
		if math.IsInf(s.top[i], 0) {
			s.top[i], s.bottom[i] = s.top[i-1], s.bottom[i-1]
		}
	}
	for i := n - 2; i >= 0; i-- {
		if math.IsInf(s.top[i], 0) {
			s.top[i], s.bottom[i] = s.top[i+1], s.bottom[i+1]
		}
	}
	s.top[0], s.bottom[0] = s.top[min(1, n-1)], s.bottom[min(1, n-1)]
	s.top[n-1], s.bottom[n-1] = s.top[max(n-2, 0)], s.bottom[max(n-2, 0)]
}

// fold turns the axes until x runs along the fold line: of all straight lines nowhere past the back over the
// length before the handle, the one that comes highest half-way to the mouth, which is the edge of the back's convex hull
// there. The mouth is not known yet: half the handle is taken, and never more than the blade; the middle of the blade alone would lie
// on many a clipped point. The point's foot on it is x = 0.
func (a Axes) fold(outline curve.Line, feet []curve.Vec) Axes {
	for range 6 {
		l := a.in(outline)
		a.From = a.Out(curve.Vec{X: least(l)})
		s := sidesOf(a.in(outline))
		end := blade(a, s, feet)
		mid := min((end+s.length())/4, 0.9*end)
		p, q := hullEdge(s.top[:min(int(end/s.step)+1, len(s.top))], s.step, mid)
		slope := (q.Y - p.Y) / max(q.X-p.X, s.step)
		a.From = a.Out(curve.Vec{Y: p.Y - slope*p.X})
		k := 1 / math.Hypot(1, slope)
		a.Along, a.Down = a.Along.Add(a.Down.Mul(slope)).Mul(k), a.Down.Sub(a.Along.Mul(slope)).Mul(k)
		if math.Abs(slope) < 1e-7 {
			break
		}
	}
	l := a.in(outline)
	a.From = a.Out(curve.Vec{X: least(l)})
	return a
}

// hullEdge is the edge over mid of the convex hull, on the side of small u.
func hullEdge(u []float64, step, mid float64) (p, q curve.Vec) {
	var hull curve.Line
	for i, y := range u {
		v := curve.Vec{X: float64(i) * step, Y: y}
		for len(hull) > 1 {
			a, b := hull[len(hull)-2], hull[len(hull)-1]
			if (b.X-a.X)*(v.Y-a.Y)-(b.Y-a.Y)*(v.X-a.X) > 0 {
				break
			}
			hull = hull[:len(hull)-1]
		}
		hull = append(hull, v)
	}
	for i := 1; i < len(hull); i++ {
		if hull[i].X > mid || i == len(hull)-1 {
			return hull[i-1], hull[i]
		}
	}
	return hull[0], hull[0].Add(curve.Vec{X: 1})
}
