package trace

import (
	"context"
	"errors"
	"math"
	"sync"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/frame"
	"chape/calc/trace/sheettest"
)

// A tenth of a millimetre a dot, more on a sheet that would have over 24 million of them; from the origin to the far corner.
func TestNewTruth(t *testing.T) {
	for _, c := range []struct {
		s    frame.Sheet
		dot  float64
		w, h int
	}{{small, 0.1, 1051, 1101}, {frame.Sheet{Width: 175, Height: 265}, 0.1, 1751, 2651}, {frame.Sheet{Width: 565, Height: 1165}, 0.1656081, 3412, 7035}} {
		got := newTruth(c.s)
		if math.Abs(got.dot-c.dot) > 1e-6 || got.grey.Width != c.w || got.grey.Height != c.h {
			t.Errorf("of %v: %v mm a dot, %d × %d; want %v, %d × %d", c.s, got.dot, got.grey.Width, got.grey.Height, c.dot, c.w, c.h)
		}
		if n := len(got.grey.V); n > 24_020_000 {
			t.Errorf("of %v: %d dots", c.s, n)
		}
	}
	if got := newTruth(small).place(curve.Vec{X: 20, Y: 1100}); got.Dist(curve.Vec{X: 2, Y: 110}) > 1e-9 {
		t.Errorf("dot 20, 1100 lies at %v", got)
	}
}

// By hand: a drawing may lie 1.5 mm clear of the frame, of the marks (10 mm), and of the row (from 15 to 90, down to 6.5).
func TestHeld(t *testing.T) {
	tr := newTruth(small)
	for _, c := range []struct {
		x, y float64
		want bool
	}{
		{52, 60, true}, {1.6, 60, true}, {1.4, 60, false}, {103.4, 60, true}, {103.6, 60, false}, {52, 108.4, true}, {52, 108.6, false},
		{11.4, 11.4, false}, {11.6, 11.4, true}, {11.4, 11.6, true}, {94, 11, false},
		{94, 99, false}, {93, 99, true}, {11, 99, false}, {11, 98, true}, {52, 7.9, false}, {52, 8.1, true},
		{12.9, 4, true}, {13.6, 4, false}, {91.4, 4, false}, {92, 4, true}, {-1, 50, false}, {50, -1, false},
	} {
		if got := tr.held(curve.Vec{X: c.x, Y: c.y}); got != c.want {
			t.Errorf("held at %v, %v: %v", c.x, c.y, got)
		}
	}
}

