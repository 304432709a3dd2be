package raster

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"chape/calc/curve"
)

// flood labels the pieces one after another, each by filling it from its first dot.
func flood(set []bool, w int) []int32 {
	label, n := make([]int32, len(set)), int32(0)
	for i := range set {
		if !set[i] || label[i] != 0 {
			continue
		}
		n++
		label[i] = n
		for todo := []int{i}; len(todo) > 0; {
			k := todo[0]
			todo = todo[1:]
			for _, j := range []int{k - 1, k + 1, k - w, k + w} {
				if j >= 0 && j < len(set) && (j%w == k%w || j/w == k/w) && set[j] && label[j] == 0 {
					label[j] = n
					todo = append(todo, j)
				}
			}
		}
	}
	return label
}

func randomSet(w, h int, share float64, seed uint64) []bool {
	r := rand.New(rand.NewPCG(seed, 11))
	set := make([]bool, w*h)
	for i := range set {
		set[i] = r.Float64() < share
	}
	return set
}

// The two passes give the pieces that filling gives, in the order of their first dots, and every figure of a piece is
// that of its dots summed up.
func TestPiecesAgainstFilling(t *testing.T) {
	for seed := range uint64(40) {
		w, h := 1+int(seed), 23
		set := randomSet(w, h, 0.3+0.1*float64(seed%5), seed)
		label, pieces := Pieces(set, w)
		for i, want := range flood(set, w) {
			if label[i] != want {
				t.Fatalf("seed %d: dot %d has label %d, want %d", seed, i, label[i], want)
			}
		}
		for k, p := range pieces {
			want := summed(label, int32(k+1), w)
			if p.Area != want.Area || p.First != want.First || p.X0 != want.X0 || p.X1 != want.X1 || p.Y0 != want.Y0 || p.Y1 != want.Y1 ||
				p.Mid.Dist(want.Mid) > 1e-9 || math.Abs(p.XX-want.XX) > 1e-9 || math.Abs(p.XY-want.XY) > 1e-9 || math.Abs(p.YY-want.YY) > 1e-9 {
				t.Fatalf("seed %d: piece %d is\n%+v, want\n%+v", seed, k, p, want)
			}
		}
	}
}

// summed is a piece by its dots: first the middle, then the squares about it.
func summed(label []int32, l int32, w int) (p Piece) {
	p = Piece{First: -1, X0: math.MaxInt, Y0: math.MaxInt}
	each := func(f func(v curve.Vec, i int)) {
		for i, k := range label {
			if k == l {
				f(curve.Vec{X: float64(i % w), Y: float64(i / w)}, i)
			}
		}
	}
	each(func(v curve.Vec, i int) {
		if p.First < 0 {
			p.First = i
		}
		p.Area++
		p.Mid = p.Mid.Add(v)
		p.X0, p.X1, p.Y0, p.Y1 = min(p.X0, i%w), max(p.X1, i%w), min(p.Y0, i/w), max(p.Y1, i/w)
	})
	p.Mid = p.Mid.Mul(1 / float64(p.Area))
	each(func(v curve.Vec, _ int) {
		d := v.Sub(p.Mid).Mul(1 / math.Sqrt(float64(p.Area)))
		p.XX, p.XY, p.YY = p.XX+d.X*d.X, p.XY+d.X*d.Y, p.YY+d.Y*d.Y
	})
	return p
}

