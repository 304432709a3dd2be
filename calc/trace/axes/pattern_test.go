package axes

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"chape/calc/curve"
)

func width(x float64) float64 { return 20 + 15*math.Sin(x/60) }

// cut is a pattern 150 long, whole, each half cut off by its own fault.
func cut(upper, lower func(x float64) float64) (l curve.Line) {
	for x := 0.0; x <= 150; x++ {
		l = append(l, curve.Vec{X: x, Y: width(x) + upper(x)})
	}
	for x := 150.0; x >= 0; x-- {
		l = append(l, curve.Vec{X: x, Y: -width(x) - lower(x)})
	}
	return l
}

func halfCut() (l curve.Line) {
	for x := 0.0; x <= 150; x++ {
		l = append(l, curve.Vec{X: x, Y: width(x)})
	}
	return append(l, curve.Vec{X: 150}, curve.Vec{})
}

func none(float64) float64      { return 0 }
func wave(x float64) float64    { return 0.4 * math.Sin(x/10) }
func onArc(x float64) float64   { return 0.4 }
func atEnd(x float64) float64   { return 0.4 * max(0, x/75-1) }
func place() curve.Vec          { return curve.Vec{X: 90, Y: 20} }
func half150(p Pattern) float64 { return p.Half[len(p.Half)-1].X }

// A whole pattern lies about its middle at any turn, its half-widths the mean of both halves, every millimetre; a half along its straight side.
func TestPatternLaid(t *testing.T) {
	for _, turn := range []float64{0, 1, 2.4, 3.1, -0.8} {
		p := NewPattern(moved(cut(none, none), turn, place()), Turns{})
		if !p.Whole || p.Off > 0.02 || p.Worst > 0.06 {
			t.Errorf("turned by %v: whole %v, halves differ by %v and %v", turn, p.Whole, p.Off, p.Worst)
		}
		q := NewPattern(moved(halfCut(), turn, place()), Turns{})
		if q.Whole || q.Off != 0 {
			t.Errorf("turned by %v: a half is whole: %v, %v", turn, q.Whole, q.Off)
		}
		for name, p := range map[string]Pattern{"whole": p, "half": q} {
			if math.Abs(half150(p)-150) > 1.1 || p.Half[0].X != 0 {
				t.Errorf("turned by %v, %s: from %v to %v", turn, name, p.Half[0].X, half150(p))
			}
			for _, h := range p.Half[1 : len(p.Half)-2] {
				if math.Abs(h.Y-width(h.X)) > 0.1 {
					t.Errorf("turned by %v, %s: half-width %v, want %v", turn, name, h, width(h.X))
					break
				}
			}
		}
	}
}

// What one half is wider than the other is found: by hand, a fault of one size moves the line to the middle and differs by nothing; a wave of 0.4 mm in one half
// alone differs by 0.4/√2 root mean square, 0.4 at most.
func TestPatternHalvesDiffer(t *testing.T) {
	for _, c := range []struct {
		name          string
		upper, lower  func(float64) float64
		off, worst    float64
		tolerance     float64
		wider, narrow float64
	}{
		{"alike", none, none, 0, 0, 0.03, 0, 0},
		{"one wider all along", onArc, none, 0, 0, 0.03, 0.2, 0.2},
		{"a wave in one", wave, none, 0.4 / math.Sqrt2, 0.4, 0.05, 0.2, -0.2},
		{"the same wave in both", wave, wave, 0, 0, 0.03, 0.4, -0.4},
	} {
		p := NewPattern(moved(cut(c.upper, c.lower), 1, place()), Turns{})
		if !p.Whole || math.Abs(p.Off-c.off) > c.tolerance || math.Abs(p.Worst-c.worst) > 3*c.tolerance {
			t.Errorf("%s: whole %v, halves differ by %v and %v, want %v and %v", c.name, p.Whole, p.Off, p.Worst, c.off, c.worst)
		}
		for _, h := range p.Half[8 : len(p.Half)-8] {
			if by := h.Y - width(h.X); by > c.wider+0.08 || by < c.narrow-0.08 {
				t.Errorf("%s: at %v the half is %v wider than drawn", c.name, h.X, by)
				break
			}
		}
	}
	if p := NewPattern(cut(func(x float64) float64 { return 12 * math.Sin(x/40) }, none), Turns{}); p.Whole {
		t.Errorf("halves that differ by %v are one pattern", p.Off)
	}
}

