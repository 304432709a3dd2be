package camera

import (
	"chape/calc/curve"
	"chape/calc/trace/frame"
	"chape/calc/trace/raster"
)

// Row reads the cells of the code row: black where less than half of the light of the paper just
// below the cell is left.
func (c *Camera) Row(p *raster.Picture) (cells [frame.Cells]bool, ok bool) {
	mean := func(mid curve.Vec, w, h float64) (float64, bool) {
		sum := 0.0
		for i := range 5 {
			for j := range 5 {
				at := c.Image(mid.Add(curve.Vec{X: w * (float64(i)/4 - 0.5), Y: h * (float64(j)/4 - 0.5)}))
				if !p.Has(at) {
					return 0, false
				}
				sum += float64(p.At(at)) / 25
			}
		}
		return sum, true
	}
	for i := range cells {
		b := frame.Cell(i)
		paper, ok1 := mean(curve.Vec{X: b.Mid().X, Y: frame.RowEnd + 2}, 1, 1)
		cell, ok2 := mean(b.Mid(), 1.2, 2.2)
		if !ok1 || !ok2 {
			return cells, false
		}
		cells[i] = cell < 0.5*paper
	}
	return cells, true
}