// Moments of a rectangle of dots: (n²-1)/12 along each side. A dot that touches by its corner is a piece of its own.
func TestPiecesByHand(t *testing.T) {
	const w = 20
	set := make([]bool, w*12)
	for y := 2; y < 6; y++ {
		for x := 3; x < 13; x++ {
			set[y*w+x] = true
		}
	}
	set[9*w+15], set[10*w+15], set[10*w+14], set[9*w+13] = true, true, true, true
	label, pieces := Pieces(set, w)
	if len(pieces) != 3 || label[0] != 0 {
		t.Fatalf("%d pieces, want 3", len(pieces))
	}
	p := pieces[0]
	if p.Area != 40 || p.Mid != (curve.Vec{X: 7.5, Y: 3.5}) || math.Abs(p.XX-99.0/12) > 1e-9 || math.Abs(p.YY-15.0/12) > 1e-9 || p.XY != 0 {
		t.Errorf("the rectangle is %+v", p)
	}
	if got := p.Size(); math.Abs(got-math.Sqrt(40)) > 1e-12 {
		t.Errorf("its size is %v, want the root of 40", got)
	}
	// the end of one row and the beginning of the next do not touch
	if _, pieces := Pieces([]bool{false, true, true, false}, 2); len(pieces) != 2 {
		t.Errorf("over the rim: %d pieces, want 2", len(pieces))
	}
	for _, set := range [][]bool{nil, make([]bool, 6)} {
		if label, pieces := Pieces(set, 3); len(pieces) != 0 || len(label) != len(set) {
			t.Errorf("nothing is set: %v, %v", label, pieces)
		}
	}
	if _, pieces := Pieces([]bool{true, true, true, true, true, true}, 3); len(pieces) != 1 || pieces[0].Area != 6 {
		t.Errorf("all is set: %+v", pieces)
	}
}

// A bar of n by m dots is n²/m² times as long as across, and one dot as long as across.
func TestAlongOfBars(t *testing.T) {
	for _, c := range []struct{ long, across int }{{1, 1}, {2, 1}, {9, 1}, {9, 3}, {10, 4}} {
		for _, upright := range []bool{false, true} {
			w, h := c.long, c.across
			if upright {
				w, h = h, w
			}
			set := make([]bool, w*h)
			for i := range set {
				set[i] = true
			}
			_, pieces := Pieces(set, w)
			way, slim := pieces[0].Along()
			if want := float64(c.long*c.long) / float64(c.across*c.across); math.Abs(slim-want) > 1e-6*want {
				t.Errorf("%d × %d is %v times as long, want %v", w, h, slim, want)
			}
			if along := math.Abs(way.X); c.long != c.across && (along > 0.5) == upright {
				t.Errorf("%d × %d runs along %v", w, h, way)
			}
		}
	}
}

// The direction and the ratio are those of the eigenvectors and eigenvalues that gonum finds for the moments.
func TestAlongAgainstEigen(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 11))
	for range 60 {
		turn, long := math.Pi*r.Float64(), 8+8*r.Float64()
		sin, cos := math.Sincos(turn)
		const w, h = 41, 41
		set := make([]bool, w*h)
		for i := range set {
			x, y := float64(i%w-20), float64(i/w-20)
			u, v := x*cos+y*sin, y*cos-x*sin
			set[i] = math.Abs(u) < long && math.Abs(v) < 2
		}
		_, pieces := Pieces(set, w)
		p := pieces[0]
		var e mat.EigenSym
		if !e.Factorize(mat.NewSymDense(2, []float64{p.XX, p.XY, p.XY, p.YY}), true) {
			t.Fatal("no eigenvalues")
		}
		values := e.Values(nil)
		var vectors mat.Dense
		e.VectorsTo(&vectors)
		way, slim := p.Along()
		if along := math.Abs(way.X*vectors.At(0, 1) + way.Y*vectors.At(1, 1)); along < 1-1e-9 {
			t.Errorf("turned by %v: along %v, %v off gonum's", turn, way, along)
		}
		if want := (values[1] + 1.0/12) / (values[0] + 1.0/12); math.Abs(slim-want) > 1e-6*want {
			t.Errorf("turned by %v: %v times as long, want %v", turn, slim, want)
		}
		if math.Abs(math.Abs(way.X*cos+way.Y*sin)-1) > 0.02 {
			t.Errorf("a bar turned by %v runs along %v", turn, way)
		}
	}
}
