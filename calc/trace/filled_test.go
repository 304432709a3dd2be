package trace

import (
	"context"
	"errors"
	"math"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/raster"
	"chape/calc/trace/sheettest"
)

const laidDot = 0.2 // mm, of these tests' dots

// laid is the inside of the frame with a piece on it: its colour by place inside, under light by place. Edges are a dot soft.
func laid(shape far, colour [3]float64, light func(v curve.Vec) float64) *pieceField {
	return laidAt(laidDot, shape, colour, light)
}

func laidAt(dot float64, shape far, colour [3]float64, light func(v curve.Vec) float64) *pieceField {
	f := &pieceField{truth: flatAt(dot, func(curve.Vec) float64 { return 1 })}
	for c := range f.rgb {
		f.rgb[c] = raster.NewGrey(f.grey.Width, f.grey.Height)
	}
	for i := range f.grey.V {
		v := f.place(curve.Vec{X: float64(i % f.grey.Width), Y: float64(i / f.grey.Width)})
		in := min(max(0.5-shape(v)/(2*dot), 0), 1)
		l := 0.8
		if light != nil {
			l *= light(v)
		}
		for c := range f.rgb {
			f.rgb[c].V[i] = float32(l * (1 - in + in*colour[c]))
		}
	}
	return f
}

var (
	brown  = [3]float64{0.5, 0.3, 0.15}
	nearly = [3]float64{0.9, 0.9, 0.88}
	slate  = [3]float64{0.45, 0.45, 0.45}
)

func fall(v curve.Vec) float64   { return 1 - 0.4*(v.X+v.Y)/215 }
func shadow(v curve.Vec) float64 { return map[bool]float64{true: 0.5, false: 1}[v.X+0.4*v.Y > 60] }

// read takes a piece's outline.
func (f *pieceField) read() (curve.Line, error) {
	rough, err := f.largest(f.differs())
	if err != nil {
		return nil, err
	}
	return rightWay(evenly(f.sharpen(rough), between)), nil
}

// A piece's outline is where its edge is, to a sixth of a millimetre, corners aside, at any turn, in falling light and under a hard shadow; its area to a hundredth.
func TestPieceOutline(t *testing.T) {
	for _, c := range []struct {
		name   string
		turn   float64
		colour [3]float64
		light  func(curve.Vec) float64
	}{{"brown", 0, brown, nil}, {"brown, falling light", 0.5, brown, fall}, {"brown, a shadow", 1.1, brown, shadow}, {"black", 0.3, [3]float64{0.08, 0.08, 0.08}, shadow}, {"slate", 0.8, slate, fall}} {
		shape := box(middle, 62, 40, c.turn)
		l, err := laid(shape, c.colour, c.light).read()
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		worst := 0.0
		for _, v := range l {
			if box(middle, 58, 36, c.turn)(v) < 2.4 && math.Abs(v.X+0.4*v.Y-60) > 1.5 { // and where the shadow's edge lies
				worst = max(worst, math.Abs(shape(v)))
			}
		}
		if worst > 0.17 || math.Abs(l.Area()-62*40) > 15 {
			t.Errorf("%s: %v off at worst, an area of %v", c.name, worst, l.Area())
		}
	}
}

