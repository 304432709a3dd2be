package calc

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mathext"

	"chape/calc/curve"
	"chape/calc/knife"
)

// stringOver measures the string over one section with no welt, to a point
// on the blade plane at u.
func stringOver(s knife.Section, u float64) float64 {
	var str tautString
	return str.over(0, []knife.Section{s}, curve.Vec{X: u})
}

// TestStringAgainstOpenBelt holds the taut string against belts over two
// pulleys. A belt over R and r is the belt over R-r and a point, moved out by
// r all round, which adds 2πr (Steiner).
// Sources: textbook belt problems (R 6, r 1, C 13; R 21, r 6, C 30);
// Elementary Geometry for College Students, 7th ed., 8.4 (R = r = 6, C 20).
func TestStringAgainstOpenBelt(t *testing.T) {
	for _, c := range []struct{ R, r, C, want float64 }{
		{6, 1, 13, 49.9390597721},
		{21, 6, 30, 30*math.Sqrt(3) + 32*math.Pi},
	} {
		big := c.R - c.r
		round := knife.Section{Kind: knife.Oval, Bottom: 2 * big, Thick: 2 * big}
		within(t, "belt", 2*stringOver(round, big+c.C)+2*math.Pi*c.r, c.want, 2*0.005)
	}
	equal := knife.Section{Kind: knife.Slab, Bottom: 20 + 12, Thick: 12, Round: 6}
	within(t, "belt over equal pulleys", 2*stringOver(equal, 32), 77.699112, 2*0.005)
}

// TestStringAgainstEllipse: an oval's string is half the ellipse's
// perimeter. Sources: SciPy reference, ellipe (3.5 × 2.1); Abramowitz &
// Stegun 17.1 (1 × 0.5 = 4 E(0.75)); gonum's CompleteE.
func TestStringAgainstEllipse(t *testing.T) {
	within(t, "E(0.5)", mathext.CompleteE(0.5), 1.350643881047676, 1e-12)
	within(t, "E(0.75)", mathext.CompleteE(0.75), 1.211056027568459, 1e-12)
	for _, c := range []struct{ a, b, want float64 }{
		{3.5, 2.1, 17.868899204378693},
		{1, 0.5, 4.844224110273839},
		{18, 11, 4 * 18 * mathext.CompleteE(1-11.0*11/(18*18))},
		{8, 14, 4 * 14 * mathext.CompleteE(1-8.0*8/(14*14))},
	} {
		oval := knife.Section{Kind: knife.Oval, Bottom: 2 * c.a, Thick: 2 * c.b}
		within(t, "ellipse", 2*stringOver(oval, 2*c.a), c.want, 2*0.005)
	}
}

// TestBendAllowance. Source: US Navy training manual 14119, U-bolt and
// flange layout (printed 5.10 and 3.925; the exact figures are worked out).
func TestBendAllowance(t *testing.T) {
	within(t, "flange of 90°", Bend(math.Pi/2, 3, 0.5, 0.5), 5.105088, 1e-6)
	within(t, "U-bolt of 180°", Bend(math.Pi, 1, 0.5, 0.5), 3.926991, 1e-6)
}

// TestParallelCurve: perimeter and area of a dilated shape after Steiner,
// P + 2πd and A + Pd + πd². Source: do Carmo, Differential Geometry of Curves
// and Surfaces. The dilation works on half a shape lying on the fold.
func TestParallelCurve(t *testing.T) {
	square := curve.Graph{X: curve.Grid(0, 10, 0.1)}
	for range square.X {
		square.Y = append(square.Y, 5)
	}
	ellipse := curve.Graph{X: curve.Grid(-3.5, 3.5, 0.02)}
	for _, x := range ellipse.X {
		ellipse.Y = append(ellipse.Y, 2.1*math.Sqrt(max(0, 1-x*x/(3.5*3.5))))
	}
	for _, c := range []struct {
		what       string
		g          curve.Graph
		d, per, ar float64
	}{
		{"square", square, 3, 58.849556, 248.274334},
		{"ellipse", ellipse, 0.5, 21.010492, 32.810554},
	} {
		n := len(c.g.X) - 1
		out := curve.Dilate(c.g, curve.Grid(c.g.X[0]-c.d, c.g.X[n]+c.d, 0.01), c.d)
		line := append(curve.Line{{X: out.X[0]}}, out.Line()...)
		line = append(line, curve.Vec{X: out.X[len(out.X)-1]})
		within(t, c.what+": perimeter", 2*line.Length(), c.per, 0.02)
		within(t, c.what+": area", 2*out.Area(), c.ar, 0.0005*c.ar)
	}
}

