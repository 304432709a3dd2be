package sheet

import (
	"fmt"
	"math"
	"strconv"
)

// Correction is what the two distances of 100 mm on a printed sheet measured,
// across and along the paper, in mm. Zero: not measured.
type Correction struct{ X, Y float64 }

// Then is the correction of a printer whose sheet, printed with c, measured m: what
// it stretches is the product of the two. To 0.01 mm, which is finer than a
// calliper; the error says that no printer is that far out.
func (c Correction) Then(m Correction) (Correction, error) {
	fx, fy := c.Factors()
	gx, gy := m.Factors()
	out := Correction{X: hundredth(100 / (fx * gx)), Y: hundredth(100 / (fy * gy))}
	return out, out.Check()
}

func hundredth(mm float64) float64 { return math.Round(mm*100) / 100 }

// Set tells whether there is anything to correct.
func (c Correction) Set() bool {
	fx, fy := c.Factors()
	return fx != 1 || fy != 1
}

// Factors are what the file is stretched by, so that the printer's own
// stretch cancels out.
func (c Correction) Factors() (x, y float64) {
	x, y = 1, 1
	if c.X != 0 {
		x = 100 / c.X
	}
	if c.Y != 0 {
		y = 100 / c.Y
	}
	return x, y
}

// Check refuses a correction that no printer needs: those are typing errors,
// or a print that was scaled to fit.
func (c Correction) Check() error {
	for _, v := range []float64{c.X, c.Y} {
		if v != 0 && !(math.Abs(v-100) <= 5) {
			return fmt.Errorf("%v mm between pricks 100 mm apart is no printer's error: print at 100 %%, without fitting to the page, and measure again", v)
		}
	}
	return nil
}

// String gives both measurements in mm: "98.5 × 101.2".
func (c Correction) String() string { return Millimetres(c.X) + " × " + Millimetres(c.Y) }

// Millimetres shows what was measured; 0 was not.
func Millimetres(v float64) string {
	if v == 0 {
		v = 100
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
