package sheet

import (
	"math"
	"testing"

	"chape/calc/curve"
)

var board = Box{Hi: curve.Vec{X: 200, Y: 200}}

// named is a line with a name, from a to b, and which side of the way the words stand.
func named(a, b curve.Vec, side float64) Path {
	return Path{Layer: StitchLayer, Stroke: Dashed, Pts: curve.Line{a, b}, Name: "stitch line", Side: side}
}

// far is how far the nearest edge of words, as they run, is from a line.
func far(t Text, p Path) float64 {
	sin, cos := math.Sincos(t.Angle)
	best := math.Inf(1)
	for _, v := range t.own().Corners() {
		at := t.At.Add(curve.Vec{X: v.X*cos + v.Y*sin, Y: -v.X*sin + v.Y*cos})
		best = min(best, toSegment(at, p.Pts[0], p.Pts[1]))
	}
	return best
}

// A line's name runs along it, on its side, close by and not across, and reads from below or
// from the right, whichever way the line goes.
func TestNameRunsAlongItsLine(t *testing.T) {
	mid := curve.Vec{X: 100, Y: 100}
	for turn := 0; turn < 360; turn += 15 {
		for _, side := range []float64{1, -1} {
			sin, cos := math.Sincos(float64(turn) * math.Pi / 180)
			way := curve.Vec{X: cos, Y: sin}
			p := named(mid.Sub(way.Mul(50)), mid.Add(way.Mul(50)), side)
			d := Drawing{Paths: []Path{p}}
			d.Label(board)
			if len(d.Texts) != 1 {
				t.Fatalf("at %d° the name is there %d times", turn, len(d.Texts))
			}
			w := d.Texts[0]
			if off := far(w, p); off > 1.2 || w.Crossed(d.Paths) {
				t.Errorf("at %d° the name is %.2f mm off, crossed: %v", turn, off, w.Crossed(d.Paths))
			}
			if a := w.Angle; a > math.Pi/2+1e-6 || a <= -math.Pi/2 {
				t.Errorf("at %d° it reads at %.0f°", turn, a*180/math.Pi)
			}
			run := curve.Vec{X: math.Cos(w.Angle), Y: -math.Sin(w.Angle)} // y points down
			if cross := run.X*way.Y - run.Y*way.X; math.Abs(cross) > 1e-6 {
				t.Errorf("at %d° it runs along %v", turn, run)
			}
			off := boxMiddle(w).Sub(mid)
			if got := off.X*way.Y - off.Y*way.X; got*side <= 0 { // left of the way, y down
				t.Errorf("at %d° side %v: the name stands on the other", turn, side)
			}
		}
	}
}

func boxMiddle(t Text) curve.Vec { return t.Box().mid() }

// Where its side is taken the name goes to the other; where the line is too short, too
// crooked, or all round it is taken, it is left out; it stays on the sheet.
func TestNameFindsRoom(t *testing.T) {
	p := named(curve.Vec{X: 20, Y: 100}, curve.Vec{X: 80, Y: 100}, 1)
	one := func(d Drawing) int { d.Label(board); return len(d.Texts) }
	if n := one(Drawing{Paths: []Path{p}}); n != 1 {
		t.Errorf("with room: %d", n)
	}
	d := Drawing{Paths: []Path{p}}
	d.Line(GlueLayer, Thin, curve.Vec{X: 0, Y: 98}, curve.Vec{X: 200, Y: 98})
	d.Label(board)
	if len(d.Texts) != 1 || d.Texts[0].Box().Lo.Y < 100 {
		t.Errorf("a line above: %+v", d.Texts)
	}
	d.Texts = nil
	for y := 91.0; y < 110; y += 1.5 {
		d.Line(GlueLayer, Thin, curve.Vec{X: 0, Y: y}, curve.Vec{X: 200, Y: y})
	}
	if n := one(d); n != 0 {
		t.Errorf("lines all round: %d", n)
	}
	short := named(curve.Vec{X: 20, Y: 100}, curve.Vec{X: 26, Y: 100}, 1)
	if n := one(Drawing{Paths: []Path{short}}); n != 0 {
		t.Errorf("6 mm long: %d", n)
	}
	bent := p
	bent.Pts = curve.Line{{X: 20, Y: 100}, {X: 23, Y: 95}, {X: 26, Y: 100}, {X: 29, Y: 95}, {X: 32, Y: 100}, {X: 35, Y: 95}, {X: 38, Y: 100}}
	if n := one(Drawing{Paths: []Path{bent}}); n != 0 {
		t.Errorf("crooked: %d", n)
	}
	rim := Drawing{Paths: []Path{named(curve.Vec{X: 20, Y: 1}, curve.Vec{X: 80, Y: 1}, 1)}}
	rim.Label(board)
	if len(rim.Texts) != 1 || !board.holds(rim.Texts[0].Box()) {
		t.Errorf("at the rim: %+v", rim.Texts)
	}
}

