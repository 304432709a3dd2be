package canvas

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
)

// checkSize fails when the lines are not exactly w×h cells.
func checkSize(t *testing.T, rows []string, w, h int) {
	t.Helper()
	if len(rows) != h {
		t.Fatalf("%d lines, want %d", len(rows), h)
	}
	for i, r := range rows {
		if got := ansi.StringWidth(r); got != w {
			t.Fatalf("line %d is %d wide, want %d: %q", i, got, w, r)
		}
	}
}

func TestAnyLineStaysInside(t *testing.T) {
	wild := []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, math.MaxFloat64, -math.MaxFloat64,
		math.SmallestNonzeroFloat64, 0, 1e9, -1e9, 13, 26}
	r := rand.New(rand.NewPCG(1, 2))
	place := func() float64 {
		if r.IntN(4) == 0 {
			return wild[r.IntN(len(wild))]
		}
		return r.NormFloat64() * 40
	}
	for _, g := range []Glyphs{Braille, Blocks, ASCII} {
		c := New(13, 7, g)
		for range 5000 {
			s := Stroke{LineType(r.IntN(4)), Pen(r.IntN(5))}
			pts := []Point{{place(), place()}, {place(), place()}, {place(), place()}}
			c.Polyline(pts, s)
			c.Polygon(pts, s)
			c.Circle(place(), place(), place(), s)
			c.Cross(place(), place(), place(), 1)
			c.Fill(pts, r.IntN(4), 2)
			c.Dot(place(), place(), 3)
		}
		checkSize(t, c.Rows(), 13, 7)
	}
}

// A line cut by the canvas must set the same dots as the piece inside it.
func TestClippingKeepsTheSlope(t *testing.T) {
	c := New(20, 10, Braille)
	c.Line(-100, -90, 200, 210, Stroke{Type: Thin})
	for i := range 30 {
		x, y := i, i+10
		cell := c.cells[y/4*20+x/2]
		if cell.bits&brailleBits[y%4][x%2] == 0 {
			t.Errorf("dot (%d, %d) of the line y = x + 10 is not set\n%s", x, y, strings.Join(c.Rows(), "\n"))
		}
	}
}

func TestDashesRunOnOverCornersAndEdges(t *testing.T) {
	s := Stroke{Type: Dashed}
	whole, broken := New(40, 1, Braille), New(40, 1, Braille)
	whole.Line(-31, 1.5, 75.5, 1.5, s)
	var pts []Point
	for x := -31.0; x <= 75.5; x += 0.5 {
		pts = append(pts, Point{x, 1.5})
	}
	broken.Polyline(pts, s)
	if got, want := broken.Rows()[0], whole.Rows()[0]; got != want {
		t.Errorf("a line in many pieces is dashed as\n%q, in one piece as\n%q", got, want)
	}
}

func TestWidthIsExactWithAnyText(t *testing.T) {
	parts := []string{"a", "é", "e\u0301", "漢", "🔪", "🇩", "🇪", "👩\u200d🏭", "\x1b[31m", "\u202e", "\u200b", "\x00",
		"\n", "\t", "\u0300", "ก็", "क\u094d", "ष", "ᄀ", "ᅡ", "❤\ufe0f", "\xff", "🏽", "½"}
	styles := []Style{{}, {"\x1b[1m", "\x1b[0m"}}
	r := rand.New(rand.NewPCG(3, 4))
	for range 3000 {
		w, h := r.IntN(30), r.IntN(5)
		c := New(w, h, Glyphs(r.IntN(3)))
		c.Line(0, 0, 60, 20, Stroke{})
		for range 4 {
			var b strings.Builder
			for range r.IntN(12) {
				b.WriteString(parts[r.IntN(len(parts))])
			}
			c.Text(r.IntN(34)-2, r.IntN(7)-1, b.String(), Pen(r.IntN(3)))
		}
		rows := c.Render(styles)
		checkSize(t, rows, w, h)
		for _, row := range rows {
			if strings.ContainsAny(ansi.Strip(row), "\x1b\n\t\x00\u202e\u200b") {
				t.Fatalf("a control got through: %q", row)
			}
		}
	}
}

func TestRunsOfOnePenAreStyledOnce(t *testing.T) {
	c := New(6, 1, ASCII)
	c.Line(0, 0.5, 2.5, 0.5, Stroke{Continuous, 1})
	c.Line(4, 0.5, 4.5, 0.5, Stroke{Continuous, 2})
	got := c.Render([]Style{{}, {"<1>", "</1>"}, {"<2>", "</2>"}})[0]
	if want := "<1>---</1> <2>-</2> "; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestViewIsToScale(t *testing.T) {
	for _, g := range []Glyphs{Braille, Blocks, ASCII} {
		for _, aspect := range []float64{1.6, 2, 2.4} {
			c := New(60, 20, g)
			c.SetAspect(aspect)
			v := c.Fit(Box{-10, -5, 190, 45})
			across, down := g.Dots()
			// In cell widths, a millimetre across is as long as one down.
			o, x, y := v.Dot(0, 0), v.Dot(1, 0), v.Dot(0, 1)
			wide := (x.X - o.X) / float64(across)
			high := (y.Y - o.Y) / float64(down) * aspect
			if math.Abs(wide-high) > 1e-12 {
				t.Errorf("%v at %v: 1 mm is %v across and %v down", g, aspect, wide, high)
			}
			if bx, by := v.MM(v.Dot(37, 12)); math.Abs(bx-37)+math.Abs(by-12) > 1e-9 {
				t.Errorf("%v: MM(Dot(37, 12)) = %v, %v", g, bx, by)
			}
			w, h := c.Dots()
			for _, p := range []Point{v.Dot(-10, -5), v.Dot(190, 45)} {
				if p.X < 0 || p.Y < 0 || p.X >= float64(w) || p.Y >= float64(h) {
					t.Errorf("%v: corner at %v is off the canvas", g, p)
				}
			}
		}
	}
}

func TestZeroCanvas(t *testing.T) {
	c := New(0, -3, Braille)
	c.Line(0, 0, 9, 9, Stroke{})
	c.Text(0, 0, "x", 0)
	v := c.Fit(Box{})
	if p := v.Dot(1, 1); !finite(p.X) || !finite(p.Y) {
		t.Errorf("a place on no canvas is %v", p)
	}
	checkSize(t, c.Rows(), 0, 0)
}

// BenchmarkFrame draws what a plan has: six long curves, eighty holes, labels.
func BenchmarkFrame(b *testing.B) {
	c := New(120, 40, Braille)
	styles := make([]Style, 8)
	for i := range styles {
		styles[i] = Style{"\x1b[38;5;137m", "\x1b[0m"}
	}
	curve := make([]Point, 300)
	b.ReportAllocs()
	for b.Loop() {
		c.Clear()
		for k := range 6 {
			for i := range curve {
				x := float64(i) / 300 * 240
				curve[i] = Point{x, 80 + float64(10*k-30)*math.Sqrt(1-(x-120)*(x-120)/14400)}
			}
			c.Polyline(curve, Stroke{LineType(k % 4), Pen(k)})
		}
		for i := range 80 {
			c.Circle(float64(3*i), 60, 1.2, Stroke{Thin, 6})
		}
		c.Text(4, 2, "stitch line", 7)
		c.Render(styles)
	}
}
