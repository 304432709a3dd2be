package sheet

import (
	"fmt"
	"strconv"

	"chape/calc/curve"
)

// PricksApart is how far the pricks on a sheet stand from each other, mm.
const PricksApart = 100.0

const prickRadius = 1.2

// Prick marks a place to set a divider point into.
func (d *Drawing) Prick(v curve.Vec) {
	d.Circle(Circle{Layer: ScaleLayer, Stroke: Hair, At: v, Radius: prickRadius})
	d.Line(ScaleLayer, Hair, v.Sub(curve.Vec{X: 2}), v.Add(curve.Vec{X: 2}))
	d.Line(ScaleLayer, Hair, v.Sub(curve.Vec{Y: 2}), v.Add(curve.Vec{Y: 2}))
}

// ScaleWords say how to print and to check the print.
func ScaleWords(c Correction) string {
	s := "Print at 100 %, no scaling, no fitting to the page; check with your dividers before you cut."
	if c.Set() {
		s += fmt.Sprintf(" Corrected for a printer that gave %s mm for 100 × 100 mm.", c)
	}
	return s
}

// Rule draws 4 inches in eighths.
func (d *Drawing) Rule(at curve.Vec) {
	d.Line(ScaleLayer, Hair, at, at.Add(curve.Vec{X: 4 * 25.4}))
	for i := range 33 {
		tick := 1.2
		switch {
		case i%8 == 0:
			tick = 3.4
		case i%4 == 0:
			tick = 2.2
		}
		x := at.X + float64(i)*25.4/8
		d.Line(ScaleLayer, Hair, curve.Vec{X: x, Y: at.Y}, curve.Vec{X: x, Y: at.Y + tick})
		if i%8 == 0 {
			s := strconv.Itoa(i / 8)
			if i == 32 {
				s += "″"
			}
			d.Text(Text{Layer: ScaleLayer, At: curve.Vec{X: x, Y: at.Y + 5.6}, Says: s, Size: WordSize, Anchor: Middle})
		}
	}
}
