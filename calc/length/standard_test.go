package length

import (
	"math"
	"testing"
)

// Exact factors, as NIST gives them (Special Publication 811, appendix B, from memory):
// inch 25.4 mm, foot 304.8 mm, square inch 645.16 mm², square foot 0.09290304 m².
func TestExactFactors(t *testing.T) {
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"inch", Inch.MM(), 25.4}, {"mil", (Inch / 1000).MM(), 0.0254}, {"square inch", float64(SquareInch), 645.16},
		{"square foot", float64(SquareFoot), 92903.04}, {"square foot in cm²", SquareFoot.CM2(), 929.0304},
		{"ounce of leather", Ounce.MM(), 0.396875}, {"millimetre in inches", Millimetre.In(), 1 / 25.4},
	} {
		if math.Abs(c.got-c.want) > 1e-12*c.want {
			t.Errorf("%s = %v, want %v", c.what, c.got, c.want)
		}
	}
}

// Areas below nothing, which only a difference is, and at the change of units.
func TestAreasAtTheirBounds(t *testing.T) {
	for _, c := range []struct {
		a    Area
		u    Unit
		want string
	}{
		{-12350, Millimetres, "-124 cm²"}, {SquareFoot - 1, Inches, "144.0 in²"}, {-SquareFoot, Inches, "-1.00 ft²"}, {49, Millimetres, "0 cm²"},
		{50, Millimetres, "1 cm²"}, {-3, Millimetres, "0 cm²"},
	} {
		if got := c.a.Format(c.u); got != c.want {
			t.Errorf("%v mm² in %v is %q, want %q", float64(c.a), c.u, got, c.want)
		}
	}
}

// At the bounds of what is read: a kilometre either way, a fraction that is a whole.
func TestParseAtItsBounds(t *testing.T) {
	for in, ok := range map[string]bool{"1000000": true, "-1000000": true, "1000000.1": false, "-1000001": false, "1 7/8": true, "1 8/8": false, "8/8": true, "0/8": true, "1 0/8": true} {
		if got, err := Parse(in, Millimetres); (err == nil) != ok {
			t.Errorf("Parse(%q) = %v, %v", in, got, err)
		}
	}
}