// TestCircleSegment: the arcs of outlines and corners. Source: worked
// example, circular sections (matheass help E210): chord 21, height 6.
func TestCircleSegment(t *testing.T) {
	const r, turn = 12.1875, 118.97953 * math.Pi / 180
	arc := arcRound(curve.Vec{}, r, 0, turn)
	within(t, "chord", arc[0].Dist(arc[len(arc)-1]), 21, 1e-5)
	within(t, "arc", arc.Length(), 25.308373, 0.02)
	within(t, "area", math.Abs(arc.Area()), 89.254148, 0.0005*89)
	small := arcRound(curve.Vec{}, 1/(math.Pi/4), 0, math.Pi/4)
	within(t, "chord of an arc of 1 over 45°", small[0].Dist(small[len(small)-1]), 0.97449536, 1e-7)
}

// TestDividersOnCircle: twelve spaces on a circle of diameter 1. Source:
// handbook table of chords for spacing off a circle, from memory: 0.258819
// (= sin 15°).
func TestDividersOnCircle(t *testing.T) {
	half := curve.Line{}
	for i := 0; i <= 20000; i++ {
		sin, cos := math.Sincos(math.Pi * float64(i) / 20000)
		half = append(half, curve.Vec{X: cos / 2, Y: sin / 2})
	}
	chord, at := half.Walk(0, half.Length(), 6)
	within(t, "chord", chord, 0.258819, 1e-6)
	if len(at) != 7 {
		t.Errorf("dividers fell %d times, want 7", len(at))
	}
}

// TestThreadUse holds the thread's ratio against C = 2 + 2TS, in seam
// lengths, for a lockstitch of two strands; a 401 stitch uses two more.
// Sources: A&E thread bulletin, estimating thread consumption (401 at 8 per
// inch); textile calculations, worked example (301, T .01, S 10); the last is
// worked out with the full stack of three layers of 8 oz.
func TestThreadUse(t *testing.T) {
	const inch, n = 25.4, 100000
	for _, c := range []struct{ thick, perInch, chain, want float64 }{
		{.055, 8, 2, 4.88}, {.060, 8, 2, 4.96}, {.065, 8, 2, 5.04}, {.070, 8, 2, 5.12}, {.075, 8, 2, 5.20},
		{.01, 10, 0, 2.2},
		{.375, 6, 0, 6.5},
	} {
		q := Stitching{Stitches: n, Holes: n + 1, Pitch: inch / c.perInch, Stack: inch * c.thick}
		within(t, "thread per seam", seamThread(q, Stitch{}).Ratio+c.chain, c.want, 1e-4)
	}
}

// TestNumberDrills. Source: ASME B94.11M sizes, as in three printed tables.
func TestNumberDrills(t *testing.T) {
	for n, inch := range map[int]float64{52: .0635, 60: .0400, 80: .0135, 30: .1285, 43: .0890, 70: .0280} {
		within(t, "number drill", NumberDrill(n), 25.4*inch, 1e-9)
	}
	for n := 31; n <= 80; n++ {
		if NumberDrill(n) >= NumberDrill(n-1) {
			t.Errorf("#%d is not smaller than #%d", n, n-1)
		}
	}
}
