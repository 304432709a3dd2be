package find

import (
	"math"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/raster"
	"chape/calc/trace/sheettest"
)

// shotOf is a picture of a sheet of 105 × 110 mm that holds it at any turn.
func shotOf(turn, tilt float64) sheettest.Shot {
	return sheettest.Shot{Width: 460, Height: 460, PerMM: 2.3, Turn: turn, Tilt: tilt}.Of(sheettest.Sheet{Width: 105, Height: 110})
}

func look(c sheettest.Shot) *View { return Look(c.Take().Reduced(1)) }

// chosen are the four marks in a picture.
func chosen(t *testing.T, c sheettest.Shot) (*View, Corners) {
	t.Helper()
	v := look(c)
	q, err := Choose(v.Marks(), c.Width, c.Height)
	if err != nil {
		t.Fatal(err)
	}
	return v, q
}

// field is light by place, each dot the mean of three by three.
func field(w, h int, f func(v curve.Vec) float64) *raster.Grey {
	g := raster.NewGrey(w, h)
	for i := range g.V {
		for k := range 9 {
			v := curve.Vec{X: float64(i%w) + float64(k%3-1)/3, Y: float64(i/w) + float64(k/3-1)/3}
			g.V[i] += float32(f(v) / 9)
		}
	}
	return g
}

// shape is black where it is true: mm from the middle of a field of 30 × 30 mm.
type shape func(x, y float64) bool

// quad is a square of so many mm from its middle to its sides.
func quad(half float64) shape {
	return func(x, y float64) bool { return max(math.Abs(x), math.Abs(y)) < half }
}

func disc(r float64) shape { return func(x, y float64) bool { return math.Hypot(x, y) < r } }

// mark is a square with a ring of these radii round a disc, with a dot in it, all white.
func mark(half, out, in, dot float64) shape {
	return func(x, y float64) bool {
		r := math.Hypot(x, y)
		return quad(half)(x, y) && (r > out || r < in && r >= dot)
	}
}

// seenAs is a shape in a field, turned, narrowed in one direction, at so many dots a millimetre.
func seenAs(s shape, turn, narrow, perMM float64) *raster.Grey {
	sin, cos := math.Sincos(turn)
	n := int(30 * perMM)
	mid := float64(n-1) / 2
	return field(n, n, func(v curve.Vec) float64 {
		x, y := (v.X-mid)/perMM/narrow, (v.Y-mid)/perMM
		if s(x*cos+y*sin, y*cos-x*sin) {
			return 0.05
		}
		return 0.8
	})
}
