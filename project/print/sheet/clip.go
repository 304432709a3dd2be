package sheet

import (
	"math"

	"chape/calc/curve"
)

// Clip keeps what lies in b: lines are cut at its sides, circles that stick
// out are cut or, if a sheet's overlap holds them whole elsewhere, left out,
// words are kept only whole: those larger than an overlap are moved if need be, the others
// stand whole on the neighbour.
func (d *Drawing) Clip(b Box) Drawing {
	var out Drawing
	for _, p := range d.Paths {
		out.Paths = append(out.Paths, p.Clip(b)...)
	}
	for _, c := range d.Circles {
		switch {
		case b.holds(c.box()):
			out.Circle(c)
		case 2*c.Radius > Overlap && b.meets(c.box()):
			out.Paths = append(out.Paths, c.path().Clip(b)...)
		}
	}
	for _, t := range d.Texts {
		if box := t.Box(); t.Layer == WordLayer && b.has(t.At) {
			into := b.into(box)
			if box.Width() > Overlap {
				t.At.X += into.X
			}
			if box.Height() > Overlap {
				t.At.Y += into.Y
			}
		}
		if b.holds(t.Box()) {
			out.Texts = append(out.Texts, t)
		}
	}
	return out
}

// into is the way that c must move to lie in b.
func (b Box) into(c Box) curve.Vec {
	return curve.Vec{
		X: math.Max(0, b.Lo.X-c.Lo.X) - math.Max(0, c.Hi.X-b.Hi.X),
		Y: math.Max(0, b.Lo.Y-c.Lo.Y) - math.Max(0, c.Hi.Y-b.Hi.Y),
	}
}

// path is the circle as a closed polyline within deviation.
func (c Circle) path() Path {
	n := int(math.Ceil(math.Pi/math.Acos(1-deviation/max(c.Radius, deviation)))) + 3
	p := Path{Layer: c.Layer, Stroke: c.Stroke, Closed: true}
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		p.Pts = append(p.Pts, c.At.Add(curve.Vec{X: c.Radius * cos, Y: c.Radius * sin}))
	}
	return p
}

// Clip gives the pieces of p in b, each with the length before it.
func (p Path) Clip(b Box) []Path {
	pts := p.Pts
	if len(pts) == 0 {
		return nil
	}
	lo, hi := pts.Bounds()
	if b.holds(Box{lo, hi}) {
		return []Path{p}
	}
	if p.Closed {
		pts = append(append(curve.Line{}, pts...), pts[0])
	}
	var out []Path
	piece := p
	piece.Closed, piece.Pts = false, nil
	flush := func() {
		if len(piece.Pts) > 1 {
			out = append(out, piece)
		}
		piece.Pts = nil
	}
	at := p.From
	for i := 1; i < len(pts); i++ {
		a, z := pts[i-1], pts[i]
		size := a.Dist(z)
		t0, t1, ok := curve.Clip(a, z, b.Lo, b.Hi)
		if ok && t1 > t0 {
			if t0 > 0 || piece.Pts == nil {
				flush()
				piece.From = at + t0*size
				piece.Pts = curve.Line{a.Add(z.Sub(a).Mul(t0))}
			}
			piece.Pts = append(piece.Pts, a.Add(z.Sub(a).Mul(t1)))
		}
		if !ok || t1 < 1 {
			flush()
		}
		at += size
	}
	flush()
	return out
}

// AboveFold cuts a closed outline along the fold and keeps y >= 0.
func AboveFold(l curve.Line) curve.Line {
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
