package axes

import (
	"math"
	"math/rand/v2"

	"github.com/peterstace/simplefeatures/geom"

	"chape/calc/curve"
)

// bladeLine is a knife along x with its back on u = 0: a belly, a step at 80, a handle to 170.
func bladeLine() curve.Line {
	l := curve.Line{}
	for x := 0.0; x <= 80; x += 0.5 {
		l = append(l, curve.Vec{X: x, Y: max(0, 6-x/5)})
	}
	l = append(l, curve.Vec{X: 80, Y: 2}, curve.Vec{X: 170, Y: 3}, curve.Vec{X: 170, Y: 26}, curve.Vec{X: 80, Y: 24})
	for x := 80.0; x > 0; x -= 0.5 {
		l = append(l, curve.Vec{X: x, Y: 28 - 22*math.Pow(1-x/80, 3)})
	}
	return l
}

func moved(l curve.Line, turn float64, by curve.Vec) curve.Line {
	out := make(curve.Line, len(l))
	sin, cos := math.Sincos(turn)
	for i, v := range l {
		out[i] = curve.Vec{X: v.X*cos - v.Y*sin, Y: v.X*sin + v.Y*cos}.Add(by)
	}
	return out
}

// mirrored is a line seen from behind, going round the same way as before.
func mirrored(l curve.Line) curve.Line {
	out := l.Reverse()
	for i, v := range out {
		out[i] = curve.Vec{X: v.X, Y: -v.Y}
	}
	return out
}

// drawn is a made-up knife by its own curves: back and edge over x, from the point to the butt, with a step where the blade ends.
type drawn struct {
	blade, long float64
	top, bottom func(x float64) float64
}

// randomKnife has a back that is straight but for its point, a belly, and a handle of another depth.
func randomKnife(seed uint64) drawn {
	r := rand.New(rand.NewPCG(seed, 41))
	in := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	d := drawn{blade: math.Round(in(70, 130))}
	d.long = d.blade + math.Round(in(95, 120))
	drop, share, deep, power := in(0, 8), in(0.25, 0.45), in(20, 35), in(2, 4)
	back, depth, wave := in(0.5, 3), deep-in(2, 5), in(0, 1.5)
	d.top = func(x float64) float64 {
		if x < d.blade {
			return drop * math.Pow(max(0, 1-x/(share*d.blade)), 2)
		}
		return back
	}
	d.bottom = func(x float64) float64 {
		if x < d.blade {
			return deep - (deep-drop)*math.Pow(1-x/d.blade, power)
		}
		return back + depth + wave*math.Sin((x-d.blade)/15)
	}
	return d
}

// line is the outline, every quarter of a millimetre, the step upright.
func (d drawn) line() (l curve.Line) {
	const fine = 0.25
	var back, edge curve.Line
	for x := 0.0; x <= d.long; x += fine {
		if x == d.blade {
			before := math.Nextafter(x, 0)
			back, edge = append(back, curve.Vec{X: x, Y: d.top(before)}), append(edge, curve.Vec{X: x, Y: d.bottom(before)})
		}
		back, edge = append(back, curve.Vec{X: x, Y: d.top(x)}), append(edge, curve.Vec{X: x, Y: d.bottom(x)})
	}
	return append(back, edge.Reverse()...)
}

func (d drawn) feet() curve.Line {
	return curve.Line{{X: d.blade - 0.2, Y: d.top(d.blade - 1)}, {X: d.blade + 0.2, Y: d.bottom(d.blade - 1)}}
}

// star is an outline round a middle that does not cross itself.
func star(r *rand.Rand, n int) (l curve.Line) {
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.8*r.Float64()) / float64(n))
		l = append(l, curve.Vec{X: 40 * cos, Y: 25 * sin}.Mul(0.4+0.6*r.Float64()))
	}
	return l
}

// polygon is an outline as simplefeatures has it.
func polygon(l curve.Line) geom.Geometry {
	var xy []float64
	for _, p := range append(append(curve.Line{}, l...), l[0]) {
		xy = append(xy, p.X, p.Y)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))}).AsGeometry()
}
