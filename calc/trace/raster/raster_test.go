package raster

import (
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/curve"
)

func random(w, h int, seed uint64) *Grey {
	r := rand.New(rand.NewPCG(seed, 1))
	g := NewGrey(w, h)
	for i := range g.V {
		g.V[i] = r.Float32()
	}
	return g
}

// The running sums give what adding up each square gives.
func TestMean(t *testing.T) {
	g := random(13, 9, 1)
	for _, r := range []int{1, 3, 20} {
		got := g.Mean(r)
		for i := range g.V {
			x, y := i%g.Width, i/g.Width
			sum, n := 0.0, 0.0
			for v := max(0, y-r); v <= min(g.Height-1, y+r); v++ {
				for u := max(0, x-r); u <= min(g.Width-1, x+r); u++ {
					sum, n = sum+float64(g.V[v*g.Width+u]), n+1
				}
			}
			if math.Abs(sum/n-float64(got.V[i])) > 1e-5 {
				t.Fatalf("Mean(%d) at %d,%d is %v, want %v", r, x, y, got.V[i], sum/n)
			}
		}
	}
}

// A closing fills a thin line, keeps an edge, and never takes light away.
func TestClosing(t *testing.T) {
	g := NewGrey(80, 60)
	for i := range g.V {
		x, y := i%80, i/80
		g.V[i] = 1
		if x+y/2 > 70 {
			g.V[i] = 0.5 // a slanting shadow
		}
	}
	clean := g.copy()
	for x := range 80 {
		g.V[20*80+x] *= 0.4
		g.V[21*80+x] *= 0.4
	}
	got := g.Closing(8)
	for i := range g.V {
		if got.V[i] < g.V[i] {
			t.Fatalf("dot %d: %v of %v", i, got.V[i], g.V[i])
		}
		x, y := i%80, i/80
		if edge := x + y/2 - 70; y > 12 && y < 48 && (edge < -1 || edge > 2) && math.Abs(float64(got.V[i]-clean.V[i])) > 1e-6 {
			t.Errorf("at %d,%d the background is %v, want %v", x, y, got.V[i], clean.V[i])
		}
	}
}

// Distances from a set, and from points between dots, are those of looking at every one.
func TestDistances(t *testing.T) {
	const w, h = 31, 22
	r := rand.New(rand.NewPCG(2, 2))
	set := make([]bool, w*h)
	var points curve.Line
	for range 9 {
		i := r.IntN(w * h)
		set[i] = true
		points = append(points, curve.Vec{X: float64(w-1) * r.Float64(), Y: float64(h-1) * r.Float64()})
	}
	got, near := FromSet(set, w, h), Nearest(points, w, h)
	for i := range set {
		v := curve.Vec{X: float64(i % w), Y: float64(i / w)}
		least, to := math.Inf(1), math.Inf(1)
		for j, on := range set {
			if on {
				least = min(least, v.Dist(curve.Vec{X: float64(j % w), Y: float64(j / w)}))
			}
		}
		for _, p := range points {
			to = min(to, v.Dist(p))
		}
		if math.Abs(float64(got.V[i])-least) > 1e-4 {
			t.Fatalf("FromSet at %v is %v, want %v", v, got.V[i], least)
		}
		if math.Abs(float64(near.V[i])-to) > 0.05 {
			t.Fatalf("Nearest at %v is %v, want %v", v, near.V[i], to)
		}
	}
}

// The level line of a cone is a circle: its area is πr².
func TestLevels(t *testing.T) {
	g := NewGrey(60, 50)
	mid := curve.Vec{X: 29.3, Y: 24.6}
	for i := range g.V {
		g.V[i] = float32(mid.Dist(curve.Vec{X: float64(i % 60), Y: float64(i / 60)}))
	}
	ls := g.Levels(17)
	if len(ls) != 1 {
		t.Fatalf("%d lines, want 1", len(ls))
	}
	if got, want := math.Abs(ls[0].Area()), math.Pi*17*17; math.Abs(got-want) > 0.005*want {
		t.Errorf("area %v, want %v", got, want)
	}
	for _, v := range ls[0] {
		if math.Abs(v.Dist(mid)-17) > 0.02 {
			t.Errorf("%v is %v from the middle, want 17", v, v.Dist(mid))
		}
	}
	if !(mid.X > 0 && countIn(ls[0], 60, 50) > 850) {
		t.Errorf("%d dots lie in the circle", countIn(ls[0], 60, 50))
	}
}

func countIn(l curve.Line, w, h int) (n int) {
	Fill(l, w, h, func(_, x0, x1 int) { n += x1 - x0 })
	return n
}

// Moments of a rectangle of dots, against their sums.
func TestPieces(t *testing.T) {
	const w = 20
	set := make([]bool, w*12)
	for y := 2; y < 6; y++ {
		for x := 3; x < 13; x++ {
			set[y*w+x] = true
		}
	}
	set[9*w+15], set[10*w+15], set[10*w+14], set[9*w+13] = true, true, true, true // a hook, and one dot by its corner
	label, pieces := Pieces(set, w)
	if len(pieces) != 3 || label[0] != 0 {
		t.Fatalf("%d pieces, want 3", len(pieces))
	}
	p := pieces[0]
	if p.Area != 40 || p.Mid != (curve.Vec{X: 7.5, Y: 3.5}) || math.Abs(p.XX-8.25) > 1e-9 || math.Abs(p.YY-1.25) > 1e-9 || p.XY != 0 || p.X1 != 12 {
		t.Errorf("the rectangle is %+v", p)
	}
	if way, slim := p.Along(); math.Abs(way.X) < 0.999 || slim < 6 {
		t.Errorf("it runs along %v, %v times", way, slim)
	}
}

// Water from the left reaches a basin through the lower of two straits, and two seeds meet at a ridge's lowest place.
func TestReachAndGrow(t *testing.T) {
	const w, h = 9, 5
	height := make([]uint8, w*h)
	for i := range height {
		height[i] = 50
		if i%w == 4 {
			height[i] = 0
		}
	}
	height[1*w+4], height[3*w+4] = 5, 9
	least, strait := Reach(height, w, h, []int32{0})
	if far := 2*w + 8; least[far] != 9 || strait[far] != 3*w+4 {
		t.Errorf("reached at %d through %d, want 9 through %d", least[far], strait[far], 3*w+4)
	}
	label := Grow(height, w, h, []int32{0}, []int32{8})
	if label[2*w] != 1 || label[2*w+8] != 2 || label[4] != 0 {
		t.Errorf("labels %v", label)
	}
}

// Light of the sRGB values, from IEC 61966-2-1: black, white, and 0.2140 for the middle value of half (0.5 written is 0.2140 of light;
// from memory).
func TestLight(t *testing.T) {
	p := &Picture{Width: 2, Height: 2, RGB: []uint8{0, 0, 0, 255, 255, 255, 128, 128, 128, 0, 255, 0}}
	for i, want := range []float64{0, 1, 0.2158, 0.7152} {
		if got := float64(p.Light(i%2, i/2)); math.Abs(got-want) > 1e-3 {
			t.Errorf("Light of dot %d is %v, want %v", i, got, want)
		}
	}
	if got := p.At(curve.Vec{X: 0.5}); math.Abs(float64(got)-0.5) > 1e-3 {
		t.Errorf("half-way between black and white is %v", got)
	}
}