// The narrow end is x = 0; it and the sides are turned over when asked. A half's straight side stays its fold.
func TestPatternTurned(t *testing.T) {
	line := cut(none, atEnd)
	plain, ends, back := NewPattern(line, Turns{}), NewPattern(line, Turns{Ends: true}), NewPattern(line, Turns{Back: true})
	if n := len(plain.Half); plain.Half[3].Y > plain.Half[n-4].Y || ends.Half[3].Y < ends.Half[n-4].Y {
		t.Errorf("half-widths from %v to %v, turned from %v to %v", plain.Half[3], plain.Half[n-4], ends.Half[3], ends.Half[n-4])
	}
	if plain.Along.X*ends.Along.X > -0.9 || plain.Down.Y*back.Down.Y > -0.9 || plain.Along.X*back.Along.X < 0.9 {
		t.Errorf("along %v, %v, %v; down %v, %v", plain.Along, ends.Along, back.Along, plain.Down, back.Down)
	}
	h, b := NewPattern(halfCut(), Turns{}), NewPattern(halfCut(), Turns{Back: true})
	if h.Down.Y < 0.99 || b.Down.Y < 0.99 {
		t.Errorf("a half lies down along %v, turned along %v: its straight side is its fold", h.Down, b.Down)
	}
}

// The straight side is fitted to all of it, not to two of its points: with a nick at its end and points that shake, it stays within a tenth.
func TestHalfFitsItsStraightSide(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 42))
	var l curve.Line
	for x := 0.0; x <= 150; x++ {
		l = append(l, curve.Vec{X: x, Y: width(x)})
	}
	for x := 150.0; x >= 0; x-- {
		y := 0.1 * (r.Float64() - 0.5)
		if x > 149 {
			y = -0.35
		}
		l = append(l, curve.Vec{X: x, Y: y})
	}
	p := half(moved(l, 0.6, place()), Turns{})
	for _, x := range []float64{5, 75, 145} {
		at := moved(curve.Line{{X: x}}, 0.6, place())[0]
		if u := p.In(at).Y; math.Abs(u) > 0.04 {
			t.Errorf("at %v the fold is %v off the side", x, u)
		}
	}
}

// Half the difference of sides about a line, by hand: 3 and 5 mm on both sides differ by 2 everywhere.
func TestDiffer(t *testing.T) {
	rms, worst := differ(curve.Line{{X: -10, Y: -3}, {X: 60, Y: -3}, {X: 60, Y: 5}, {X: -10, Y: 5}})
	if math.Abs(rms-2) > 1e-9 || math.Abs(worst-2) > 1e-9 {
		t.Errorf("differ by %v and %v, want 2", rms, worst)
	}
	rms, worst = differ(curve.Line{{X: 0, Y: 0}, {X: 100, Y: -10}, {X: 100, Y: 10}, {X: 0, Y: 4}}) // from 4 to 0 on a straight line
	if math.Abs(rms-4/math.Sqrt(3)) > 0.1 || worst < 3.7 || worst > 4 {
		t.Errorf("differ by %v and %v, want 2.31 and nearly 4", rms, worst)
	}
}

// The hull of random outlines is simplefeatures', and every point of them lies in it.
func TestConvexAgainstLibrary(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 42))
	for range 20 {
		l := star(r, 3+r.IntN(20))
		hull := convex(l)
		want := polygon(l).ConvexHull()
		if math.Abs(math.Abs(hull.Area())-want.Area()) > 1e-9*want.Area() {
			t.Errorf("the hull's area is %v, want %v", hull.Area(), want.Area())
		}
		if n := want.MustAsPolygon().ExteriorRing().Coordinates().Length() - 1; n != len(hull) {
			t.Errorf("the hull has %d corners, want %d", len(hull), n)
		}
		if d, ok := geom.Distance(polygon(hull), want); !ok || d > 0 {
			t.Errorf("the hulls are %v apart", d)
		}
	}
}

// A traced rule: its width between the long sides and its length, at any turn; corners that the pencil rounded, and a bow at the ends, don't count.
func TestBand(t *testing.T) {
	for _, turn := range []float64{0, 0.3, 1.8, -2.5} {
		rule := curve.Line{{X: 2, Y: 0}, {X: 198, Y: 0}, {X: 200, Y: 2}, {X: 200, Y: 28}, {X: 198, Y: 30}, {X: 2, Y: 30}, {X: 0, Y: 28}, {X: 0, Y: 2}}
		if w, long := Band(moved(rule, turn, curve.Vec{X: 10})); math.Abs(w-30) > 0.01 || math.Abs(long-200) > 0.1 {
			t.Errorf("turned by %v: a rule is %v wide and %v long, want 30 and 200", turn, w, long)
		}
	}
	if w, _ := Band(curve.Line{{X: 0, Y: 0}, {X: 100, Y: -1}, {X: 100, Y: 21}, {X: 0, Y: 20}}); math.Abs(w-21) > 0.02 {
		t.Errorf("a wedge from 20 to 22 is %v wide, want 21", w)
	}
	if w, _ := Band(curve.Line{{X: 0, Y: 9}, {X: 12, Y: 0}, {X: 188, Y: 0}, {X: 200, Y: 9}, {X: 200, Y: 21}, {X: 188, Y: 30}, {X: 12, Y: 30}, {X: 0, Y: 21}}); math.Abs(w-30) > 0.01 {
		t.Errorf("with its corners off it is %v wide, want 30", w)
	}
}
