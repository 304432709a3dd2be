package calc

import (
	"math"

	"chape/calc/curve"
	"chape/calc/knife"
)

// The twin's own knife: slopes, curves, sections and string written out from
// the definitions, sharing nothing with the code but the station table.

// bruteRun is a stretch between two steps: its stations and the slopes of the
// three curves at each.
type bruteRun struct {
	st                 []knife.Station
	top, bottom, thick []float64
	blade              bool // a stretch of blade lies before it
}

func bruteRuns(st []knife.Station) []bruteRun {
	var runs []bruteRun
	start, blade := 0, false
	for i := 1; i <= len(st); i++ {
		if i < len(st) && st[i].At > st[i-1].At {
			continue
		}
		r := bruteRun{st: st[start:i], blade: blade}
		for _, s := range r.st[:len(r.st)-1] {
			blade = blade || s.Kind == knife.Blade
		}
		r.top = r.slopes(func(s knife.Station) float64 { return s.Top.MM() })
		r.bottom = r.slopes(func(s knife.Station) float64 { return s.Bottom.MM() })
		r.thick = r.slopes(func(s knife.Station) float64 { return s.Thick.MM() })
		runs = append(runs, r)
		start = i
	}
	return runs
}

// slopes are those of Fritsch and Butland.
func (r bruteRun) slopes(of func(knife.Station) float64) []float64 {
	n := len(r.st)
	h, d := make([]float64, n-1), make([]float64, n-1)
	for i := range h {
		h[i] = (r.st[i+1].At - r.st[i].At).MM()
		d[i] = (of(r.st[i+1]) - of(r.st[i])) / h[i]
	}
	m := make([]float64, n)
	if n == 2 {
		m[0], m[1] = d[0], d[0]
		return m
	}
	for i := 1; i < n-1; i++ {
		if d[i-1]*d[i] > 0 {
			m[i] = 3 * (h[i-1] + h[i]) / ((h[i-1]+2*h[i])/d[i-1] + (2*h[i-1]+h[i])/d[i])
		}
	}
	end := func(h0, h1, d0, d1 float64) float64 {
		s := ((2*h0+h1)*d0 - h0*d1) / (h0 + h1)
		if s*d0 <= 0 {
			return 0
		}
		if d0*d1 <= 0 && math.Abs(s) > 3*math.Abs(d0) {
			return 3 * d0
		}
		return s
	}
	m[0] = end(h[0], h[1], d[0], d[1])
	m[n-1] = end(h[n-2], h[n-3], d[n-2], d[n-3])
	return m
}

// bruteSection is a section read out of the curves.
type bruteSection struct {
	top, bottom, thick float64
	st                 knife.Station // kind, bevel and round
	handle             bool
}

func (s bruteSection) depth() float64 { return s.bottom - s.top }

// sectionsAt is the section at x; at a step both.
func sectionsAt(runs []bruteRun, x float64) []bruteSection {
	var out []bruteSection
	for _, r := range runs {
		n := len(r.st)
		if x < r.st[0].At.MM() || x > r.st[n-1].At.MM() {
			continue
		}
		j := 0
		for j < n-2 && x >= r.st[j+1].At.MM() {
			j++
		}
		a, b := r.st[j], r.st[j+1]
		h := (b.At - a.At).MM()
		t := (x - a.At.MM()) / h
		hermite := func(p, q, mp, mq float64) float64 {
			return p*(1+2*t)*(1-t)*(1-t) + h*mp*t*(1-t)*(1-t) + q*t*t*(3-2*t) + h*mq*t*t*(t-1)
		}
		blade := r.blade
		for _, s := range r.st[:j+1] {
			blade = blade || s.Kind == knife.Blade
		}
		out = append(out, bruteSection{
			handle: blade && a.Kind != knife.Blade,
			top:    hermite(a.Top.MM(), b.Top.MM(), r.top[j], r.top[j+1]),
			bottom: hermite(a.Bottom.MM(), b.Bottom.MM(), r.bottom[j], r.bottom[j+1]),
			thick:  hermite(a.Thick.MM(), b.Thick.MM(), r.thick[j], r.thick[j+1]),
			st:     a,
		})
	}
	return out
}

// upper is the upper half of the section moved by du, as many points.
func (s bruteSection) upper(du float64) []curve.Vec {
	const n = 60
	h, d, top := s.thick/2, s.depth(), s.top+du
	var pts []curve.Vec
	switch s.st.Kind {
	case knife.Slab:
		r := math.Min(s.st.Round.MM(), math.Min(h, d/2))
		for i := 0; i <= n; i++ {
			sin, cos := math.Sincos(math.Pi / 2 * float64(i) / n)
			pts = append(pts, curve.Vec{X: top + r - r*cos, Y: h - r + r*sin}, curve.Vec{X: top + d - r + r*cos, Y: h - r + r*sin})
		}
	case knife.Oval:
		for i := 0; i <= 2*n; i++ {
			sin, cos := math.Sincos(math.Pi * float64(i) / (2 * n))
			pts = append(pts, curve.Vec{X: top + d/2 - d/2*cos, Y: h * sin})
		}
	default:
		pts = append(pts, curve.Vec{X: top, Y: h}, curve.Vec{X: top + (1-s.st.Bevel)*d, Y: h}, curve.Vec{X: top + d})
	}
	return pts
}

// bruteString measures the string from the fold over half the welt, the
// sections and last by the gift-wrapping of its upper hull.
func bruteString(pts []curve.Vec, halfWelt float64, last curve.Vec) float64 {
	const hair = 1e-9
	pts = append(pts, curve.Vec{Y: halfWelt}, last)
	start, end := curve.Vec{}, last
	for _, p := range pts {
		if p.X <= hair && p.Y > start.Y {
			start.Y = p.Y
		}
		if p.X >= last.X-hair && p.Y > end.Y {
			end.Y = p.Y
		}
	}
	sum, at := start.Y+end.Y-last.Y, start
	if last.X <= hair { // all in one upright
		return 2*math.Max(start.Y, end.Y) - last.Y
	}
	for at.X < last.X-hair {
		next, steepest := end, (end.Y-at.Y)/(end.X-at.X)
		for _, p := range pts {
			if p.X > at.X+hair && p.X < last.X-hair {
				if m := (p.Y - at.Y) / (p.X - at.X); m > steepest {
					steepest, next = m, p
				}
			}
		}
		sum += next.Dist(at)
		at = next
	}
	return sum
}
