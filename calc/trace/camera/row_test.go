package camera

import (
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/frame"
	"chape/calc/trace/raster"
	"chape/calc/trace/sheettest"
)

// The row is read as it was printed, from whatever side the light comes, and with a shadow's edge across it.
func TestRow(t *testing.T) {
	sheet := sheettest.Sheet{Width: 105, Height: 110}
	for name, shade := range map[string]func(x, y float64) float64{
		"even":                nil,
		"falling":             func(x, y float64) float64 { return 1 - 0.5*x/105 },
		"a shadow up to half": func(x, y float64) float64 { return map[bool]float64{true: 0.5, false: 1}[x < 51] },
		"dim":                 func(x, y float64) float64 { return 0.15 },
	} {
		c := plainShot.Of(sheet)
		p := plainPicture()
		if shade != nil {
			c.Shade = shade
			p = c.Take()
		}
		cells, ok := fitted(t, plainShot).Row(p)
		if !ok || cells != sheet.Row() {
			t.Errorf("%s: %v, %v; want %v", name, cells, ok, sheet.Row())
		}
		if s, err := frame.Parse(cells); err != nil || s != small {
			t.Errorf("%s: the row says %v, %v", name, s, err)
		}
	}
}

// A camera nearly half a cell beside still reads it; grey paper over it is no black.
func TestRowBears(t *testing.T) {
	cam := *fitted(t, plainShot)
	cam.centre = cam.centre.Add(curve.Vec{X: 1.6, Y: 2.5}) // at 3 dots a millimetre
	if cells, ok := cam.Row(plainPicture()); !ok || cells != (sheettest.Sheet{Width: 105, Height: 110}).Row() {
		t.Errorf("beside: %v, %v", cells, ok)
	}
	sheet := sheettest.Sheet{Width: 105, Height: 110}
	sheet.On = func(x, y float64) (sheettest.Light, bool) {
		return sheettest.Light{0.55, 0.55, 0.55}, y > 2 && y < 7 && x > 14 && x < 91
	}
	cells, ok := fitted(t, plainShot).Row(plainShot.Of(sheet).Take())
	if !ok || cells != [frame.Cells]bool{} {
		t.Errorf("under grey paper: %v, %v; want no black", cells, ok)
	}
}

// A row of which a part lies outside the picture is not read, whichever part.
func TestRowOutside(t *testing.T) {
	cam, p := fitted(t, plainShot), plainPicture()
	mid := plainShot.Seen(curve.Vec{X: 52, Y: 4.5})
	for name, q := range map[string]*raster.Picture{
		"the right half is cut off": {Width: int(mid.X), Height: 1, RGB: p.RGB},
		"the lower edge cuts it":    {Width: p.Width, Height: int(mid.Y), RGB: p.RGB},
		"between cells and paper":   {Width: p.Width, Height: int(mid.Y) + 11, RGB: p.RGB},
	} {
		if cells, ok := cam.Row(q); ok {
			t.Errorf("%s: read as %v", name, cells)
		}
	}
}
