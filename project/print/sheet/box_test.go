package sheet

import (
	"math"
	"testing"

	"chape/calc/curve"
	"chape/project/print/letters"
)

// The box round words reaches from the foot of their letters' tails to their heads, as wide as
// they are, to the right of their place, about it or to the left; turned with them.
func TestBoxRoundWords(t *testing.T) {
	const size = 4.0
	wide := letters.Width("glue line", false) * size
	at := curve.Vec{X: 50, Y: 60}
	up, down := 0.8*size, 0.25*size
	for _, c := range []struct {
		a     anchor
		angle float64
		want  Box
	}{
		{Start, 0, Box{curve.Vec{X: 50, Y: 60 - up}, curve.Vec{X: 50 + wide, Y: 60 + down}}},
		{Middle, 0, Box{curve.Vec{X: 50 - wide/2, Y: 60 - up}, curve.Vec{X: 50 + wide/2, Y: 60 + down}}},
		{End, 0, Box{curve.Vec{X: 50 - wide, Y: 60 - up}, curve.Vec{X: 50, Y: 60 + down}}},
		{Start, math.Pi / 2, Box{curve.Vec{X: 50 - up, Y: 60 - wide}, curve.Vec{X: 50 + down, Y: 60}}}, // reads up the sheet
		{Start, -math.Pi / 2, Box{curve.Vec{X: 50 - down, Y: 60}, curve.Vec{X: 50 + up, Y: 60 + wide}}},
		{End, math.Pi, Box{curve.Vec{X: 50, Y: 60 - down}, curve.Vec{X: 50 + wide, Y: 60 + up}}}, // on its head
	} {
		got := Text{At: at, Says: "glue line", Size: size, Anchor: c.a, Angle: c.angle}.Box()
		if got.Lo.Dist(c.want.Lo) > 1e-9 || got.Hi.Dist(c.want.Hi) > 1e-9 {
			t.Errorf("anchor %d, turned by %.2f: %v, want %v", c.a, c.angle, got, c.want)
		}
	}
	if bold := (Text{Says: "glue line", Size: size, Bold: true}).Box(); bold.Width() <= wide {
		t.Errorf("bold words take %.2f mm, others %.2f", bold.Width(), wide)
	}
}

// What a box has, holds and meets; its corners go round it.
func TestBox(t *testing.T) {
	b := Box{curve.Vec{X: 1, Y: 2}, curve.Vec{X: 5, Y: 10}}
	if b.Width() != 4 || b.Height() != 8 || b.mid() != (curve.Vec{X: 3, Y: 6}) || math.Abs(b.Corners().Area()) != 32 {
		t.Errorf("%v is %v by %v about %v", b, b.Width(), b.Height(), b.mid())
	}
	if g := b.Grow(1); g != (Box{curve.Vec{X: 0, Y: 1}, curve.Vec{X: 6, Y: 11}}) {
		t.Errorf("grown by 1: %v", g)
	}
	for _, c := range []struct {
		o            Box
		holds, meets bool
	}{
		{b, true, true}, {b.Grow(-1), true, true}, {b.Grow(1), false, true},
		{Box{curve.Vec{X: 5, Y: 2}, curve.Vec{X: 9, Y: 10}}, false, true}, {Box{curve.Vec{X: 5.1, Y: 2}, curve.Vec{X: 9, Y: 10}}, false, false},
		{Box{curve.Vec{X: 2, Y: 11}, curve.Vec{X: 3, Y: 12}}, false, false}, {Box{curve.Vec{X: -4, Y: 5}, curve.Vec{X: 40, Y: 6}}, false, true},
	} {
		if b.holds(c.o) != c.holds || b.meets(c.o) != c.meets || c.o.meets(b) != c.meets {
			t.Errorf("%v: holds %v, meets %v", c.o, b.holds(c.o), b.meets(c.o))
		}
	}
	if u := b.Union(Box{curve.Vec{X: -1, Y: 5}, curve.Vec{X: 2, Y: 20}}); u != (Box{curve.Vec{X: -1, Y: 2}, curve.Vec{X: 5, Y: 20}}) {
		t.Errorf("both: %v", u)
	}
}

// The box round a drawing is that of its lines and circles; words don't count.
func TestBounds(t *testing.T) {
	var d Drawing
	d.Line(CutLayer, Wide, curve.Vec{X: 3, Y: 4}, curve.Vec{X: 10, Y: -2})
	d.Circle(Circle{At: curve.Vec{X: 0, Y: 0}, Radius: 2})
	d.Text(Text{Says: "far out", At: curve.Vec{X: 500, Y: 500}, Size: 3})
	if got := d.Bounds(); got != (Box{curve.Vec{X: -2, Y: -2}, curve.Vec{X: 10, Y: 4}}) {
		t.Errorf("Bounds = %v", got)
	}
}

// A drawing put on another is moved, all kinds of marks of it, and stays as it was.
func TestAddMoves(t *testing.T) {
	var d, e Drawing
	e.Path(Path{Layer: CutLayer, Stroke: Wide, Pts: curve.Line{{X: 1}, {X: 2}}, Name: "cut", Closed: true})
	e.Circle(Circle{At: curve.Vec{X: 1, Y: 1}, Radius: 3})
	e.Spots = []Spot{{At: curve.Vec{X: 2, Y: 2}, Radius: 1}}
	e.Text(Text{Says: "x", At: curve.Vec{X: 4, Y: 4}})
	by := curve.Vec{X: 10, Y: -20}
	d.Add(e, by)
	if d.Paths[0].Pts[1] != (curve.Vec{X: 12, Y: -20}) || d.Paths[0].Name != "cut" || !d.Paths[0].Closed || d.Circles[0].At != (curve.Vec{X: 11, Y: -19}) ||
		d.Circles[0].Radius != 3 || d.Spots[0].At != (curve.Vec{X: 12, Y: -18}) || d.Texts[0].At != (curve.Vec{X: 14, Y: -16}) {
		t.Errorf("%+v", d)
	}
	if e.Paths[0].Pts[0] != (curve.Vec{X: 1}) || e.Texts[0].At != (curve.Vec{X: 4, Y: 4}) {
		t.Errorf("what was put on it was moved itself: %+v", e)
	}
}

// Words are what the font can show as soon as they are on a drawing.
func TestWordsArePrintable(t *testing.T) {
	var d Drawing
	d.Text(Text{Says: "e\u0301 刀\n"})
	if got := d.Texts[0].Says; got != letters.Printable("é 刀") {
		t.Errorf("%q", got)
	}
}
