package trace

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/camera"
	"chape/calc/trace/frame"
	"chape/calc/trace/raster"
	"chape/calc/trace/sheettest"
)

var small = frame.Sheet{Width: 105, Height: 110, Version: 1}

var middle = curve.Vec{X: 52.5, Y: 58}

// far is how far a place, mm, is from what is drawn, negative inside it.
type far func(v curve.Vec) float64

func circle(mid curve.Vec, r float64) far {
	return func(v curve.Vec) float64 { return v.Dist(mid) - r }
}

// box is a rectangle about a middle, turned.
func box(mid curve.Vec, w, h, turn float64) far {
	sin, cos := math.Sincos(turn)
	return func(v curve.Vec) float64 {
		d := v.Sub(mid)
		x, y := math.Abs(d.X*cos+d.Y*sin)-w/2, math.Abs(d.Y*cos-d.X*sin)-h/2
		return math.Hypot(max(x, 0), max(y, 0)) + min(max(x, y), 0)
	}
}

// segment is a straight line from a to b.
func segment(a, b curve.Vec) far {
	e := b.Sub(a)
	return func(v curve.Vec) float64 {
		d := v.Sub(a)
		s := min(max((d.X*e.X+d.Y*e.Y)/(e.X*e.X+e.Y*e.Y), 0), 1)
		return v.Dist(a.Add(e.Mul(s)))
	}
}

// pen is how a line is drawn: its width and softness (standard deviation), mm, and how much of the light it takes.
type pen struct{ width, soft, dark float64 }

var pencil = pen{0.6, 0.1, 0.6}

// on is the share of the light that a line at a distance leaves: a band of one darkness, softened.
func (p pen) on(d float64) float64 {
	if math.Abs(d) > p.width/2+6*p.soft {
		return 1
	}
	k := p.soft * math.Sqrt2
	return 1 - p.dark/2*(math.Erf((d+p.width/2)/k)-math.Erf((d-p.width/2)/k))
}

// lines are the lights that several lines leave together.
func (p pen) lines(fs ...far) func(v curve.Vec) float64 {
	return func(v curve.Vec) float64 {
		l := 1.0
		for _, f := range fs {
			l = min(l, p.on(f(v)))
		}
		return l
	}
}

// dotOf is what a dot of the tests' true pictures measures, mm: twice that of the program's own, for speed.
const dotOf = 0.2

// flat is a true picture with so much light at each place.
func flat(light func(v curve.Vec) float64) *truth { return flatAt(dotOf, light) }

func flatAt(dot float64, light func(v curve.Vec) float64) *truth {
	t := &truth{Sheet: small, dot: dot}
	t.grey = raster.NewGrey(int(small.Width/dot)+1, int(small.Height/dot)+1)
	for i := range t.grey.V {
		t.grey.V[i] = float32(0.8 * light(t.place(curve.Vec{X: float64(i % t.grey.Width), Y: float64(i / t.grey.Width)})))
	}
	return t
}

// noisy adds noise of a standard deviation to a true picture.
func (t *truth) noisy(sigma float64) *truth {
	r := rand.New(rand.NewPCG(1, 51))
	for i := range t.grey.V {
		t.grey.V[i] += float32(sigma * r.NormFloat64())
	}
	return t
}

// open leaves a gap of so many mm out of a line, where it passes a place.
func open(f far, at curve.Vec, gap float64) far {
	return func(v curve.Vec) float64 {
		if v.Dist(at) < gap/2 {
			return 99
		}
		return f(v)
	}
}

// off is how far an outline is from the place where it should be, at worst and on the mean.
func off(l curve.Line, f far) (worst, mean float64) {
	for _, v := range l {
		d := f(v)
		worst, mean = max(worst, math.Abs(d)), mean+d/float64(len(l))
	}
	return worst, mean
}

// shotOf is a picture of the small sheet with something on it.
func shotOf(on func(x, y float64) (sheettest.Light, bool)) sheettest.Shot {
	return sheettest.Shot{Width: 430, Height: 445, PerMM: 2.9, Turn: 0.05, Tilt: 0.1, Bulge: 0.02}.Of(sheettest.Sheet{Width: 105, Height: 110, On: on})
}

// seenBy is what the reader is to find of a shot.
func seenBy(t *testing.T, c sheettest.Shot) seen {
	t.Helper()
	var places []camera.Seen
	for _, q := range small.Squares() {
		places = append(places, camera.Seen{Sheet: q.Mid(), Image: c.Seen(q.Mid())})
	}
	cam, err := camera.Fit(places, small, c.Width, c.Height, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	return seen{sheet: small, camera: cam, soft: 0.15}
}

// refused wants one line that says what would do.
func refused(t *testing.T, name string, err error, want string) *Refused {
	t.Helper()
	var no *Refused
	if !errors.As(err, &no) || !strings.Contains(err.Error(), want) || strings.Contains(err.Error(), "\n") {
		t.Errorf("%s: %v; want it refused with %q", name, err, want)
		return &Refused{}
	}
	return no
}
