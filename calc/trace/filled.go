package trace

import (
	"context"
	"math"
	"slices"

	"chape/calc/curve"
	"chape/calc/trace/raster"
)

// Of a piece that is laid on the sheet. The shares are of the light that paper would throw back there.
const (
	leastPiece = 400.0 // mm²
	another    = 0.2   // of the largest piece's area: a second one
	tinted     = 0.80  // least channel over greatest: below, it has a colour; a shadow has none
	black      = 0.35  // below in all channels, it is darker than any shadow
	grey       = 0.80  // below in all channels, it is a piece, if no shadow falls on the frame
	noShadow   = 0.42  // below, of what lies beside it, no shadow is: one of 2 : 1 leaves half
	shadowEdge = 1.25  // from one place of the frame to the next: a shadow's edge
)

// piece is the inside of the frame in three channels.
type pieceField struct {
	*truth
	rgb    [3]*raster.Grey
	shaded bool   // a shadow's edge crosses the frame
	tint   []bool // dots that have a colour
}

// filled finds the outline of the largest piece that differs from the paper.
func filled(ctx context.Context, p *Picture, s seen) (curve.Line, error) {
	f := &pieceField{truth: newTruth(s.sheet)}
	w, h := f.grey.Width, f.grey.Height
	for c := range f.rgb {
		f.rgb[c] = raster.NewGrey(w, h)
	}
	err := f.rows(ctx, func(y int) {
		for x := range w {
			v := p.ColourAt(s.camera.Image(f.place(curve.Vec{X: float64(x), Y: float64(y)})))
			for c := range v {
				f.rgb[c].V[y*w+x] = v[c]
			}
		}
	})
	if err != nil {
		return nil, err
	}
	for c := range f.rgb {
		f.rgb[c] = f.rgb[c].Mean(1)
	}
	rough, err := f.largest(f.differs())
	if err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return rightWay(evenly(f.sharpen(rough), between)), nil
}

// paper is the light that paper throws back, from that along the frame: between opposite sides on straight lines, for
// each channel (a patch after Coons, 'Surfaces for computer-aided design of space forms', 1967).
func (f *pieceField) paper() func(x, y float64) [3]float32 {
	const every = 5.0
	side := func(long float64, at func(s, in float64) curve.Vec) [][3]float32 {
		n := int(long/every) + 1
		out := make([][3]float32, n)
		for i := range out {
			for c := range 3 {
				var vs []float32
				for s := -2.0; s <= 2; s += 0.4 {
					for in := clear + 0.5; in < clear+3; in += 0.4 {
						v := at(min(max(float64(i)*every+s, 0), long), in)
						if f.held(v) {
							vs = append(vs, f.rgb[c].At(v.Mul(1/f.dot)))
						}
					}
				}
				if len(vs) > 0 {
					slices.Sort(vs)
					out[i][c] = vs[len(vs)*3/4]
				}
			}
		}
		f.shaded = f.shaded || bridged(out)
		return out
	}
	w, h := f.Width, f.Height
	top := side(w, func(s, in float64) curve.Vec { return curve.Vec{X: s, Y: in + 7.5} }) // below the code row
	bottom := side(w, func(s, in float64) curve.Vec { return curve.Vec{X: s, Y: h - in} })
	left := side(h, func(s, in float64) curve.Vec { return curve.Vec{X: in, Y: s} })
	right := side(h, func(s, in float64) curve.Vec { return curve.Vec{X: w - in, Y: s} })
	at := func(l [][3]float32, s float64, c int) float32 {
		k := min(max(s/every, 0), float64(len(l)-1)-1e-6)
		i := int(k)
		g := float32(k - float64(i))
		return l[i][c]*(1-g) + l[i+1][c]*g
	}
	return func(x, y float64) (out [3]float32) {
		u, v := float32(x/w), float32(y/h)
		for c := range out {
			ruled := at(top, x, c)*(1-v) + at(bottom, x, c)*v + at(left, y, c)*(1-u) + at(right, y, c)*u
			corners := (at(top, 0, c)*(1-u)+at(top, w, c)*u)*(1-v) + (at(bottom, 0, c)*(1-u)+at(bottom, w, c)*u)*v
			out[c] = max(ruled-corners, 0.01)
		}
		return out
	}
}

// bridged fills the places of a side where something is printed from the nearest ones, and tells whether a
// shadow's edge crosses the side.
func bridged(l [][3]float32) (shaded bool) {
	for i := range l {
		for d := 0; d < len(l) && l[i][0] == 0; d++ {
			for _, j := range []int{i - d, i + d} {
				if j >= 0 && j < len(l) && l[j][0] != 0 {
					l[i] = l[j]
				}
			}
		}
	}
	for i := 2; i < len(l); i++ {
		a, b := l[i-2][1], l[i][1]
		shaded = shaded || max(a, b) > shadowEdge*min(a, b)
	}
	return shaded
}

// differs marks the dots that are not paper. A shadow takes as much of every channel, so what has lost more of one than
// of another is a piece, and so is what is darker than a shadow.
func (f *pieceField) differs() []bool {
	paper := f.paper()
	w := f.grey.Width
	soft := [3]*raster.Grey{f.rgb[0].Mean(3), f.rgb[1].Mean(3), f.rgb[2].Mean(3)}
	out := make([]bool, len(f.grey.V))
	f.tint = make([]bool, len(out))
	for i := range out {
		v := f.place(curve.Vec{X: float64(i % w), Y: float64(i / w)})
		if !f.held(v) {
			continue
		}
		p := paper(v.X, v.Y)
		lo, hi := float32(math.Inf(1)), float32(0)
		for c := range p {
			r := soft[c].V[i] / p[c]
			lo, hi = min(lo, r), max(hi, r)
		}
		f.tint[i] = lo < tinted*hi
		out[i] = f.tint[i] || hi < black || !f.shaded && hi < grey
	}
	return out
}

