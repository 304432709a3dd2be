package print

import (
	"math"

	"chape/calc/curve"
)

// clip keeps what lies in b: lines are cut at its sides, circles that stick
// out are cut or, if a sheet's overlap holds them whole elsewhere, left out,
// words are kept only whole: those wider than an overlap are moved if need be.
func (d *drawing) clip(b box) drawing {
	var out drawing
	for _, p := range d.paths {
		out.paths = append(out.paths, p.clip(b)...)
	}
	for _, c := range d.circles {
		switch {
		case b.holds(c.box()):
			out.circle(c)
		case 2*c.radius > overlap && b.meets(c.box()):
			out.paths = append(out.paths, c.path().clip(b)...)
		}
	}
	for _, t := range d.texts {
		if t.layer == wordLayer && b.has(t.at) && t.box().width() > overlap {
			t.at = t.at.Add(b.into(t.box()))
		}
		if b.holds(t.box()) {
			out.texts = append(out.texts, t)
		}
	}
	return out
}

// into is the way that c must move to lie in b.
func (b box) into(c box) curve.Vec {
	return curve.Vec{
		X: math.Max(0, b.lo.X-c.lo.X) - math.Max(0, c.hi.X-b.hi.X),
		Y: math.Max(0, b.lo.Y-c.lo.Y) - math.Max(0, c.hi.Y-b.hi.Y),
	}
}

// path is the circle as a closed polyline within deviation.
func (c circle) path() path {
	n := int(math.Ceil(math.Pi/math.Acos(1-deviation/max(c.radius, deviation)))) + 3
	p := path{layer: c.layer, stroke: c.stroke, closed: true}
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		p.pts = append(p.pts, c.at.Add(curve.Vec{X: c.radius * cos, Y: c.radius * sin}))
	}
	return p
}

// clip gives the pieces of p in b, each with the length before it.
func (p path) clip(b box) []path {
	pts := p.pts
	if len(pts) == 0 {
		return nil
	}
	lo, hi := pts.Bounds()
	if b.holds(box{lo, hi}) {
		return []path{p}
	}
	if p.closed {
		pts = append(append(curve.Line{}, pts...), pts[0])
	}
	var out []path
	piece := p
	piece.closed, piece.pts = false, nil
	flush := func() {
		if len(piece.pts) > 1 {
			out = append(out, piece)
		}
		piece.pts = nil
	}
	at := p.from
	for i := 1; i < len(pts); i++ {
		a, z := pts[i-1], pts[i]
		size := a.Dist(z)
		t0, t1, ok := segmentIn(a, z, b)
		if ok && t1 > t0 {
			if t0 > 0 || piece.pts == nil {
				flush()
				piece.from = at + t0*size
				piece.pts = curve.Line{a.Add(z.Sub(a).Mul(t0))}
			}
			piece.pts = append(piece.pts, a.Add(z.Sub(a).Mul(t1)))
		}
		if !ok || t1 < 1 {
			flush()
		}
		at += size
	}
	flush()
	return out
}

// segmentIn gives the part of the segment from a to z in b, as shares of it.
func segmentIn(a, z curve.Vec, b box) (t0, t1 float64, ok bool) {
	t0, t1 = 0, 1
	d := z.Sub(a)
	for _, s := range [4][2]float64{{-d.X, a.X - b.lo.X}, {d.X, b.hi.X - a.X}, {-d.Y, a.Y - b.lo.Y}, {d.Y, b.hi.Y - a.Y}} {
		move, room := s[0], s[1]
		switch {
		case move == 0 && room < 0:
			return 0, 0, false
		case move < 0:
			t0 = math.Max(t0, room/move)
		case move > 0:
			t1 = math.Min(t1, room/move)
		}
	}
	return t0, t1, t0 <= t1
}

// aboveFold cuts a closed outline along the fold and keeps y >= 0.
func aboveFold(l curve.Line) curve.Line {
	var out curve.Line
	for i, p := range l {
		q := l[(i+1)%len(l)]
		if p.Y >= 0 {
			out = append(out, p)
		}
		if (p.Y < 0) != (q.Y < 0) && p.Y != 0 && q.Y != 0 {
			out = append(out, curve.Vec{X: p.X + (q.X-p.X)*p.Y/(p.Y-q.Y)})
		}
	}
	return out
}

// inside tells whether v lies in the closed line.
func inside(v curve.Vec, l curve.Line) bool {
	in := false
	for i, p := range l {
		q := l[(i+1)%len(l)]
		if (p.Y > v.Y) != (q.Y > v.Y) && v.X < p.X+(q.X-p.X)*(v.Y-p.Y)/(q.Y-p.Y) {
			in = !in
		}
	}
	return in
}
