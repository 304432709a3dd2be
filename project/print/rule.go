package print

import (
	"strconv"

	"chape/calc/curve"
	"chape/project/print/sheet"
)

// rule draws 4 inches in eighths.
func rule(d *sheet.Drawing, at curve.Vec) {
	d.Line(sheet.ScaleLayer, sheet.Hair, at, at.Add(curve.Vec{X: 4 * 25.4}))
	for i := range 33 {
		tick := 1.2
		switch {
		case i%8 == 0:
			tick = 3.4
		case i%4 == 0:
			tick = 2.2
		}
		x := at.X + float64(i)*25.4/8
		d.Line(sheet.ScaleLayer, sheet.Hair, curve.Vec{X: x, Y: at.Y}, curve.Vec{X: x, Y: at.Y + tick})
		if i%8 == 0 {
			s := strconv.Itoa(i / 8)
			if i == 32 {
				s += "″"
			}
			d.Text(sheet.Text{Layer: sheet.ScaleLayer, At: curve.Vec{X: x, Y: at.Y + 5.6}, Says: s, Size: 2, Anchor: sheet.Middle})
		}
	}
}
