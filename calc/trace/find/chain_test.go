package find

import (
	"math"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/frame"
	"chape/calc/trace/raster"
	"chape/calc/trace/sheettest"
)

// An odd number of squares between the marks ends a step and a half before the second, an even one two steps: by hand, from 105 mm (8 black
// of 17) to 175 (15 of 31).
func TestEndOf(t *testing.T) {
	for _, c := range []struct {
		black      int
		left, want float64
	}{{8, 1.5, 105}, {8, 2, 110}, {15, 1.48, 175}, {14, 2.05, 170}, {15, 2.2, 180}, {24, 1.3, 265}, {24, 1.74, 265}, {24, 1.76, 270}} {
		if got := endOf(c.black, c.left); got != c.want {
			t.Errorf("%d squares, %v steps left: %v, want %v", c.black, c.left, got, c.want)
		}
	}
}

// The squares counted along each side are those that are printed, on sheets with an even and an odd number of them.
func TestOnSide(t *testing.T) {
	for _, s := range []frame.Sheet{{Width: 105, Height: 110}, {Width: 180, Height: 245}, {Width: 175, Height: 265}} {
		printed := map[curve.Vec]bool{}
		for _, q := range s.Squares() {
			printed[q.Mid()] = true
		}
		for side, long := range []float64{s.Width, s.Height, s.Width, s.Height} {
			for k := 0; ; k++ {
				along := frame.MarkIn + frame.Band*(1.5+2*float64(k))
				if along > long-frame.MarkIn-frame.Band {
					break
				}
				at := onSide(s, side, along)
				if !printed[at] {
					t.Errorf("sheet %v, side %d: no square at %v", s, side, at)
				}
				delete(printed, at)
			}
		}
		if len(printed) > 0 {
			t.Errorf("sheet %v: squares %v are on no side", s, printed)
		}
	}
}

// The frame is followed at any turn and tilt through a lens, on sides with odd and even numbers of squares; every square is where it is seen.
func TestFrameFollowed(t *testing.T) {
	for k, s := range []sheettest.Sheet{{Width: 105, Height: 105}, {Width: 105, Height: 110}, {Width: 110, Height: 105}, {Width: 110, Height: 110}} {
		c := shotOf(0.4+1.7*float64(k), 0.1*float64(k)).Of(s)
		c.Bulge = 0.06 - 0.03*float64(k)
		v, q := chosen(t, c)
		sheet, places, err := v.Frame(q)
		if err != nil || sheet.Width != s.Width || sheet.Height != s.Height || sheet.Version != 1 {
			t.Fatalf("%v × %v: %v, %v", s.Width, s.Height, sheet, err)
		}
		if want := 4 + len(sheet.Squares()); len(places) != want {
			t.Errorf("%v × %v: %d places, want %d", s.Width, s.Height, len(places), want)
		}
		for _, p := range places {
			if d := p.Image.Dist(c.Seen(p.Sheet)); d > 0.6 {
				t.Errorf("%v × %v: %v is seen %.2f dots off", s.Width, s.Height, p.Sheet, d)
			}
		}
	}
}

// In a mirror the same corners the other way round give the sheet, and as they are they don't.
func TestFrameMirrored(t *testing.T) {
	c := shotOf(0.3, 0.1)
	c.Mirror = true
	v, q := chosen(t, c)
	sheet, places, err := v.Frame(q.Mirrored())
	if err != nil || sheet.Width != 105 || sheet.Height != 110 {
		t.Fatalf("mirrored: %v, %v", sheet, err)
	}
	for _, p := range places {
		if d := p.Image.Dist(c.Seen(p.Sheet)); d > 0.6 {
			t.Errorf("%v is seen %.2f dots off", p.Sheet, d)
		}
	}
	if sheet, _, err := v.Frame(q); err == nil && sheet.Width == 105 {
		t.Errorf("as it is: %v", sheet)
	}
}

// covered is a sheet with paper of its own colour over so many squares of the upper side, from the given one on, and ink where smear says.
func covered(from, n int) sheettest.Sheet {
	s := sheettest.Sheet{Width: 105, Height: 110}
	s.On = func(x, y float64) (sheettest.Light, bool) {
		lo := 15 + 10*float64(from)
		return sheettest.Paper, y < -0.5 && y > -6 && x > lo-1 && x < lo+10*float64(n)-4
	}
	return s
}

// A few squares may be covered, at the beginning, in the middle and at the end; more in a row may not, and the refusal says what would do.
func TestFrameCovered(t *testing.T) {
	for _, c := range []struct {
		from, n int
		ok      bool
	}{{0, 0, true}, {0, 1, true}, {0, 2, true}, {3, 3, true}, {6, 2, true}, {2, 4, false}, {0, 8, false}} {
		shot := shotOf(0.2, 0.1).Of(covered(c.from, c.n))
		v, q := chosen(t, shot)
		sheet, places, err := v.Frame(q)
		if !c.ok {
			if err == nil || !strings.Contains(err.Error(), "nothing may lie on it") || strings.Contains(err.Error(), "\n") {
				t.Errorf("%d covered from %d on: %v, %v; want it refused", c.n, c.from, sheet, err)
			}
			continue
		}
		if want := 4 + 32 - c.n; err != nil || sheet.Width != 105 || len(places) != want {
			t.Errorf("%d covered from %d on: %v, %v, %d places, want %d", c.n, c.from, sheet, err, len(places), want)
		}
		for _, p := range places {
			if d := p.Image.Dist(shot.Seen(p.Sheet)); d > 0.6 {
				t.Errorf("%d covered from %d on: %v is seen %.2f dots off", c.n, c.from, p.Sheet, d)
			}
		}
	}
}

