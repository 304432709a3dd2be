package axes

import (
	"math"
	"testing"

	"chape/calc/curve"
)

// bladeLine is a knife along x with its back on u = 0: a belly, a step at 80, a handle to 170.
func bladeLine() curve.Line {
	l := curve.Line{}
	for x := 0.0; x <= 80; x += 0.5 {
		l = append(l, curve.Vec{X: x, Y: max(0, 6-x/5)})
	}
	l = append(l, curve.Vec{X: 80, Y: 2}, curve.Vec{X: 170, Y: 3}, curve.Vec{X: 170, Y: 26}, curve.Vec{X: 80, Y: 24})
	for x := 80.0; x > 0; x -= 0.5 {
		l = append(l, curve.Vec{X: x, Y: 28 - 22*math.Pow(1-x/80, 3)})
	}
	return l
}

func moved(l curve.Line, turn float64, by curve.Vec) curve.Line {
	out := make(curve.Line, len(l))
	sin, cos := math.Sincos(turn)
	for i, v := range l {
		out[i] = curve.Vec{X: v.X*cos - v.Y*sin, Y: v.X*sin + v.Y*cos}.Add(by)
	}
	return out
}

// However the outline lies, even seen from behind, it comes out the same along its fold.
func TestKnifeHoweverItLies(t *testing.T) {
	line := bladeLine()
	feet := curve.Line{{X: 80.2, Y: 0}, {X: 79.6, Y: 28}}
	for _, turn := range []float64{0, 0.7, 2, 3.1, -1.2} {
		by := curve.Vec{X: 40 * turn, Y: 90}
		k := NewKnife(moved(line, turn, by), moved(feet, turn, by))
		if len(k.Steps) != 1 || math.Abs(k.Steps[0]-79.9) > 0.05 {
			t.Fatalf("turned by %v: steps %v, want 79.9", turn, k.Steps)
		}
		if math.Abs(k.Length()-170) > 0.05 {
			t.Errorf("turned by %v: length %v, want 170", turn, k.Length())
		}
		if off, at := k.Off(); off > 0.15 {
			t.Errorf("turned by %v: the marks stray by %v at %v", turn, off, at)
		}
		if m := k.Marks[0]; math.Abs(m.Gap-6) > 0.1 {
			t.Errorf("turned by %v: first mark %v, want a gap of 6", turn, m)
		}
		if n := len(k.Marks); n > 16 {
			t.Errorf("turned by %v: %d marks", turn, n)
		}
		from, _ := k.Fold()
		if want := moved(curve.Line{{}}, turn, by)[0]; from.Dist(want) > 0.15 {
			t.Errorf("turned by %v: the fold begins at %v, want %v", turn, from, want)
		}
	}
}

func TestKnifeTurnedAndChanged(t *testing.T) {
	k := NewKnife(bladeLine(), curve.Line{{X: 80, Y: 0}, {X: 80, Y: 28}})
	back := k.TurnBack()
	if back.TurnBack().Down.Y*back.Down.Y > 0 {
		t.Error("turned over twice, the back is on the other side")
	}
	if ends := k.TurnEnds(); ends.Along.X*k.Along.X > 0 {
		t.Error("turned end for end, x runs the same way")
	}
	if m := k.MoveStep(0, 70); m.Steps[0] != 70 || k.Steps[0] == 70 {
		t.Errorf("moved to %v; the first knife has %v", m.Steps, k.Steps)
	}
	if m := k.MoveStep(0, 1000); m.Steps[0] > m.Length()-2 {
		t.Errorf("moved past the end: %v", m.Steps)
	}
	more, ok := k.AddMark(120)
	if !ok || len(more.Marks) != len(k.Marks)+1 {
		t.Fatalf("a mark at 120: %v, %d of %d", ok, len(more.Marks), len(k.Marks))
	}
	for i, m := range more.Marks {
		if m.At == 120 {
			if less, ok := more.DropMark(i); !ok || len(less.Marks) != len(k.Marks) {
				t.Errorf("dropped: %v, %d", ok, len(less.Marks))
			}
		}
	}
	if _, ok := k.DropMark(0); ok {
		t.Error("the first mark can be dropped")
	}
	if s, ok := k.AddStep(120); !ok || len(s.Steps) != 2 || len(s.DropStep(1).Steps) != 1 {
		t.Errorf("a step more: %v, %v", ok, s.Steps)
	}
}

// The shoelace and Green's theorem against a rectangle's known moments.
func TestPrincipal(t *testing.T) {
	mid, along := principal(moved(curve.Line{{}, {X: 40}, {X: 40, Y: 10}, {Y: 10}}, 0.5, curve.Vec{X: 100, Y: 50}))
	want := moved(curve.Line{{X: 20, Y: 5}}, 0.5, curve.Vec{X: 100, Y: 50})[0]
	if mid.Dist(want) > 1e-9 || math.Abs(math.Abs(along.X)-math.Cos(0.5)) > 1e-9 {
		t.Errorf("middle %v along %v, want %v along 0.5", mid, along, want)
	}
}

// A whole pattern is laid about its middle, and its cutting error is found; a half along its straight side.
func TestPattern(t *testing.T) {
	var whole, half curve.Line
	width := func(x float64) float64 { return 20 + 15*math.Sin(x/60) }
	for x := 0.0; x <= 150; x++ {
		whole = append(whole, curve.Vec{X: x, Y: width(x) + 0.4})
		half = append(half, curve.Vec{X: x, Y: width(x)})
	}
	for x := 150.0; x >= 0; x-- {
		whole = append(whole, curve.Vec{X: x, Y: -width(x) + 0.4*math.Sin(x/10)})
	}
	half = append(half, curve.Vec{X: 150}, curve.Vec{})
	p := NewPattern(moved(whole, 1, curve.Vec{X: 90, Y: 20}), Turns{})
	if !p.Whole || p.Off > 0.5 || p.Off < 0.05 {
		t.Errorf("whole %v, halves differ by %v", p.Whole, p.Off)
	}
	if h := p.Half[len(p.Half)/2]; math.Abs(h.Y-width(h.X)-0.2) > 0.3 {
		t.Errorf("half-width %v", h)
	}
	q := NewPattern(moved(half, 1, curve.Vec{X: 90, Y: 20}), Turns{})
	if h := q.Half[len(q.Half)/2]; q.Whole || math.Abs(h.Y-width(h.X)) > 0.1 {
		t.Errorf("of a half: whole %v, half-width %v", q.Whole, h)
	}
	if w, long := Band(moved(curve.Line{{}, {X: 200}, {X: 200, Y: 30}, {Y: 30}}, 0.3, curve.Vec{X: 10})); math.Abs(w-30) > 0.05 || math.Abs(long-200) > 0.3 {
		t.Errorf("a rule is %v wide and %v long", w, long)
	}
}
