package raster

import (
	"math"
	"slices"

	"chape/calc/curve"
)

// Fill calls f for every run of dots, from x0 up to and without x1, whose middles lie in a closed line.
func Fill(l curve.Line, w, h int, f func(y, x0, x1 int)) {
	cross := make([][]float64, h)
	for i, a := range l {
		b := l[(i+1)%len(l)]
		lo, hi := min(a.Y, b.Y), max(a.Y, b.Y)
		for y := max(0, int(math.Ceil(lo))); y < h && float64(y) < hi; y++ {
			cross[y] = append(cross[y], a.X+(b.X-a.X)*(float64(y)-a.Y)/(b.Y-a.Y))
		}
	}
	for y, at := range cross {
		slices.Sort(at)
		for i := 0; i+1 < len(at); i += 2 {
			x0, x1 := max(0, int(math.Ceil(at[i]))), min(w, int(math.Ceil(at[i+1])))
			if x0 < x1 {
				f(y, x0, x1)
			}
		}
	}
}
