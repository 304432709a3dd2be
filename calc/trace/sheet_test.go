package trace

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/camera"
	"chape/calc/trace/raster"
	"chape/calc/trace/sheettest"
)

// The sheet is found with its camera: its size, how soft the edges are, and a residual of hundredths of a millimetre.
func TestFindSheet(t *testing.T) {
	var stages []Stage
	c := shotOf(nil)
	s, err := findSheet(context.Background(), c.Take(), Options{Progress: func(s Stage) { stages = append(stages, s) }})
	if err != nil {
		t.Fatal(err)
	}
	if s.sheet != small || s.residual.RMS > 0.03 || s.residual.Worst > 0.1 || s.soft <= 0 || s.soft > 0.25 {
		t.Errorf("found %v, residual %+v, soft %v", s.sheet, s.residual, s.soft)
	}
	for _, v := range []curve.Vec{{}, middle, {X: 105, Y: 110}, {X: 20, Y: 90}} {
		if d := s.camera.Image(v).Dist(c.Seen(v)) / s.camera.Scale(v); d > 0.05 {
			t.Errorf("%v is seen %v mm off", v, d)
		}
	}
	if len(stages) != 2 || stages[0] != Find || stages[1] != CameraFit {
		t.Errorf("stages %v, want find and camera", stages)
	}
}

// printed is a sheet that says another size or version in its row.
func printed(row func(s *sheettest.Sheet)) func(x, y float64) (sheettest.Light, bool) {
	other := sheettest.Sheet{Width: 105, Height: 110}
	row(&other)
	cells := other.Row()
	return func(x, y float64) (sheettest.Light, bool) {
		if y < 2.5 || y >= 6.5 || x < 15 || x >= 90 {
			return sheettest.Light{}, false
		}
		if cells[int((x-15)/2.5)] {
			return sheettest.Ink, true
		}
		return sheettest.Paper, true
	}
}

// What can't be read true is refused in one line that says what would do.
func TestFindSheetRefuses(t *testing.T) {
	over := func(lo, hi curve.Vec) func(x, y float64) (sheettest.Light, bool) {
		return func(x, y float64) (sheettest.Light, bool) {
			return sheettest.Paper, x > lo.X && x < hi.X && y > lo.Y && y < hi.Y
		}
	}
	everyOther := func(x, y float64) (sheettest.Light, bool) { // of the squares one in two is half covered
		in := x < 0 || y < 0 || x > 105 || y > 110
		return sheettest.Paper, in && math.Mod(x+y+100, 20) < 5 && (x > 12 && x < 95 || y > 12 && y < 98)
	}
	for _, c := range []struct {
		name string
		on   func(x, y float64) (sheettest.Light, bool)
		shot func(c *sheettest.Shot)
		want string
	}{
		{"a corner covered", over(curve.Vec{X: 90, Y: 95}, curve.Vec{X: 120, Y: 125}), nil, "a corner mark is missing, at the lower right"},
		{"mirrored", nil, func(c *sheettest.Shot) { c.Mirror = true }, "mirrored"},
		{"blurred", nil, func(c *sheettest.Shot) { c.PerMM, c.Tilt, c.Blur = 2.55, 0, 1 }, "blurred"},
		{"bent", nil, func(c *sheettest.Shot) {
			c.Warp = func(v curve.Vec) curve.Vec {
				return v.Add(curve.Vec{X: 0.5 * math.Sin(v.Y/20), Y: 0.5 * math.Sin(v.X/15)})
			}
		}, "not flat"},
		{"too far off", nil, func(c *sheettest.Shot) { c.PerMM = 2.3 }, "go nearer"},
		{"the row covered", over(curve.Vec{X: 30, Y: 2}, curve.Vec{X: 60, Y: 7}), nil, "the code row beside the dotted corner can't be read"},
		{"another width in the row", printed(func(s *sheettest.Sheet) { s.Width = 110 }), nil, "the code row says 110 × 110 mm and the frame has 105 × 110"},
		{"a later sheet", printed(func(s *sheettest.Sheet) { s.Version = 2 }), nil, "newer kind"},
		{"squares covered", everyOther, nil, "squares"},
		{"the frame covered", over(curve.Vec{X: 20, Y: -6}, curve.Vec{X: 80, Y: 0}), nil, "the frame can't be followed"},
	} {
		shot := shotOf(c.on)
		if c.shot != nil {
			c.shot(&shot)
		}
		_, err := findSheet(context.Background(), shot.Take(), Options{})
		no := refused(t, c.name, err, c.want)
		if c.name == "bent" && (!no.Placed || !strings.Contains(no.Text, "across and")) {
			t.Errorf("bent: told at %v: %s", no.At, no.Text)
		}
	}
}

// A row that reaches past the picture's rim is said to; a picture of nothing, however small, has no sheet.
func TestFindSheetAtTheRim(t *testing.T) {
	for _, size := range [][2]int{{0, 0}, {1, 1}, {3, 2}, {1, 400}, {64, 64}} {
		p := &raster.Picture{Width: size[0], Height: size[1], RGB: make([]uint8, 3*size[0]*size[1])}
		for i := range p.RGB {
			p.RGB[i] = 200
		}
		_, err := findSheet(context.Background(), p, Options{})
		refused(t, "nothing", err, "no tracing sheet is to be seen")
	}
	ctx, stop := context.WithCancel(context.Background())
	p := shotOf(nil).Take()
	if _, err := findSheet(ctx, p, Options{Progress: func(Stage) { stop() }}); !errors.Is(err, context.Canceled) {
		t.Errorf("given up: %v", err)
	}
}

// The limits of a sheet that is flat and sharp, each alone: by the figures of the definition, 0.12 mm root mean square and 0.40 at worst.
func TestFlat(t *testing.T) {
	good := seenBy(t, shotOf(nil))
	good.soft, good.residual = 0.44, camera.Residual{RMS: 0.119, Worst: 0.399, At: curve.Vec{X: 30.4, Y: 70}}
	if err := good.flat(); err != nil {
		t.Errorf("just good enough: %v", err)
	}
	for _, c := range []struct {
		name  string
		spoil func(s *seen)
		want  string
	}{
		{"blur", func(s *seen) { s.soft = 0.46 }, "blurred, by about 0.5 mm"},
		{"on the whole", func(s *seen) { s.residual.RMS = 0.121 }, "0.12 mm off on the whole"},
		{"at one place", func(s *seen) { s.residual.Worst = 0.41 }, "0.41 at 30 mm across and 70 along from the dotted corner"},
		{"small", func(s *seen) { s.camera = s.camera.Larger(0.8) }, "too small in the picture"},
	} {
		s := good
		c.spoil(&s)
		no := refused(t, c.name, s.flat(), c.want)
		if by := strings.Contains(no.Text, "flat"); no.Placed != by || by && no.At != good.residual.At {
			t.Errorf("%s: told at %v, %v", c.name, no.At, no.Placed)
		}
	}
}
