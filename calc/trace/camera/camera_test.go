package camera

import (
	"math"
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
	for x := 0.0; x <= 175; x += 25 {
		for y := 0.0; y <= 265; y += 25 {
			v := curve.Vec{X: x, Y: y}
			if d := c.Image(v).Dist(pinhole(v)) / c.Scale(v); d > 0.03 {
				t.Errorf("%v is seen %.3f mm off", v, d)
			}
		}
	}
	if r := c.Residual(seen); r.At != seen[7].Sheet || r.Worst < 3 {
		t.Errorf("the worst is %.2f mm at %v, want the one that was moved", r.Worst, r.At)
	}
	if d := c.Larger(2).Image(curve.Vec{X: 50, Y: 60}).Dist(pinhole(curve.Vec{X: 50, Y: 60}).Add(curve.Vec{X: 0.5, Y: 0.5}).Mul(2).Sub(curve.Vec{X: 0.5, Y: 0.5})); d > 1 {
		t.Errorf("twice as large it is %.2f dots off", d)
	}
	if _, err := Fit(seen[:5], s, 2000, 2600, 0.1); err == nil {
		t.Error("five places make a camera")
	}
}

// A soft edge is crossed half-way, and its softness is found: a normal distribution's.
func TestCrossing(t *testing.T) {
	const sigma, at = 0.25, 1.27
	light := make([]float64, int((inside+reach)/fine)+1)
	for i := range light {
		light[i] = 0.05 + 0.7*(1+math.Erf((float64(i)*fine-at)/(sigma*math.Sqrt2)))/2
	}
	d, width, ok := crossing(light)
	if !ok || math.Abs(d-at) > 0.01 || math.Abs(width-sigma) > 0.03 {
		t.Errorf("crossed at %v, softness %v, %v; want %v, %v", d, width, ok, at, sigma)
	}
	if _, _, ok := crossing(make([]float64, len(light))); ok {
		t.Error("darkness has an edge")
	}
}
