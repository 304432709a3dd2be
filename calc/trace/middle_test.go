package trace

import (
	"math"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/raster"
)

// ring is a closed line round a middle, counter-clockwise by its area.
func ring(mid curve.Vec, r float64, n int) (l curve.Line) {
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		l = append(l, mid.Add(curve.Vec{X: cos, Y: sin}.Mul(r)))
	}
	return l
}

// The line that encloses most is taken, whichever way it runs.
func TestLargest(t *testing.T) {
	a, b := ring(curve.Vec{X: 10, Y: 10}, 5, 30), ring(curve.Vec{X: 40, Y: 10}, 6, 30).Reverse()
	for _, ls := range [][]curve.Line{{a, b}, {b, a}} {
		if got := largest(ls); math.Abs(got.Area()-b.Area()) > 1e-9 {
			t.Errorf("an area of %v is taken, want %v", got.Area(), b.Area())
		}
	}
	if got := largest(nil); got != nil {
		t.Errorf("of none: %v", got)
	}
}

// The distance inwards is that to the circle, positive inside; what lies further out than there is room has that; nothing is written beyond the field, though
// the line comes near its rims.
func TestInwards(t *testing.T) {
	for _, mid := range []curve.Vec{{X: 40, Y: 33}, {X: 24, Y: 50}, {X: 57, Y: 24}} {
		const w, h, room, r = 80, 70, 9, 20.0
		got := inwards(ring(mid, r, 400), w, h, room)
		for i, d := range got.V {
			want := r - mid.Dist(curve.Vec{X: float64(i % w), Y: float64(i / w)})
			if want < -room*1.5 && d != -room && math.Abs(float64(d)-want) > 0.15 {
				t.Fatalf("far outside at %d, %d: %v", i%w, i/w, d)
			}
			if want > -room && math.Abs(float64(d)-want) > 0.15 {
				t.Fatalf("at %d, %d the distance is %v, want %v", i%w, i/w, d, want)
			}
			if d < 0 != (want < 0) && math.Abs(want) > 0.15 {
				t.Fatalf("at %d, %d the distance is %v, want %v", i%w, i/w, d, want)
			}
		}
	}
}

// The width of a band softened by σ is found from the light it takes away: w / erf(w / (2√2σ)) is the whole light over that in the middle, for the middle
// of the band gets erf(w / (2√2σ)) of its darkness (the integral of a normal distribution over ±w/2).
func TestUnsoften(t *testing.T) {
	for _, w := range []float64{0.15, 0.3, 0.5, 0.8, 1.5} {
		for _, sigma := range []float64{0.05, 0.15, 0.3} {
			if 2*sigma > 2*w {
				continue
			}
			p := pen{w, sigma, 1}
			whole := 0.0
			for d := -6.0; d < 6; d += 0.01 {
				whole += 0.01 * (1 - p.on(d))
			}
			if got := unsoften(whole/(1-p.on(0)), sigma); math.Abs(got-w) > 0.01 {
				t.Errorf("a band of %v, softened by %v, is %v wide", w, sigma, got)
			}
		}
	}
	if got := unsoften(0, 0.1); got < 0.07 || got > 0.09 {
		t.Errorf("of no light: %v, want the least", got)
	}
}

// A closed line moves outwards by as much all round, whichever way it runs, and inwards by less than nothing; by nothing it stays itself.
func TestGrown(t *testing.T) {
	mid := curve.Vec{X: 50, Y: 40}
	for _, l := range []curve.Line{ring(mid, 20, 500), ring(mid, 20, 500).Reverse()} {
		for _, by := range []float64{0.3, -0.4, 2} {
			for _, v := range grown(l, by) {
				if d := v.Dist(mid) - 20 - by; math.Abs(d) > 0.01 {
					t.Fatalf("grown by %v a place is %v off", by, d)
				}
			}
		}
		if got := grown(l, 0); &got[0] != &l[0] {
			t.Error("grown by nothing it is another line")
		}
	}
	spot := curve.Line{mid, mid, mid, mid, mid, mid, mid}
	for _, v := range grown(spot, 1) {
		if v != mid {
			t.Errorf("a spot grows to %v", v)
		}
	}
}

