package nest

import "chape/calc/curve"

// extents follows what a placing costs while parts are put down.
type extents struct {
	lo, hi  []curve.Vec // by piece; none lies on it where hi.X is 0
	missing float64     // area of parts without room
}

func newExtents(f *filler, order []gene, down []lying) *extents {
	e := &extents{make([]curve.Vec, len(f.boards)), make([]curve.Vec, len(f.boards)), 0}
	for i, l := range down {
		e.add(f, order[i], l)
	}
	return e
}

func (e *extents) add(f *filler, g gene, l lying) {
	if l.shape < 0 {
		e.missing += f.area[g.part]
		return
	}
	s := f.shapes[l.shape]
	lo := curve.Vec{X: float64(l.col) * f.step, Y: l.y}
	hi := lo.Add(curve.Vec{X: s.w, Y: s.h})
	if i := l.piece; e.hi[i].X == 0 {
		e.lo[i], e.hi[i] = lo, hi
	} else {
		e.lo[i] = curve.Vec{X: min(e.lo[i].X, lo.X), Y: min(e.lo[i].Y, lo.Y)}
		e.hi[i] = curve.Vec{X: max(e.hi[i].X, hi.X), Y: max(e.hi[i].Y, hi.Y)}
	}
}

// leftOut is what a part without room costs, times its area.
const leftOut = 100

// cost is the area of the rectangles, mm². A piece begun after the first costs
// its whole area as well: better a fuller piece than two rectangles.
func (e *extents) cost(f *filler) float64 {
	c := leftOut * e.missing
	first := true
	for i := range e.hi {
		if e.hi[i].X == 0 {
			continue
		}
		c += (e.hi[i].X - e.lo[i].X) * (e.hi[i].Y - e.lo[i].Y)
		if !first {
			c += f.boards[i].leather
		}
		first = false
	}
	return c
}
