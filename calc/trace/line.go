package trace

import (
	"context"
	"math"
	"slices"

	"chape/calc/curve"
	"chape/calc/trace/raster"
)

// Of a drawn line, mm.
const (
	mostGap    = 3.0 // that is bridged
	leastGap   = 0.5 // that is worth telling
	leastInner = 3.0 // half the width of what a closed line has to hold somewhere
	speck      = 0.4 // mm²; less is no line
	overFrame  = 15.0
	coarse     = 2 // dots of the true picture for one of the map of inside and outside
)

// drawn is a closed line on the sheet.
type drawn struct {
	outer    curve.Line // the line's edge on the outside, dots of the true picture
	field    *raster.Grey
	depth    *raster.Grey // distance from the outer edge, inwards; negative outside
	width    float64      // of the line, mm
	standoff float64      // from its middle to what was traced
	gaps     []float64    // that were bridged
	outline  curve.Line   // what was traced, mm
	level    float32
}

// landscape is the map of inside and outside: coarse dots.
type landscape struct {
	w, h   int
	cell   float64 // mm
	dark   []bool
	far    *raster.Grey // from the dark, in cells
	height []uint8      // the same for growing: tall to the cell
	seeds  []int32      // along the frame
}

const tall = 4 // heights a cell

// draw finds the outline of a drawn line.
func (t *truth) draw(ctx context.Context, soft float64, o Options) (*drawn, error) {
	t.even()
	k, ok := t.levels()
	if !ok {
		return nil, refuse("no drawn line is to be seen on the sheet: go round the knife again with a soft, sharp pencil")
	}
	m := t.landscape(k.half())
	if err := m.overFrame(t); err != nil {
		return nil, err
	}
	label, err := m.sides()
	if err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	d := &drawn{level: k.half()}
	meet := m.meeting(label)
	d.field = t.solid(label, m, meet, d.level)
	for _, g := range m.gaps(meet) {
		d.gaps = append(d.gaps, math.Round(g.width*10)/10)
		if a, b, ok := m.bridge(g); ok {
			t.rule(d.field, a, b, 2*d.level-1)
		}
	}
	if err := d.middle(t, k, soft, o); err != nil {
		return nil, err
	}
	return d, ctx.Err()
}

// landscape makes the map: a cell is dark if any of its dots is, and the piece is no speck.
func (t *truth) landscape(level float32) *landscape {
	m := &landscape{w: t.grey.Width / coarse, h: t.grey.Height / coarse, cell: t.dot * coarse}
	dark := make([]bool, m.w*m.h)
	for i := range dark {
		x, y := i%m.w*coarse, i/m.w*coarse
		for d := range coarse * coarse {
			dark[i] = dark[i] || t.grey.V[(y+d/coarse)*t.grey.Width+x+d%coarse] < level
		}
	}
	at, pieces := raster.Pieces(dark, m.w)
	for i, l := range at {
		dark[i] = l > 0 && float64(pieces[l-1].Area)*m.cell*m.cell >= speck
	}
	m.dark = dark
	m.far = raster.FromSet(dark, m.w, m.h)
	m.height = make([]uint8, len(dark))
	for i, d := range m.far.V {
		m.height[i] = uint8(min(d*tall, 255))
	}
	for i := range dark {
		if x, y := i%m.w, i/m.w; x == 0 || y == 0 || x == m.w-1 || y == m.h-1 {
			m.seeds = append(m.seeds, int32(i))
		}
	}
	return m
}

func (m *landscape) place(i int) curve.Vec {
	return curve.Vec{X: (float64(i%m.w) + 0.25) * m.cell, Y: (float64(i/m.w) + 0.25) * m.cell}
}

// overFrame refuses a drawing that runs into what is printed.
func (m *landscape) overFrame(t *truth) error {
	at, pieces := raster.Pieces(m.dark, m.w)
	for i, l := range at {
		if l == 0 {
			continue
		}
		p := pieces[l-1]
		if float64(max(p.X1-p.X0, p.Y1-p.Y0))*m.cell < overFrame {
			continue
		}
		for _, d := range []curve.Vec{{X: 1.5}, {X: -1.5}, {Y: 1.5}, {Y: -1.5}} {
			if !t.held(m.place(i).Add(d.Mul(m.cell))) {
				e := refuse("the drawing runs over the frame or its marks near %.0f mm across and %.0f along: trace it further inside, or print a larger sheet", m.place(i).X, m.place(i).Y)
				e.At, e.Placed = m.place(i), true
				return e
			}
		}
	}
	return nil
}

// Labels of the map's sides.
const (
	unknown = iota
	outside
	insideOf
)

// sides tells outside from inside: what the frame reaches, and what it reaches through no more than a
// gap that may be bridged; both grow until they meet.
func (m *landscape) sides() ([]uint8, error) {
	least, strait := raster.Reach(m.height, m.w, m.h, m.seeds)
	best, core := 0, -1
	for i, h := range m.height {
		if d := int(h) - int(least[i]); d > best {
			best, core = d, i
		}
	}
	if core < 0 || float64(best)/tall*m.cell < leastInner {
		e := refuse("the line on the sheet closes round nothing: draw it all the way round the knife")
		e.Seen = m.seen()
		return nil, e
	}
	if gap := 2 * float64(least[core]) / tall * m.cell; gap > mostGap {
		at := m.place(int(strait[core]))
		e := refuse("the line is open by %.1f mm at %.0f mm across and %.0f along: close it with the pencil (gaps up to %.0f mm are bridged)", gap, at.X, at.Y, mostGap)
		e.At, e.Placed, e.Seen = at, true, m.seen()
		return nil, e
	}
	label := raster.Grow(m.height, m.w, m.h, m.seeds, []int32{int32(core)})
	return label, m.single(label)
}

