package nest

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"chape/calc/curve"
	"github.com/peterstace/simplefeatures/geom"
)

// slice gives the stretches forbidden at column k.
func (n *nofit) slice(k int) []stretch {
	if k -= n.first; k < 0 || k >= n.slices {
		return nil
	}
	b := n.block(k / blockWide)
	s := b.one[k%blockWide]
	if s == none {
		return nil
	}
	if b.more == nil {
		return []stretch{s}
	}
	return append([]stretch{s}, b.more[k%blockWide]...)
}

// Open stretches that meet at an end leave a place between them free; those that
// overlap, or lie in one another, become one.
func TestUnionByHand(t *testing.T) {
	for _, c := range []struct{ in, want []stretch }{
		{nil, nil},
		{[]stretch{{0, 1}, {1, 2}}, []stretch{{0, 1}, {1, 2}}},
		{[]stretch{{5, 7}, {0, 2}, {1, 3}}, []stretch{{0, 3}, {5, 7}}},
		{[]stretch{{0, 9}, {2, 3}, {8, 10}}, []stretch{{0, 10}}},
	} {
		if got := union(slices.Clone(c.in)); !slices.Equal(got, c.want) {
			t.Errorf("union(%v) = %v, want %v", c.in, got, c.want)
		}
	}
}

// By hand: a square of 4 against one of 10 may not be moved up by −4 to 10 while it
// stands over it, and by anything where it only touches its side.
func TestNoFitOfSquares(t *testing.T) {
	n := noFit(cells(Rect(10, 10)), cells(Rect(4, 4)), 2)
	for k := -4; k <= 7; k++ {
		var want []stretch
		if x := float64(2 * k); x > -4 && x < 10 {
			want = []stretch{{-4, 10}}
		}
		if got := n.slice(k); !slices.Equal(got, want) {
			t.Errorf("a square of 4 moved right by %d: forbidden %v, want %v", 2*k, got, want)
		}
	}
}

// By hand: a square of 4 goes into the slot of the U of 30 × 20, 10 wide and 5 above
// the ground, from above, but not past its walls.
func TestNoFitOfASlot(t *testing.T) {
	u := curve.Line{{}, {X: 30}, {X: 30, Y: 20}, {X: 20, Y: 20}, {X: 20, Y: 5}, {X: 10, Y: 5}, {X: 10, Y: 20}, {Y: 20}}
	n := noFit(cells(u), cells(Rect(4, 4)), 1)
	for k, want := range map[int][]stretch{
		10: {{-4, 5}}, 13: {{-4, 5}}, 16: {{-4, 5}}, 9: {{-4, 20}}, 17: {{-4, 20}}, -3: {{-4, 20}}, 29: {{-4, 20}}, 30: nil, -4: nil,
	} {
		if got := n.slice(k); !slices.Equal(got, want) {
			t.Errorf("moved right by %d: forbidden %v, want %v", k, got, want)
		}
	}
	// What is wider than the slot by a hair does not go in.
	wide := noFit(cells(u), cells(Rect(10.01, 4)), 1)
	if got := wide.slice(10); !slices.Equal(got, []stretch{{-4, 20}}) {
		t.Errorf("10.01 in a slot of 10: forbidden %v", got)
	}
}

// What the slices forbid is where the geometry library finds the two outlines one in
// the other, and what they allow is where it does not: random stars, random places.
func TestNoFitAgainstLibrary(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	const step = 3.0
	free, taken := 0, 0
	for n := range 20 {
		a, b := simpleStar(r, 4+n%7), simpleStar(r, 3+n%5)
		fit := noFit(cells(a), cells(b), step)
		for range 25 {
			k, y := r.IntN(90)-45, 240*r.Float64()-120
			bad := slices.ContainsFunc(fit.slice(k), func(s stretch) bool { return y > s.lo && y < s.hi })
			over, err := geom.Intersection(polygon(a), polygon(moved(b, curve.Vec{X: -step * float64(k), Y: -y})))
			if err != nil {
				t.Fatal(err)
			}
			switch {
			case bad && over.Area() == 0, !bad && over.Area() > 1e-6:
				t.Errorf("pair %d, moved by %v, %v: forbidden %v, they share %v mm²", n, step*float64(k), y, bad, over.Area())
			case bad:
				taken++
			default:
				free++
			}
		}
	}
	if free < 100 || taken < 100 {
		t.Errorf("%d places were free and %d taken: the test has no teeth", free, taken)
	}
}

// The ends of the forbidden stretches are where the two just touch: a hair further on
// they share nothing, a hair back they share something.
func TestNoFitTouches(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	for n := range 12 {
		a, b := simpleStar(r, 4+n%6), simpleStar(r, 4)
		fit := noFit(cells(a), cells(b), 5)
		for _, k := range []int{-4, 0, 5} {
			for _, s := range fit.slice(k) {
				share := func(y float64) float64 {
					over, err := geom.Intersection(polygon(a), polygon(moved(b, curve.Vec{X: -5 * float64(k), Y: -y})))
					if err != nil {
						t.Fatal(err)
					}
					return over.Area()
				}
				if got := share(s.hi + 1e-6); got > 1e-4 {
					t.Errorf("pair %d at %d: just above %v they share %v mm²", n, k, s, got)
				}
				if got := share(s.hi - 0.01); got <= 0 {
					t.Errorf("pair %d at %d: just inside %v they share nothing", n, k, s)
				}
			}
		}
	}
}

// Columns beyond both outlines forbid nothing, and are not kept.
func TestNoFitReach(t *testing.T) {
	a, b := cells(moved(Rect(10, 5), curve.Vec{X: -3})), cells(Rect(6, 5))
	lo, hi := reach(a)
	if lo != 3 || hi != 13 {
		t.Errorf("reach = %v to %v, want 3 to 13", lo, hi)
	}
	n := noFit(a, b, 1)
	if n.slice(-1000) != nil || n.slice(1000) != nil {
		t.Error("columns far off forbid something")
	}
	if n.slices > 17 || n.first < -3 {
		t.Errorf("%d columns from %d on are kept for a way of 16", n.slices, n.first)
	}
	if lo, hi := reach(nil); !math.IsInf(lo, 1) || !math.IsInf(hi, -1) {
		t.Errorf("nothing reaches from %v to %v", lo, hi)
	}
}
