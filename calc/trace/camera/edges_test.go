package camera

import (
	"math"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/raster"
	"chape/calc/trace/sheettest"
)

// profile is light along a line from black to white, by how far from its start in mm.
func profile(f func(mm float64) float64) []float64 {
	light := make([]float64, int((inside+reach)/fine)+1)
	for i := range light {
		light[i] = f(float64(i) * fine)
	}
	return light
}

// A soft edge is crossed half-way, and its softness is found: a normal distribution's, which has its quartiles 1.349 standard deviations apart.
func TestCrossing(t *testing.T) {
	for _, sigma := range []float64{0.1, 0.2, 0.25} {
		for _, at := range []float64{1, 1.14, 1.27, 1.5} {
			d, width, ok := crossing(profile(func(mm float64) float64 { return 0.05 + 0.7*(1+math.Erf((mm-at)/(sigma*math.Sqrt2)))/2 }))
			if !ok || !near(d, at, 0.015) || !near(width, sigma, 0.03) {
				t.Errorf("crossed at %v, softness %v, %v; want %v, %v", d, width, ok, at, sigma)
			}
		}
	}
}

// By hand: a ramp from 0.1 at 1.0 mm to 0.5 at 1.4 is half-way at 1.2, and its quarters are 0.2 mm apart. More light changes nothing.
func TestCrossingByHand(t *testing.T) {
	ramp := func(k float64) []float64 {
		return profile(func(mm float64) float64 { return k * (0.1 + 0.4*min(max((mm-1)/0.4, 0), 1)) })
	}
	for _, k := range []float64{0.1, 1, 1.8} {
		d, width, ok := crossing(ramp(k))
		if !ok || !near(d, 1.2, 1e-9) || !near(width, 0.2/1.349, 1e-9) {
			t.Errorf("in %v of the light: crossed at %v, softness %v, %v", k, d, width, ok)
		}
	}
	for name, f := range map[string]func(float64) float64{
		"darkness":           func(float64) float64 { return 0 },
		"next to no light":   func(mm float64) float64 { return 0.015 * min(max(mm-1, 0), 1) },
		"white all along":    func(float64) float64 { return 0.7 },
		"hardly any change":  func(mm float64) float64 { return 0.6 - 0.12*min(max(1.4-mm, 0), 1) },
		"white where black ": func(mm float64) float64 { return 0.7 - 0.6*min(max(mm-1, 0), 1) },
	} {
		if d, _, ok := crossing(profile(f)); ok {
			t.Errorf("%s has an edge at %v", name, d)
		}
	}
}

// centresOff is how far, dots, the middles are from where the shot has them, on the mean and at worst.
func centresOff(seen []Seen, c sheettest.Shot) (mean, worst float64) {
	for _, s := range seen {
		d := s.Image.Dist(c.Seen(s.Sheet))
		mean, worst = mean+d/float64(len(seen)), max(worst, d)
	}
	return mean, worst
}

// The middles of squares and marks are found to a tenth of a dot, all of them, though the camera that says where to look is a millimetre off.
func TestCentres(t *testing.T) {
	c, p := plainShot, plainPicture()
	cam := fitted(t, c)
	off := *cam
	off.centre = off.centre.Add(curve.Vec{X: 2, Y: -2.2})
	for name, cam := range map[string]*Camera{"right": cam, "a millimetre off": &off} {
		mostMean := 0.05
		if cam == &off {
			mostMean = 0.12 // the second round, from the first's camera, is the right one
		}
		seen, soft := cam.Centres(p, small)
		if len(seen) != len(small.Squares())+4 {
			t.Fatalf("%s: %d middles, want %d", name, len(seen), len(small.Squares())+4)
		}
		if mean, worst := centresOff(seen, c); mean > mostMean || worst > 2.5*mostMean {
			t.Errorf("%s: middles are %.3f dots off on the mean and %.3f at worst", name, mean, worst)
		}
		if soft > 0.2 { // a sharp edge over dots of a third of a millimetre
			t.Errorf("%s: the edges are %.3f mm soft", name, soft)
		}
	}
}

// Ink that spreads by a fifth of a millimetre all round, blur and a fall of light move no middle, for they do the same to both edges; blur is measured.
func TestCentresCancelWhatIsEven(t *testing.T) {
	sheet := sheettest.Sheet{Width: 105, Height: 110}
	plain := sheet
	sheet.On = func(x, y float64) (sheettest.Light, bool) {
		const by = 0.2
		for _, d := range []curve.Vec{{X: by}, {X: -by}, {Y: by}, {Y: -by}} {
			if plain.At(x+d.X, y+d.Y) == sheettest.Ink {
				return sheettest.Ink, true
			}
		}
		return sheettest.Light{}, false
	}
	c := plainShot.Of(sheet)
	c.Shade = func(x, y float64) float64 { return 1 - 0.4*(x+y)/215 }
	c.Blur = 1
	seen, soft := fitted(t, plainShot).Centres(c.Take(), small)
	if mean, worst := centresOff(seen, plainShot); len(seen) < 36 || mean > 0.06 || worst > 0.2 {
		t.Errorf("%d middles, %.3f dots off on the mean and %.3f at worst", len(seen), mean, worst)
	}
	// two squares of 3 dots have 2 × (9 − 1)/12 dots² in one direction, at 3 dots a millimetre
	if want := math.Sqrt(2*8.0/12) / 3; !near(soft, want, 0.07) {
		t.Errorf("the edges are %.3f mm soft, want about %.3f", soft, want)
	}
}

// A square that is covered, half or whole, is left out, the others stay; without any light there is none.
func TestCentresLeaveOut(t *testing.T) {
	sheet := sheettest.Sheet{Width: 105, Height: 110}
	sheet.On = func(x, y float64) (sheettest.Light, bool) {
		return sheettest.Paper, x > 27.5 && x < 42 && y < -1 || x > 110-8 && y > 50 && y < 57
	}
	c := plainShot.Of(sheet)
	seen, _ := fitted(t, plainShot).Centres(c.Take(), small)
	for _, s := range seen {
		if d := s.Image.Dist(c.Seen(s.Sheet)); d > 0.5 {
			t.Errorf("the middle of %v is %.2f dots off", s.Sheet, d)
		}
	}
	if n := len(small.Squares()) + 4; len(seen) > n-2 || len(seen) < n-5 {
		t.Errorf("%d of %d middles are clear", len(seen), n)
	}
	sheet.On = func(x, y float64) (sheettest.Light, bool) { // a square that is smeared to both sides
		return sheettest.Ink, x > 24.3 && x < 30.7 && y > -5 && y < 0
	}
	smeared, _ := fitted(t, plainShot).Centres(plainShot.Of(sheet).Take(), small)
	if n := len(small.Squares()) + 3; len(smeared) != n {
		t.Errorf("%d middles beside a smeared one, want %d", len(smeared), n)
	}
	dark := &raster.Picture{Width: 465, Height: 480, RGB: make([]uint8, 3*465*480)}
	if seen, soft := fitted(t, plainShot).Centres(dark, small); len(seen) != 0 || soft != 0 {
		t.Errorf("in the dark: %v, %v", seen, soft)
	}
	part := &raster.Picture{Width: 465, Height: 225, RGB: plainPicture().RGB[:3*465*225]} // the lower half is not in the picture
	if seen, _ := fitted(t, plainShot).Centres(part, small); len(seen) == 0 || len(seen) > 30 {
		t.Errorf("%d middles are clear in half a picture", len(seen))
	}
}