// Names of several lines don't meet each other, circles, or words that were there.
func TestNamesDontMeet(t *testing.T) {
	var d Drawing
	for y := 50.0; y < 60; y += 3 {
		d.Path(named(curve.Vec{X: 10, Y: y}, curve.Vec{X: 190, Y: y}, 1))
	}
	d.Circle(Circle{Layer: HoleLayer, At: curve.Vec{X: 100, Y: 48}, Radius: 2})
	d.Text(Text{Layer: WordLayer, At: curve.Vec{X: 110, Y: 49}, Says: "here before", Size: WordSize})
	d.Label(board)
	if len(d.Texts) < 2 {
		t.Fatalf("%d words", len(d.Texts))
	}
	for i, a := range d.Texts {
		for _, b := range d.Texts[:i] {
			if a.Box().meets(b.Box()) {
				t.Errorf("%q at %v meets %q at %v", a.Says, a.At, b.Says, b.At)
			}
		}
		if a.Box().meets(d.Circles[0].box()) {
			t.Errorf("%q meets the hole", a.Says)
		}
	}
}

// Words are crossed by a line through them, also a closing one and where they are turned;
// not by one that passes, or ends before them.
func TestCrossed(t *testing.T) {
	flat := Text{At: curve.Vec{X: 50, Y: 50}, Says: "relief hole", Size: 3}
	turned := flat
	turned.Angle = math.Pi / 4
	for _, c := range []struct {
		name string
		w    Text
		p    Path
		want bool
	}{
		{"through", flat, Path{Pts: curve.Line{{X: 40, Y: 49}, {X: 80, Y: 49}}}, true},
		{"below", flat, Path{Pts: curve.Line{{X: 40, Y: 52}, {X: 80, Y: 52}}}, false},
		{"ends before", flat, Path{Pts: curve.Line{{X: 10, Y: 49}, {X: 49, Y: 49}}}, false},
		{"inside", flat, Path{Pts: curve.Line{{X: 51, Y: 49}, {X: 52, Y: 49}}}, true},
		{"the side that closes", flat, Path{Closed: true, Pts: curve.Line{{X: 40, Y: 49}, {X: 40, Y: 90}, {X: 90, Y: 90}, {X: 90, Y: 49}}}, true},
		{"the same, open", flat, Path{Pts: curve.Line{{X: 40, Y: 49}, {X: 40, Y: 90}, {X: 90, Y: 90}, {X: 90, Y: 49}}}, false},
		{"through the turned", turned, Path{Pts: curve.Line{{X: 40, Y: 45}, {X: 80, Y: 45}}}, true},
		{"in the corner of the box round the turned", turned, Path{Pts: curve.Line{{X: 49, Y: 40}, {X: 53, Y: 40}}}, false},
	} {
		if got := c.w.Crossed([]Path{c.p}); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// What has to move goes no farther than it must: a number within 6 mm of what it counts, longer
// words within 28 mm; what has no place there is left out, what is no word of the drawing stays.
func TestSettleMovesLittle(t *testing.T) {
	at := curve.Vec{X: 100, Y: 100}
	for _, c := range []struct {
		says string
		most float64
	}{{"47", 6}, {"1240", 6}, {"relief hole", 28}} {
		for wall := 1.0; wall < 70; wall += 2 { // lines over it, ever higher and wider
			var d Drawing
			for y := 100 - wall; y <= 100+wall; y += 1.5 {
				d.Line(CutLayer, Wide, curve.Vec{X: 100 - 1.5*wall, Y: y}, curve.Vec{X: 100 + 1.5*wall, Y: y})
			}
			d.Text(Text{Layer: WordLayer, At: at, Says: c.says, Size: WordSize, Anchor: Middle})
			d.Text(Text{Layer: RegisterLayer, At: at, Says: "BA1", Size: WordSize})
			d.Settle(board)
			if last := d.Texts[len(d.Texts)-1]; last.Layer != RegisterLayer || last.At != at {
				t.Fatalf("a joint's name was moved to %v", last.At)
			}
			if len(d.Texts) == 2 {
				if moved := d.Texts[0].At.Dist(at); moved > c.most || d.Texts[0].Crossed(d.Paths) {
					t.Errorf("%q went %.1f mm, crossed: %v", c.says, moved, d.Texts[0].Crossed(d.Paths))
				}
			} else if wall < c.most/2 {
				t.Errorf("%q is left out, with %v mm of lines round it", c.says, wall)
			}
		}
	}
}
