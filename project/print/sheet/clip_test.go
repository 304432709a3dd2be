package sheet

import (
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/curve"
)

// wander is a line through random places in 100 by 100 mm.
func wander(r *rand.Rand, n int) curve.Line {
	var l curve.Line
	for range n {
		l = append(l, curve.Vec{X: 100 * r.Float64(), Y: 100 * r.Float64()})
	}
	return l
}

// around is the length of a path, with its closing side.
func around(p Path) float64 {
	if p.Closed {
		return p.Pts.Length() + p.Pts[0].Dist(p.Pts[len(p.Pts)-1])
	}
	return p.Pts.Length()
}

// Cut along the squares of a board no part of a line is lost and none is there twice, all
// pieces lie in their square, and each knows how much of the line lies before it.
func TestClipLosesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for n := range 60 {
		p := Path{Layer: CutLayer, Stroke: Dashed, Name: "cut", Pts: wander(r, 2+n%9), Closed: n%2 == 0, From: 3}
		sum := 0.0
		for i := range 16 {
			b := Box{Lo: curve.Vec{X: 25 * float64(i%4), Y: 25 * float64(i/4)}}
			b.Hi = b.Lo.Add(curve.Vec{X: 25, Y: 25})
			for _, q := range p.Clip(b) {
				sum += around(q)
				if q.Layer != p.Layer || q.Name != p.Name || q.Stroke.Width != p.Stroke.Width || len(q.Pts) < 2 {
					t.Fatalf("a piece is %+v", q)
				}
				for _, v := range q.Pts {
					if g := b.Grow(1e-9); !g.has(v) {
						t.Fatalf("%v lies outside of %v", v, b)
					}
				}
				if at := place(p, q.From-p.From); at.Dist(q.Pts[0]) > 1e-6 {
					t.Fatalf("a piece that begins at %v says %v, which is at %v", q.Pts[0], q.From, at)
				}
			}
		}
		if math.Abs(sum-around(p)) > 1e-6 {
			t.Fatalf("of %.6f mm %.6f are on the squares", around(p), sum)
		}
	}
}

// place is the point of a path at a length from its start.
func place(p Path, at float64) curve.Vec {
	l := p.Pts
	if p.Closed {
		l = append(append(curve.Line{}, l...), l[0])
	}
	return along(l, at)
}

// A path that lies in the box is left as it is, closed if it was; of one that lies outside
// there is nothing.
func TestClipWholeOrNothing(t *testing.T) {
	p := Path{Closed: true, Pts: Box{Hi: curve.Vec{X: 10, Y: 10}}.Corners()}
	if got := p.Clip(Box{Lo: curve.Vec{X: -1, Y: -1}, Hi: curve.Vec{X: 11, Y: 11}}); len(got) != 1 || !got[0].Closed || len(got[0].Pts) != 4 {
		t.Errorf("inside: %+v", got)
	}
	if got := p.Clip(Box{Lo: curve.Vec{X: 20}, Hi: curve.Vec{X: 30, Y: 10}}); got != nil {
		t.Errorf("outside: %+v", got)
	}
	if got := p.Clip(Box{Lo: curve.Vec{X: 2, Y: 2}, Hi: curve.Vec{X: 8, Y: 8}}); got != nil {
		t.Errorf("all round: %+v", got)
	}
	if got := (Path{}).Clip(Box{Hi: curve.Vec{X: 1, Y: 1}}); got != nil {
		t.Errorf("of nothing: %+v", got)
	}
}

// Holes are whole on a sheet or not there: what sticks out of it is whole on its neighbour,
// for they share 10 mm. One larger than that is cut.
func TestClipKeepsCirclesWhole(t *testing.T) {
	b := Box{Hi: curve.Vec{X: 100, Y: 100}}
	for _, c := range []struct {
		at     curve.Vec
		radius float64
		whole  bool
		pieces int
	}{{curve.Vec{X: 50, Y: 50}, 2, true, 0}, {curve.Vec{X: 98, Y: 50}, 2, true, 0}, {curve.Vec{X: 99, Y: 50}, 2, false, 0}, {curve.Vec{X: 103, Y: 50}, 2, false, 0},
		{curve.Vec{X: 99, Y: 50}, 8, false, 1}, {curve.Vec{X: 120, Y: 50}, 8, false, 0}, {curve.Vec{X: 50, Y: 50}, 70, false, 4}} {
		var d Drawing
		d.Circle(Circle{Layer: ReliefLayer, Stroke: Wide, At: c.at, Radius: c.radius})
		got := d.Clip(b)
		if (len(got.Circles) == 1) != c.whole || len(got.Paths) < c.pieces || c.pieces == 0 && len(got.Paths) > 0 {
			t.Errorf("a circle of %v at %v: %d whole, %d pieces", c.radius, c.at, len(got.Circles), len(got.Paths))
		}
		for _, p := range got.Paths {
			for i, v := range p.Pts {
				if off := v.Dist(c.at) - c.radius; off > 1e-9 || off < -0.05 && i > 0 && i < len(p.Pts)-1 {
					t.Errorf("a piece of a circle of %v is %.3f off it", c.radius, off)
				}
			}
		}
	}
}

