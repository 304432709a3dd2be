package length

import "fmt"

// Area is an area in square millimetres.
type Area float64

// Areas to count in. The square foot is 144 in², 929.0304 cm² exactly: 16
// CFR 500.19.
const (
	SquareCentimetre Area = 100
	SquareInch       Area = Area(Inch * Inch)
	SquareFoot       Area = 144 * SquareInch
)

// CM2 is the area in square centimetres.
func (a Area) CM2() float64 { return float64(a / SquareCentimetre) }

// In2 is the area in square inches.
func (a Area) In2() float64 { return float64(a / SquareInch) }

// Ft2 is the area in square feet, by which leather is sold.
func (a Area) Ft2() float64 { return float64(a / SquareFoot) }

// Format shows the area with its unit: whole square centimetres; square
// inches to a tenth, and from one square foot on square feet to a hundredth.
func (a Area) Format(u Unit) string {
	switch {
	case u == Millimetres:
		return fmt.Sprintf("%.0f cm²", roundUp(a.CM2()))
	case a >= SquareFoot || a <= -SquareFoot:
		return fmt.Sprintf("%.2f ft²", roundUp(a.Ft2()*100)/100)
	}
	return fmt.Sprintf("%.1f in²", roundUp(a.In2()*10)/10)
}