// single refuses two drawings.
func (m *landscape) single(label []uint8) error {
	body := make([]bool, len(label))
	for i, l := range label {
		body[i] = l != outside
	}
	at, pieces := raster.Pieces(body, m.w)
	light := make([]int, len(pieces))
	for i, l := range at {
		if l > 0 && m.far.V[i]*float32(m.cell) > 1 {
			light[l-1]++
		}
	}
	n := 0
	for _, cells := range light {
		if float64(cells)*m.cell*m.cell > 30 {
			n++
		}
	}
	if n > 1 {
		e := refuse("%d closed shapes are drawn on the sheet: trace one knife on a sheet", n)
		e.Seen = m.seen()
		return e
	}
	return nil
}

// seen are places on the line, to be shown.
func (m *landscape) seen() curve.Line {
	var out curve.Line
	for i, d := range m.dark {
		if d && i%m.w%5 == 0 && i/m.w%5 == 0 {
			out = append(out, m.place(i))
		}
	}
	return out
}

// meeting are the outside's cells beside the inside.
func (m *landscape) meeting(label []uint8) []bool {
	out := make([]bool, len(label))
	for i, l := range label {
		if x := i % m.w; l == outside {
			out[i] = x > 0 && label[i-1] == insideOf || x < m.w-1 && label[i+1] == insideOf ||
				i >= m.w && label[i-m.w] == insideOf || i+m.w < len(label) && label[i+m.w] == insideOf
		}
	}
	return out
}

// gaps are the gaps where outside and inside met.
func (m *landscape) gaps(meet []bool) []gap {
	joined := make([]bool, len(meet)) // by corners as well
	for i, on := range meet {
		if on {
			joined[i] = true
			if x := i % m.w; x > 0 {
				joined[i-1] = true
			}
		}
	}
	at, pieces := raster.Pieces(joined, m.w)
	most := make([]gap, len(pieces))
	for i, l := range at {
		if w := 2 * float64(m.far.V[i]) * m.cell; l > 0 && meet[i] && w > most[l-1].width {
			most[l-1] = gap{w, m.place(i)}
		}
	}
	return slices.DeleteFunc(most, func(g gap) bool { return g.width < leastGap })
}

// gap is an opening of the line, mm, and its middle.
type gap struct {
	width float64
	mid   curve.Vec
}

// bridge is a straight piece of line over a gap: from the middle of the line that comes up to it on one side to that on the other,
// taken a little back from its ends, which fade. ok is false where the two do not lie across from each other.
func (m *landscape) bridge(g gap) (a, b curve.Vec, ok bool) {
	from, to := g.width/2+0.6, g.width/2+1.6
	var first curve.Vec
	var sum [2]curve.Vec
	var n [2]float64
	for i, dark := range m.dark {
		v := m.place(i).Sub(g.mid)
		if d := v.Norm(); !dark || d < from || d > to {
			continue
		}
		if first == (curve.Vec{}) {
			first = v
		}
		k := 0
		if v.X*first.X+v.Y*first.Y < 0 {
			k = 1
		}
		sum[k], n[k] = sum[k].Add(v), n[k]+1
	}
	if n[0] == 0 || n[1] == 0 {
		return a, b, false
	}
	a, b = sum[0].Mul(1/n[0]), sum[1].Mul(1/n[1])
	across := (a.X*b.X + a.Y*b.Y) / max(a.Norm()*b.Norm(), 1e-9)
	return g.mid.Add(a), g.mid.Add(b), across < -0.8
}

// solid is the even light with the inside, and bridges over the gaps, as dark as can be, so that only the line's
// outer edge is left.
func (t *truth) solid(label []uint8, m *landscape, meet []bool, level float32) *raster.Grey {
	out := &raster.Grey{Width: t.grey.Width, Height: t.grey.Height, V: append([]float32(nil), t.grey.V...)}
	dark := 2*level - 1 // as far below the level as paper is above
	for i := range out.V {
		x, y := i%out.Width/coarse, i/out.Width/coarse
		if x >= m.w || y >= m.h {
			continue
		}
		if c := y*m.w + x; label[c] == insideOf || label[c] == unknown && !m.dark[c] {
			out.V[i] = min(out.V[i], dark)
		}
	}
	const bridge = 0.2 // half the width of a bridge, mm
	r := int(bridge / t.dot)
	for i, on := range meet {
		if !on {
			continue
		}
		for y := i/m.w*coarse - r; y <= i/m.w*coarse+r+1; y++ {
			for x := i%m.w*coarse - r; x <= i%m.w*coarse+r+1; x++ {
				if x >= 0 && y >= 0 && x < out.Width && y < out.Height {
					out.V[y*out.Width+x] = dark
				}
			}
		}
	}
	return out
}

// rule draws a straight line of a pencil's usual width from a to b, mm.
func (t *truth) rule(g *raster.Grey, a, b curve.Vec, dark float32) {
	const half = 0.26
	long := max(a.Dist(b), 1e-9)
	way := b.Sub(a).Mul(1 / long)
	lo, hi := curve.Line{a, b}.Bounds()
	for y := max(0, int((lo.Y-half)/t.dot)); y <= min(g.Height-1, int((hi.Y+half)/t.dot)); y++ {
		for x := max(0, int((lo.X-half)/t.dot)); x <= min(g.Width-1, int((hi.X+half)/t.dot)); x++ {
			v := t.place(curve.Vec{X: float64(x), Y: float64(y)}).Sub(a)
			along, off := v.X*way.X+v.Y*way.Y, math.Abs(v.X*way.Y-v.Y*way.X)
			if along >= 0 && along <= long && off <= half {
				g.V[y*g.Width+x] = min(g.V[y*g.Width+x], dark)
			}
		}
	}
}