// What lies on no piece is refused: nothing, what hardly differs, what is too small, two pieces, one over the frame. A crumb beside a piece does no harm.
func TestPieceRefused(t *testing.T) {
	both := func(a, b far) far { return func(v curve.Vec) float64 { return min(a(v), b(v)) } }
	big := box(curve.Vec{X: 35, Y: 60}, 30, 50, 0)
	for _, c := range []struct {
		name   string
		shape  far
		colour [3]float64
		light  func(curve.Vec) float64
		want   string
	}{
		{"nothing", circle(curve.Vec{X: -200}, 1), brown, nil, "nothing on the sheet differs"},
		{"a shadow alone", circle(curve.Vec{X: -200}, 1), brown, shadow, "nothing on the sheet differs"},
		{"pale", box(middle, 60, 40, 0), nearly, nil, "nothing on the sheet differs"},
		{"grey in a shadow", box(middle, 60, 40, 0), [3]float64{0.5, 0.5, 0.5}, shadow, "a shadow lies on the sheet"},
		{"dark grey in a shadow", box(middle, 60, 40, 0.7), [3]float64{0.4, 0.4, 0.4}, shadow, "a shadow lies on the sheet"},
		{"light grey in a shadow", box(middle, 50, 60, 0.2), [3]float64{0.7, 0.7, 0.7}, shadow, "a shadow lies on the sheet"},
		{"small", box(middle, 19, 20, 0), brown, nil, "nothing on the sheet differs"},
		{"two", both(big, box(curve.Vec{X: 80, Y: 60}, 18, 20, 0)), brown, nil, "two pieces"},
		{"over the left", box(curve.Vec{X: 30, Y: 60}, 58.8, 40, 0), brown, nil, "lies over the frame"},
		{"over a mark", box(curve.Vec{X: 75, Y: 80}, 50, 50, 0), brown, nil, "lies over the frame"},
		{"with a crumb", both(big, box(curve.Vec{X: 80, Y: 60}, 14, 15, 0)), brown, nil, ""},
		{"just large enough", box(middle, 20.5, 20.5, 0), brown, nil, ""},
	} {
		_, err := laidAt(0.4, c.shape, c.colour, c.light).read()
		if c.want == "" {
			if err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		if no := refused(t, c.name, err, c.want); c.want == "lies over the frame" && !besideFrame(no) {
			t.Errorf("%s: told at %v, which is clear of the frame", c.name, no.At)
		}
	}
}

// An edge that leaves half of the light may be a shadow's, one that leaves a third is not; a tenth of it may be less clear; whichever way the outline runs.
func TestDarkEdge(t *testing.T) {
	disc := circle(middle, 22)
	for _, c := range []struct {
		left  float64
		light func(curve.Vec) float64
		want  bool
	}{{0.5, nil, false}, {0.44, nil, false}, {0.35, nil, true}, {0.35, fall, true}, {0.35, shadow, true}, {0.9, nil, false}} {
		f := laid(disc, [3]float64{c.left, c.left, c.left}, c.light)
		l := ring(middle.Mul(1/laidDot), 22/laidDot, 600)
		if a, b := f.darkEdge(l), f.darkEdge(l.Reverse()); a != c.want || b != c.want {
			t.Errorf("with %v of the light left: %v and %v", c.left, a, b)
		}
	}
}

// besideFrame tells whether a refusal says a place that is within a millimetre of what is printed.
func besideFrame(no *Refused) bool {
	tr := &truth{Sheet: small, dot: laidDot}
	for _, d := range []curve.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
		if !tr.held(no.At.Add(d)) {
			return no.Placed
		}
	}
	return false
}

// The paper's light is known all over from that along the frame: of a light that falls on straight lines along each side exactly (Coons' patch), whatever lies in the middle.
func TestPaper(t *testing.T) {
	light := func(v curve.Vec) float64 { return 0.6 + 0.3*v.X/105 - 0.2*v.Y/110 + 0.15*v.X*v.Y/(105*110) }
	f := laid(box(middle, 60, 60, 0.2), brown, light)
	paper := f.paper()
	for x := 5.0; x < 103; x += 8 {
		for y := 10.0; y < 108; y += 8 {
			for c, got := range paper(x, y) {
				if want := 0.8 * light(curve.Vec{X: x, Y: y}); math.Abs(float64(got)-want) > 0.03 {
					t.Fatalf("channel %d at %v, %v: %v, want %v", c, x, y, got, want)
				}
			}
		}
	}
	if f.shaded {
		t.Error("falling light is taken for a shadow's edge")
	}
	g := laid(circle(middle, 10), brown, shadow)
	g.paper()
	if !g.shaded {
		t.Error("a hard shadow across the frame is not noticed")
	}
}

