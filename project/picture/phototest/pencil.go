package phototest

import (
	"math"
	"math/rand/v2"
	"slices"

	"chape/calc/curve"
)

// Pencil is how somebody draws.
type Pencil struct {
	Width float64 // of the line, mm
	Dark  float64 // the share of light that it takes, 0 to 1
	Rand  *rand.Rand
}

// Trace draws round a closed outline (mm on the paper, from its upper left corner): the line lies
// hard against it. gaps are pieces left out, by length along the outline from its first point.
func (p *Paper) Trace(outline curve.Line, pen Pencil, gaps ...[2]float64) {
	inside := p.filled(outline)
	far := pen.Width + 0.5
	field := p.distances(append(append(curve.Line{}, outline...), outline[0]), far)
	skip := func(s float64) bool {
		for _, g := range gaps {
			if s > g[0] && s < g[1] {
				return true
			}
		}
		return false
	}
	press := pen.pressure(outline.Length() + 1)
	for i, d := range field {
		if inside[i] || skip(d.along) {
			continue
		}
		cover := (pen.Width/2-math.Abs(d.far-pen.Width/2))*p.PerMM + 0.5
		p.darken(i, min(max(cover, 0), 1)*press(d.along))
	}
}

// Stroke draws a line from a to b.
func (p *Paper) Stroke(a, b curve.Vec, pen Pencil) {
	press := pen.pressure(a.Dist(b) + 1)
	for i, d := range p.distances(curve.Line{a, b}, pen.Width+0.5) {
		cover := (pen.Width/2-d.far)*p.PerMM + 0.5
		p.darken(i, min(max(cover, 0), 1)*press(d.along))
	}
}

// Lay puts a flat piece of one colour on the paper.
func (p *Paper) Lay(outline curve.Line, rgb [3]uint8) {
	for i := range p.filled(outline) {
		copy(p.RGB[3*i:], rgb[:])
	}
}

func (p *Paper) darken(i int, by float64) {
	for c := range 3 {
		p.RGB[3*i+c] = uint8(float64(p.RGB[3*i+c])*(1-by) + 0.5)
	}
}

// pressure varies along a line by a tenth, about every 5 mm.
func (pen Pencil) pressure(long float64) func(float64) float64 {
	const every = 5
	knots := make([]float64, int(long/every)+3)
	for i := range knots {
		knots[i] = pen.Dark * (1 + 0.1*(2*pen.Rand.Float64()-1))
	}
	return func(s float64) float64 {
		k := min(int(s/every), len(knots)-2)
		f := min(s/every-float64(k), 1)
		return knots[k]*(1-f) + knots[k+1]*f
	}
}

type distance struct{ far, along float64 }

// distances gives for the dots near a polyline how far it is, and where along it.
func (p *Paper) distances(l curve.Line, most float64) map[int]distance {
	out := map[int]distance{}
	along := 0.0
	for k := 1; k < len(l); k++ {
		a, b := l[k-1], l[k]
		n := a.Dist(b)
		if n == 0 {
			continue
		}
		lo, hi := curve.Line{a, b}.Bounds()
		x0, x1 := p.dot(lo.X-most, p.W), p.dot(hi.X+most, p.W)
		y0, y1 := p.dot(lo.Y-most, p.H), p.dot(hi.Y+most, p.H)
		for y := y0; y <= y1; y++ {
			for x := x0; x <= x1; x++ {
				v := curve.Vec{X: (float64(x) + 0.5) / p.PerMM, Y: (float64(y) + 0.5) / p.PerMM}
				t := ((v.X-a.X)*(b.X-a.X) + (v.Y-a.Y)*(b.Y-a.Y)) / (n * n)
				t = min(max(t, 0), 1)
				d := v.Dist(a.Add(b.Sub(a).Mul(t)))
				i := y*p.W + x
				if old, ok := out[i]; d < most && (!ok || d < old.far) {
					out[i] = distance{d, along + t*n}
				}
			}
		}
		along += n
	}
	return out
}

func (p *Paper) dot(mm float64, n int) int { return min(max(int(mm*p.PerMM), 0), n-1) }

// filled are the dots inside a closed outline, by the crossings of each row.
func (p *Paper) filled(outline curve.Line) map[int]bool {
	out := map[int]bool{}
	lo, hi := outline.Bounds()
	for y := p.dot(lo.Y, p.H); y <= p.dot(hi.Y, p.H); y++ {
		v := (float64(y) + 0.5) / p.PerMM
		var at []float64
		for i, a := range outline {
			b := outline[(i+1)%len(outline)]
			if (a.Y > v) != (b.Y > v) {
				at = append(at, a.X+(b.X-a.X)*(v-a.Y)/(b.Y-a.Y))
			}
		}
		slices.Sort(at)
		for i := 0; i+1 < len(at); i += 2 {
			for x := int(math.Ceil(at[i]*p.PerMM - 0.5)); float64(x)+0.5 < at[i+1]*p.PerMM; x++ {
				out[y*p.W+x] = true
			}
		}
	}
	return out
}