// Words are whole or not there. Those too large for an overlap move in where their place is on
// the sheet; small ones are whole on the neighbour.
func TestClipKeepsWordsWhole(t *testing.T) {
	b := Box{Hi: curve.Vec{X: 100, Y: 100}}
	for _, c := range []struct {
		name string
		w    Text
		want int
		same bool
	}{
		{"inside", Text{Layer: WordLayer, At: curve.Vec{X: 10, Y: 50}, Says: "stitch line"}, 1, true},
		{"long, sticking out", Text{Layer: WordLayer, At: curve.Vec{X: 95, Y: 50}, Says: "mouth: don't cut here"}, 1, false},
		{"long, its place next door", Text{Layer: WordLayer, At: curve.Vec{X: 105, Y: 50}, Says: "mouth: don't cut here", Anchor: End}, 0, false},
		{"a number, sticking out", Text{Layer: WordLayer, At: curve.Vec{X: 98, Y: 50}, Says: "47"}, 0, false},
		{"of a joint, sticking out", Text{Layer: RegisterLayer, At: curve.Vec{X: 95, Y: 50}, Says: "a long name of a joint"}, 0, false},
		{"upright, sticking out above", Text{Layer: WordLayer, At: curve.Vec{X: 50, Y: 5}, Says: "glue line: welt to here", Angle: math.Pi / 2}, 1, false},
	} {
		c.w.Size = WordSize
		d := Drawing{Texts: []Text{c.w}}
		got := d.Clip(b).Texts
		if len(got) != c.want {
			t.Errorf("%s: %d are left, want %d", c.name, len(got), c.want)
			continue
		}
		if c.want == 1 && (!b.Grow(1e-9).holds(got[0].Box()) || (got[0].At == c.w.At) != c.same) {
			t.Errorf("%s: stands at %v, from %v", c.name, got[0].Box(), c.w.At)
		}
	}
}

// The half above the fold of an outline that is the same on both sides has half its area,
// whether or not a corner lies on the fold, and nothing of it lies below.
func TestAboveFold(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	for n := range 50 {
		var up curve.Line
		for i := range 12 {
			up = append(up, curve.Vec{X: float64(10 * i), Y: 5 + 20*r.Float64()})
		}
		if n%2 == 0 { // ends on the fold
			up[0].Y, up[len(up)-1].Y = 0, 0
		}
		whole := append(curve.Line{}, up...)
		for i := len(up) - 1; i >= 0; i-- {
			if up[i].Y > 0 {
				whole = append(whole, curve.Vec{X: up[i].X, Y: -up[i].Y})
			}
		}
		half := AboveFold(whole)
		if got, want := math.Abs(half.Area()), math.Abs(whole.Area())/2; math.Abs(got-want) > 1e-6 {
			t.Fatalf("half of %v has %.3f mm², want %.3f", whole, got, want)
		}
		for _, v := range half {
			if v.Y < 0 {
				t.Fatalf("%v lies below the fold", v)
			}
		}
	}
}

// Where a slanting side crosses the fold, by hand: from (10, 6) to (4, −3) it is two thirds of
// the way, at 6; from there to (0, 6) a third, at 2 2/3.
func TestAboveFoldCrossing(t *testing.T) {
	got := AboveFold(curve.Line{{X: 0, Y: 6}, {X: 10, Y: 6}, {X: 4, Y: -3}})
	want := curve.Line{{X: 0, Y: 6}, {X: 10, Y: 6}, {X: 6}, {X: 8.0 / 3}}
	for i := range want {
		if len(got) != len(want) || got[i].Dist(want[i]) > 1e-9 {
			t.Fatalf("%v, want %v", got, want)
		}
	}
}

// A place is inside a ring or outside, also beside a notch (counted by hand).
func TestInside(t *testing.T) {
	notched := curve.Line{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 10}, {X: 5, Y: 4}, {X: 0, Y: 10}}
	for v, want := range map[curve.Vec]bool{{X: 5, Y: 2}: true, {X: 5, Y: 6}: false, {X: 1, Y: 7}: true, {X: 9.5, Y: 8}: true, {X: 11, Y: 5}: false, {X: -1, Y: 0.5}: false, {X: 5, Y: 11}: false} {
		if got := inside(v, notched); got != want {
			t.Errorf("%v is inside: %v", v, got)
		}
	}
}
