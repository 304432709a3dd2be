package raster

import (
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/curve"
)

// Light of sRGB values by the formula of IEC 61966-2-1 (from memory, as are the figures: 188 is about half of the light, 118 about
// 18 %, 10 is the last on the straight part).
func TestLinear(t *testing.T) {
	for _, c := range []struct {
		value uint8
		want  float64
	}{{0, 0}, {1, 0.000304}, {10, 0.003035}, {11, 0.003347}, {64, 0.051269}, {118, 0.181164}, {128, 0.215861}, {188, 0.502886}, {255, 1}} {
		p := &Picture{Width: 1, Height: 1, RGB: []uint8{c.value, c.value, c.value}}
		if got := float64(p.Light(0, 0)); math.Abs(got-c.want) > 2e-6 {
			t.Errorf("Light of %d is %v, want %v", c.value, got, c.want)
		}
	}
	for i := 1; i < 256; i++ {
		if linear[i] <= linear[i-1] {
			t.Errorf("%d gives no more light than %d", i, i-1)
		}
	}
}

// The shares of red, green and blue in luminance: ITU-R BT.709.
func TestLightOfColours(t *testing.T) {
	p := &Picture{Width: 3, Height: 1, RGB: []uint8{255, 0, 0, 0, 255, 0, 0, 0, 255}}
	for x, want := range []float64{0.2126, 0.7152, 0.0722} {
		if got := float64(p.Light(x, 0)); math.Abs(got-want) > 1e-6 {
			t.Errorf("Light of channel %d is %v, want %v", x, got, want)
		}
		for c, v := range p.Colour(x, 0) {
			if (v == 1) != (c == x) || v != 0 && v != 1 {
				t.Errorf("channel %d of dot %d is %v", c, x, v)
			}
		}
	}
}

func snow(w, h int, seed uint64) *Picture {
	r := rand.New(rand.NewPCG(seed, 9))
	p := &Picture{Width: w, Height: h, RGB: make([]uint8, 3*w*h)}
	for i := range p.RGB {
		p.RGB[i] = uint8(r.IntN(256))
	}
	return p
}

// tent is the sum of the dots about a place, each by how near it is: the same as on straight lines, worked over all dots.
func tent(w, h int, v curve.Vec, at func(x, y int) float64) float64 {
	sum := 0.0
	for y := range h {
		for x := range w {
			sum += at(x, y) * max(0, 1-math.Abs(v.X-float64(x))) * max(0, 1-math.Abs(v.Y-float64(y)))
		}
	}
	return sum
}

// Between dots the light goes on straight lines, in luminance and in each channel.
func TestBetweenDots(t *testing.T) {
	const w, h = 7, 5
	p := snow(w, h, 1)
	g := p.Reduced(1)
	r := rand.New(rand.NewPCG(2, 9))
	for range 300 {
		v := curve.Vec{X: (w - 1.01) * r.Float64(), Y: (h - 1.01) * r.Float64()}
		want := tent(w, h, v, func(x, y int) float64 { return float64(p.Light(x, y)) })
		if got := float64(p.At(v)); math.Abs(got-want) > 1e-5 {
			t.Fatalf("At(%v) = %v, want %v", v, got, want)
		}
		if got := float64(g.At(v)); math.Abs(got-want) > 1e-5 {
			t.Fatalf("At(%v) of the field is %v, want %v", v, got, want)
		}
		for c, got := range p.ColourAt(v) {
			if want := tent(w, h, v, func(x, y int) float64 { return float64(p.Colour(x, y)[c]) }); math.Abs(float64(got)-want) > 1e-5 {
				t.Fatalf("channel %d at %v is %v, want %v", c, v, got, want)
			}
		}
	}
}

// Outside the picture the light is that of the nearest place inside.
func TestOutside(t *testing.T) {
	const w, h = 6, 4
	p := snow(w, h, 3)
	g := p.Reduced(1)
	for _, c := range []struct{ out, in curve.Vec }{
		{curve.Vec{X: -3, Y: 2.2}, curve.Vec{Y: 2.2}},
		{curve.Vec{X: 99, Y: 1.5}, curve.Vec{X: w - 1, Y: 1.5}},
		{curve.Vec{X: 2.7, Y: -0.1}, curve.Vec{X: 2.7}},
		{curve.Vec{X: 2.7, Y: h + 3}, curve.Vec{X: 2.7, Y: h - 1}},
		{curve.Vec{X: math.Inf(1), Y: math.Inf(-1)}, curve.Vec{X: w - 1}},
	} {
		want := tent(w, h, c.in, func(x, y int) float64 { return float64(p.Light(x, y)) })
		if got := float64(p.At(c.out)); math.Abs(got-want) > 2e-3 {
			t.Errorf("At(%v) = %v, want %v as at %v", c.out, got, want, c.in)
		}
		if got := float64(g.At(c.out)); math.Abs(got-want) > 2e-3 {
			t.Errorf("the field at %v is %v, want %v as at %v", c.out, got, want, c.in)
		}
		green := tent(w, h, c.in, func(x, y int) float64 { return float64(p.Colour(x, y)[1]) })
		if got := float64(p.ColourAt(c.out)[1]); math.Abs(got-green) > 2e-3 {
			t.Errorf("the green at %v is %v, want %v", c.out, got, green)
		}
	}
}

// A place is in the picture if it has four dots round it; what is no number has none.
func TestHas(t *testing.T) {
	p := snow(6, 4, 3)
	for _, c := range []struct {
		x, y float64
		want bool
	}{
		{0, 0, true}, {4.99, 2.99, true}, {2, 1, true}, {5, 1, false}, {1, 3, false}, {-0.001, 1, false},
		{1, -0.001, false}, {math.NaN(), 1, false}, {1, math.NaN(), false}, {math.Inf(1), 1, false},
	} {
		if got := p.Has(curve.Vec{X: c.x, Y: c.y}); got != c.want {
			t.Errorf("Has(%v, %v) = %v", c.x, c.y, got)
		}
	}
}

// A reduced dot is the mean of its n by n, and what is over at the right and below is left out.
func TestReduced(t *testing.T) {
	p := snow(11, 8, 4)
	for n, size := range map[int][2]int{1: {11, 8}, 2: {5, 4}, 3: {3, 2}, 8: {1, 1}, 9: {1, 0}, 12: {0, 0}} {
		g := p.Reduced(n)
		if g.Width != size[0] || g.Height != size[1] {
			t.Fatalf("Reduced(%d) is %d × %d, want %v", n, g.Width, g.Height, size)
		}
		same(t, "Reduced", g, func(x, y int) float64 {
			sum := 0.0
			for k := range n * n {
				sum += float64(p.Light(x*n+k%n, y*n+k/n))
			}
			return sum / float64(n*n)
		}, 1e-5)
	}
}
