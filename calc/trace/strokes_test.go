package trace

import (
	"math"
	"slices"
	"testing"

	"chape/calc/curve"
)

// strokesOf are the strokes found beside a circle of 20 mm.
func strokesOf(t *testing.T, fs ...far) []Stroke {
	t.Helper()
	return strokesBy(t, pencil, fs...)
}

func strokesBy(t *testing.T, p pen, fs ...far) []Stroke {
	t.Helper()
	tr := flat(p.lines(append(fs, circle(middle, 20))...))
	d := drawIt(t, tr, Options{})
	return d.strokes(tr)
}

// out is a place beside the circle's middle line, at an angle.
func out(angle, by float64) curve.Vec {
	sin, cos := math.Sincos(angle)
	return middle.Add(curve.Vec{X: cos, Y: sin}.Mul(20 + by))
}

// Strokes outwards of 4 to 7 mm are found, each with its foot on the outline and its end; at any angle, slanting by half a right angle too.
func TestStrokesFound(t *testing.T) {
	type stroke struct{ angle, long float64 }
	want := []stroke{{0.6, 4}, {1.1, 5.5}, {1.6, 7}, {2.2, 4}, {2.6, 6}, {3.5, 5}, {4.4, 5.5}, {5.3, 7}}
	fs := []far{segment(out(0, 0), out(0, 0).Add(curve.Vec{X: 5, Y: 4}))}
	for _, w := range want {
		fs = append(fs, segment(out(w.angle, 0), out(w.angle, w.long)))
	}
	got := strokesOf(t, fs...)
	if len(got) != len(fs) {
		t.Errorf("%d strokes, want %d", len(got), len(fs))
	}
	for _, w := range want {
		foot, end := out(w.angle, -0.3), out(w.angle, w.long+0.3)
		if !slices.ContainsFunc(got, func(s Stroke) bool { return s.Foot.Dist(foot) < 0.25 && s.End.Dist(end) < 0.6 }) {
			t.Errorf("%v: none from %v to %v among %v", w, foot, end, got)
		}
	}
	if got := strokesBy(t, pen{1.3, 0.1, 0.6}, segment(out(1, 0), out(1, 5.5)), segment(out(4, 0), out(4, 6))); len(got) != 2 {
		t.Errorf("by a blunt pencil %d strokes, want 2", len(got))
	}
	if !slices.ContainsFunc(got, func(s Stroke) bool {
		return math.Abs(s.Foot.Dist(middle)-19.7) < 0.3 && s.Foot.Y < 58.3 && s.Foot.Y > 57 && s.End.Dist(curve.Vec{X: 77.7, Y: 62.2}) < 0.6
	}) {
		t.Errorf("no slanting stroke among %v", got)
	}
}

// What is no stroke: one inwards, one too short, one too long, one that does not begin at the line, a blot, and none at all.
func TestWhatIsNoStroke(t *testing.T) {
	got := strokesOf(t,
		segment(out(0, 0), out(0, -6)),
		segment(out(1, 0), out(1, 1.6)),
		segment(out(2, 0), out(2, 14)),
		segment(out(3, 3), out(3, 8)),
		circle(out(4, 2.5), 1.5),
		segment(out(5, 0), out(5, 4)), segment(out(4.9, 4.1), out(5.1, 4.1)), // a letter
	)
	if len(got) != 0 {
		t.Errorf("strokes %v, want none", got)
	}
}

// By hand: from outside a square from 10 to 20, the line meets the side that is nearer to it, on the side away from the end; or nothing.
func TestHit(t *testing.T) {
	square := curve.Line{{X: 10, Y: 10}, {X: 20, Y: 10}, {X: 20, Y: 20}, {X: 10, Y: 20}}
	for _, c := range []struct {
		name             string
		from, along, end curve.Vec
		want             curve.Vec
		ok               bool
	}{
		{"from the left", curve.Vec{X: 7, Y: 14}, curve.Vec{X: 1}, curve.Vec{X: 4, Y: 14}, curve.Vec{X: 10, Y: 14}, true},
		{"said the other way", curve.Vec{X: 7, Y: 14}, curve.Vec{X: -1}, curve.Vec{X: 4, Y: 14}, curve.Vec{X: 10, Y: 14}, true},
		{"from below", curve.Vec{X: 13, Y: 23}, curve.Vec{Y: 1}, curve.Vec{X: 13, Y: 26}, curve.Vec{X: 13, Y: 20}, true},
		{"slanting", curve.Vec{X: 8, Y: 8}, curve.Vec{X: 0.6, Y: 0.8}, curve.Vec{X: 6.2, Y: 5.6}, curve.Vec{X: 10, Y: 10 + 2.0/3}, true},
		{"too far", curve.Vec{X: 1, Y: 14}, curve.Vec{X: 1}, curve.Vec{X: -1, Y: 14}, curve.Vec{}, false},
		{"past it", curve.Vec{X: 7, Y: 24}, curve.Vec{X: 1}, curve.Vec{X: 4, Y: 24}, curve.Vec{}, false},
		{"along a side", curve.Vec{X: 7, Y: 10}, curve.Vec{X: 1}, curve.Vec{X: 4, Y: 10}, curve.Vec{X: 10, Y: 10}, true},
		{"away from it", curve.Vec{X: 7, Y: 14}, curve.Vec{X: 1}, curve.Vec{X: 9, Y: 14}, curve.Vec{}, false},
	} {
		got, ok := hit(square, c.from, c.along, c.end)
		if ok != c.ok || ok && got.Dist(c.want) > 1e-9 {
			t.Errorf("%s: %v, %v; want %v, %v", c.name, got, ok, c.want, c.ok)
		}
	}
}
