package draw

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/ui/canvas"
	"chape/ui/test/golden"
)

// orchard is a knife of our own invention: a drop point, a bolster with two
// faces and a swelling oval handle.
func orchard() calc.Input {
	mark := func(at, top, bottom, thick float64, k knife.Kind) knife.Station {
		return knife.Station{At: length.Length(at), Top: length.Length(top), Bottom: length.Length(bottom),
			Thick: length.Length(thick), Kind: k, Bevel: 1}
	}
	return calc.Input{
		Knife: knife.Knife{Stations: []knife.Station{
			mark(0, 7, 7, 0.8, knife.Blade), mark(10, 4.5, 14, 1.6, knife.Blade), mark(20, 2.8, 19.5, 2.2, knife.Blade),
			mark(45, 0.6, 26, 3, knife.Blade), mark(70, 0, 28, 3.4, knife.Blade), mark(105, 0, 28, 3.8, knife.Blade),
			mark(105, 0, 30, 14, knife.Slab), mark(117, 0, 30, 15, knife.Slab),
			mark(117, 0, 29, 16, knife.Oval), mark(150, 0.5, 33, 21, knife.Oval), mark(190, 1.5, 30, 18, knife.Oval),
			mark(225, 0, 34, 19, knife.Oval),
		}},
		Sheath: calc.Sheath{Mouth: 150, Leather: 3.2, Welt: 3.2, Plies: 1, Clearance: 3, HandleClearance: 1, PointRoom: 3, Gap: 7.5, Margin: 5,
			Sanding: 1.5, Blend: 60, Neutral: 0.5, MouthRise: 8, MouthRound: 6, Drain: 4},
		Belt:   calc.Belt{Width: 38, Thickness: 4, Ease: 4, Tab: 30, Row: 12, Lap: 20, Offset: 8},
		Stitch: calc.Stitch{Pitch: 4, Thread: 0.8, First: 4, Last: 4, Back: 2, Tail: 150, Waste: 0.05},
		Fits:   []calc.Fit{{At: 108, By: 1.5, Reach: 20}},
		Limits: calc.DefaultLimits(),
	}
}

