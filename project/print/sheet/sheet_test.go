package sheet

import (
	"math"
	"testing"

	"chape/calc/curve"
)

// Dashes go on over a joint: a piece knows how much of the line lies before it.
func TestClipKeepsDashes(t *testing.T) {
	p := Path{Stroke: Dashed, Pts: curve.Line{{X: 0}, {X: 40}, {X: 40, Y: 50}}}
	got := p.Clip(Box{Lo: curve.Vec{X: 10, Y: -1}, Hi: curve.Vec{X: 50, Y: 20}})
	if len(got) != 1 || got[0].From != 10 || got[0].Pts.Length() != 50 {
		t.Errorf("clip = %+v, want one piece of 50 mm from 10 mm on", got)
	}
}

func TestPaperRefused(t *testing.T) {
	for _, s := range []string{"", "a9", "210", "x", "210x", "100x100", "9000x9000", "-210x297", "nanx297"} {
		if p, err := ParsePaper(s); err == nil {
			t.Errorf("ParsePaper(%q) = %v, want an error", s, p)
		}
	}
}

// A circle of radius r needs chords of height h: n = π / acos(1 − h/r).
func TestThinnedCircle(t *testing.T) {
	const r = 50.0
	var l curve.Line
	for i := range 20000 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 20000)
		l = append(l, curve.Vec{X: r * cos, Y: r * sin})
	}
	got := Thinned(l, true)
	least := math.Pi / math.Acos(1-deviation/r)
	if n := float64(len(got)); n < least || n > 1.05*least+1 {
		t.Errorf("circle drawn with %v points, want about %.0f", n, least)
	}
	ring := append(append(curve.Line{}, got...), got[0])
	for _, v := range l {
		if d := toRing(v, ring); d > deviation+1e-9 {
			t.Fatalf("%v strays %v", v, d)
		}
	}
	if got := Thinned(curve.Line{{X: 0}, {X: 1}, {X: 2}, {X: 5}, {X: 5, Y: 3}}, false); len(got) != 3 {
		t.Errorf("two straight pieces need three points, got %v", got)
	}
}

// toRing is the distance from a place to a polyline.
func toRing(v curve.Vec, l curve.Line) float64 {
	best := math.Inf(1)
	for i := 1; i < len(l); i++ {
		best = math.Min(best, toSegment(v, l[i-1], l[i]))
	}
	return best
}

// The distance to a segment is that to its nearest point: an end, or the foot of the
// perpendicular. Worked by hand: 3-4-5 triangles.
func TestToSegment(t *testing.T) {
	a, b := curve.Vec{X: 0, Y: 0}, curve.Vec{X: 10, Y: 0}
	for _, c := range []struct {
		p    curve.Vec
		want float64
	}{{curve.Vec{X: 5, Y: 4}, 4}, {curve.Vec{X: -3, Y: 4}, 5}, {curve.Vec{X: 13, Y: -4}, 5}, {curve.Vec{X: 10, Y: 0}, 0}} {
		if got := toSegment(c.p, a, b); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("toSegment(%v) = %v, want %v", c.p, got, c.want)
		}
	}
	if got := toSegment(curve.Vec{X: 3, Y: 4}, a, a); got != 5 {
		t.Errorf("to a segment of no length: %v, want 5", got)
	}
}

// What is measured is the inverse of what the file is stretched by, and a second
// correction multiplies: 98 of a sheet that gave 99 is 97.02.
func TestFactors(t *testing.T) {
	if x, y := (Correction{}).Factors(); x != 1 || y != 1 {
		t.Errorf("not measured: %v, %v", x, y)
	}
	if x, y := (Correction{X: 98, Y: 102}).Factors(); math.Abs(x*98-100) > 1e-9 || math.Abs(y*102-100) > 1e-9 {
		t.Errorf("factors %v, %v", x, y)
	}
	if got, err := (Correction{X: 99}).Then(Correction{X: 98, Y: 101}); err != nil || got != (Correction{X: 97.02, Y: 101}) {
		t.Errorf("Then = %v, %v", got, err)
	}
	if _, err := (Correction{X: 96}).Then(Correction{X: 96}); err == nil {
		t.Error("a printer 8 % off is taken")
	}
}