// With three of four covered, though never more than three in a row, too little is left; and a sheet smaller than any that is printed is none.
func TestFrameTooLittle(t *testing.T) {
	part := covered(0, 3)
	first := part.On
	part.On = func(x, y float64) (sheettest.Light, bool) {
		if l, ok := first(x, y); ok {
			return l, ok
		}
		return first(x-40, y)
	}
	for name, s := range map[string]sheettest.Sheet{"covered": part, "small": {Width: 95, Height: 110}, "low": {Width: 110, Height: 95}} {
		v, q := chosen(t, shotOf(0.2, 0.1).Of(s))
		if sheet, _, err := v.Frame(q); err == nil {
			t.Errorf("%s: read as %v", name, sheet)
		}
	}
}

// At 40°, the most that is promised, through lenses of 8 % either way.
func TestFrameAtWorst(t *testing.T) {
	for k, bulge := range []float64{0.08, -0.08} {
		c := shotOf(0.3+1.6*float64(k), 40*math.Pi/180)
		c.Width, c.Height, c.PerMM, c.Bulge = 660, 660, 3.2, bulge
		v, q := chosen(t, c)
		if sheet, _, err := v.Frame(q); err != nil || sheet.Width != 105 || sheet.Height != 110 {
			t.Errorf("turned by %d quarters: %v, %v", k, sheet, err)
		}
	}
}

// Opposite sides have to say the same: a sheet whose lower side is another's is refused.
func TestFrameSidesAgree(t *testing.T) {
	small, large := sheettest.Sheet{Width: 105, Height: 105}, sheettest.Sheet{Width: 115, Height: 105}
	small.On = func(x, y float64) (sheettest.Light, bool) { // the lower side, drawn narrower to fit between the marks
		if y < 104 {
			return sheettest.Light{}, false
		}
		k := x
		if x > 12 && x < 93 {
			k = 12.5 + (x-12.5)*90/80
		} else if x >= 93 {
			k = x + 10
		}
		return large.At(k, y), true
	}
	v, q := chosen(t, shotOf(0, 0).Of(small))
	if s, _, err := v.Frame(q); err == nil {
		t.Errorf("read as %v", s)
	}
}

// The scale at a mark is that of the camera there, in any direction: square on, and where the sheet is tilted.
func TestScaleAtMark(t *testing.T) {
	for tilt, most := range map[float64]float64{0: 0.06, 0.5: 0.14} { // a tilted mark is larger on its nearer side
		c := shotOf(0.6, tilt)
		_, q := chosen(t, c)
		for i, m := range (frame.Sheet{Width: 105, Height: 110}).Marks() {
			for _, way := range []curve.Vec{{X: 1}, {Y: 1}, {X: 0.6, Y: 0.8}, {X: -0.8, Y: 0.6}} {
				d := c.Seen(m.Add(way.Mul(0.5))).Sub(c.Seen(m.Sub(way.Mul(0.5))))
				want := d.Norm()
				if got := q[i].scale(d.Mul(1 / want)); math.Abs(got-want) > most*want {
					t.Errorf("tilted by %v, mark %d along %v: %.3f dots a mm, want %.3f", tilt, i, way, got, want)
				}
			}
		}
	}
}

// The nearest piece of a square's size is taken, if its middle is within about a third of a step: neither a speck nor a blot nor a long bar.
func TestNear(t *testing.T) {
	box := func(x, y, w, h float64) func(curve.Vec) bool {
		return func(v curve.Vec) bool { return math.Abs(v.X-x) < w/2 && math.Abs(v.Y-y) < h/2 }
	}
	view := func(shapes ...func(curve.Vec) bool) *View {
		return Look(field(80, 60, func(v curve.Vec) float64 {
			for _, s := range shapes {
				if s(v) {
					return 0.05
				}
			}
			return 0.8
		}))
	}
	const stride = 20.0 // of squares of 10
	at := curve.Vec{X: 40, Y: 30}
	for _, c := range []struct {
		name string
		v    *View
		want curve.Vec
		ok   bool
	}{
		{"a square", view(box(42, 29, 10, 10)), curve.Vec{X: 42, Y: 29}, true},
		{"two, the second nearer", view(box(34, 24, 7, 7), box(43, 33, 7, 7)), curve.Vec{X: 43, Y: 33}, true},
		{"two, the first nearer", view(box(37, 27, 7, 7), box(46, 36, 7, 7)), curve.Vec{X: 37, Y: 27}, true},
		{"too far", view(box(48, 30, 10, 10)), curve.Vec{}, false},
		{"a speck", view(box(40, 30, 4, 4)), curve.Vec{}, false},
		{"a blot", view(box(40, 30, 17, 17)), curve.Vec{}, false},
		{"a bar", view(box(40, 30, 26, 5)), curve.Vec{}, false},
		{"nothing", Look(raster.NewGrey(80, 60)), curve.Vec{}, false},
	} {
		got, ok := c.v.near(at, stride)
		if ok != c.ok || ok && got.Dist(c.want) > 0.1 {
			t.Errorf("%s: %v, %v; want %v, %v", c.name, got, ok, c.want, c.ok)
		}
	}
	for _, out := range []curve.Vec{{X: -50, Y: 30}, {X: 40, Y: 900}, {X: 79.9, Y: 59.9}} {
		if p, ok := view(box(40, 30, 10, 10)).near(out, stride); ok {
			t.Errorf("at %v: %v", out, p)
		}
	}
}