func plan(t testing.TB, change func(*calc.Input)) *calc.Plan {
	t.Helper()
	in := orchard()
	if change != nil {
		change(&in)
	}
	p, err := calc.Compute(in)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func noTab(in *calc.Input) { in.Belt = calc.Belt{Loop: calc.NoLoop} }

func check(t *testing.T, name string, c *canvas.Canvas) {
	t.Helper()
	golden.Check(t, name+".golden", strings.Join(c.Rows(), "\n"))
}

// How a dash looks is held in package canvas, in each set of glyphs; here each shape is drawn
// in one of them, so that few drawings change with it.
func TestGoldenSheets(t *testing.T) {
	for _, k := range []struct {
		name  string
		w, h  int
		shape Shape
		right bool
		at    float64
		times float64
		glyph canvas.Glyphs
	}{
		{"half-left-hand", 78, 11, Half, false, 0, 1, canvas.ASCII},
		{"whole", 78, 24, Whole, true, 105, 1, canvas.Braille},
		{"point", 78, 24, Whole, true, 0, 5, canvas.ASCII},
		{"closed", 78, 18, Closed, true, 105, 1, canvas.Braille},
	} {
		p := plan(t, nil)
		c := canvas.New(k.w, k.h, k.glyph)
		at := curve.Vec{X: k.at, Y: p.Flat.Stitch.Height(k.at)}
		s := Lay(c, k.glyph, p, k.shape, k.right).Closer(c, k.times, at)
		s.Draw(c, p, &Mark{At: k.at, Label: "6"})
		check(t, fmt.Sprintf("%s-%s", k.name, k.glyph), c)
	}
}

// The strap crosses the handle with its snap in front: on the closed sheath and nowhere
// else, at its place along the knife.
func TestStrap(t *testing.T) {
	with := plan(t, func(in *calc.Input) {
		in.Strap = calc.Strap{Kind: calc.SnapStrap, At: 185, Placed: true, Width: 18, Thickness: 2.4, Overlap: 30}
	})
	without := plan(t, nil)
	draw := func(p *calc.Plan, shape Shape) *canvas.Canvas {
		c := canvas.New(78, 18, canvas.Braille)
		Lay(c, canvas.Braille, p, shape, true).Draw(c, p, nil)
		return c
	}
	c := canvas.New(78, 18, canvas.Braille)
	s := Lay(c, canvas.Braille, with, Closed, true)
	lo, _ := s.cell(c, curve.Vec{X: 185 - 9 - 2}, 1)
	hi, _ := s.cell(c, curve.Vec{X: 185 + 9 + 2}, 1)
	a, b := draw(with, Closed).Rows(), draw(without, Closed).Rows()
	changed := 0
	for y := range a {
		was, is := []rune(b[y]), []rune(a[y])
		for x := range max(len(was), len(is)) {
			if x < len(was) && x < len(is) && was[x] == is[x] {
				continue
			}
			changed++
			if x < min(lo, hi) || x > max(lo, hi) {
				t.Errorf("row %d, column %d is not as without a strap; the strap lies at columns %d to %d", y, x, lo, hi)
			}
		}
	}
	if changed < 6 {
		t.Errorf("%d cells show the strap", changed)
	}
	if whole := draw(with, Whole).Rows(); strings.Join(whole, "") != strings.Join(draw(without, Whole).Rows(), "") {
		t.Error("the flat pattern has a strap in it")
	}
}

func TestGoldenSections(t *testing.T) {
	p := plan(t, nil)
	for _, k := range []struct {
		name  string
		at    float64
		glyph canvas.Glyphs
	}{{"bolster", 105, canvas.Braille}, {"blade", 70, canvas.ASCII}, {"past-the-mouth", 190, canvas.ASCII}} {
		c := canvas.New(60, 16, k.glyph)
		Section(c, k.glyph, p.Across(k.at))
		check(t, fmt.Sprintf("section-%s-%s", k.name, k.glyph), c)
	}
}

func TestGoldenLegend(t *testing.T) {
	c := canvas.New(80, 1, canvas.ASCII)
	Legend(c, 0.3, length.Inches, Whole)
	check(t, "legend-ascii", c)
}

// A place put on the sheet and read back from its cell is the same place,
// within the cell; and no half is turned over: from the fold at the point, the
// mouth lies ahead and the back half on the side that was asked for.
func TestPlacesComeBack(t *testing.T) {
	p := plan(t, nil)
	for _, shape := range []Shape{Whole, Half, Closed} {
		for _, right := range []bool{true, false} {
			for _, size := range [][2]int{{120, 20}, {30, 70}} {
				c := canvas.New(size[0], size[1], canvas.Braille)
				s := Lay(c, canvas.Braille, p, shape, right)
				if s.Upright != (size[0] < size[1]) {
					t.Errorf("%v in %v lies wrong way up", shape, size)
				}
				for _, v := range []curve.Vec{{X: 0, Y: 10}, {X: 105, Y: 30}, {X: 149, Y: 3}} {
					cx, cy := s.cell(c, v, 1)
					if d := s.At(cx, cy).Dist(v); d > 2.3/s.Scale() {
						t.Errorf("%v comes back as %v", v, s.At(cx, cy))
					}
				}
				o, mouth, side := s.dot(curve.Vec{}, 1), s.dot(curve.Vec{X: 10}, 1), s.dot(curve.Vec{Y: 10}, 1)
				turn := (mouth.X-o.X)*(side.Y-o.Y) - (mouth.Y-o.Y)*(side.X-o.X)
				if want := right != (shape == Closed); (turn > 0) != want { // y goes down on a screen
					t.Errorf("shape %v, back right %v: mirrored", shape, right)
				}
			}
		}
	}
}

// All of the shape is on the canvas when it is laid, and stays in sight when
// it is seen closer.
func TestFits(t *testing.T) {
	for _, p := range []*calc.Plan{plan(t, nil), plan(t, noTab)} {
		for _, shape := range []Shape{Whole, Half} {
			c := canvas.New(70, 25, canvas.Braille)
			s := Lay(c, canvas.Braille, p, shape, true)
			w, h := c.Dots()
			for _, v := range p.Flat.Outline {
				if shape == Half && v.Y < 0 {
					continue
				}
				if d := s.dot(v, 1); d.X < 0 || d.Y < 0 || d.X > float64(w) || d.Y > float64(h) {
					t.Fatalf("shape %v: %v lies outside", shape, v)
				}
			}
			for _, v := range []curve.Vec{{X: -10}, {X: 0, Y: 20}, {X: 150, Y: 50}} {
				near := s.Closer(c, 4, v)
				if d := near.dot(v, 1); d.X < 0 || d.Y < 0 || d.X > float64(w) || d.Y > float64(h) {
					t.Errorf("closer at %v does not show it", v)
				}
				if math.Abs(near.Scale()/s.Scale()-4) > 1e-9 {
					t.Errorf("four times closer is %v", near.Scale()/s.Scale())
				}
			}
		}
	}
}

// The grain side lies one thickness of leather outside the inner face.
func TestOuterFace(t *testing.T) {
	p := plan(t, nil)
	for _, x := range []float64{0, 20, 70, 105, 117, 140} {
		a := p.Across(x)
		for _, v := range outerFace(a) {
			if v.X > a.Edge-a.Leather || v.Y == 0 {
				continue
			}
			if d := v.Dist(a.Inside.Nearest(v)); math.Abs(d-a.Leather) > 0.02 {
				t.Errorf("at %v mm: %v is %.3f from the inner face, the leather is %v", x, v, d, a.Leather)
			}
		}
	}
}

// The scale line is as long as it says, to half a cell.
func TestScaleBar(t *testing.T) {
	for _, u := range []length.Unit{length.Millimetres, length.Inches} {
		for scale := 0.02; scale < 12; scale *= 1.37 {
			b, ok := ScaleBar(scale, u, longestBar)
			if !ok {
				t.Errorf("no scale line at %.3f cells a mm in %v", scale, u)
				continue
			}
			if off := math.Abs(float64(b.Cells) - b.Length.MM()*scale); off > 0.5 || b.Cells < 5 || b.Cells > longestBar {
				t.Errorf("%v at %.3f cells a mm is %d cells", b.Length, scale, b.Cells)
			}
		}
	}
}

// Nothing drawn at any size, with bad marks too, goes wrong.
func TestAnySize(t *testing.T) {
	p := plan(t, nil)
	for w := 0; w < 60; w += 7 {
		for h := 0; h < 40; h += 5 {
			for _, g := range []canvas.Glyphs{canvas.Braille, canvas.Blocks, canvas.ASCII} {
				c := canvas.New(w, h, g)
				for _, shape := range []Shape{Whole, Half, Closed} {
					s := Lay(c, g, p, shape, true)
					s.Draw(c, p, nil)
					s.Closer(c, 30, curve.Vec{X: 1e6, Y: -1e6}).Draw(c, p, &Mark{At: 1e9, Label: "12"})
				}
				Section(c, g, p.Across(105))
				Section(c, g, p.Across(1e4))
				Legend(c, 0.3, length.Millimetres, Whole)
			}
		}
	}
}

// Holes are drawn from where they can be told apart, and not before.
func TestHolesWhenApart(t *testing.T) {
	p := plan(t, noTab)
	c := canvas.New(100, 40, canvas.ASCII)
	s := Lay(c, canvas.ASCII, p, Whole, true)
	count := func(times float64) int {
		c.Clear()
		s.Closer(c, times, p.Stitch.Flat[10]).holes(c, p.Stitch.Flat, 1, p.Stitch.Walk, 1.2)
		return strings.Count(strings.Join(c.Rows(), ""), "o")
	}
	if n := count(1); n != 0 {
		t.Errorf("%d holes run into one another", n)
	}
	if n := count(3); n < 10 {
		t.Errorf("%d holes seen closer", n)
	}
}

func BenchmarkWhole(b *testing.B) {
	p := plan(b, nil)
	c := canvas.New(120, 40, canvas.Braille)
	b.ReportAllocs()
	for b.Loop() {
		c.Clear()
		Lay(c, canvas.Braille, p, Whole, true).Draw(c, p, &Mark{At: 105, Label: "6"})
	}
}
