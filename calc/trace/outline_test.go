package trace

import (
	"context"
	"errors"
	"math"
	"reflect"
	"testing"

	"chape/calc/curve"
)

// drawIt reads a drawing on a true picture.
func drawIt(t *testing.T, tr *truth, o Options) *drawn {
	t.Helper()
	d, err := tr.draw(context.Background(), 0.1, o)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// What was traced lies half the line's width inside the middle of the line, or as far as the stand-off says: on a circle, whose every place is known.
func TestOutlineOfCircle(t *testing.T) {
	for _, c := range []struct {
		r, standoff float64
		p           pen
	}{{25, 0, pencil}, {25, 0, pen{0.9, 0.15, 0.4}}, {25, 0.05, pencil}, {30, 0.5, pen{0.5, 0.1, 0.7}}, {9, 0, pencil}} {
		d := drawIt(t, flat(c.p.lines(circle(middle, c.r))), Options{Standoff: c.standoff})
		if want := c.p.width / 2; c.standoff == 0 && math.Abs(d.standoff-want) > 0.05 || c.standoff != 0 && d.standoff != c.standoff {
			t.Errorf("%+v: the stand-off is %v", c, d.standoff)
		}
		worst, mean := off(d.outline, circle(middle, c.r-d.standoff))
		if worst > 0.06 || math.Abs(mean) > 0.03 {
			t.Errorf("%+v: the outline is %v off at worst and %v on the mean", c, worst, mean)
		}
		if d.outline.Area() < 0 || len(d.gaps) != 0 {
			t.Errorf("%+v: area %v, gaps %v", c, d.outline.Area(), d.gaps)
		}
		for i, v := range d.outline {
			if by := v.Dist(d.outline[(i+1)%len(d.outline)]); by > 0.5 {
				t.Fatalf("%+v: points %v mm apart at %v", c, by, v)
			}
		}
	}
}

// A box at any turn, its sides to a twentieth of a millimetre, in falling light, a shadow and noise.
func TestOutlineOfBox(t *testing.T) {
	for _, turn := range []float64{0, 0.6} {
		shape := box(middle, 60, 24, turn)
		light := pencil.lines(shape)
		tr := flat(func(v curve.Vec) float64 {
			l := light(v) * (1 - 0.4*v.X/105)
			if v.X+0.3*v.Y > 78 {
				l *= 0.5
			}
			return l
		}).noisy(0.01)
		d := drawIt(t, tr, Options{})
		n, worst := 0, 0.0
		inner := box(middle, 60-2*d.standoff, 24-2*d.standoff, turn)
		for _, v := range d.outline {
			if corner := box(middle, 54, 18, turn)(v); corner > 3.2 || math.Abs(v.X+0.3*v.Y-78) < 1.5 { // rounded; and where the shadow's edge lies
				continue
			}
			n++
			worst = max(worst, math.Abs(inner(v)))
		}
		if worst > 0.12 || n < 450 || math.Abs(d.width-0.6) > 0.1 {
			t.Errorf("turned by %v: sides are %v off at worst (%d places), the line is %v wide", turn, worst, n, d.width)
		}
	}
}

// The same picture gives the same outline; one in half the light nearly so; mirrored, a mirrored one.
func TestOutlineAgain(t *testing.T) {
	shape := func(v curve.Vec) float64 {
		return min(circle(curve.Vec{X: 40, Y: 60}, 18)(v), circle(curve.Vec{X: 58, Y: 50}, 20)(v))
	}
	light := pencil.lines(shape)
	a, b := drawIt(t, flat(light), Options{}), drawIt(t, flat(light), Options{})
	if !reflect.DeepEqual(a.outline, b.outline) || a.width != b.width {
		t.Error("two readings differ")
	}
	dim := drawIt(t, flat(func(v curve.Vec) float64 { return 0.5 * light(v) }), Options{})
	behind := drawIt(t, flat(func(v curve.Vec) float64 { return light(curve.Vec{X: 105 - v.X, Y: v.Y}) }), Options{})
	for name, c := range map[string]struct {
		l    curve.Line
		flip bool
	}{"dim": {dim.outline, false}, "mirrored": {behind.outline, true}} {
		if math.Abs(c.l.Area()-a.outline.Area()) > 1 {
			t.Errorf("%s: an area of %v, want %v", name, c.l.Area(), a.outline.Area())
		}
		for _, v := range c.l {
			if c.flip {
				v.X = 105 - v.X
			}
			if d := math.Abs(shape(v) + a.standoff); d > 0.1 && math.Abs(circle(curve.Vec{X: 40, Y: 60}, 18)(v)-circle(curve.Vec{X: 58, Y: 50}, 20)(v)) > 2 {
				t.Errorf("%s: %v is %v off", name, v, d)
				break
			}
		}
	}
}

// Strokes vanish from the outline, and a point stays a point to a third of a millimetre.
func TestOutlineWithoutStrokes(t *testing.T) {
	tip := curve.Vec{X: 20, Y: 58}
	shape := func(v curve.Vec) float64 { // a wedge with its point at tip, and two strokes
		d := v.Sub(tip)
		return max(math.Abs(d.Y)*math.Cos(0.25)-d.X*math.Sin(0.25), d.X-60)
	}
	at := curve.Vec{X: 60, Y: 58 + 40*math.Tan(0.25)}
	stroke := segment(at, at.Add(curve.Vec{X: -math.Sin(0.25), Y: math.Cos(0.25)}.Mul(6)))
	plain, marked := drawIt(t, flat(pencil.lines(shape)), Options{}), drawIt(t, flat(pencil.lines(shape, stroke)), Options{})
	if d := math.Abs(plain.outline.Area() - marked.outline.Area()); d > 0.4 {
		t.Errorf("a stroke changes the area by %v mm²", d)
	}
	for _, d := range []*drawn{plain, marked} {
		// half the line in from a corner of 0.5 radians is 0.3/sin 0.25 along its middle
		if x, want := d.outline[0].X, tip.X+0.3/math.Sin(0.25); math.Abs(x-want) > 0.75 || x < tip.X {
			t.Errorf("the point lies at %v, want %v", x, want)
		}
	}
}

// What is no outline is refused, each in one line.
func TestDrawRefuses(t *testing.T) {
	disc := circle(middle, 20)
	for _, c := range []struct {
		name  string
		light func(curve.Vec) float64
		want  string
	}{
		{"nothing drawn", pencil.lines(), "no drawn line"},
		{"a filled shape", func(v curve.Vec) float64 { return 0.65 + 0.35*math.Erf(disc(v)/0.14) }, "the shape is filled"},
		{"a wide line", pen{3, 0.1, 0.6}.lines(disc), "wider than 2 mm"},
		{"an open line", pencil.lines(open(disc, middle.Add(curve.Vec{X: 20}), 5)), "the line is open by"},
		{"two shapes", pencil.lines(circle(curve.Vec{X: 30, Y: 60}, 12), circle(curve.Vec{X: 75, Y: 60}, 14)), "2 closed shapes"},
		{"over the frame", pencil.lines(box(curve.Vec{X: 20, Y: 60}, 38, 30, 0)), "runs over the frame"},
	} {
		_, err := flat(c.light).draw(context.Background(), 0.1, Options{})
		refused(t, c.name, err, c.want)
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := flat(pencil.lines(disc)).draw(ctx, 0.1, Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("given up: %v", err)
	}
}