// Points along a closed line: all on it, evenly apart by no more than asked, from its first point, all the way round.
func TestEvenly(t *testing.T) {
	square := curve.Line{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 7}, {X: 0, Y: 7}}
	for _, apart := range []float64{0.25, 0.9, 2, 100} {
		got := evenly(square, apart)
		want := max(8, int(math.Ceil(34/apart)))
		if len(got) != want || got[0] != square[0] {
			t.Errorf("every %v: %d points from %v, want %d from %v", apart, len(got), got[0], want, square[0])
		}
		all := 0.0
		for i, v := range got {
			n := got[(i+1)%len(got)]
			along := math.Abs(v.X-n.X) + math.Abs(v.Y-n.Y) // round corners too
			all += along
			if math.Abs(along-34/float64(want)) > 1e-9 {
				t.Fatalf("every %v: %v to %v is %v", apart, v, n, along)
			}
			if on := v.X == 0 || v.X == 10 || v.Y == 0 || v.Y == 7; !on {
				t.Fatalf("every %v: %v is not on the line", apart, v)
			}
		}
		if math.Abs(all-34) > 1e-9 {
			t.Errorf("every %v: once round is %v, want 34", apart, all)
		}
	}
}

// An outline runs counter-clockwise by its signed area and begins at its least x, with the same points.
func TestRightWay(t *testing.T) {
	l := ring(curve.Vec{X: 9, Y: 9}, 4, 50)
	for _, l := range []curve.Line{l, l.Reverse(), append(append(curve.Line{}, l[17:]...), l[:17]...)} {
		got := rightWay(l)
		if got.Area() < 0 || len(got) != len(l) || got[0].X > 5.01 || math.Abs(got.Length()-l.Length()) > 0.01 {
			t.Errorf("area %v, %d points from %v", got.Area(), len(got), got[0])
		}
	}
}

// widths is what is read of a circle's line: the width at the level, and the width that was drawn.
func widths(p pen, soft float64) (seen, drawn, level float64) {
	tr := flat(p.lines(circle(middle, 25)))
	tr.even()
	k, _ := tr.levels()
	d := &drawnLine{level: k.half()}
	d.outer = largest(d.solidOf(tr).Levels(d.level))
	d.depth = inwards(d.outer, tr.grey.Width, tr.grey.Height, int(1.2/dotOf))
	seen, drawn = d.lineWidth(tr, k, soft)
	return seen, drawn, float64(k.half())
}

type drawnLine = drawn

// solidOf is the picture with the circle's inside dark.
func (d *drawnLine) solidOf(tr *truth) *raster.Grey {
	g := raster.NewGrey(tr.grey.Width, tr.grey.Height)
	copy(g.V, tr.grey.V)
	for i := range g.V {
		if tr.place(curve.Vec{X: float64(i % g.Width), Y: float64(i / g.Width)}).Dist(middle) < 25 {
			g.V[i] = min(g.V[i], 2*d.level-1)
		}
	}
	return g
}

// The drawn width comes out whatever the pencil and the softness, to a twelfth of a millimetre; that at the level is the wider the softer.
func TestLineWidth(t *testing.T) {
	for _, w := range []float64{0.4, 0.6, 0.9, 1.4} {
		seen, drawn, _ := widths(pen{w, 0.15, 0.6}, 0.15)
		if math.Abs(drawn-w) > 0.085 {
			t.Errorf("a line of %v is read as %v", w, drawn)
		}
		if seen < w-0.12 || seen > w+0.5 {
			t.Errorf("a line of %v is %v wide at the level", w, seen)
		}
	}
	for _, w := range []float64{2.5, 3.2} {
		if seen, drawn, _ := widths(pen{w, 0.1, 0.6}, 0.1); seen != 0 || drawn != 0 {
			t.Errorf("a line of %v mm is %v wide, and %v", w, seen, drawn)
		}
	}
}