// By hand: places without light are filled from the nearest ones, and a step of more than a quarter from one place to the next but one is a shadow's edge.
func TestBridged(t *testing.T) {
	of := func(vs ...float32) (out [][3]float32) {
		for _, v := range vs {
			out = append(out, [3]float32{v, v, v})
		}
		return out
	}
	for _, c := range []struct {
		name     string
		in, want [][3]float32
		shaded   bool
	}{
		{"whole", of(5, 5.5, 6, 6.2), of(5, 5.5, 6, 6.2), false},
		{"a hole", of(5, 0, 0, 6), of(5, 5, 6, 6), false},
		{"at both ends", of(0, 0, 5, 6, 0), of(5, 5, 5, 6, 6), false},
		{"a shadow", of(8, 8, 6, 4, 4), of(8, 8, 6, 4, 4), true},
		{"out of a shadow", of(4, 4.5, 5.2, 5.2), of(4, 4.5, 5.2, 5.2), true},
		{"nothing", of(0, 0, 0), of(0, 0, 0), false},
	} {
		if got := bridged(c.in); got != c.shaded {
			t.Errorf("%s: shaded %v", c.name, got)
		}
		for i := range c.in {
			if c.in[i] != c.want[i] {
				t.Errorf("%s: place %d is %v, want %v", c.name, i, c.in[i][0], c.want[i][0])
			}
		}
	}
}

// The edge is half-way from the piece's light to the paper's, in the channel that tells them apart most, a millimetre or less either way; without one it stays.
func TestHalfway(t *testing.T) {
	f := laid(box(middle, 60, 40, 0), [3]float64{1, 0.9, 0.2}, nil) // in blue
	right := middle.X + 30
	for _, by := range []float64{-0.9, -0.3, 0, 0.5, 1} {
		got := f.halfway(curve.Vec{X: right + by, Y: 58}.Mul(1/laidDot), curve.Vec{X: 1})
		if math.Abs(got*laidDot+by) > 0.02+0.12*math.Abs(by) { // the further, the less of one side is seen
			t.Errorf("from %v mm beside, the edge is %v off", by, got*laidDot)
		}
	}
	if got := f.halfway(curve.Vec{X: right, Y: 58}.Mul(1/laidDot), curve.Vec{X: -1}); math.Abs(got) > 0.3 {
		t.Errorf("looked at from outside the edge is %v dots off", got)
	}
	if got := f.halfway(middle.Mul(1/laidDot), curve.Vec{X: 1}); got != 0 {
		t.Errorf("in the middle of a piece there is an edge %v dots off", got)
	}
	in, out := ends([]float64{1, 3, 9, 9, 9, 9, 9, 9, 4, 6})
	if in != 2 || out != 5 {
		t.Errorf("the outer fifths are %v and %v, want 2 and 5", in, out)
	}
}

// A rough outline moves to the edge wherever that lies within a millimetre, whichever way it runs.
func TestSharpen(t *testing.T) {
	f := laid(circle(middle, 22), brown, fall)
	for _, l := range []curve.Line{ring(middle.Mul(1/laidDot), 22.5/laidDot, 600), ring(middle.Mul(1/laidDot), 21.6/laidDot, 600).Reverse()} {
		if worst, _ := off(f.sharpen(l), circle(middle, 22)); worst > 0.06 {
			t.Errorf("the outline is %v off", worst)
		}
	}
}

// From a picture: a disc of leather, to a tenth of a millimetre; who gives up gets that back.
func TestFilledFromPicture(t *testing.T) {
	c := shotOf(func(x, y float64) (sheettest.Light, bool) {
		return sheettest.Light{0.4, 0.25, 0.12}, math.Hypot(x-middle.X, y-middle.Y) < 24
	})
	p, s := c.Take(), seenBy(t, c)
	l, err := filled(context.Background(), p, s)
	if err != nil {
		t.Fatal(err)
	}
	if worst, mean := off(l, circle(middle, 24)); worst > 0.12 || math.Abs(mean) > 0.05 {
		t.Errorf("%v off at worst and %v on the mean", worst, mean)
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := filled(ctx, p, s); !errors.Is(err, context.Canceled) {
		t.Errorf("given up: %v", err)
	}
}
