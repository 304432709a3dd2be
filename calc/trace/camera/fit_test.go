package camera

import (
	"math"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/frame"
)

// pinhole sees a tilted sheet through a lens that bends by the inverse of the fitted terms.
func pinhole(v curve.Vec) curve.Vec {
	x, y := v.X-87.5, v.Y-132.5
	const tilt = 0.4
	depth := 400 + y*math.Sin(tilt)
	u, t := x/depth*1.2, y*math.Cos(tilt)/depth*1.2
	r := u*u + t*t
	f := 1 + 0.08*r - 0.02*r*r
	return curve.Vec{X: 1000 + 1900*u*f, Y: 1300 + 1900*t*f}
}

// A camera is found from the frame's squares alone, one of them seen far off.
func TestFit(t *testing.T) {
	s := frame.Sheet{Width: 175, Height: 265, Version: 1}
	var seen []Seen
	for _, q := range s.Squares() {
		seen = append(seen, Seen{q.Mid(), pinhole(q.Mid())})
	}
	seen[7].Image = seen[7].Image.Add(curve.Vec{X: 40})
	c, err := Fit(seen, s, 2000, 2600, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	if d := farthest(c, s, pinhole); d > 0.03 {
		t.Errorf("a place is seen %.3f mm off", d)
	}
	if r := c.Residual(seen); r.At != seen[7].Sheet || r.Worst < 3 {
		t.Errorf("the worst is %.2f mm at %v, want the one that was moved", r.Worst, r.At)
	}
	if _, err := Fit(seen[:5], s, 2000, 2600, 0.1); err == nil {
		t.Error("five places make a camera")
	}
}

// Whatever the turn, the tilt up to 40° and the lens up to 8 %, places inside the frame are found to a hundredth of a millimetre, by the
// test's own camera, whose lens is bent going in.
func TestFitCameras(t *testing.T) {
	r := random(1)
	for range 25 {
		turn, tilt, bulge := 2*math.Pi*r.Float64(), 0.7*r.Float64(), 0.16*r.Float64()-0.08
		c := shotOf(turn, tilt, bulge)
		c.Shift = curve.Vec{X: 45 * (r.Float64() - 0.5), Y: 45 * (r.Float64() - 0.5)}
		cam := fitted(t, c)
		if d := farthest(cam, small, c.Seen); d > 0.01 {
			t.Errorf("turned by %.2f, tilted by %.2f, bent by %.3f: a place is %.4f mm off", turn, tilt, bulge, d)
		}
		if res := cam.Residual(placesOf(c, small)); res.RMS > 0.005 || res.Worst > 0.02 || res.RMS > res.Worst {
			t.Errorf("turned by %.2f, tilted by %.2f, bent by %.3f: residual %+v", turn, tilt, bulge, res)
		}
	}
}

// Without a lens the camera is the homography of four points: that of the unit square to a quadrilateral (Heckbert, 'Fundamentals of texture
// mapping and image warping', 1989, section 2.2; from memory).
func TestFitAgainstFourPoints(t *testing.T) {
	r := random(2)
	for range 20 {
		var q [4]curve.Vec
		for i, v := range []curve.Vec{{X: 100, Y: 100}, {X: 500, Y: 100}, {X: 500, Y: 500}, {X: 100, Y: 500}} {
			q[i] = v.Add(curve.Vec{X: 70 * (r.Float64() - 0.5), Y: 70 * (r.Float64() - 0.5)})
		}
		d1, d2 := q[1].Sub(q[2]), q[3].Sub(q[2])
		sum := q[0].Sub(q[1]).Add(q[2]).Sub(q[3])
		det := d1.X*d2.Y - d2.X*d1.Y
		g, h := (sum.X*d2.Y-d2.X*sum.Y)/det, (d1.X*sum.Y-sum.X*d1.Y)/det
		see := func(v curve.Vec) curve.Vec {
			u, w := v.X/small.Width, v.Y/small.Height
			at := q[0].Add(q[1].Sub(q[0]).Add(q[1].Mul(g)).Mul(u)).Add(q[3].Sub(q[0]).Add(q[3].Mul(h)).Mul(w))
			return at.Mul(1 / (g*u + h*w + 1))
		}
		var seen []Seen
		for _, s := range small.Squares() {
			seen = append(seen, Seen{s.Mid(), see(s.Mid())})
		}
		cam, err := Fit(seen, small, 600, 600, 0.1)
		if err != nil {
			t.Fatal(err)
		}
		if d := farthest(cam, small, see); d > 2e-4 {
			t.Errorf("%v: a place is %v mm off", q, d)
		}
	}
}

// The linear step alone has the whole of a camera without a lens, in normalised places.
func TestLinear(t *testing.T) {
	c := shotOf(2, 0.5, 0)
	cam := fitted(t, c)
	rough := *cam
	rough.p = [Params]float64{}
	if err := rough.linear(placesOf(c, small)); err != nil {
		t.Fatal(err)
	}
	if d := farthest(&rough, small, c.Seen); d > 1e-6 {
		t.Errorf("a place is %v mm off", d)
	}
	if mid := (curve.Vec{X: 232, Y: 239.5}); cam.centre != mid || !near(cam.half, math.Hypot(465, 480)/2, 1e-9) || cam.size != 55 {
		t.Errorf("lengths are taken from %v, over %v and %v", cam.centre, cam.half, cam.size)
	}
}

// Places in the inside do not change when as many as one in ten of the frame's are seen wrong, each by a millimetre or more.
func TestFitBearsFaults(t *testing.T) {
	r := random(3)
	c := shotOf(0.4, 0.3, 0.05)
	seen := placesOf(c, small)
	wrong := map[int]bool{}
	for len(wrong) < len(seen)/10 {
		wrong[r.IntN(len(seen))] = true
	}
	for i := range wrong {
		sin, cos := math.Sincos(2 * math.Pi * r.Float64())
		seen[i].Image = seen[i].Image.Add(curve.Vec{X: cos, Y: sin}.Mul(5 + 15*r.Float64()))
	}
	cam, err := Fit(seen, small, c.Width, c.Height, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	if d := farthest(cam, small, c.Seen); d > 0.1 {
		t.Errorf("a place is %.3f mm off", d)
	}
}

// Noise of a tenth of a dot on every place leaves far less inside: at 3 dots a millimetre and 36 places.
func TestFitAveragesNoise(t *testing.T) {
	r := random(4)
	c := shotOf(-0.3, 0.2, -0.04)
	seen := placesOf(c, small)
	for i := range seen {
		seen[i].Image = seen[i].Image.Add(curve.Vec{X: 0.1 * r.NormFloat64(), Y: 0.1 * r.NormFloat64()})
	}
	cam, err := Fit(seen, small, c.Width, c.Height, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	if d := farthest(cam, small, c.Seen); d > 0.05 {
		t.Errorf("a place is %.3f mm off", d)
	}
	if res := cam.Residual(seen); !near(res.RMS, 0.1*math.Sqrt2/3, 0.012) {
		t.Errorf("the residual is %.3f mm, want about that of the noise, %.3f", res.RMS, 0.1*math.Sqrt2/3)
	}
}

// A lens's centre and second term stay near nothing where four marks and a few squares say little of them.
func TestPriorHoldsTheLens(t *testing.T) {
	c := shotOf(0, 0, 0)
	cam, err := Fit(placesOf(c, small)[:Params], small, c.Width, c.Height, 0.1) // one side alone, and a little of the next
	if err == nil && (math.Abs(cam.p[10]) > 0.5 || math.Abs(cam.p[11]) > 0.5 || math.Abs(cam.p[9]) > 0.5) {
		t.Errorf("from one side the lens is %v", cam.p[8:])
	}
}

// Refit from a rough camera comes to what Fit finds, and leaves the rough one as it was.
func TestRefit(t *testing.T) {
	c := shotOf(1, 0.3, 0.06)
	seen := placesOf(c, small)
	shaken := append([]Seen(nil), seen...)
	r := random(5)
	for i := range shaken {
		shaken[i].Image = shaken[i].Image.Add(curve.Vec{X: 3 * (r.Float64() - 0.5), Y: 3 * (r.Float64() - 0.5)})
	}
	rough, err := Fit(shaken, small, c.Width, c.Height, 0.5)
	if err != nil {
		t.Fatal(err)
	}
	was := *rough
	better, err := rough.Refit(seen, 0.1)
	if err != nil || *rough != was {
		t.Fatalf("Refit: %v; the rough camera changed: %v", err, *rough != was)
	}
	if d := farthest(better, small, c.Seen); d > 0.01 {
		t.Errorf("a place is %.4f mm off", d)
	}
	again, _ := rough.Refit(seen, 0.1)
	if *again != *better {
		t.Error("the same places give another camera")
	}
	for i := range shaken {
		shaken[i].Image = curve.Vec{X: math.NaN()}
	}
	if _, err := rough.Refit(shaken, 0.1); err == nil {
		t.Error("places that are no numbers make a camera")
	}
	if _, err := rough.Refit(seen[:Params-1], 0.1); err == nil {
		t.Errorf("%d places make a camera", Params-1)
	}
}

// Residuals by hand: three places 0, 3 and 4 dots off at 5 dots a millimetre.
func TestResidualByHand(t *testing.T) {
	c := upright()
	var seen []Seen
	for i, off := range []curve.Vec{{}, {X: 3}, {Y: -4}} {
		v := curve.Vec{X: float64(20 * i), Y: 50}
		seen = append(seen, Seen{v, c.Image(v).Add(off)})
	}
	want := Residual{RMS: math.Sqrt((0.36 + 0.64) / 3), Worst: 0.8, At: seen[2].Sheet}
	if got := c.Residual(seen); !near(got.RMS, want.RMS, 1e-9) || !near(got.Worst, want.Worst, 1e-9) || got.At != want.At {
		t.Errorf("Residual = %+v, want %+v", got, want)
	}
}

// What no camera sees is refused in one line: all places on one line or in one spot, and what is no number.
func TestFitRefuses(t *testing.T) {
	spoil := func(f func(i int, s Seen) Seen) (out []Seen) {
		for i, s := range placesOf(shotOf(0.2, 0.1, 0), small) {
			out = append(out, f(i, s))
		}
		return out
	}
	for name, seen := range map[string][]Seen{
		"none":        nil,
		"one spot":    spoil(func(_ int, s Seen) Seen { return Seen{curve.Vec{X: 5, Y: 5}, s.Image} }),
		"one line":    spoil(func(_ int, s Seen) Seen { return Seen{curve.Vec{X: s.Sheet.X, Y: s.Sheet.X}, s.Image} }),
		"no number":   spoil(func(i int, s Seen) Seen { return Seen{s.Sheet, s.Image.Mul(1 / float64(i%2))} }),
		"not a place": spoil(func(i int, s Seen) Seen { return Seen{s.Sheet.Mul(math.NaN()), s.Image} }),
	} {
		if c, err := Fit(seen, small, 465, 480, 0.1); err == nil || strings.Contains(err.Error(), "\n") || !strings.Contains(err.Error(), "flat") {
			t.Errorf("%s: %v, %v; want it refused", name, c, err)
		}
	}
}