// Every row is done once, whatever strand does it; who gives up gets that back.
func TestRows(t *testing.T) {
	tr := flat(func(curve.Vec) float64 { return 1 })
	count := make([]int, tr.grey.Height)
	var one sync.Mutex
	if err := tr.rows(context.Background(), func(y int) {
		one.Lock()
		defer one.Unlock()
		count[y]++
	}); err != nil {
		t.Fatal(err)
	}
	for y, n := range count {
		if n != 1 {
			t.Fatalf("row %d is done %d times", y, n)
		}
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if err := tr.rows(ctx, func(int) { t.Error("a row is done after all") }); !errors.Is(err, context.Canceled) {
		t.Errorf("given up: %v", err)
	}
}

// The true picture has edges where they are on the sheet, whatever the camera did: dark to the right of 40 mm and below 70, within a twentieth of a millimetre.
func TestStraighten(t *testing.T) {
	c := shotOf(func(x, y float64) (sheettest.Light, bool) {
		return sheettest.Ink, x > 40 && x < 80 && y > 20 && y < 95 && (x < 60 || y > 70)
	})
	s := seenBy(t, c)
	tr, err := straighten(context.Background(), c.Take(), s)
	if err != nil {
		t.Fatal(err)
	}
	crossing := func(from, way curve.Vec) float64 {
		const half = (0.8 + 0.05) / 2
		last := tr.grey.At(from.Mul(10))
		for d := 0.05; d < 3; d += 0.05 {
			now := tr.grey.At(from.Add(way.Mul(d)).Mul(10))
			if (last < half) != (now < half) {
				return d - 0.05*float64(now-half)/float64(now-last)
			}
			last = now
		}
		return math.NaN()
	}
	for _, k := range []float64{30, 45, 65, 90} {
		if got := 38.5 + crossing(curve.Vec{X: 38.5, Y: k}, curve.Vec{X: 1}); !(math.Abs(got-40) < 0.05) {
			t.Errorf("the edge at y = %v lies at %v, want 40", k, got)
		}
	}
	for _, k := range []float64{62, 70, 78} {
		if got := 68.5 + crossing(curve.Vec{X: k, Y: 68.5}, curve.Vec{Y: 1}); !(math.Abs(got-70) < 0.05) {
			t.Errorf("the edge at x = %v lies at %v, want 70", k, got)
		}
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := straighten(ctx, c.Take(), s); !errors.Is(err, context.Canceled) {
		t.Errorf("given up: %v", err)
	}
}

// Even light: what a fall of light and a hard shadow of 2 : 1 leave of the paper is 1, but at the shadow's very edge; a line keeps its depth on both sides; what is printed
// is paper.
func TestEven(t *testing.T) {
	shade := func(v curve.Vec) float64 {
		l := 1 - 0.4*v.Y/110
		if v.X > 60 {
			l *= 0.5
		}
		return l
	}
	line := circle(middle, 25)
	tr := flat(func(v curve.Vec) float64 {
		if v.X < 8 && v.Y < 8 { // a mark's ink
			return 0.05
		}
		return shade(v) * pencil.on(line(v))
	})
	tr.even()
	for i, got := range tr.grey.V {
		v := tr.place(curve.Vec{X: float64(i % tr.grey.Width), Y: float64(i / tr.grey.Width)})
		switch d := math.Abs(line(v)); {
		case !tr.kept[i]:
			if got != 1 || tr.held(v) {
				t.Fatalf("at %v, where something is printed, there is %v", v, got)
			}
		case math.Abs(v.X-60) < 1:
		case d > 1.5 && math.Abs(float64(got)-1) > 0.03:
			t.Fatalf("at %v the paper has %v", v, got)
		case d < 0.06 && math.Abs(float64(got)-0.4) > 0.1:
			t.Fatalf("at %v the line has %v, want about 0.4", v, got)
		}
	}
}

// levelled is an evened picture of a line.
func levelled(light func(curve.Vec) float64, noise float64) (ink, bool) {
	tr := flat(light).noisy(noise)
	tr.even()
	return tr.levels()
}

// Paper, noise and line are those drawn; the level that parts them is two fifths of the way down from the paper.
func TestLevelsOfInk(t *testing.T) {
	for _, c := range []struct{ dark, noise float64 }{{0.6, 0.005}, {0.35, 0.01}, {0.8, 0}} {
		k, ok := levelled(pen{0.8, 0.1, c.dark}.lines(circle(middle, 25)), c.noise)
		if !ok || math.Abs(float64(k.paper)-1) > 0.03 || math.Abs(float64(k.line)-(1-c.dark)) > 0.12 {
			t.Errorf("a line of %v: %+v, %v", c.dark, k, ok)
		}
		if want := c.noise / 0.8 / 3; math.Abs(float64(k.noise)-max(want, 0.002)) > 0.4*max(want, 0.002) { // nine dots together
			t.Errorf("noise of %v: %v, want about %v", c.noise, k.noise, want)
		}
		if want := k.paper - 0.4*(k.paper-k.line); k.half() != want {
			t.Errorf("%+v is parted at %v, want %v", k, k.half(), want)
		}
	}
}

// Without a line, with one too faint for the noise, or with less than 40 mm of one, there is none.
func TestLevelsWithoutInk(t *testing.T) {
	for name, c := range map[string]struct {
		light func(curve.Vec) float64
		noise float64
		ok    bool
	}{
		"clean":           {pencil.lines(), 0, false},
		"noise alone":     {pencil.lines(), 0.03, false},
		"a faint line":    {pen{0.6, 0.1, 0.05}.lines(circle(middle, 25)), 0.01, false},
		"hardly drawn":    {pen{0.8, 0.1, 0.1}.lines(circle(middle, 25)), 0.002, false},
		"a short line":    {pencil.lines(segment(curve.Vec{X: 40, Y: 60.4}, curve.Vec{X: 66, Y: 60.4})), 0.005, false},
		"a longer line":   {pencil.lines(segment(curve.Vec{X: 20, Y: 60.4}, curve.Vec{X: 80, Y: 60.4})), 0.005, true},
		"faint but clean": {pen{0.8, 0.1, 0.18}.lines(circle(middle, 25)), 0.003, true},
	} {
		if k, ok := levelled(c.light, c.noise); ok != c.ok {
			t.Errorf("%s: %+v, %v", name, k, ok)
		}
	}
}
