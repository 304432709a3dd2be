package camera

import (
	"math"
	"math/rand/v2"
	"sync"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/frame"
	"chape/calc/trace/raster"
	"chape/calc/trace/sheettest"
)

var small = frame.Sheet{Width: 105, Height: 110, Version: 1}

// shotOf is a camera over the small sheet, any turn of it in the picture.
func shotOf(turn, tilt, bulge float64) sheettest.Shot {
	return sheettest.Shot{Width: 465, Height: 480, PerMM: 3, Turn: turn, Tilt: tilt, Bulge: bulge}.Of(sheettest.Sheet{Width: 105, Height: 110})
}

// placesOf are the squares and marks where the shot has them.
func placesOf(c sheettest.Shot, s frame.Sheet) (out []Seen) {
	for _, q := range s.Squares() {
		out = append(out, Seen{q.Mid(), c.Seen(q.Mid())})
	}
	for _, m := range s.Marks() {
		out = append(out, Seen{m, c.Seen(m)})
	}
	return out
}

// fitted is the camera fitted to what the shot sees.
func fitted(t *testing.T, c sheettest.Shot) *Camera {
	t.Helper()
	cam, err := Fit(placesOf(c, small), small, c.Width, c.Height, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	return cam
}

// farthest is how far, mm, a camera has places all over the sheet from where they are seen.
func farthest(cam *Camera, s frame.Sheet, seen func(curve.Vec) curve.Vec) float64 {
	worst := 0.0
	for x := 0.0; x <= s.Width; x += s.Width / 8 {
		for y := 0.0; y <= s.Height; y += s.Height / 8 {
			v := curve.Vec{X: x, Y: y}
			worst = max(worst, cam.Image(v).Dist(seen(v))/cam.Scale(v))
		}
	}
	return worst
}

// plainPicture is a picture of the small sheet, tilted and turned a little.
var plainShot = shotOf(0.05, 0.15, 0.02)

var plainPicture = sync.OnceValue(func() *raster.Picture { return plainShot.Take() })

func random(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 21)) }

func near(a, b, tolerance float64) bool { return math.Abs(a-b) <= tolerance }