// largest is the outline of the largest piece, dots, and refuses what is no single clear one.
func (f *pieceField) largest(set []bool) (curve.Line, error) {
	label, pieces := raster.Pieces(set, f.grey.Width)
	best, second := -1, 0
	for k, p := range pieces {
		switch {
		case best < 0 || p.Area > pieces[best].Area:
			if best >= 0 {
				second = max(second, pieces[best].Area)
			}
			best = k
		default:
			second = max(second, p.Area)
		}
	}
	if best < 0 || float64(pieces[best].Area)*f.dot*f.dot < leastPiece {
		return nil, refuse("nothing on the sheet differs clearly from the paper: lay the piece inside the frame; a white or a pale grey one needs a thin coat of chalk or colour at its edge, or a sheet printed on tinted paper")
	}
	p := pieces[best]
	if float64(second) > another*float64(p.Area) {
		return nil, refuse("two pieces lie on the sheet: lay one on it at a time")
	}
	g := raster.NewGrey(f.grey.Width, f.grey.Height)
	plain := 0 // dots without a colour
	for i, l := range label {
		if l != int32(best+1) {
			continue
		}
		g.V[i] = 1
		if !f.tint[i] {
			plain++
		}
		v := f.place(curve.Vec{X: float64(i % g.Width), Y: float64(i / g.Width)})
		for _, d := range []curve.Vec{{X: 2 * f.dot}, {X: -2 * f.dot}, {Y: 2 * f.dot}, {Y: -2 * f.dot}} {
			if !f.held(v.Add(d)) {
				e := refuse("the piece lies over the frame or its marks near %.0f mm across and %.0f along: lay it further inside, or print a larger sheet", v.X, v.Y)
				e.At, e.Placed = v, true
				return nil, e
			}
		}
	}
	rough := largest(g.Mean(2).Levels(0.5))
	if f.shaded && 10*plain > p.Area && !f.darkEdge(rough) {
		return nil, refuse("a shadow lies on the sheet, and the edge of a grey piece can't be told from the shadow's: photograph it in even light")
	}
	return rough, nil
}

// darkEdge tells whether a piece is, all along its outline, as much darker than what lies beside it as no shadow is: of a grey
// piece in a shadow only the shaded part would be taken, and its outline would run along the shadow's edge.
func (f *pieceField) darkEdge(l curve.Line) bool {
	if l.Area() < 0 {
		l = l.Reverse()
	}
	const span = 6
	weak, all := 0, 0
	for i := 0; i < len(l); i += span {
		d := l[(i+span)%len(l)].Sub(l[(i+len(l)-span)%len(l)])
		out := curve.Vec{X: d.Y, Y: -d.X}.Mul(1 / (f.dot * max(d.Norm(), 1e-9))) // 1 mm
		if f.rgb[1].At(l[i].Sub(out)) > noShadow*f.rgb[1].At(l[i].Add(out)) {
			weak++
		}
		all++
	}
	return 10*weak < all
}

// sharpen moves a rough outline to where the light passes half-way from the piece to the paper, in the channel that tells
// them apart most, each point along its normal; mm.
func (f *pieceField) sharpen(l curve.Line) curve.Line {
	if l.Area() < 0 {
		l = l.Reverse()
	}
	off := make([]float64, len(l))
	normals := make(curve.Line, len(l))
	const span = 6
	for i := range l {
		d := l[(i+span)%len(l)].Sub(l[(i+len(l)-span)%len(l)])
		normals[i] = curve.Vec{X: d.Y, Y: -d.X}.Mul(1 / max(d.Norm(), 1e-9))
		off[i] = f.halfway(l[i], normals[i])
	}
	out := make(curve.Line, len(l))
	var near [9]float64
	for i := range l {
		for k := range near {
			near[k] = off[(i+k-len(near)/2+len(l))%len(l)]
		}
		slices.Sort(near[:])
		out[i] = f.place(l[i].Add(normals[i].Mul(near[len(near)/2])))
	}
	return out
}

// halfway is how far along the normal, dots, the edge lies.
func (f *pieceField) halfway(v, n curve.Vec) float64 {
	reach := 1.2 / f.dot
	const steps = 24
	var light [3][steps + 1]float64
	best, most := 0, 0.0
	for c := range light {
		for k := range light[c] {
			light[c][k] = float64(f.rgb[c].At(v.Add(n.Mul(reach * (2*float64(k)/steps - 1)))))
		}
		in, out := ends(light[c][:])
		if d := math.Abs(in-out) / max(in, out, 0.01); d > most {
			best, most = c, d
		}
	}
	p := light[best][:]
	in, out := ends(p)
	level := (in + out) / 2
	at, least := 0.0, math.Inf(1)
	for k := 1; k <= steps; k++ {
		if a, b := p[k-1]-level, p[k]-level; a != b && (a <= 0) != (b <= 0) {
			x := (float64(k-1)+a/(a-b))*2/steps - 1
			if math.Abs(x) < least {
				at, least = x, math.Abs(x)
			}
		}
	}
	return at * reach
}

// ends are the means of a profile's outer quarters.
func ends(p []float64) (in, out float64) {
	n := len(p) / 5
	for k := range n {
		in += p[k] / float64(n)
		out += p[len(p)-1-k] / float64(n)
	}
	return in, out
}
