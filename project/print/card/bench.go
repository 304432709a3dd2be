package card

import (
	"strings"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/project"
	"chape/project/print/sheet"
	"chape/project/report"
)

// bench is the box with what tools are set by, and lines to write into.
func bench(f *sheet.Flow, p project.Project, rows report.Rows) {
	const in, size, row = 2.0, 2.7, 7.0
	blanks := []string{"line as measured", "setting used", "weight before wetting", "weights while drying", ""}
	f.Need(figuresHigh(f, rows, in) + row*float64(len(blanks)) + 4)
	top := f.Y
	f.Gap(1.5)
	figures(f, rows, in)
	const from = 34.0
	for _, s := range blanks {
		f.Put(in, s, size, false, sheet.Start)
		y := f.Y + size + 0.6
		unit := "g"
		if strings.Contains(s, "line") || strings.Contains(s, "setting") {
			unit = p.Units.String()
		}
		if p.Units == length.Inches && unit == "g" {
			unit = "" // a scale of ounces or of grams
		}
		end := f.Width - in - 6
		f.Page().Line(sheet.WordLayer, sheet.Hair, curve.Vec{X: f.X() + from, Y: y}, curve.Vec{X: f.X() + end, Y: y})
		f.Put(end+1, unit, size, false, sheet.Start)
		f.Y += row
	}
	b := sheet.Box{Lo: curve.Vec{X: f.X() + 0.3, Y: top}, Hi: curve.Vec{X: f.X() + f.Width - 0.3, Y: f.Y}}
	f.Page().Path(sheet.Path{Layer: sheet.WordLayer, Stroke: sheet.Thin, Pts: b.Corners(), Closed: true})
	f.Gap(2)
}
