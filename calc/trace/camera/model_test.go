package camera

import (
	"math"
	"testing"

	"chape/calc/curve"
)

// upright is a camera that sees a sheet of 200 × 200 mm square on, at 5 dots a millimetre, in a picture with its middle at (600, 800) and 1000
// dots from there to a corner.
func upright() *Camera {
	c := &Camera{mid: curve.Vec{X: 100, Y: 100}, size: 100, centre: curve.Vec{X: 600, Y: 800}, half: 1000}
	c.p[0], c.p[4] = 0.5, 0.5
	return c
}

// Brown's radial terms by hand: seen = c + (u − c)(1 + k1 r² + k2 r⁴), r in half diagonals from the centre of distortion.
func TestImageByHand(t *testing.T) {
	for _, c := range []struct {
		name   string
		set    func(p *[Params]float64)
		at     curve.Vec
		wx, wy float64
	}{
		{"the middle", func(p *[Params]float64) {}, curve.Vec{X: 100, Y: 100}, 600, 800},
		{"a corner", func(p *[Params]float64) {}, curve.Vec{X: 200, Y: 0}, 1100, 300},
		{"k1 at r = 0.5", func(p *[Params]float64) { p[8] = 0.1 }, curve.Vec{X: 200, Y: 100}, 600 + 500*1.025, 800},
		{"k2 at r = 0.5", func(p *[Params]float64) { p[9] = 0.16 }, curve.Vec{X: 100, Y: 0}, 600, 800 - 500*1.01},
		{"both at r² = 0.5", func(p *[Params]float64) { p[8], p[9] = 0.1, 0.2 }, curve.Vec{X: 200, Y: 200}, 600 + 500*1.1, 800 + 500*1.1},
		{"the centre does not move", func(p *[Params]float64) { p[8], p[10], p[11] = 0.3, 0.25, -0.1 }, curve.Vec{X: 150, Y: 80}, 850, 700},
		{"k1 about a centre beside", func(p *[Params]float64) { p[8], p[10], p[11] = 0.1, 0.1, -0.2 }, curve.Vec{X: 200, Y: 140},
			600 + 100 + 400*(1+0.1*(0.16+0.16)), 800 - 200 + 400*(1+0.1*(0.16+0.16))},
		{"shifted and sheared", func(p *[Params]float64) { p[1], p[2], p[3], p[5] = 0.1, 0.2, -0.3, 0.05 }, curve.Vec{X: 200, Y: 200}, 600 + 800, 800 + 250},
		{"in perspective", func(p *[Params]float64) { p[6], p[7] = 0.25, -0.5 }, curve.Vec{X: 200, Y: 100}, 600 + 500/1.25, 800},
		{"in perspective, the other way", func(p *[Params]float64) { p[6], p[7] = 0.25, -0.5 }, curve.Vec{X: 100, Y: 200}, 600, 800 + 500/0.5},
	} {
		cam := upright()
		c.set(&cam.p)
		if got := cam.Image(c.at); got.Dist(curve.Vec{X: c.wx, Y: c.wy}) > 1e-9 {
			t.Errorf("%s: Image(%v) = %v, want (%v, %v)", c.name, c.at, got, c.wx, c.wy)
		}
	}
}

// The scale is the root of how many times larger a small square is seen: by hand for a camera square on, and for one that sees the two ways
// differently.
func TestScale(t *testing.T) {
	c := upright()
	if got := c.Scale(curve.Vec{X: 30, Y: 70}); !near(got, 5, 1e-9) {
		t.Errorf("square on: %v dots a mm, want 5", got)
	}
	c.p[4] = 0.125
	if got := c.Scale(curve.Vec{X: 30, Y: 70}); !near(got, 2.5, 1e-9) {
		t.Errorf("a quarter as high: %v dots a mm, want 2.5", got)
	}
	c = upright()
	c.p = [Params]float64{0.4, -0.3, 0, 0.3, 0.4, 0} // turned, the root of 0.25 as before
	if got := c.Scale(curve.Vec{X: 10, Y: 20}); !near(got, 5, 1e-9) {
		t.Errorf("turned: %v dots a mm, want 5", got)
	}
	c = upright()
	c.p[8] = 0.2 // along the radius 1 + 3 k1 r², across it 1 + k1 r²: r = 0.4
	want := 5 * math.Sqrt((1+3*0.2*0.16)*(1+0.2*0.16))
	if got := c.Scale(curve.Vec{X: 180, Y: 100}); !near(got, want, 1e-4) {
		t.Errorf("through a lens: %v dots a mm, want %v", got, want)
	}
}

// In a picture with n by n dots for each, the middle of a dot's square lies n/2 dots from its corner: by hand, and for all places the
// same camera.
func TestLarger(t *testing.T) {
	c := upright()
	c.p[8], c.p[6], c.p[10] = 0.05, 0.1, 0.02
	for _, n := range []float64{1, 2, 3.5, 8} {
		big := c.Larger(n)
		for _, v := range []curve.Vec{{}, {X: 100, Y: 100}, {X: 200, Y: 10}, {X: -20, Y: 230}} {
			at := c.Image(v)
			want := curve.Vec{X: (at.X+0.5)*n - 0.5, Y: (at.Y+0.5)*n - 0.5}
			if got := big.Image(v); got.Dist(want) > 1e-9 {
				t.Errorf("Larger(%v).Image(%v) = %v, want %v", n, v, got, want)
			}
			if got, want := big.Scale(v), n*c.Scale(v); !near(got, want, 1e-9) {
				t.Errorf("Larger(%v).Scale(%v) = %v, want %v", n, v, got, want)
			}
		}
	}
	if got := upright().Larger(2).Image(curve.Vec{X: 100, Y: 100}); got != (curve.Vec{X: 1200.5, Y: 1600.5}) {
		t.Errorf("the middle of a picture twice as large is %v, want (1200.5, 1600.5)", got)
	}
	if c.half != 1000 {
		t.Error("Larger changes the camera that it is asked of")
	}
}
