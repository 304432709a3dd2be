package raster

import (
	"image"
	"math"
	"math/rand/v2"
	"testing"

	"golang.org/x/image/vector"

	"chape/calc/curve"
)

// filled counts how often each dot is filled.
func filledDots(t *testing.T, l curve.Line, w, h int) []int {
	t.Helper()
	out := make([]int, w*h)
	Fill(l, w, h, func(y, x0, x1 int) {
		if x0 >= x1 || x0 < 0 || x1 > w || y < 0 || y >= h {
			t.Fatalf("Fill gives %d to %d of row %d in %d × %d", x0, x1, y, w, h)
		}
		for x := x0; x < x1; x++ {
			out[y*w+x]++
		}
	})
	return out
}

func polygon(r *rand.Rand, n int, lo, hi float64) (l curve.Line) {
	for range n {
		l = append(l, curve.Vec{X: lo + (hi-lo)*r.Float64(), Y: lo + (hi-lo)*r.Float64()})
	}
	return l
}

// A dot is filled where a ray from its middle meets the line an odd number of times (the even-odd rule), for lines that cross
// themselves and reach past the rims too.
func TestFillAgainstRays(t *testing.T) {
	const w, h = 24, 17
	for seed := range uint64(20) {
		r := rand.New(rand.NewPCG(seed, 4))
		l := polygon(r, 3+int(seed)%6, -6, 28)
		got := filledDots(t, l, w, h)
		for i, n := range got {
			x, y, in := float64(i%w), float64(i/w), 0
			for k, a := range l {
				b := l[(k+1)%len(l)]
				if (a.Y > y) != (b.Y > y) && x < a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y) {
					in ^= 1
				}
			}
			if n != in {
				t.Fatalf("%v: dot %v,%v is filled %d times, want %d", l, x, y, n, in)
			}
		}
	}
}

// Against golang.org/x/image/vector: a dot that its coverage has wholly in the line is filled, one wholly outside is not.
func TestFillAgainstCoverage(t *testing.T) {
	const w, h = 40, 40
	for seed := range uint64(10) {
		r := rand.New(rand.NewPCG(seed, 5))
		mid, n := curve.Vec{X: 20, Y: 20}, 3+int(seed)
		var l curve.Line // a star that does not cross itself
		for k := range n {
			sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(n))
			l = append(l, mid.Add(curve.Vec{X: cos, Y: sin}.Mul(5+14*r.Float64())))
		}
		z := vector.NewRasterizer(w, h)
		for k, v := range l { // its dots lie from one whole number to the next
			if k == 0 {
				z.MoveTo(float32(v.X)+0.5, float32(v.Y)+0.5)
			} else {
				z.LineTo(float32(v.X)+0.5, float32(v.Y)+0.5)
			}
		}
		z.ClosePath()
		cover := image.NewAlpha(image.Rect(0, 0, w, h))
		z.Draw(cover, cover.Bounds(), image.Opaque, image.Point{})
		for i, got := range filledDots(t, l, w, h) {
			if c := cover.Pix[i]; c == 255 && got != 1 || c == 0 && got != 0 {
				t.Fatalf("seed %d: dot %d,%d is covered by %d of 255 and filled %d times", seed, i%w, i/w, c, got)
			}
		}
	}
}

// Shapes that lie side by side share their dots out: none is filled twice, none left, also where corners lie on dots.
func TestFillSharesOut(t *testing.T) {
	const w, h = 20, 14
	for _, mid := range []curve.Vec{{X: 9, Y: 6}, {X: 7.3, Y: 5.5}, {X: 1, Y: 12}, {X: 18.9, Y: 0.1}} {
		corners := curve.Line{{X: -1, Y: -1}, {X: 8, Y: -1}, {X: w, Y: -1}, {X: w, Y: 5}, {X: w, Y: h}, {X: 3.2, Y: h}, {X: -1, Y: h}}
		all := make([]int, w*h)
		for i, a := range corners {
			for k, n := range filledDots(t, curve.Line{a, corners[(i+1)%len(corners)], mid}, w, h) {
				all[k] += n
			}
		}
		for k, n := range all {
			if n != 1 {
				t.Fatalf("about %v: dot %d,%d is filled %d times", mid, k%w, k/w, n)
			}
		}
	}
}

// By hand: the dots with their middles in a box from 1.5 to 4.5 are 2, 3 and 4; from 2 to 4 they are 2 and 3; no line has none.
func TestFillByHand(t *testing.T) {
	box := func(lo, hi float64) curve.Line {
		return curve.Line{{X: lo, Y: lo}, {X: hi, Y: lo}, {X: hi, Y: hi}, {X: lo, Y: hi}}
	}
	for _, c := range []struct {
		l    curve.Line
		want int
	}{{box(1.5, 4.5), 9}, {box(2, 4), 4}, {box(-9, 99), 49}, {box(3.1, 3.9), 0}, {box(8, 12), 0}, {box(5.5, 6.5), 1}, {nil, 0}, {curve.Line{{X: 3, Y: 3}}, 0}} {
		n := 0
		for _, k := range filledDots(t, c.l, 7, 7) {
			n += k
		}
		if n != c.want {
			t.Errorf("Fill(%v) fills %d dots, want %d", c.l, n, c.want)
		}
	}
}
