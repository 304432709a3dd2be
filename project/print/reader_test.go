package print

import (
	"math"
	"testing"

	"chape/calc/curve"
	"chape/project/print/printtest"
	"chape/project/print/sheet"
)

// readPage is a page as it was read back from the written bytes.
type readPage struct{ printtest.Page }

func readPDF(t testing.TB, data []byte) []readPage {
	t.Helper()
	var out []readPage
	for _, p := range printtest.Read(t, data) {
		out = append(out, readPage{p})
	}
	return out
}

// crosses gives the middles of the crosses of a layer, from their level strokes.
func (p readPage) crosses(l sheet.Layer) curve.Line {
	var out curve.Line
	for _, q := range p.Paths {
		if q.Layer == l && len(q.Pts) == 2 && !q.Curved && math.Abs(q.Pts[0].Y-q.Pts[1].Y) < 0.01 &&
			math.Abs(q.Pts[0].Dist(q.Pts[1])-2*crossArm) < 0.1 {
			out = append(out, q.Pts[0].Add(q.Pts[1]).Mul(0.5))
		}
	}
	return out
}
